package tryon

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Edit is a text that a correction writes into the sheet.
type Edit struct{ Path, Text string }

// Correction is one change that a try suggests. Each is accepted or declined by
// its key.
type Correction struct {
	Key, Name        string
	Was, Is, Because string
	Edits            []Edit
	Doubt            string // why it is not accepted by default; empty: it is
	Caution          string // where it could hurt: said before all else
	Later            bool   // the zone is knitted already: only the other hand and later pairs change
}

// Fabric is the key of the correction that adds the measured fabric as a swatch.
const Fabric = "fabric"

// Changes reports whether the correction changes the sheet; some only explain
// why nothing has to be changed.
func (c Correction) Changes() bool { return len(c.Edits) > 0 }

// Correct returns the corrections that a try suggests for a sheet with its plan.
// The felt ones leave out what the measured gauge corrects. So where the person
// declines the gauge, correct again with try.WithoutFabric().
func Correct(try Reading, s sheet.Sheet, p *mitt.Plan) ([]Correction, error) {
	c := corrector{try: try, sheet: s, plan: p}
	if err := c.fabric(); err != nil {
		return nil, err
	}
	for _, zone := range Zones() {
		c.felt(zone)
	}
	c.base()
	c.top()
	c.ends()
	return FirstTold(c.list), nil
}

// FirstTold returns corrections with those first that could hurt.
func FirstTold(list []Correction) []Correction {
	slices.SortStableFunc(list, func(a, b Correction) int {
		return cmp.Compare(len(b.Caution), len(a.Caution))
	})
	return list
}

type corrector struct {
	try   Reading
	sheet sheet.Sheet
	plan  *mitt.Plan
	list  []Correction

	narrower float64 // the share by which the measured fabric is narrower than planned
}

// add adds a correction, in the terms of the sheet.
func (c *corrector) add(one Correction) {
	t := words.TermsOf(c.sheet.Given(sheet.PathTerms))
	one.Name, one.Because, one.Doubt = t.Say(one.Name), t.Say(one.Because), t.Say(one.Doubt)
	c.list = append(c.list, one)
}

// fabric adds the measured fabric to the sheet as one more swatch, on the needles
// and so not washed.
func (c *corrector) fabric() error {
	t := c.try
	if t.Stitches == "" { // Read lets no fabric pass without them
		return nil
	}
	const path = "gauge.swatches"
	row, u := c.sheet.Rows(path), c.sheet.Unit()
	if !sheet.Known(fmt.Sprintf("%s[%d].stitches", path, row)) {
		c.add(Correction{
			Key: Fabric, Name: "gauge", Was: perLength(&c.plan.Gauge, u), Is: perLength(&c.plan.Gauge, u),
			Because: fmt.Sprintf("there are %d swatches already, which is the most; leave one out to make room", row),
		})
		return nil
	}
	at := func(key, text string) Edit { return Edit{fmt.Sprintf("%s[%d].%s", path, row, key), text} }
	edits := []Edit{
		at("stitches", t.Stitches), at("width", t.Width), at("worked", sheet.Worked(c.plan.Make.Flat)), at("washed", "false"), at("on_needles", "true"),
		at("piece", pieceOf(c.sheet)), at("date", t.Date),
	}
	if t.Rounds != "" {
		edits = append(edits, at("rounds", t.Rounds), at("height", t.Height))
	}
	after := c.sheet.Clone()
	Put(after, edits)
	measured, err := after.Gauge()
	if err != nil {
		return fmt.Errorf("tryon: %w", err)
	}
	was, is := &c.plan.Gauge, &measured
	c.narrower = is.Stitches/was.Stitches - 1
	how := is.Uses[row].How
	if is.Washing.Pieces > 0 {
		how += fmt.Sprintf(" (× %.3f)", is.Washing.Value)
	}
	because := fmt.Sprintf("on the needles there are %s over %s: %s. The surer a swatch, the more it counts", t.Stitches+" stitches", t.Width+" "+string(c.sheet.Unit()), how)
	doubt := ""
	for _, q := range is.Queries {
		if q.Swatch == row && (c.narrower > doubtfulGauge || c.narrower < -doubtfulGauge) {
			doubt = "it " + strings.TrimSuffix(strings.TrimSuffix(q.Message, " It is used as it is."), ".")
		}
	}
	c.add(Correction{
		Key: Fabric, Name: "gauge", Was: perLength(was, u), Is: perLength(is, u), Because: because, Edits: edits, Doubt: doubt,
	})
	return nil
}

// Beyond these bounds a slip of the tape is likelier, so the person is asked
// first (common practice, no source): the share by which the fabric may be
// narrower or wider than planned, and how far an end of the gusset may sit off
// its place.
const (
	doubtfulGauge  = 0.08
	doubtfulOffset = 15 * units.Millimetre
)

// doubtOffset returns the doubt about an offset, or "".
func (c *corrector) doubtOffset(off units.Length) string {
	if off > doubtfulOffset || off < -doubtfulOffset {
		return c.offsetWords(off) + " is a long way off: hold the tape there again"
	}
	return ""
}

// perLength writes a gauge over 10 cm, or 4 in.
func perLength(g *gauge.Gauge, u units.Unit) string {
	over, mm := "10 cm", 100.0
	if u == units.IN {
		over, mm = "4 in", 101.6
	}
	return fmt.Sprintf("%.1f stitches × %.1f rounds over %s", g.Stitches*mm, g.Rounds*mm, over)
}

