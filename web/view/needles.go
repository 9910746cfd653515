package view

import (
	"fmt"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// Needles is the mitt on the needles: the present round of one hand of a pair,
// and all others for a page that goes on without the server.
type Needles struct {
	ID     int64
	Doc    project.Document
	Side   string // the hand that is knitted
	Nth    int    // rounds that are knitted
	Rounds []NeedleRound
	Strips []Strip
	Other  string // where the other hand stands, in words
	Lacks  string // why there is nothing to knit yet
	Ahead  string // the first round ahead that the last try changed; empty: none
	Second string // how this hand is worked while only the other one is on the needles: "alike" or "anew"
}

// NeedleRound is one round as it is read at the elbow.
type NeedleRound struct {
	Section string   `json:"section"`
	Name    string   `json:"name"` // of the section, in words
	Round   int      `json:"round"`
	Of      int      `json:"of"` // rounds of the section
	Before  int      `json:"before"`
	After   int      `json:"after"` // stitches on the needles, before it and after
	Words   string   `json:"words"`
	First   []string `json:"first"` // what comes before it
	Then    []string `json:"then"`  // and what after it
	Changed bool     `json:"changed"`
	Note    string   `json:"note"`
	View    string   `json:"view"`
	Row     int      `json:"row"` // of the view, from the foot
}

// Strip is a chart of which the page shows the rows about one round.
type Strip struct {
	View       string  `json:"view"`
	SVG        string  `json:"-"`
	Width      float64 `json:"width"`
	Bottom     float64 `json:"bottom"`
	CellHeight float64 `json:"cell_height"`
	Rows       int     `json:"rows"`
	scene      *draw.Scene
}

// stripCell is the least width of a stitch on a strip, in pixels: a wider round
// is scrolled.
const stripCell = 18

// about is how many rows a strip shows on each side of the present one.
const about = 2

// secondOf is how a hand without work of its own is worked; empty where neither
// hand was tried on.
func secondOf(d project.Document, side string) string {
	if _, own, ok := d.Sheet.For(side).Knitted(); ok && own == side || d.Sheet.Given(sheet.PathSection) == "" {
		return ""
	}
	if d.Sheet.Given(sheet.PathSecond) == sheet.Anew {
		return sheet.Anew
	}
	return "alike"
}

// NewNeedles lays out a mitt for the elbow; nth is how many rounds are
// knitted.
func NewNeedles(n Needles, out *project.Outputs) Needles {
	rows := map[chart.Anchor]NeedleRound{} // only view and row
	at := n.Nth
	for _, v := range out.Charts.Views() {
		if v == chart.TubeView && out.Plan.Thumbed() {
			n.addView(out, v, stitch.Hand, rows) // the gusset has a strip of its own
			continue
		}
		n.addView(out, v, "", rows)
	}
	for _, s := range out.Mitt.Sections {
		for i, r := range s.Rounds {
			anchor := chart.Anchor{Section: s.Part, Round: i + 1}
			place := rows[anchor]
			one := NeedleRound{
				Section: string(s.Part), Name: s.Part.Words(), Round: i + 1, Of: len(s.Rounds), Before: r.In(), After: r.Out(),
				Changed: out.Changed.Has(s.Part, i+1), Note: out.Charts.Marks[anchor].Note, View: place.View, Row: place.Row,
				First: []string{}, Then: []string{},
			}
			one.say(out.Words)
			n.Rounds = append(n.Rounds, one)
		}
	}
	n.Nth = min(max(at, 0), len(n.Rounds))
	for _, r := range n.Rounds[n.Nth:] {
		if r.Changed {
			n.Ahead = fmt.Sprintf("Since the last try the mitt is planned otherwise, from round %d of the %s on.", r.Round, r.Name)
			break
		}
	}
	n.Second = secondOf(n.Doc, n.Side)
	n.show()
	return n
}

// addView adds the chart of a view; only says whose rows it is for, empty: all.
func (n *Needles) addView(out *project.Outputs, v chart.View, only stitch.Part, rows map[chart.Anchor]NeedleRound) {
	g := out.Grid(chart.Options{View: v})
	for i := range g.Rows {
		g.Rows[i].Needles = false // the strip lights its own round
	}
	scene, geometry := picture.Chart(g, picture.Look{Cell: chartCell, Gauge: out.Plan.Gauge, Symbols: Symbols(n.Doc)})
	for i, row := range g.Rows {
		if only == "" || row.Section == only {
			rows[chart.Anchor{Section: row.Section, Round: row.Round}] = NeedleRound{View: string(v), Row: i + 1}
		}
	}
	scene.Root = append(scene.Root, draw.Attr{Name: "width", Value: strconv.Itoa(int(scene.Width/chartCell) * stripCell)})
	s := Strip{View: string(v), Width: scene.Width, Bottom: geometry.Bottom, CellHeight: geometry.CellHeight, Rows: len(g.Rows), scene: scene}
	n.Strips = append(n.Strips, s)
}

// say finds the words of a round: its step, and what stands before the first
// round of its section and after the last.
func (r *NeedleRound) say(passages []words.Passage) {
	for _, p := range passages {
		if string(p.Part) != r.Section {
			continue
		}
		begun := false
		for _, s := range p.Steps {
			switch {
			case s.From > 0:
				begun = true
				if s.From <= r.Round && r.Round <= s.To {
					r.Words = s.Text
				}
			case !begun && r.Round == 1:
				r.First = append(r.First, s.Text)
			case begun && r.Round == r.Of:
				r.Then = append(r.Then, s.Text)
			}
		}
	}
}

// Now is the round that is knitted next; nil where the mitt is done.
func (n *Needles) Now() *NeedleRound {
	if n.Nth >= len(n.Rounds) {
		return nil
	}
	return &n.Rounds[n.Nth]
}

// First is what comes before the present round: what ends the section below,
// and what begins its own.
func (n *Needles) First() []string {
	now, last := n.Now(), n.Last()
	switch {
	case now == nil:
		return nil
	case last != nil && last.Section != now.Section:
		return slices.Concat(last.Then, now.First)
	}
	return now.First
}

// Last is the round that was knitted last; nil at the cast-on.
func (n *Needles) Last() *NeedleRound {
	if n.Nth == 0 || n.Nth > len(n.Rounds) {
		return nil
	}
	return &n.Rounds[n.Nth-1]
}

// show turns the strip of the present round to it, and puts it first.
func (n *Needles) show() {
	view, row := "", 0
	if now := n.Now(); now != nil {
		view, row = now.View, now.Row
	}
	for i := range n.Strips {
		if n.Strips[i].View == view {
			n.Strips[i].turn(row)
			n.Strips[0], n.Strips[i] = n.Strips[i], n.Strips[0]
			continue
		}
		n.Strips[i].turn(0)
	}
}

// turn shows the rows about one of a strip, that one lit; row 0 lights none.
func (s *Strip) turn(row int) {
	low, high := max(row-about, 1), min(row+about, s.Rows)
	top := s.Bottom - float64(high)*s.CellHeight
	s.scene.Window = &draw.Box{Y: top, Width: s.Width, Height: float64(high-low+1) * s.CellHeight}
	lit := ""
	if row > 0 {
		y := s.Bottom - float64(row)*s.CellHeight
		lit = fmt.Sprintf("M0 %sH%sV%sH0Z", draw.Number(y), draw.Number(s.Width), draw.Number(y+s.CellHeight))
	}
	s.scene.Path(lit, draw.Style{Class: "now"})
	s.SVG = SVG(s.scene, false)
}

// Title says which round is knitted, in large words.
func (r *NeedleRound) Title() string { return fmt.Sprintf("Round %d", r.Round) }

// Place says where it lies.
func (r *NeedleRound) Place() string { return fmt.Sprintf("of %d · %s", r.Of, r.Name) }

// sides are the two hands of a pair.
var sides = []Choice{{"right", "right hand"}, {"left", "left hand"}}
