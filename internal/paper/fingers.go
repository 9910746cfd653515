package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// besideFinger says what happens where a section begins beside a finger that is knitted.
func (c *climb) besideFinger(s *stitch.Section) string {
	r := &s.Rounds[0]
	picked := 0
	for _, op := range r.Ops {
		if op == stitch.PickUp {
			picked++
		}
	}
	return fmt.Sprintf("the little finger parts; pick up %d along it: %s", picked, words.Plural(r.Out(), "stitch"))
}

// fingersPart says what happens at the upper end of a hand that is divided into fingers.
func (c *climb) fingersPart() string {
	list := c.Out.Mitt.Upward()
	n := 0
	for _, s := range list {
		if s.Part.Over() != stitch.OverDigit && s.Part.Over() != stitch.OverCap {
			n = s.Rounds[len(s.Rounds)-1].Out()
		}
	}
	return "the fingers part: " + words.Plural(n, "stitch")
}

// fingerRow is a finger of a glove as its row of the table says it. Girths and lengths are
// in mm.
type fingerRow struct {
	share      picture.FingerShare
	of         *mitt.Finger
	girth, mm  float64 // around: of the finger, and of its tube
	long, tube float64 // in length
	doubt      [2]bool
}

// fingers lists the fingers in the order worked; none if the mitt has none.
func (h *handout) fingers() (list []fingerRow) {
	p := h.Out.Plan
	for _, share := range picture.FingerShares(h.Out.Planned) {
		i, ok := mitt.FingerOf(share.Part)
		if !ok {
			continue
		}
		f := fingerRow{share: share, of: &p.Fingers.Each[i], girth: p.Hand.Fingers.Girth[i].MM(), long: p.Hand.Fingers.Length[i].MM()}
		f.mm, f.tube = float64(f.of.Stitches.N)/p.Gauge.Stitches, h.Out.Mitt.Section(share.Part).Reach(p.Gauge.Rounds)
		f.doubt = h.filled(i.FieldGirth(), i.FieldLength())
		list = append(list, f)
	}
	return list
}

// outer returns how many stitches of the bridge to the finger that is worked before it a
// finger has.
func (f *fingerRow) outer() int {
	return f.share.Stitches - f.share.Palm - f.share.Back - f.share.Cast
}

// count says how many stitches a finger has, and how many after its decreases.
func (f *fingerRow) count() string {
	if f.of.Decreased == 0 {
		return fmt.Sprint(f.share.Stitches)
	}
	return fmt.Sprintf("%d → %d", f.share.Stitches, f.of.Stitches.N)
}

// end says how a finger ends.
func (f *fingerRow) end() string {
	switch {
	case f.of.Closed:
		return fmt.Sprintf("the last %d close it", f.of.Closing)
	case f.of.EdgingRounds > 0:
		return fmt.Sprintf("%s, the last %d ribbed", f.of.End, f.of.EdgingRounds)
	}
	return string(f.of.End) + ", bound off"
}

// fingerStage returns a finger as it is said in large print.
func (c *climb) fingerStage(s *stitch.Section) stage {
	var notes []string
	for _, f := range c.handout.fingers() {
		if f.share.Part != s.Part {
			continue
		}
		count := fmt.Sprintf("%d of the palm, %d of the back", f.share.Palm, f.share.Back)
		if n := f.outer(); n > 0 {
			count += fmt.Sprintf(", %d along the finger before", n)
		}
		if f.share.Cast > 0 {
			count += fmt.Sprintf(", %d cast on", f.share.Cast)
		}
		notes = []string{count + ": " + f.count(), f.end()}
	}
	return c.stage(s, notes)
}

// The columns of the table of fingers. The last one is as wide as its texts are long.
var fingerColumns = []column{
	{"finger", 1.4, false, false},
	{"around", 1.05, true, false},
	{"finished", 1.2, true, true},
	{"length", 1.05, true, false},
	{"finished", 1.2, true, true},
	{"along", 1, true, false},
	{"palm", 0.95, true, false},
	{"back", 0.95, true, false},
	{"cast on", 1.15, true, false},
	{"stitches", 1.25, true, true},
	{"rounds", 1.05, true, true},
	{"", 3.1, false, false},
}

// fingerTable sets a row for each finger: finger and tube around and in length, where its
// stitches come from, and how it ends.
func (h *handout) fingerTable() []part {
	columns, text := slices.Clone(fingerColumns), func(n int) string {
		if n == 0 {
			return "–"
		}
		return fmt.Sprint(n)
	}
	columns[0].head += ", " + string(h.Doc.Sheet.Unit())
	t := table{handout: h, first: columns}
	var rows []row
	for _, f := range h.fingers() {
		rows = append(rows, row{cells: append(h.sizesOf(&f),
			text(f.outer()), fmt.Sprint(f.share.Palm), fmt.Sprint(f.share.Back), text(f.share.Cast), f.count(), fmt.Sprint(f.of.Rounds), f.end(),
		)})
	}
	list := keptLines(append([]part{space(30)}, t.rows(rows, "")...))
	list = append(list, setLines(h.fingerWords(), h.width(), draw.TextStyle{Size: h.note()})...)
	for _, st := range h.newLadder().fingered {
		if st.part.Over() == stitch.OverCap {
			text := fmt.Sprintf("%s: %d %s, %s.", st.part.Title(), st.rounds, st.unit(), strings.Join(append([]string{words.Both(st.mm, h.Out.Unit)}, st.notes...), "; "))
			list = append(list, setLines(text, h.width(), draw.TextStyle{Size: h.note()})...)
		}
	}
	return list
}

// fingerWords says what the columns of the table mean, and which numbers are fixed.
func (h *handout) fingerWords() string {
	text := "Along: knitted or picked up along the finger before."
	if f := h.fixedOfFingers(); f != "" {
		text += " Fixed: " + f + "."
	}
	return text
}

// fixedOfFingers names the numbers of fingers that are fixed.
func (h *handout) fixedOfFingers() string {
	var list []string
	for _, r := range h.reasons() {
		if _, finger := mitt.FingerOf(r.Part); finger && r.Fixed {
			list = append(list, r.Of.Said()+" "+r.Value)
		}
	}
	return strings.Join(list, "; ")
}
