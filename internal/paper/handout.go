package paper

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// Sheet is the content of one handout.
type Sheet struct {
	Doc    project.Document // FromLeft as in the options of the print
	Out    *project.Outputs // derived from Doc
	Name   string           // in head and foot; empty: the document's
	About  string           // a line below the name: class, date, place
	Yarn   string           // in the person's words; may be empty
	Needle string           // in the person's words; may be empty
	Doubts []string         // what to look at before the cast-on
}

func (s *Sheet) headline() string {
	if s.Name != "" {
		return s.Name
	}
	return s.Doc.Name
}

// handout lays out a sheet.
type handout struct {
	*flow
	*Sheet
	o Options
}

// Handout lays out the pieces of the options, in their order.
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
		h.ownNumbers()
	case Notes:
		h.notes()
	case Cautions:
		h.cautions()
	}
	h.done()
}

// symbols returns the person's choice of chart symbols.
func (h *handout) symbols() picture.Convention {
	return picture.Convention(h.Doc.Sheet.Given("chart.symbols"))
}

// grid returns the chart of a view as it is printed.
func (h *handout) grid(v chart.View) chart.Grid {
	g := h.Out.Grid(chart.Options{View: v})
	if h.o.Grey {
		if used := g.YarnsUsed(); len(used) > 0 {
			g.Palette = picture.Greys(g.Palette, used)
		}
	}
	return g
}

// worn returns what the drawn mitt is knitted in, for a copier in the greys of its charts.
func (h *handout) worn() *picture.Worn {
	charts := h.Out.Charts
	if h.o.Grey {
		charts.Palette = picture.Greys(charts.Palette, h.Out.Grid(chart.Options{View: chart.TubeView}).YarnsUsed())
	}
	return picture.NewWorn(charts)
}

// lesson prints the drawn steps on one page if they fit; in large print the rows
// continue on the next page.
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
	if high > h.pageHeight()-h.heading*leading-6 {
		keep = rows[0].Height
	}
	if h.heightLeft() < keep+h.heading*leading+6 {
		h.freshPage()
	}
	h.head("How it is worked", 0)
	for _, row := range rows {
		h.put(row, margin, min(1, h.pageHeight()/row.Height))
	}
}

// curve prints the fit curve: fabric and hand, round by round.
func (h *handout) curve() {
	p := h.Out.Plan
	o := picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit()}
	height, foot := picture.Frame(p, o)
	scene := picture.FitCurve(h.Out.Fit, p, picture.FitOptions{
		Left: o.Left, Unit: o.Unit, Half: h.Out.Summary.Half, Height: height, Foot: foot, Tolerance: h.Out.Tolerance,
	})
	h.freshPage()
	h.head("Fabric and hand, round by round", 0)
	h.put(scene, margin, min(1, h.width()/scene.Width, h.heightLeft()/scene.Height))
}
