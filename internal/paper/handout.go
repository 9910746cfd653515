package paper

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/makeup"
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
	At     string           // where the knitter is: round 23 of the gusset; empty if it is not on the needles
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
	o     Options
	grids []chart.Grid   // the charts that are printed: those of the hand, then those of fingers and thumb
	hands int            // how many are of the hand
	laid  [][]chartPages // each in all its sizes
	signs []picture.Sign // what the key explains beside them

	troubles []makeup.Trouble // where a rule of the layout could not be kept
}

func newHandout(s *Sheet, o Options) *handout {
	h := &handout{flow: newFlow(o, s.headline()), Sheet: s, o: o}
	h.at = s.At
	views := h.views()
	if o.Has(Digits) && !o.Has(Chart) {
		views = nil
	}
	digits := h.digitViews(views)
	for i, v := range append(views, digits...) {
		for _, g := range h.gridsOf(v) {
			h.grids, h.laid = append(h.grids, g), append(h.laid, h.sizes(g, h.width()))
		}
		if i < len(views) {
			h.hands = len(h.grids)
		}
	}
	if o.Has(Key) {
		h.signs = h.keySigns()
	}
	return h
}

// Handout lays out the pieces of the options, in their order.
func Handout(s Sheet, o Options) []*draw.Scene {
	h := newHandout(&s, o)
	h.makeUp(h.blocks())
	h.foot()
	return finish(h.pages, o.Grey)
}

// piece returns the blocks of a piece.
func (h *handout) piece(p Piece) []block {
	switch p {
	case Plan:
		return h.plan()
	case Lesson:
		return []block{h.lesson()}
	case Chart:
		return h.charts()
	case Digits:
		return h.chartsFrom(h.hands, len(h.grids))
	case Key:
		return []block{h.keys()}
	case Words:
		return h.words()
	case Ticks:
		return h.ticks()
	case Curve:
		return []block{h.curve()}
	case Own:
		return []block{h.ownNumbers()}
	case Notes:
		return []block{h.notes()}
	case Cautions:
		return []block{h.cautions()}
	}
	return nil
}

// symbols returns the person's choice of chart symbols.
func (h *handout) symbols() picture.Convention {
	return picture.Convention(h.Doc.Sheet.Given("chart.symbols"))
}

// gridsOf returns the chart of a view as it is printed, or, if they are asked for and
// something repeats, those of the view with its motifs boxed.
func (h *handout) gridsOf(v chart.View) []chart.Grid {
	whole := h.grid(v)
	if !h.o.Boxed {
		return []chart.Grid{whole}
	}
	boxed := h.Out.Boxed(chart.Options{View: v, Narrow: h.o.Large})
	for i := range boxed {
		boxed[i].Palette = whole.Palette
	}
	if len(boxed) == 0 {
		return []chart.Grid{whole}
	}
	return boxed
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

// aboveRow is the room above a row of drawn steps, in tenths of a millimetre.
const aboveRow = 30

// lessonOptions says which steps of a mitt are drawn, and how large.
func (s *Sheet) lessonOptions(o Options) picture.LessonOptions {
	p := s.Out.Plan
	return picture.LessonOptions{
		Width: o.page().Width - 2*margin, Letter: o.letters().body, Left: s.Doc.Side == project.Left, FromLeft: s.Doc.FromLeft, Ops: s.Out.Mitt.Ops(), Tips: s.Out.Mitt.Tips(),
		Held: p.Thumb.Held, Bridge: p.Bridge.CastOn, PickedUp: p.Thumb.PickedUp, Seam: p.Make.Flat,
		Fingers: picture.FingerShares(s.Out.Mitt), Gap: s.Out.Mitt.JoinsSets(), Say: s.Out.Terms.Say,
	}
}

// lesson sets the drawn steps, a part for each row; the drawings shrink, their texts
// don't.
func (h *handout) lesson() block {
	o := h.lessonOptions(h.o)
	const head = "How it is worked"
	b := block{name: head, above: aboveHeading}
	shares := shrinking()
	if h.o.Large { // where they begin larger
		shares = append(shares, 0.7, 0.65)
	}
	for s, share := range shares {
		o := o
		o.Share = share
		heights := picture.LessonHeights(o)
		if len(heights) == 0 {
			return block{}
		}
		var rows []part
		var scenes []*draw.Scene // once, if it is this way
		for i, high := range heights {
			rows = append(rows, scene(high, 1, func() *draw.Scene {
				if scenes == nil {
					scenes = picture.Lesson(o)
				}
				return scenes[i]
			}, 0))
			if i > 0 {
				rows[i].Above = aboveRow
			}
		}
		if n := len(rows); n > 2 { // the last alone would be lost on its page
			rows[n-2].Keep = true
		}
		b.ways = append(b.ways, way{s, keptWith(h.headingPart(head), goingOn(rows, head))})
	}
	return b
}

// belowCurve is the height of what stands below the curve, by the size of its letters.
const belowCurve = 7.0

// curve sets the fit curve: fabric and hand, round by round. In large print it doesn't
// shrink, since its letters would.
func (h *handout) curve() block {
	p := h.Out.Plan
	o := picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit()}
	of := picture.FitOptions{Left: o.Left, Unit: o.Unit, Half: h.Out.Summary.Half, Tolerance: h.Out.Tolerance}
	of.Height, of.Foot = picture.Frame(p, o)
	const name = "Fabric and hand, round by round"
	room := h.areaHeight() - float64(h.headingPart(name)[0].Height)/10
	shares := shrinking()
	if h.o.Large {
		shares = shares[:1]
		scale := min(1, (room-belowCurve*h.body)/of.Foot)
		of.Letter, of.Width = h.body/scale, h.width()/scale
		of.Height = of.Foot + belowCurve*of.Letter
	}
	drawn := picture.FitCurve(h.Out.Fit, p, of)
	wished := min(1, h.width()/drawn.Width, room/drawn.Height)
	b := block{name: name, above: aboveHeading}
	for s, share := range shares {
		b.ways = append(b.ways, way{s, keptWith(h.headingPart(name), []part{scene(drawn.Height, wished*share, func() *draw.Scene { return drawn }, 0)})})
	}
	return b
}
