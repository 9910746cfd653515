package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// Strip is a chart of which the page shows only the rows around one round. The
// page holds the drawing of those about the present round; the whole of each
// strip is at an address of its own, which the script asks once.
type Strip struct {
	View       string  `json:"view"`
	SVG        string  `json:"svg,omitempty"` // empty within the page's data: it is drawn there
	Width      float64 `json:"width"`
	Bottom     float64 `json:"bottom"`
	CellHeight float64 `json:"cell_height"`
	Needle     float64 `json:"needle"` // the height of the needle under the rows
	Rows       int     `json:"rows"`
	From       int     `json:"from"` // the first row that is drawn, from 1 at the foot; 0: none
	To         int     `json:"to"`   // and the last
	Gaps       []int   `json:"gaps"` // rows in which there is no stitch in places, drawn as a tone
	OnNeedle   bool    `json:"-"`    // the needle is shown now
	On         string  `json:"-"`    // the pages that show it now: "all", "narrow", "wide" or none
	grid       chart.Grid
	look       picture.Look
}

// A strip shows so many rows of the chart, with these of them below the present
// one where there are any. The page holds so many more on either side, to go on
// until the whole has come.
const (
	stripRows = 6
	belowRows = 3
	moreRows  = 3
)

// addView adds the strip of a view, not yet drawn, and notes in rows the place
// of each round that the view shows as its own.
func (n *Needles) addView(out *project.Outputs, v chart.View, rows map[chart.Anchor]NeedleTask) {
	g := out.Grid(chart.Options{View: v})
	for i := range g.Rows {
		g.Rows[i].Needles = false // the strip lights its own round
	}
	for i, row := range g.Rows {
		at := chart.Anchor{Section: row.Section, Round: row.Round}
		one := rows[at]
		if chart.ViewOf(row.Section) == v {
			one.View, one.Row = string(v), i+1
		} else {
			one.Wide, one.WideRow = string(v), i+1
		}
		rows[at] = one
	}
	n.Strips = append(n.Strips, Strip{
		View: string(v), Rows: len(g.Rows), Gaps: toned(g), grid: g,
		look: picture.Look{Cell: chartCell, Gauge: out.Plan.Gauge, Symbols: Symbols(n.Doc)},
	})
}

// toned returns the rows that show places without a stitch as a tone, counted
// from the foot: a knitted chart shows them by dots.
func toned(g chart.Grid) []int {
	rows := []int{}
	if picture.IsKnitted(g) {
		return rows
	}
	for i, row := range g.Rows {
		if len(row.Gaps()) > 0 {
			rows = append(rows, i+1)
		}
	}
	return rows
}

// gapsShown reports whether a strip in view shows places without a stitch.
func (n *Needles) gapsShown() bool {
	at := n.Now()
	if at == nil {
		at = n.Last()
	}
	for i := range n.Strips {
		s := &n.Strips[i]
		if at == nil || s.On == "" {
			continue
		}
		row := at.Row
		if s.On == "wide" {
			row = at.WideRow
		}
		low, high := s.window(row)
		if slices.ContainsFunc(s.Gaps, func(r int) bool { return low <= r && r <= high }) {
			return true
		}
	}
	return false
}

// WholeStrips returns the strips of a hand with all their rows, for a page that
// goes on without the server.
func WholeStrips(hand app.Needles) []Strip {
	n := Needles{Doc: hand.Doc}
	if hand.Out == nil {
		return nil
	}
	for _, v := range hand.Out.Charts.Views() {
		n.addView(hand.Out, v, map[chart.Anchor]NeedleTask{})
	}
	for i := range n.Strips {
		s := &n.Strips[i]
		s.draw(1, s.Rows, 1, false)
	}
	return n.Strips
}

// drawn returns the strips that the page holds, without their drawings.
func (n *Needles) drawn() []Strip {
	list := []Strip{}
	for _, s := range n.Strips {
		if s.SVG != "" {
			s.SVG = ""
			list = append(list, s)
		}
	}
	return list
}

