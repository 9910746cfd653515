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
)

// upward returns the chart's views in the order in which the mitt is knitted.
func (c Chart) upward() []chart.View {
	order := []chart.View{chart.CuffView, chart.GussetView, chart.TubeView, chart.ThumbView, chart.TopView}
	return slices.SortedStableFunc(slices.Values(c.Views), func(a, b chart.View) int {
		return cmp.Compare(slices.Index(order, a), slices.Index(order, b))
	})
}

// newMini draws the parts of a mitt.
func newMini(out *project.Outputs) miniMitt {
	var stack, beside []chart.Grid
	views := out.Charts.Views()
	for _, v := range []chart.View{chart.CuffView, chart.TubeView, chart.TopView, chart.ThumbView} {
		if v == chart.TubeView && !slices.Contains(views, v) {
			v = chart.GussetView
		}
		if !slices.Contains(views, v) {
			continue
		}
		if g := out.Charts.Grid(chart.Options{View: v, Layout: chart.Columns}); v == chart.ThumbView {
			beside = append(beside, g)
		} else {
			stack = append(stack, g)
		}
	}
	m := miniMitt{}
	paths := map[string]*strings.Builder{}
	rows := 0
	for _, g := range stack {
		m.Width, rows = max(m.Width, float64(g.Width)), rows+len(g.Rows)
	}
	m.Height = float64(rows) * miniRound
	foot, middle := m.Height, m.Width/2
	for _, g := range stack {
		m.lay(g, middle-float64(g.Width)/2, foot, paths)
		foot -= float64(len(g.Rows)) * miniRound
	}
	for _, g := range beside {
		m.Height = max(m.Height, float64(len(g.Rows))*miniRound)
		m.lay(g, m.Width+miniGap, float64(len(g.Rows))*miniRound, paths)
		m.Width += miniGap + float64(g.Width)
	}
	for id, p := range paths {
		m.Cloth = append(m.Cloth, miniCloth{out.Charts.Palette.Or(id), p.String()})
	}
	slices.SortFunc(m.Cloth, func(a, b miniCloth) int { return cmp.Compare(a.Yarn.ID, b.Yarn.ID) })
	return m
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
