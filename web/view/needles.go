package view

import (
	"fmt"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

// Needles is the page of a mitt on the needles: the present task of one hand of
// a pair, and all the others, so that the page can go on without the server.
type Needles struct {
	ID     int64
	Doc    project.Document
	Side   string // the hand that is knitted
	Nth    int    // the number of tasks done
	Tasks  []NeedleTask
	Strips []Strip
	Other  string // where the other hand stands, in words
	Lacks  string // why there is nothing to knit yet
	Ahead  string // says which is the first round ahead that the last try changed; empty if there is none
	Second string // how this hand is worked while only the other one is on the needles: "alike" or "anew"
}

// NeedleTask is a round, or what opens or ends a part of the mitt, as it is
// read while knitting.
type NeedleTask struct {
	Section string   `json:"section"`
	Round   int      `json:"round"`    // the number of a round, tryon.Opening or tryon.Ending
	IsRound bool     `json:"is_round"` // only a round has notes, and a row in the chart
	Knitted int      `json:"knitted"`  // rounds of the mitt knitted once this is done
	Title   string   `json:"title"`    // in large words
	Place   string   `json:"place"`
	Before  int      `json:"before"`
	After   int      `json:"after"` // stitches on the needles before and after it
	Counts  string   `json:"counts"`
	Words   string   `json:"words"`
	First   []string `json:"first"` // instructions that come before it
	Then    []string `json:"then"`  // and after it
	Press   string   `json:"press"` // the words on the button that goes on
	Changed bool     `json:"changed"`
	Note    string   `json:"note"`
	View    string   `json:"view"`
	Row     int      `json:"row"` // in the view, counted from the foot
}

// Strip is a chart of which the page shows only the rows around one round.
type Strip struct {
	View       string  `json:"view"`
	SVG        string  `json:"-"`
	Width      float64 `json:"width"`
	Bottom     float64 `json:"bottom"`
	CellHeight float64 `json:"cell_height"`
	Rows       int     `json:"rows"`
	scene      *draw.Scene
}

// stripCell is the width of a stitch on a strip, in pixels. A round that is too
// wide for the page is scrolled.
const stripCell = 18

// nearRows is how many rows a strip shows on each side of the present one.
const nearRows = 2

// secondOf returns how a hand that is not begun is worked, "alike" or "anew",
// or "" if neither hand is on the needles.
func secondOf(d project.Document, side string) string {
	if _, own, ok := d.Sheet.For(side).Progress(); ok && own == side || d.Sheet.Given(sheet.PathSection) == "" {
		return ""
	}
	if d.Sheet.Given(sheet.PathSecond) == sheet.Anew {
		return sheet.Anew
	}
	return "alike"
}

// NewNeedles returns the page of the hand that is knitted.
func NewNeedles(hand app.Needles) Needles {
	n, out := Needles{ID: hand.ID, Doc: hand.Doc, Side: string(hand.Doc.Side)}, hand.Out
	if out == nil {
		n.Lacks = "There is no plan to knit by yet: its measures have still to be filled."
		return n
	}
	n.Other = otherWords(hand.Other)
	rows := map[chart.Anchor]NeedleTask{} // only view and row
	for _, v := range out.Charts.Views() {
		n.addView(out, v, rows)
	}
	for _, t := range tryon.Tasks(out.Mitt) {
		n.Tasks = append(n.Tasks, newTask(out, t, rows))
	}
	n.Nth = min(max(hand.Done, 0), len(n.Tasks))
	for _, t := range n.Tasks[n.Nth:] {
		if t.Changed {
			n.Ahead = fmt.Sprintf("Since the last try the mitt is planned otherwise, from round %d of the %s on.", t.Round, stitch.Part(t.Section).Words())
			break
		}
	}
	n.Second = secondOf(n.Doc, n.Side)
	n.show()
	return n
}

// otherWords says where the other hand of the pair stands.
func otherWords(o app.OtherHand) string {
	switch {
	case !o.Planned:
		return "no plan"
	case !o.Begun:
		return "not begun"
	case o.Ended:
		return "done"
	}
	return fmt.Sprintf("%d of %d rounds", o.Knitted, o.Rounds)
}

// addView adds the strip of a view, and notes in rows the place of each round
// that the view shows as its own.
func (n *Needles) addView(out *project.Outputs, v chart.View, rows map[chart.Anchor]NeedleTask) {
	g := out.Grid(chart.Options{View: v})
	for i := range g.Rows {
		g.Rows[i].Needles = false // the strip lights its own round
	}
	scene, geometry := picture.Chart(g, picture.Look{Cell: chartCell, Gauge: out.Plan.Gauge, Symbols: Symbols(n.Doc)})
	for i, row := range g.Rows {
		if chart.ViewOf(row.Section) == v {
			rows[chart.Anchor{Section: row.Section, Round: row.Round}] = NeedleTask{View: string(v), Row: i + 1}
		}
	}
	scene.Root = append(scene.Root, draw.Attr{Name: "width", Value: strconv.Itoa(int(scene.Width/chartCell) * stripCell)})
	s := Strip{View: string(v), Width: scene.Width, Bottom: geometry.Bottom, CellHeight: geometry.CellHeight, Rows: len(g.Rows), scene: scene}
	n.Strips = append(n.Strips, s)
}

// Now returns the task to do next, or nil if the mitt is done.
func (n *Needles) Now() *NeedleTask {
	if n.Nth >= len(n.Tasks) {
		return nil
	}
	return &n.Tasks[n.Nth]
}

// Last returns the task done last, or nil before the cast-on.
func (n *Needles) Last() *NeedleTask {
	if n.Nth == 0 || n.Nth > len(n.Tasks) {
		return nil
	}
	return &n.Tasks[n.Nth-1]
}

// Made says how much of the mitt is knitted.
func (n *Needles) Made() string {
	knitted, all := 0, 0
	if last := n.Last(); last != nil {
		knitted = last.Knitted
	}
	if len(n.Tasks) > 0 {
		all = n.Tasks[len(n.Tasks)-1].Knitted
	}
	return fmt.Sprintf("%d of %d rounds knitted", knitted, all)
}

// show turns the strip of the present round to that round, and moves it to the
// front.
func (n *Needles) show() {
	view, row, lit := "", 0, false
	if now := n.Now(); now != nil {
		view, row, lit = now.View, now.Row, now.IsRound
	}
	for i := range n.Strips {
		if n.Strips[i].View == view {
			n.Strips[i].turn(row, lit)
			n.Strips[0], n.Strips[i] = n.Strips[i], n.Strips[0]
			continue
		}
		n.Strips[i].turn(0, false)
	}
}

// turn draws the rows of a strip around one of them, which is lit if light is
// set.
func (s *Strip) turn(row int, light bool) {
	low, high := max(row-nearRows, 1), min(row+nearRows, s.Rows)
	top := s.Bottom - float64(high)*s.CellHeight
	s.scene.Window = &draw.Box{Y: top, Width: s.Width, Height: float64(high-low+1) * s.CellHeight}
	lit := ""
	if light {
		y := s.Bottom - float64(row)*s.CellHeight
		lit = fmt.Sprintf("M0 %sH%sV%sH0Z", draw.Number(y), draw.Number(s.Width), draw.Number(y+s.CellHeight))
	}
	s.scene.Path(lit, draw.Style{Class: "now"})
	s.SVG = SVG(s.scene, false)
}

// sides are the two hands of a pair.
var sides = []Choice{{"right", "right hand"}, {"left", "left hand"}}
