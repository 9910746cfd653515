package paper

import (
	"fmt"
	"math"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// Sheet lays out the printed sheet of a mitt: the plan beside the hand, the
// chart with its key, the words.
func Sheet(doc project.Document, out *project.Outputs, size Size) []*draw.Scene {
	f := newFlow(size, doc.Name)
	plan(f, doc, out)
	grids(f, doc, out)
	instructions(f, out)
	f.foot()
	return f.pages
}

// plan is the first page: the numbers at the left, the hand at the right.
func plan(f *flow, doc project.Document, out *project.Outputs) {
	p := out.Plan
	f.text(margin, f.width(), doc.Name, draw.TextStyle{Size: title, Bold: true})
	unit := doc.Sheet.Unit()
	f.text(margin, f.width(), fmt.Sprintf("%s, %s hand · hand %s · %.1f stitches and %.1f rounds over 10 cm", p.Kind.Words(), doc.Side,
		p.Hand.Circumference.With(unit), p.Gauge.Stitches*100, p.Gauge.Rounds*100), draw.TextStyle{Size: body})
	f.y += 3
	top := f.y
	hand := picture.Hand(p, picture.HandOptions{Left: doc.Side == project.Left, Unit: unit})
	column := f.width() * 0.30
	room := f.width() - column - 4
	scale := min(room/hand.Width, (f.left()-42)/hand.Height)
	f.page().Add(hand, margin+column+4, top, scale)
	for _, r := range out.Reasons {
		if r.Number != "0" || r.Fixed {
			number(f, r, column)
		}
	}
	f.y = max(f.y, top+hand.Height*scale) + 3
	cautions(f, out)
}

// number is one number of the plan.
func number(f *flow, r words.Reason, column float64) {
	value := r.Value
	if r.Fixed {
		value += " (fixed)"
	}
	f.need(2 * body * leading)
	f.page().Text(margin, f.y+body, r.Name, draw.TextStyle{Class: "soft", Size: body * 0.85})
	f.y += body * 1.1
	f.text(margin, column, value, draw.TextStyle{Size: body, Bold: true})
	f.y += 1
}

func cautions(f *flow, out *project.Outputs) {
	list := []string{}
	for _, w := range out.Plan.Warnings {
		list = append(list, words.Caution(w.Message))
	}
	if len(out.Plan.Filled) > 0 {
		list = append(list, fmt.Sprintf("Filled from ratios, not measured (≈ on the drawing): %s. Measure when you can.", words.Plural(len(out.Plan.Filled), "value")))
	}
	pair := out.Yarn.Pair.Metres()
	list = append(list, fmt.Sprintf("Yarn for the pair: some %.0f m, %.0f to %.0f. Every girth may come out %.1f %% wider or narrower (95 %%).",
		pair.Mean, math.Floor(pair.Low), math.Ceil(pair.High), out.Summary.Half*100))
	list = append(list, "A cuff or mitt that is too tight shows in tingling, cold or pale fingers: take it off. For babies: no loose threads inside, no tight elastic, no cord round the neck. General caution, not medical advice.")
	for _, text := range list {
		f.text(margin, f.width(), "• "+text, draw.TextStyle{Size: body * 0.85})
	}
}

// The widths of a chart's cell on paper, in mm: 6 where there is room, 4 by
// choice at the least, smaller only for a gusset that fits no other way.
const (
	largestCell = 6.0
	key         = 110.0
)

// grids are the pages with charts: the gusset's, and those on which something
// is painted that it doesn't show.
func grids(f *flow, doc project.Document, out *project.Outputs) {
	var first chart.View
	if out.Plan.Thumbed() {
		first = chart.GussetView
		grid(f, doc, out, first)
	}
	for _, v := range out.Charts.Views() {
		if v != first && out.Charts.Painted(v, first) {
			grid(f, doc, out, v)
		}
	}
	notes(f, out)
}

// notes are what is noted on cells and rounds, by section and round.
func notes(f *flow, out *project.Outputs) {
	headed := false
	for _, e := range out.Charts.Marks.Edits() {
		if e.Layer != chart.Notes {
			continue
		}
		if !headed {
			f.head("Notes")
			headed = true
		}
		at := fmt.Sprintf("%s, round %d", e.Section.Words(), e.Round)
		if e.Column != "" {
			at += ", column " + e.Column
		}
		f.text(margin, f.width(), at+": "+e.Value, draw.TextStyle{Size: body})
	}
}

// titles are the headings of the charts.
var titles = map[chart.View]string{
	chart.GussetView: "Chart of the thumb gusset", chart.TubeView: "Chart of the hand, all round", chart.ThumbView: "Chart of the thumb",
	chart.TopView: "Chart of the top", chart.CuffView: "Chart of the cuff",
}

// grid is a page with a chart and its key.
func grid(f *flow, doc project.Document, out *project.Outputs, v chart.View) {
	g := out.Grid(chart.Options{View: v})
	symbols := picture.Convention(doc.Sheet.Given("chart.symbols"))
	f.turn()
	f.head(titles[v])
	read := "Read from right to left, from the foot up."
	if v == chart.GussetView {
		read = "Read from right to left, from the foot up: every round begins at the right edge of the gusset."
	}
	f.text(margin, f.width(), read, draw.TextStyle{Size: body})
	f.y += 2
	keys := picture.Key(g, symbols, min(key, f.width()))
	scene, _ := picture.Chart(g, picture.Look{Cell: largestCell, Gauge: out.Plan.Gauge, Symbols: symbols})
	scale := min(1, f.width()/scene.Width, (f.left()-keys.Height-heading*leading-12)/scene.Height)
	f.put(scene, margin+(f.width()-scene.Width*scale)/2, scale)
	unsound(f, out)
	f.head("Key")
	f.put(keys, margin, 1)
}

// unsound tells what was painted that does not add up.
func unsound(f *flow, out *project.Outputs) {
	for _, u := range out.Unsound {
		f.text(margin, f.width(), "Does not add up: "+u.Words+".", draw.TextStyle{Size: body, Bold: true})
	}
}

// instructions are the words, section by section; a step is not split from
// its rounds.
func instructions(f *flow, out *project.Outputs) {
	f.turn()
	f.text(margin, f.width(), "Words", draw.TextStyle{Size: heading, Bold: true})
	unsound(f, out)
	if len(out.Colours) > 0 {
		f.text(margin, f.width(), "The words give the stitches; the colours stand in the chart.", draw.TextStyle{Size: body})
	}
	if out.Changed.Count() > 0 {
		f.text(margin, f.width(), "Rounds with a star are worked otherwise since the last try; in the charts a bar stands beside them.", draw.TextStyle{Size: body})
	}
	const label = 31.0
	for _, passage := range out.Words {
		f.head(passage.Title)
		for _, s := range passage.Steps {
			if s.From == 0 {
				f.text(margin, f.width(), s.Text, draw.TextStyle{Size: body})
				f.y += 0.8
				continue
			}
			lines := len(draw.Wrap(s.Text, f.width()-label, body, false))
			f.need(float64(lines) * body * leading)
			name := s.Label()
			if out.Changed.Any(passage.Part, s.From, s.To) {
				name += " *"
			}
			f.page().Text(margin, f.y+body, name, draw.TextStyle{Size: body * 0.9, Bold: true})
			f.text(margin+label, f.width()-label, s.Text, draw.TextStyle{Size: body})
		}
	}
}
