package tryon

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/gauge"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Edit is a text that a correction writes into the sheet.
type Edit struct{ Path, Text string }

// Correction is one change that a try suggests; it can be declined by its key
// while the others stand.
type Correction struct {
	Key, Name        string
	Was, Is, Because string
	Edits            []Edit
	Doubt            string // why it is not taken unless it is asked for; empty: it is
	Later            bool   // what it changes is knitted: it tells for the other hand and the next pair
}

// Fabric is the key of the correction that the measured fabric suggests.
const Fabric = "fabric"

// Changes tells whether it changes anything: what a measured gauge explains
// already is only told.
func (c Correction) Changes() bool { return len(c.Edits) > 0 }

// Correct gives the corrections that a try suggests for a sheet with its plan.
// What is felt and the gauge tell of one thing: where the gauge is not
// accepted, ask for the corrections of the try without its fabric.
func Correct(seen Seen, s sheet.Sheet, p *mitt.Plan) ([]Correction, error) {
	c := corrector{seen: seen, sheet: s, plan: p}
	if err := c.fabric(); err != nil {
		return nil, err
	}
	for _, zone := range Zones() {
		c.felt(zone)
	}
	c.base()
	c.top()
	return c.list, nil
}

type corrector struct {
	seen  Seen
	sheet sheet.Sheet
	plan  *mitt.Plan
	list  []Correction

	narrower float64 // by how much of itself the fabric is narrower than planned
}

func (c *corrector) add(one Correction) { c.list = append(c.list, one) }

// fabric makes the measured fabric a swatch of the sheet, on the needles and
// so not washed.
func (c *corrector) fabric() error {
	t := c.seen
	if t.Stitches == "" {
		return nil
	}
	const path = "gauge.swatches"
	row, u := c.sheet.Rows(path), c.sheet.Unit()
	if !sheet.Known(fmt.Sprintf("%s[%d].stitches", path, row)) {
		c.add(Correction{
			Key: Fabric, Name: "gauge", Was: perLength(&c.plan.Gauge, u), Is: perLength(&c.plan.Gauge, u),
			Because: fmt.Sprintf("the sheet has %d swatches already, which are the most; leave one out to make room", row),
		})
		return nil
	}
	at := func(key, text string) Edit { return Edit{fmt.Sprintf("%s[%d].%s", path, row, key), text} }
	edits := []Edit{
		at("stitches", t.Stitches), at("width", t.Width), at("worked", "round"), at("washed", "false"), at("on_needles", "true"),
		at("piece", pieceOf(c.sheet)), at("date", t.Date),
	}
	if t.Rounds != "" {
		edits = append(edits, at("rounds", t.Rounds), at("height", t.Height))
	}
	after := c.sheet.Clone()
	Put(after, edits)
	req, err := after.Request()
	if err != nil {
		return fmt.Errorf("tryon: %w", err)
	}
	was, is := &c.plan.Gauge, &req.Gauge
	c.narrower = is.Stitches/was.Stitches - 1
	how := is.Uses[row].How
	if is.Washing.Pieces > 0 {
		how += fmt.Sprintf(" (× %.3f)", is.Washing.After)
	}
	because := fmt.Sprintf("the fabric on the needles has %s over %s: %s; each swatch weighs by what it tells of this mitt", t.Stitches+" stitches", t.Width+" "+string(c.sheet.Unit()), how)
	doubt := ""
	for _, q := range req.Gauge.Queries {
		if q.Swatch == row && (c.narrower > maxApart || c.narrower < -maxApart) {
			doubt = "it " + strings.TrimSuffix(strings.TrimSuffix(q.Message, " It is used as it is."), ".")
		}
	}
	c.add(Correction{
		Key: Fabric, Name: "gauge", Was: perLength(was, u), Is: perLength(is, u), Because: because, Edits: edits, Doubt: doubt,
	})
	return nil
}

// maxApart is by what share a measured gauge may move the plan's before it is
// asked about, and farOff how far an end of the gusset may sit off its place
// (common practice, no source): more is rather a slip of the tape.
const (
	maxApart = 0.08
	farOff   = 15 * units.Millimetre
)

// far asks about an end that sits far off.
func (c *corrector) far(off units.Length) string {
	if off > farOff || off < -farOff {
		return c.away(off) + " are a long way for an end of the gusset: hold the tape there again"
	}
	return ""
}

