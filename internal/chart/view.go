package chart

import (
	"slices"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// View is a part of the mitt that is shown as one chart.
type View string

// The views. TubeView is the hand with the gusset in it, all the way round.
const (
	GussetView View = "gusset"
	TubeView   View = "hand"
	ThumbView  View = "thumb"
	TopView    View = "top"
	CuffView   View = "cuff"
)

// sectionsOf are the sections of each view, from the foot up.
var sectionsOf = map[View][]stitch.Part{
	GussetView: {stitch.Gusset},
	TubeView:   {stitch.Gusset, stitch.Hand},
	ThumbView:  {stitch.Thumb},
	TopView:    {stitch.Top},
	CuffView:   {stitch.Cuff, stitch.CuffPlain},
}

// Layout says where the cells of a row stand.
type Layout string

// The layouts. A wedge grows outward from its middle, as the fabric does;
// columns keep every stitch column upright from its birth, with no-stitch
// cells in between.
const (
	Wedge   Layout = "wedge"
	Columns Layout = "columns"
)

// Options say what of a mitt is shown, and how. The zero value is the gusset
// as a wedge.
type Options struct {
	View   View
	Layout Layout
	Middle string // the column that the tube is turned to; empty: as it lies
}

// Source is all that charts are drawn from: a planned mitt as the right hand,
// the base of its gusset, and what was painted on it.
type Source struct {
	Mitt     stitch.Mitt
	Base     int // 0 where there is no gusset
	Marks    Marks
	Mirrored bool
	FromLeft bool // read from left to right
	Palette  Palette
	Rules    Rules
	worked   stitch.Mitt // as this hand works it, without the marks
	names    wale.Names  // of its columns, as the right hand
}

// Prepare turns the mitt to its hand and names the columns, once for all views.
func (s Source) Prepare() Source {
	s.worked, s.names = s.Mitt, nil
	if s.Mirrored {
		s.worked, s.names = stitch.Mirror(s.Mitt), wale.Mirror(s.Mitt, s.Base)
	} else {
		s.names = wale.Mitt(s.Mitt, s.Base)
	}
	if s.Palette == nil {
		s.Palette = Yarns
	}
	return s
}

// Views lists the views that the mitt has, the one shown first at the head.
func (s Source) Views() []View {
	var list []View
	for _, v := range []View{GussetView, TubeView, ThumbView, TopView, CuffView} {
		if len(s.sections(v)) > 0 {
			list = append(list, v)
		}
	}
	return list
}

// AllViews are the names of all views.
func AllViews() []string { return []string{"gusset", "hand", "thumb", "top", "cuff"} }

// ViewOf is the view that shows a section by itself.
func ViewOf(p stitch.Part) View {
	for _, v := range []View{GussetView, ThumbView, TopView, CuffView, TubeView} {
		if slices.Contains(sectionsOf[v], p) {
			return v
		}
	}
	return GussetView
}

func (s Source) sections(v View) []stitch.Section {
	var list []stitch.Section
	for _, part := range sectionsOf[v] {
		if section := s.worked.Section(part); section != nil && len(section.Rounds) > 0 {
			list = append(list, *section)
		}
	}
	return list
}

// Painted tells whether a view shows any cell that was painted and that the
// other view doesn't show.
func (s Source) Painted(v, other View) bool {
	if len(s.Marks) == 0 {
		return false
	}
	seen := map[Anchor]bool{}
	for _, show := range []View{other, v} {
		for _, row := range s.Grid(Options{View: show}).Rows {
			for _, c := range row.Cells {
				at := Anchor{row.Section, row.Round, c.Column}
				if show == v && c.Shown() && c.Painted && !seen[at] {
					return true
				}
				seen[at] = seen[at] || (show == other && c.Shown())
			}
		}
	}
	return false
}

// Sound turns options into ones that the mitt has: an unknown view or layout
// becomes the first, a column that no row has is left out.
func (s Source) Sound(o Options) Options {
	views := s.Views()
	if len(views) > 0 && !slices.Contains(views, o.View) {
		o.View = views[0]
	}
	if o.Layout != Columns {
		o.Layout = Wedge
	}
	if o.View == GussetView || !column.MatchString(o.Middle) {
		o.Middle = ""
	}
	if o.Middle == "" {
		return o
	}
	for _, part := range sectionsOf[o.View] {
		for _, names := range s.names[part] {
			if slices.Contains(names, o.Middle) {
				return o
			}
		}
	}
	o.Middle = ""
	return o
}

// Put is the mitt as this hand works it, with the marks on it: each painted
// operation in the place of the planned one.
func (s Source) Put() stitch.Mitt {
	out := stitch.Mitt{Sections: slices.Clone(s.worked.Sections)}
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
	for j, name := range names {
		mark := s.Marks[Anchor{part, r + 1, name}]
		op, ok := stitch.ByCode(mark.Stitch)
		if mark.Stitch == "" || !ok {
			continue
		}
		if &ops[0] == &planned[0] {
			ops = slices.Clone(planned)
		}
		ops[j] = s.turned(op)
	}
	return ops
}

// turned is an operation that was painted as the right hand, as this one works
// it.
func (s Source) turned(op stitch.Op) stitch.Op {
	if s.Mirrored {
		return op.Twin()
	}
	return op
}

// Lost lists what was painted that has no place in this plan.
func (s Source) Lost() []Edit {
	var lost []Edit
	for _, e := range s.Marks.Edits() {
		if !s.has(e.Anchor()) {
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