// show draws the strips of the present task about its row; of the last one, once
// all is done.
func (n *Needles) show() {
	at, lit := n.Now(), true
	if at == nil {
		at, lit = n.Last(), false
	}
	for i := range n.Strips {
		s := &n.Strips[i]
		switch {
		case at == nil:
		case s.View == at.Wide:
			s.On, s.OnNeedle = "wide", lit && at.OnNeedle
			s.about(at.WideRow, lit && at.IsRound)
		case s.View == at.View:
			s.On, s.OnNeedle = "all", lit && at.OnNeedle
			if at.Wide != "" {
				s.On = "narrow"
			}
			s.about(at.Row, lit && at.IsRound)
		}
	}
}

// about draws the rows about one of them, which is lit if light is set.
func (s *Strip) about(row int, light bool) {
	low, high := s.window(row)
	s.draw(max(low-moreRows, 1), min(high+moreRows, s.Rows), row, light)
}

// window returns the first and the last row that a strip shows about one of
// them.
func (s *Strip) window(row int) (low, high int) {
	low = max(min(row-belowRows, s.Rows-stripRows+1), 1)
	return low, min(low+stripRows-1, s.Rows)
}

// draw draws some rows of a strip, and turns it to one of them, which is lit if
// light is set.
func (s *Strip) draw(from, to, row int, light bool) {
	scene, at := picture.Chart(s.grid.Around(from, to), s.look)
	s.From, s.To, s.Width, s.Bottom, s.CellHeight = from, to, scene.Width, at.Bottom, at.CellHeight
	s.Needle = needleRows * s.CellHeight
	tiles := s.knit(scene, at)
	scene.Prune()
	low, high := s.window(row)
	top := s.Bottom - float64(high)*s.CellHeight
	scene.Window = &draw.Box{Y: top, Width: s.Width, Height: float64(high-low+1) * s.CellHeight}
	if s.OnNeedle {
		scene.Window.Height += s.Needle
	}
	lit, ahead := "", ""
	if light {
		y := s.Bottom - float64(row)*s.CellHeight
		lit = fmt.Sprintf("M0 %sH%sV%sH0Z", draw.Number(y), draw.Number(s.Width), draw.Number(y+s.CellHeight))
		ahead = fmt.Sprintf("M0 0H%sV%sH0Z", draw.Number(s.Width), draw.Number(y))
	}
	scene.Path(ahead, draw.Style{Class: "ahead"})
	scene.Path(lit, draw.Style{Class: "now"})
	s.SVG = strings.Replace(SVG(scene, false), ">", ">"+tiles, 1)
	shown := 0
	if s.OnNeedle {
		shown = row
	}
	s.SVG = strings.TrimSuffix(s.SVG, "</svg>") + s.needles(at, shown) + "</svg>"
}

// knit fills the coloured stitches of a strip with knitting, and returns the
// tiles that it is made of: one for each yarn, since a path for every stitch
// would make the page many times as large. A tile is a stitch, with the one
// below it rising behind it, and the foot of the one above.
func (s *Strip) knit(scene *draw.Scene, at picture.Geometry) (tiles string) {
	for _, y := range s.grid.Palette {
		if y.Fill == "" {
			continue
		}
		id := "knit-" + s.View + "-" + y.ID
		for i := range scene.Items {
			if style := &scene.Items[i].Style; style.Class == "yarn yarn-"+y.ID {
				style.Fill = "url(#" + id + ")"
			}
		}
		tiles += fmt.Sprintf(`<pattern id="%s" x="%s" y="%s" width="%s" height="%s" patternUnits="userSpaceOnUse" viewBox="0 0 100 100" preserveAspectRatio="none"><path d="M0 0h100v100h-100z" fill="%s"/>`,
			id, draw.Number(at.Left), draw.Number(math.Mod(at.Bottom, at.CellHeight)), draw.Number(at.CellWidth), draw.Number(at.CellHeight), picture.Furrow(y.Fill))
		for _, down := range []int{100, 0, -100} {
			tiles += fmt.Sprintf(`<path d="%s" transform="translate(0 %d)" fill="%s"/>`, picture.Knitting.Knit, down, picture.Cloth(y.Fill))
		}
		tiles += "</pattern>"
	}
	return tiles
}
