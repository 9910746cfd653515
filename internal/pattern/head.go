package pattern

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// Head is what is told before the first round.
type Head struct {
	Sizes []Row   // measurements of hand and mitt, and yarn
	Needs Passage // what to have at hand
	Signs []words.Sign
}

// Row is a line of a table with a value for each size.
type Row struct {
	Name   string
	Values []string
}

// part names the passages of the head, beside the parts of a mitt.
const needs stitch.Part = "needs"

// headOf returns the head of a text.
func (t *Text) headOf(sizes []Size, how Wording) Head {
	h := Head{Sizes: measured(sizes), Signs: t.signs(sizes[0].Out, how)}
	own := column[section]{}
	for i, s := range sizes {
		own.sizes = append(own.sizes, i)
		own.cells = append(own.cells, needsOf(s.Out))
	}
	for i := range own.cells {
		own.cells[i].placed(nil)
	}
	h.Needs = passage(own, Short)
	return h
}

// needsOf returns what one size needs besides the amount of yarn, which the table has.
func needsOf(out *project.Outputs) section {
	s := section{part: needs, title: "What you need"}
	for _, m := range out.Materials("", "") {
		if m.Name == "Tails" {
			continue // each is told where it is left
		}
		text := m.Text
		if what, _, more := strings.Cut(text, "; "); m.Name == "Yarn" && more {
			text = what + "."
		}
		s.steps = append(s.steps, stepOf(words.Step{Text: m.Name + ": " + text}))
	}
	return s
}

// measured returns what each size measures, on the hand and finished, and how much yarn a
// pair takes at most.
func measured(sizes []Size) (rows []Row) {
	length := func(name string, of func(*project.Outputs) float64) {
		cm, in := Row{Name: name + ", cm"}, Row{Name: name + ", in"}
		any := false
		for _, s := range sizes {
			l := units.FromMM(of(s.Out))
			any = any || l > 0
			cm.Values = append(cm.Values, bare(l, units.CM))
			in.Values = append(in.Values, bare(l, units.IN))
		}
		if !any {
			return
		}
		if sizes[0].Out.Unit == units.IN {
			cm, in = in, cm
		}
		rows = append(rows, cm, in)
	}
	length("to fit a hand round of", func(o *project.Outputs) float64 { return o.Plan.Hand.Circumference.MM() })
	length("finished hand round", func(o *project.Outputs) float64 { return float64(o.Plan.Body.Stitches.N) / o.Plan.Gauge.Stitches })
	length("finished cuff round", func(o *project.Outputs) float64 { return float64(o.Plan.Cuff.CastOn.N) / o.Plan.Gauge.Stitches })
	length("finished length", func(o *project.Outputs) float64 { return o.Plan.Whole() })
	length("thumb round", func(o *project.Outputs) float64 {
		if thumb(o) == nil {
			return 0
		}
		return float64(o.Plan.Thumb.Stitches.N) / o.Plan.Gauge.Stitches
	})
	length("thumb length", func(o *project.Outputs) float64 {
		if s := thumb(o); s != nil {
			return s.Reach(o.Plan.Gauge.Rounds)
		}
		return 0
	})
	return append(rows, yarns(sizes)...)
}

// thumb returns the section that covers the thumb by itself; nil for none.
func thumb(o *project.Outputs) *stitch.Section {
	at := slices.IndexFunc(o.Mitt.Sections, func(s stitch.Section) bool { return s.Part.OnThumb() && len(s.Rounds) > 0 })
	if at < 0 {
		return nil
	}
	return &o.Mitt.Sections[at]
}

// bare returns a length without its unit; "–" for none.
func bare(l units.Length, u units.Unit) string {
	if l <= 0 {
		return none
	}
	return l.Format(u)
}

// yarns returns how much yarn a pair takes at most: of each, if there are several in all
// sizes.
func yarns(sizes []Size) []Row {
	metres, yards := Row{Name: "yarn for the pair, m at most"}, Row{Name: "yarn for the pair, yd at most"}
	for _, s := range sizes {
		_, _, m := s.Out.Yarn.Pair.Metres().Rounded()
		_, _, y := s.Out.Yarn.Pair.Yards().Rounded()
		metres.Values, yards.Values = append(metres.Values, fmt.Sprint(m)), append(yards.Values, fmt.Sprint(y))
	}
	rows := []Row{metres, yards}
	if sizes[0].Out.Unit == units.IN {
		slices.Reverse(rows)
	}
	return append(rows, colours(sizes)...)
}

// colours returns about how much of each yarn a pair takes; "–" where a size has none.
func colours(sizes []Size) (rows []Row) {
	for i, s := range sizes {
		for _, one := range s.Out.ByColour() {
			name := one[:strings.LastIndex(strings.TrimSuffix(one, " m"), " ")]
			at := slices.IndexFunc(rows, func(r Row) bool { return r.Name == "of it about, m: "+name })
			if at < 0 {
				at = len(rows)
				rows = append(rows, Row{Name: "of it about, m: " + name, Values: slices.Repeat([]string{none}, len(sizes))})
			}
			rows[at].Values[i] = strings.TrimSuffix(one[len(name)+1:], " m")
		}
	}
	return rows
}
