package view

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// miniMitt is the whole mitt, unrolled and small, on which one sees where in it
// one is. Lengths are in stitches; the parts that are worked one above the other
// stand so, what is worked by itself stands beside them.
type miniMitt struct {
	Width, Height float64
	Cloth         []miniCloth
	Sections      []miniSection
}

// miniCloth is all that is knitted in one yarn.
type miniCloth struct {
	Yarn chart.Yarn
	Path string
}

// miniSection says where the rounds of a section lie: the first at Foot, each
// next one miniRound further up.
type miniSection struct {
	Part              stitch.Part
	View              chart.View
	Rounds            int
	Left, Foot, Width float64
}

// miniRound is the height of a round over the width of a stitch, and miniGap the
// room between what stands side by side, in stitches.
const (
	miniRound = 0.75
	miniGap   = 3
	fingerGap = 1
)

// upward returns the chart's views in the order in which the mitt is knitted.
func (c Chart) upward() []chart.View {
	order := []chart.View{chart.CuffView, chart.GussetView, chart.TubeView}
	for _, part := range stitch.Parts() {
		if digit(chart.View(part)) || part.BelowFingers() {
			order = append(order, chart.View(part))
		}
	}
	order = append(order, chart.TopView)
	return slices.SortedStableFunc(slices.Values(c.Views), func(a, b chart.View) int {
		return cmp.Compare(slices.Index(order, a), slices.Index(order, b))
	})
}

// short names a view where there is room for a word or two.
func short(v chart.View) string { return strings.ReplaceAll(string(v), "_", " ") }

// digit reports whether a view shows the thumb or a finger.
func digit(v chart.View) bool { return stitch.Part(v).Over() == stitch.OverDigit }

// capped reports whether a view shows the cap over the fingers, or its top.
func capped(v chart.View) bool { return stitch.Part(v).Over() == stitch.OverCap }

// newMini draws the parts of a mitt: one above the other, the fingers side by side on
// the hand, the thumb beside it.
func newMini(out *project.Outputs) miniMitt {
	views := out.Charts.Views()
	grid := func(v chart.View) chart.Grid {
		return out.Charts.Grid(chart.Options{View: v, Layout: chart.Columns})
	}
	d := miniDrawing{paths: map[string]*strings.Builder{}}
	var fingers, thumb, cover []chart.Grid
	var upper *chart.Grid
	for _, v := range (Chart{Views: views}).upward() {
		if v == chart.GussetView && slices.Contains(views, chart.TubeView) {
			continue // the hand all round has it
		}
		g := grid(v)
		switch {
		case stitch.Part(v).OnThumb():
			thumb = append(thumb, g)
		case capped(v):
			cover = append(cover, g)
		case stitch.Part(v).BelowFingers():
			upper = &g
		case digit(v):
			fingers = append(fingers, g)
		default:
			d.stack = append(d.stack, g)
		}
	}
	d.divide(fingers, upper)
	d.rise()
	d.beside(thumb)
	d.beside(cover)
	m := d.miniMitt
	for id, p := range d.paths {
		m.Cloth = append(m.Cloth, miniCloth{out.Charts.Palette.Or(id), p.String()})
	}
	slices.SortFunc(m.Cloth, func(a, b miniCloth) int { return cmp.Compare(a.Yarn.ID, b.Yarn.ID) })
	return m
}

// miniDrawing is a small mitt while it is drawn.
type miniDrawing struct {
	miniMitt
	paths  map[string]*strings.Builder
	stack  []chart.Grid // one above the other, from the cuff
	placed []miniPlaced // what stands on the stack, its places measured from the middle of the stack's upper edge
}

// miniPlaced is a chart and where its lower left corner lies.
type miniPlaced struct {
	grid     chart.Grid
	left, up float64
}

// divide puts the fingers on the hand, the little finger at the left, the others on the
// upper hand if there is one.
func (d *miniDrawing) divide(fingers []chart.Grid, upper *chart.Grid) {
	wide := -float64(fingerGap)
	for _, g := range fingers {
		wide += float64(g.Width) + fingerGap
	}
	at, base := -wide/2, 0.0
	for i, g := range fingers {
		d.placed = append(d.placed, miniPlaced{g, at, base})
		at += float64(g.Width) + fingerGap
		if i == 0 && upper != nil {
			d.placed = append(d.placed, miniPlaced{*upper, (at+wide/2)/2 - float64(upper.Width)/2, 0})
			base = float64(len(upper.Rows)) * miniRound
		}
	}
}

// rise draws the stack and what stands on it.
func (d *miniDrawing) rise() {
	rows, half := 0, 0.0
	for _, g := range d.stack {
		half, rows = max(half, float64(g.Width)/2), rows+len(g.Rows)
	}
	over := 0.0
	for _, p := range d.placed {
		half = max(half, -p.left, p.left+float64(p.grid.Width))
		over = max(over, p.up+float64(len(p.grid.Rows))*miniRound)
	}
	d.Width, d.Height = 2*half, float64(rows)*miniRound+over
	foot := d.Height
	for _, g := range d.stack {
		d.lay(g, half-float64(g.Width)/2, foot, d.paths)
		foot -= float64(len(g.Rows)) * miniRound
	}
	for _, p := range d.placed {
		d.lay(p.grid, half+p.left, foot-p.up, d.paths)
	}
}

// beside draws what is worked by itself, one above the other, beside the rest.
func (d *miniDrawing) beside(list []chart.Grid) {
	high, wide := 0.0, 0.0
	for _, g := range list {
		high, wide = high+float64(len(g.Rows))*miniRound, max(wide, float64(g.Width))
	}
	if len(list) == 0 {
		return
	}
	d.Height = max(d.Height, high)
	for _, g := range list {
		d.lay(g, d.Width+miniGap+(wide-float64(g.Width))/2, high, d.paths)
		high -= float64(len(g.Rows)) * miniRound
	}
	d.Width += miniGap + wide
}

// lay puts a chart into the drawing, its lower left corner at left and foot.
func (m *miniMitt) lay(g chart.Grid, left, foot float64, paths map[string]*strings.Builder) {
	for i, row := range g.Rows {
		y := foot - float64(i+1)*miniRound
		if n := len(m.Sections); row.Round == 1 || n == 0 || m.Sections[n-1].Part != row.Section {
			m.Sections = append(m.Sections, miniSection{row.Section, g.View, 0, left, y + miniRound, float64(g.Width)})
		}
		m.Sections[len(m.Sections)-1].Rounds++
		cells := row.Shown()
		for from := 0; from < len(cells); {
			to := from + 1
			for to < len(cells) && cells[to].Yarn == cells[from].Yarn && cells[to].X == cells[to-1].X+1 {
				to++
			}
			yarn := cells[from].Yarn
			if paths[yarn] == nil {
				paths[yarn] = &strings.Builder{}
			}
			fmt.Fprintf(paths[yarn], "M%g %gh%dv%gh%dz", left+float64(cells[from].X), y, to-from, miniRound, from-to)
			from = to
		}
	}
}
