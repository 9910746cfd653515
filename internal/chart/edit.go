// Package chart is the stitch grid of a mitt: what the plan draws, what a
// person painted over it, and whether each round still adds up.
package chart

import (
	"sort"
	"strings"

	"thenar/internal/stitch"
)

// Layer is the aspect of a cell that an edit changes.
type Layer string

// The layers of a cell. A note may also belong to a whole round, and the mark of
// the round on the needles always does; such an edit has no column. A strand that is
// meant to be long is marked on the stitch before it. A stitch that is painted on a motif is
// marked with the motif's stitch under it. An edit of
// the sheet changes no cell: its column is the path of a field.
const (
	Stitches Layer = "stitch"
	Colours  Layer = "colour"
	Notes    Layer = "note"
	Needles  Layer = "needles"
	Strands  Layer = "strand"
	Motifs   Layer = "motif"
	Sheet    Layer = "sheet"
)

// layers are the layers of a mark, in the order in which edits are listed.
var layers = []Layer{Stitches, Colours, Notes, Needles, Strands, Motifs}

// Edit sets one layer of one cell to a value: the code of an operation, the ID
// of a yarn, a text, the yarn and the length of a strand, or a stitch of a motif. An empty
// value restores the plan. A cell is named by section, round (from 1) and column of the
// right hand, so that an edit outlives the plan that it was painted on.
type Edit struct {
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	Column  string      `json:"column"`
	Layer   Layer       `json:"layer"`
	Value   string      `json:"value"`
}

// Anchor names a cell, or without a column a whole round.
type Anchor struct {
	Section stitch.Part
	Round   int
	Column  string
}

// Mark is what was painted on a cell; an empty layer is as planned.
type Mark struct{ Stitch, Colour, Note, Needles, Strand, Motif string }

// Marks are the painted cells of a mitt.
type Marks map[Anchor]Mark

// Anchor returns the cell or round that an edit changes.
func (e Edit) Anchor() Anchor { return Anchor{e.Section, e.Round, e.Column} }

// layer returns a pointer to a layer of a mark.
func (m *Mark) layer(l Layer) *string {
	switch l {
	case Colours:
		return &m.Colour
	case Notes:
		return &m.Note
	case Needles:
		return &m.Needles
	case Strands:
		return &m.Strand
	case Motifs:
		return &m.Motif
	}
	return &m.Stitch
}

// Apply applies edits in order and returns their inverse, to be applied in its
// own order. A mark whose layers are all empty is removed, so that the inverse
// restores exactly the marks before. Edits of the sheet are skipped.
func (m Marks) Apply(edits []Edit) (inverse []Edit) {
	inverse = make([]Edit, 0, len(edits))
	for _, e := range edits {
		if e.Layer == Sheet {
			continue
		}
		mark := m[e.Anchor()]
		value := mark.layer(e.Layer)
		back := e
		back.Value, *value = *value, e.Value
		inverse = append(inverse, back)
		if mark == (Mark{}) {
			delete(m, e.Anchor())
		} else {
			m[e.Anchor()] = mark
		}
	}
	for i, j := 0, len(inverse)-1; i < j; i, j = i+1, j-1 {
		inverse[i], inverse[j] = inverse[j], inverse[i]
	}
	return inverse
}

// Edits returns the edits that paint the marks on an empty chart, ordered by
// section, round, column and layer.
func (m Marks) Edits() []Edit {
	edits := make([]Edit, 0, len(m))
	for at, mark := range m {
		for _, l := range layers {
			if value := *mark.layer(l); value != "" {
				edits = append(edits, Edit{at.Section, at.Round, at.Column, l, value})
			}
		}
	}
	sort.Slice(edits, func(i, j int) bool { return edits[i].before(edits[j]) })
	return edits
}

func (e Edit) before(f Edit) bool {
	switch {
	case e.Section != f.Section:
		return e.Section < f.Section
	case e.Round != f.Round:
		return e.Round < f.Round
	case len(e.Column) != len(f.Column):
		return len(e.Column) < len(f.Column)
	case e.Column != f.Column:
		return e.Column < f.Column
	}
	return e.Layer.rank() < f.Layer.rank()
}

func (l Layer) rank() int {
	for i, known := range layers {
		if l == known {
			return i
		}
	}
	return len(layers)
}

// OfSheet returns the edits of the sheet among edits.
func OfSheet(edits []Edit) []Edit {
	var list []Edit
	for _, e := range edits {
		if e.Layer == Sheet {
			list = append(list, e)
		}
	}
	return list
}

// OnlyCells reports whether edits set only what belongs to cells and rounds, which
// change neither the numbers of the mitt nor the count at the needles.
func OnlyCells(edits []Edit) bool {
	for _, e := range edits {
		if e.Layer == Sheet || e.Layer == Needles {
			return false
		}
	}
	return true
}

// Difference returns the edits that turn m into to.
func (m Marks) Difference(to Marks) []Edit {
	edits := []Edit{}
	for _, e := range m.Edits() {
		other := to[e.Anchor()]
		if *other.layer(e.Layer) == "" {
			e.Value = ""
			edits = append(edits, e)
		}
	}
	for _, e := range to.Edits() {
		mine := m[e.Anchor()]
		if *mine.layer(e.Layer) != e.Value {
			edits = append(edits, e)
		}
	}
	return edits
}

// Words returns what an edit set, for a list of edits.
func (e Edit) Words(p Palette) string {
	switch e.Layer {
	case Colours:
		if y, ok := p.Named(e.Value); ok {
			return y.Name
		}
		return "colour " + e.Value
	case Notes:
		return "note “" + e.Value + "”"
	case Needles:
		return "the round on the needles"
	case Strands:
		return "a long strand that is meant"
	case Motifs:
		return "a stitch of a motif"
	}
	if op, ok := stitch.ByCode(e.Value); ok {
		return op.Words()
	}
	return strings.TrimSpace(e.Value)
}