// pieceOf names the fabric on the needles as a piece of its own: washing changes
// are reckoned within a piece, and earlier tries measured other fabric.
func pieceOf(s sheet.Sheet) string {
	n := 1
	for i := range s.Rows("gauge.swatches") {
		if strings.HasPrefix(s.Given(fmt.Sprintf("gauge.swatches[%d].piece", i)), "try ") {
			n++
		}
	}
	return fmt.Sprintf("try %d", n)
}

// Put writes edits into a sheet.
func Put(s sheet.Sheet, edits []Edit) {
	for _, e := range edits {
		s.Put(e.Path, e.Text)
	}
}

// base corrects for a base of the gusset that sits off its place: the gusset on
// the needles has less or more of the hand to cover, and the plain cuff of the
// next mitt becomes shorter or longer.
func (c *corrector) base() {
	off := c.try.Base
	if off == nil || *off == 0 || !c.plan.Parted() || !c.try.Place.reached(c.plan.Mound()) || c.try.Place.Down {
		return
	}
	u := c.sheet.Unit()
	side, less := "above", "less"
	if *off < 0 {
		side, less = "below", "more"
	}
	plain := units.FromMM(float64(c.plan.Cuff.PlainRounds) / c.plan.Gauge.Rounds)
	next := max(plain-*off, units.FromMM(1/c.plan.Gauge.Rounds))
	edits := []Edit{{sheet.PathBase, sheet.Signed(*off, u)}, {"length.cuff_plain", typedLength(next, u)}}
	because := fmt.Sprintf("the base sits %s %s its place: the %s has %s to cover. A mitt begun anew gets a plain cuff of %s",
		c.offsetWords(*off), side, c.plan.Mound().Words(), less, words.Size(next.MM(), u))
	c.add(Correction{
		Key: "base", Name: "base of the " + c.mound(), Was: c.baseWords(c.plan.BaseAbove), Is: c.baseWords(*off), Because: because, Edits: edits, Doubt: c.doubtOffset(*off),
	})
}

// mound returns what lies beside the base of the thumb: the gusset, an opening, or the thumb
// itself.
func (c *corrector) mound() string {
	switch {
	case c.plan.Gusseted():
		return "gusset"
	case c.plan.OpeningRows() > 0:
		return "opening"
	}
	return "thumb"
}

// top corrects the place where the thumb parts. With G its height above the
// gusset's place on the hand,
//
//	G = b + R/q − o
//
// From the fingertips the top is knitted first, and G = R/q + o. Here
// b is how far the base sits above its place, R the gusset's rounds, q the
// rounds a mm, and o how far the top sits above the parting.
func (c *corrector) top() {
	off := c.try.Top
	if off == nil || *off == 0 || !c.plan.Parted() || !c.try.Place.reached(c.plan.Mound()) {
		return
	}
	if c.plan.OpeningRows() > 0 {
		c.opening()
		return
	}
	u := c.sheet.Unit()
	base := c.plan.BaseAbove
	if c.try.Base != nil {
		base = *c.try.Base
	}
	height := units.FromMM(float64(c.plan.Gusset.Rounds.N) / c.plan.Gauge.Rounds)
	was, is := height+c.plan.BaseAbove, height+base-*off
	if c.try.Place.Down { // its base is still to come, at its place
		is = height + *off
	}
	side := "above"
	if *off < 0 {
		side = "below"
	}
	name := "gusset length"
	if !c.plan.Gusseted() {
		name = "length to the thumb"
	}
	if is < units.FromMM(2/c.plan.Gauge.Rounds) {
		c.add(Correction{
			Key: "top", Name: name, Was: typedLengthWithUnit(was, u), Is: typedLengthWithUnit(was, u),
			Because: fmt.Sprintf("with the top %s %s its place no %s is left: measure again", c.offsetWords(*off), side, c.plan.Mound().Words()),
		})
		return
	}
	c.add(Correction{
		Doubt: c.doubtOffset(*off), Key: "top", Name: name, Was: typedLengthWithUnit(was, u), Is: typedLengthWithUnit(is, u),
		Because: fmt.Sprintf("the top comes %s %s the place where the thumb parts", c.offsetWords(*off), side),
		Edits:   []Edit{{"hand.gusset_length", typedLength(is, u)}},
		Later:   c.try.Place.past(c.plan.Mound()),
	})
}

// offsetWords writes the size of an offset, without its sign.
func (c *corrector) offsetWords(l units.Length) string {
	return words.Size(max(l, -l).MM(), OffsetUnit(c.sheet.Unit()))
}

func (c *corrector) baseWords(l units.Length) string {
	switch {
	case l > 0:
		return c.offsetWords(l) + " above its place"
	case l < 0:
		return c.offsetWords(l) + " below its place"
	}
	return "at its place"
}

// typedLength writes a length as a person would type it: to a tenth of a
// millimetre, or a hundredth of an inch.
func typedLength(l units.Length, u units.Unit) string {
	if u == units.IN {
		return strconv.FormatFloat(l.MM()/units.Inch.MM(), 'f', 2, 64)
	}
	return (l / 100 * 100).Exact(u)
}

func typedLengthWithUnit(l units.Length, u units.Unit) string {
	return typedLength(l, u) + " " + string(u)
}