func perLength(g *gauge.Gauge, u units.Unit) string {
	over, mm := "10 cm", 100.0
	if u == units.IN {
		over, mm = "4 in", 101.6
	}
	return fmt.Sprintf("%.1f stitches × %.1f rounds over %s", g.Stitches*mm, g.Rounds*mm, over)
}

// pieceOf names the fabric on the needles, apart from those of earlier tries.
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

// base moves the base of the gusset: the mitt on the needles has less, or
// more, to cover; the next one gets a cuff of another length.
func (c *corrector) base() {
	off := c.seen.Base
	if off == nil || *off == 0 || !c.plan.Thumbed() || c.seen.Place.Part.Order() < stitch.Gusset.Order() {
		return
	}
	u := c.sheet.Unit()
	side, less := "above", "less"
	if *off < 0 {
		side, less = "below", "more"
	}
	plain := units.FromMM(float64(c.plan.Cuff.PlainRounds) / c.plan.Gauge.Rounds)
	next := max(plain-*off, units.FromMM(1/c.plan.Gauge.Rounds))
	edits := []Edit{{sheet.PathBase, sheet.Signed(*off, u)}, {"length.cuff_plain", tidy(next, u)}}
	because := fmt.Sprintf("the base sits %s %s its place, so the gusset on the needles has %s to cover; a mitt begun anew gets a plain cuff of %s",
		c.away(*off), side, less, words.Size(next.MM(), u))
	c.add(Correction{
		Key: "base", Name: "base of the gusset", Was: c.heightWords(c.plan.BaseAbove), Is: c.heightWords(*off), Because: because, Edits: edits, Doubt: c.far(*off),
	})
}

// top moves the place where the thumb parts: it is where the top of the gusset
// was seen, less what it sits above it.
//
//	G = b + R/q − o
//
// with b the base above its place, R/q the gusset's height, o the top's offset.
func (c *corrector) top() {
	off := c.seen.Top
	if off == nil || *off == 0 || !c.plan.Thumbed() || c.seen.Place.Part.Order() < stitch.Gusset.Order() {
		return
	}
	u := c.sheet.Unit()
	base := c.plan.BaseAbove
	if c.seen.Base != nil {
		base = *c.seen.Base
	}
	height := units.FromMM(float64(c.plan.Gusset.Rounds.N) / c.plan.Gauge.Rounds)
	was, is := height+c.plan.BaseAbove, height+base-*off
	side := "above"
	if *off < 0 {
		side = "below"
	}
	if is < units.FromMM(2/c.plan.Gauge.Rounds) {
		c.add(Correction{
			Key: "top", Name: "gusset length", Was: tidyWith(was, u), Is: tidyWith(was, u),
			Because: fmt.Sprintf("with the top %s %s its place nothing is left of the gusset: nothing is changed, measure again", c.away(*off), side),
		})
		return
	}
	c.add(Correction{
		Doubt: c.far(*off), Key: "top", Name: "gusset length", Was: tidyWith(was, u), Is: tidyWith(is, u),
		Because: fmt.Sprintf("the top comes %s %s the place where the thumb parts", c.away(*off), side),
		Edits:   []Edit{{"hand.gusset_length", tidy(is, u)}},
		Later:   c.seen.Place.Part.Order() > stitch.Gusset.Order(),
	})
}

// away is how far off an end sits, without a sign.
func (c *corrector) away(l units.Length) string {
	return words.Size(max(l, -l).MM(), OffsetUnit(c.sheet.Unit()))
}

func (c *corrector) heightWords(l units.Length) string {
	switch {
	case l > 0:
		return c.away(l) + " above its place"
	case l < 0:
		return c.away(l) + " below its place"
	}
	return "at its place"
}

// tidy is a length as a person would type it: to a tenth of a millimetre, or a
// hundredth of an inch.
func tidy(l units.Length, u units.Unit) string {
	if u == units.IN {
		return strconv.FormatFloat(l.MM()/units.Inch.MM(), 'f', 2, 64)
	}
	return (l / 100 * 100).Exact(u)
}

func tidyWith(l units.Length, u units.Unit) string { return tidy(l, u) + " " + string(u) }
