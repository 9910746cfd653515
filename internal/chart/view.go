package chart

import (
	"slices"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// View is a part of the mitt that is shown as one chart.
type View string

// The views. TubeView shows the hand with its gusset, all the way round.
const (
	GussetView    View = "gusset"
	TubeView      View = "hand"
	LittleView    View = "little"
	UpperHandView View = "upper_hand"
	RingView      View = "ring"
	MiddleView    View = "middle"
	IndexView     View = "index"
	ThumbView     View = "thumb"
	TopView       View = "top"
	CuffView      View = "cuff"
	CapView       View = "cap"
	CapTopView    View = "cap_top"
)

// viewInfo holds the properties of a view.
type viewInfo struct {
	view  View
	words string // on a drawing
	names string // in a list of views
	title string // over it on paper
	block bool   // whether its gusset or bridge is in the middle
	cut   bool   // whether it shows only that and the hand's nearest columns
}

// views lists the views in the order in which they are offered. Which parts a
// view shows is set by stitch.Part.Views.
var views = []viewInfo{
	{GussetView, "gusset", "gusset and its neighbours", "Chart of the thumb gusset", true, true},
	{TubeView, "hand all round", "hand, all round", "Chart of the hand, all round", true, false},
	{LittleView, "little finger", "little finger", "Chart of the little finger", false, false},
	{UpperHandView, "upper hand", "upper hand", "Chart of the upper hand", false, false},
	{RingView, "ring finger", "ring finger", "Chart of the ring finger", false, false},
	{MiddleView, "middle finger", "middle finger", "Chart of the middle finger", false, false},
	{IndexView, "index finger", "index finger", "Chart of the index finger", false, false},
	{ThumbView, "thumb", "thumb", "Chart of the thumb", false, false},
	{CapView, "cap", "cap", "Chart of the cap", false, false},
	{CapTopView, "top of the cap", "top of the cap", "Chart of the top of the cap", false, false},
	{TopView, "top", "top", "Chart of the top", false, false},
	{CuffView, "cuff", "cuff", "Chart of the cuff", false, false},
}

// info returns the properties of a view; a view that is not in the table shows
// one part all round.
func (v View) info() viewInfo {
	for _, one := range views {
		if one.view == v {
			return one
		}
	}
	return viewInfo{view: v, words: string(v), names: string(v), title: "Chart of the " + string(v)}
}

// Words returns the name of the view on a drawing.
func (v View) Words() string { return v.info().words }

// Listed returns the name of the view in a list of views.
func (v View) Listed() string { return v.info().names }

// Title returns the heading of the view on paper.
func (v View) Title() string { return v.info().title }

// Turned is the view in which the tube is turned to a column: a cut one shows too
// little for that, and the hand all round has what it shows.
func (v View) Turned() View {
	if v.Cut() {
		return TubeView
	}
	return v
}

// Cut reports whether the view shows only a gusset and the hand's columns next
// to it.
func (v View) Cut() bool { return v.info().cut }

// Layout is a way to place the cells of a row.
type Layout string

// The layouts. A wedge grows outward from its middle, as the fabric does. Columns
// keeps every column of stitches upright, with no-stitch cells where a row lacks
// it.
const (
	Wedge   Layout = "wedge"
	Columns Layout = "columns"
)

// Options select what of a mitt is shown, and how. The zero value is the gusset in
// its usual layout.
type Options struct {
	View   View
	Layout Layout
	Middle string // the column in the middle of a turned tube; empty: not turned
	Narrow bool   // boxed for narrow pages: a first row that is much wider than the others stands alone
}

// Source is what charts are drawn from: a planned mitt as the right hand, the
// base of its gusset, and what was painted on it.
type Source struct {
	Mitt     stitch.Mitt
	Base     int // 0 if there is no gusset
	Marks    Marks
	Mirrored bool
	FromLeft bool // read from left to right
	Palette  Palette
	Rules    Rules
	Repeats  []repeat.Repeat // laid on the plan, under the marks
	Kept     Kept            // what is knitted otherwise than it is laid now; nil: nothing is
	palm     bool            // the thumb sits in the palm
	inset    int             // of the palm's stitches beside it, towards the side line
	worked   stitch.Mitt     // as this hand works it, without the marks
	names    wale.Names      // of the right hand's columns
	fabric   *repeat.Fabric  // what repeats are laid on; nil if there are none
	laid     *repeat.Laid    // nil: no repeat lies on it
}

// Prepare mirrors the mitt for a left hand and names its columns, once for all
// views.
func (s Source) Prepare() Source {
	for i := range s.Mitt.Sections {
		if about := &s.Mitt.Sections[i].About; about.Palm {
			s.palm, s.inset = true, about.Inset
		}
	}
	s.worked, s.fabric, s.laid = s.Mitt, nil, nil
	if s.Mirrored {
		s.worked = stitch.Mirror(s.Mitt)
	}
	var edges map[stitch.Part]wale.Edge
	s.names, edges = wale.Trace(s.Mitt, s.Base, s.Mirrored)
	if s.Palette == nil {
		s.Palette = Yarns
	}
	if len(s.Repeats) > 0 {
		s.fabric = s.under(edges)
		s.laid = repeat.Lay(s.Repeats, *s.fabric)
	}
	return s
}

// Views returns the views that the mitt has, in the order in which they are
// offered.
func (s Source) Views() []View {
	var list []View
	for _, v := range views {
		if len(s.sections(v.view)) > 0 {
			list = append(list, v.view)
		}
	}
	for _, section := range s.worked.Sections {
		if v := ViewOf(section.Part); len(section.Rounds) > 0 && !slices.Contains(list, v) {
			list = append(list, v)
		}
	}
	return list
}

// AllViews returns the names of all views in the table.
func AllViews() []string {
	list := make([]string, len(views))
	for i, v := range views {
		list[i] = string(v.view)
	}
	return list
}

// ViewOf returns the view that shows a section by itself.
func ViewOf(p stitch.Part) View { return View(p.Views()[0]) }

func (s Source) sections(v View) []stitch.Section {
	var list []stitch.Section
	for _, section := range s.worked.Sections {
		if len(section.Rounds) > 0 && slices.Contains(section.Part.Views(), string(v)) {
			list = append(list, section)
		}
	}
	return list
}

// Painted reports whether a view shows a painted cell that the other view
// doesn't.
func (s Source) Painted(v, other View) bool {
	if s.bare() {
		return false
	}
	seen := map[Anchor]bool{}
	for _, show := range []View{other, v} {
		for _, row := range s.Grid(Options{View: show}).Rows {
			for _, c := range row.Cells {
				at := Anchor{row.Section, row.Round, c.Column}
				if show == v && c.Shown() && (c.Painted || c.Laid > 0 || c.Yarn != Yarns[0].ID) && !seen[at] {
					return true
				}
				seen[at] = seen[at] || (show == other && c.Shown())
			}
		}
	}
	return false
}

// Sound returns options that the mitt has: an unknown view becomes the first, an
// unknown layout the usual one, and a column that no row has is dropped.
func (s Source) Sound(o Options) Options {
	views := s.Views()
	if len(views) > 0 && !slices.Contains(views, o.View) {
		o.View = views[0]
	}
	if o.Layout != Columns && o.Layout != Wedge {
		o.Layout = s.usualLayout()
	}
	if o.View.Cut() || s.seamed(o.View) || !column.MatchString(o.Middle) {
		o.Middle = ""
	}
	if o.Middle == "" {
		return o
	}
	for _, section := range s.sections(o.View) {
		for _, names := range s.names[section.Part] {
			if slices.Contains(names, o.Middle) {
				return o
			}
		}
	}
	o.Middle = ""
	return o
}

// usualLayout returns the layout of a chart for which none was chosen: upright columns as
// soon as there is a second yarn, so that motifs stay whole, else a wedge.
func (s Source) usualLayout() Layout {
	if s.SecondYarn() != "" {
		return Columns
	}
	return Wedge
}

// SecondYarn returns the ID of the first yarn beside the main one that is painted, or else
// was named or coloured; empty if there is none.
func (s Source) SecondYarn() string {
	second := ""
	for _, m := range s.Marks {
		if m.Colour != "" && (second == "" || m.Colour < second) {
			second = m.Colour
		}
	}
	for _, r := range s.Repeats {
		for _, id := range r.Motif.Yarns() {
			if !r.Off && id != ID(0) && (second == "" || id < second) {
				second = id
			}
		}
	}
	for _, id := range s.Kept[s.Mirrored].Yarns() {
		if id != ID(0) && (second == "" || id < second) {
			second = id
		}
	}
	for _, y := range s.Palette {
		if second == "" && y.ID != ID(0) && !slices.Contains(Yarns, y) {
			second = y.ID
		}
	}
	return second
}

// Put returns the mitt as this hand works it, with the painted operations in
// place of the planned ones.
func (s Source) Put() stitch.Mitt {
	out := stitch.Mitt{Sections: slices.Clone(s.worked.Sections)}
	if s.bare() {
		return out
	}
	for i := range out.Sections {
		section := &out.Sections[i]
		section.Rounds = slices.Clone(section.Rounds)
		for r, names := range s.names[section.Part] {
			section.Rounds[r].Ops = s.painted(section.Part, r, section.Rounds[r].Ops, names)
		}
	}
	return out
}

func (s Source) painted(part stitch.Part, r int, planned []stitch.Op, names []string) []stitch.Op {
	ops := planned
	put := func(j int, op stitch.Op) {
		if ops[j] == op {
			return
		}
		if &ops[0] == &planned[0] {
			ops = slices.Clone(planned)
		}
		ops[j] = op
	}
	if looks := s.keptRound(part, r, len(planned)); looks != nil {
		for j, look := range looks {
			if look.Op != stitch.NoStitch && textured(planned[j]) {
				put(j, look.Op)
			}
		}
	} else if s.laid != nil {
		s.laid.Cells(part, r, names, func(j int, c repeat.Cell) {
			if c.Op != stitch.NoStitch && textured(planned[j]) {
				put(j, c.Op)
			}
		})
	}
	if len(s.Marks) == 0 {
		return ops
	}
	for j, name := range names {
		mark := s.Marks[Anchor{part, r + 1, name}]
		if mark.Stitch == "" {
			continue
		}
		if op, ok := stitch.ByCode(mark.Stitch); ok {
			put(j, s.turned(op))
		}
	}
	return ops
}

// turned returns the operation of this hand for one painted as the right
// hand's.
func (s Source) turned(op stitch.Op) stitch.Op {
	if s.Mirrored {
		return op.Twin()
	}
	return op
}

// Lost returns the edits whose cells this plan no longer has. On which stitch of a motif one
// was painted is no mark of its own.
func (s Source) Lost() []Edit {
	var lost []Edit
	for _, e := range s.Marks.Edits() {
		if e.Layer != Motifs && !s.has(e.Anchor()) {
			lost = append(lost, e)
		}
	}
	return lost
}

func (s Source) has(at Anchor) bool {
	rounds := s.names[at.Section]
	if at.Round > len(rounds) {
		return false
	}
	return at.Column == "" || slices.Contains(rounds[at.Round-1], at.Column)
}
