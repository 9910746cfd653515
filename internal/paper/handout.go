package paper

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// Sheet is what one handout is about.
type Sheet struct {
	Doc    project.Document // FromLeft as in the options that it is derived with
	Out    *project.Outputs
	Name   string   // at its head and foot; empty: the document's
	About  string   // a line below the name: class, date, place
	Yarn   string   // in the person's words; empty: not said
	Needle string   // the same
	Doubts []string // what to look at before the cast-on
}

func (s *Sheet) headline() string {
	if s.Name != "" {
		return s.Name
	}
	return s.Doc.Name
}

// handout is a sheet that is being laid out.
type handout struct {
	*flow
	*Sheet
	o Options
}

// Handout lays out the pieces that are asked for, in their order.
func Handout(s Sheet, o Options) []*draw.Scene {
	h := handout{newFlow(o, s.headline()), &s, o}
	for _, p := range o.Pieces {
		h.piece(p)
	}
	h.foot()
	return finish(h.pages, o.Grey)
}

func (h *handout) piece(p Piece) {
	switch p {
	case Plan:
		h.plan()
	case Lesson:
		h.lesson()
	case Chart:
		h.charts()
	case Key:
		if !h.o.Has(Chart) { // else it stands on every page with a chart
			h.keys()
		}
	case Words:
		h.words()
	case Ticks:
		h.ticks()
	case Curve:
		h.curve()
	case Own:
		h.own()
	case Notes:
		h.notes()
	case Cautions:
		h.cautions()
	}
	h.done()
}

// symbols are the person's choice of chart symbols.
func (h *handout) symbols() picture.Convention {
	return picture.Convention(h.Doc.Sheet.Given("chart.symbols"))
}

// grid is a view as it is printed.
func (h *handout) grid(v chart.View) chart.Grid {
	g := h.Out.Grid(chart.Options{View: v})
	if h.o.Grey {
		if used := g.YarnsUsed(); len(used) > 0 {
			g.Palette = picture.Greys(g.Palette, used)
		}
	}
	return g
}

// lesson keeps the drawn half page together where a page has room for it; in
// large print its rows go on on the next page.
func (h *handout) lesson() {
	p := h.Out.Plan
	rows := picture.Lesson(picture.LessonOptions{
		Width: h.width(), Letter: h.body, FromLeft: h.Doc.FromLeft, Thumbed: p.Thumbed(),
		Held: p.Thumb.Held, Bridge: p.Bridge.CastOn, PickedUp: p.Thumb.PickedUp,
	})
	if len(rows) == 0 {
		return
	}
	high := 0.0
	for _, row := range rows {
		high += row.Height
	}
	keep := high
	if high > h.whole()-h.heading*leading-6 {
		keep = rows[0].Height
	}
	if h.left() < keep+h.heading*leading+6 {
		h.fresh()
	}
	h.head("How it is worked", 0)
	for _, row := range rows {
		h.put(row, margin, min(1, h.whole()/row.Height))
	}
}

// curve is how fabric and hand compare, round by round.
func (h *handout) curve() {
	p := h.Out.Plan
	o := picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit()}
	height, foot := picture.Frame(p, o)
	scene := picture.FitCurve(h.Out.Fit, p, picture.FitOptions{
		Left: o.Left, Unit: o.Unit, Half: h.Out.Summary.Half, Height: height, Foot: foot, Tolerance: h.Out.Tolerance,
	})
	h.fresh()
	h.head("Fabric and hand, round by round", 0)
	h.put(scene, margin, min(1, h.width()/scene.Width, h.left()/scene.Height))
}
