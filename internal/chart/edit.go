// Package chart is the stitch grid of a section: what the plan draws, what a
// person painted over it, and whether each round still adds up.
package chart

import (
	"fmt"
	"regexp"
	"sort"

	"thenar/internal/fault"
	"thenar/internal/stitch"
)

// Layer is what of a cell an edit changes.
type Layer string

// The layers of a cell.
const (
	Stitches Layer = "stitch"
	Colours  Layer = "colour"
)

// Edit gives one layer of one cell a value: the code of an operation or the
// name of a yarn; empty takes it back to the plan. A cell is named by section,
// round (from 1) and column, as the right hand, so that an edit outlives the
// plan that it was painted on.
type Edit struct {
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	Column  string      `json:"column"`
	Layer   Layer       `json:"layer"`
	Value   string      `json:"value"`
}

// Anchor names a cell.
type Anchor struct {
	Section stitch.Part
	Round   int
	Column  string
}

// Mark is what was painted on a cell; empty is as planned.
type Mark struct{ Stitch, Colour string }

// Marks are all painted cells.
type Marks map[Anchor]Mark

func (e Edit) anchor() Anchor { return Anchor{e.Section, e.Round, e.Column} }

// layer is the place in a mark that an edit speaks of.
func (m *Mark) layer(l Layer) *string {
	if l == Colours {
		return &m.Colour
	}
	return &m.Stitch
}

// Apply carries out edits in their order and gives the edits that take them
// back, in the order in which they do so. A mark without a value is dropped,
// so that taking back leaves exactly what was there.
func (m Marks) Apply(edits []Edit) (inverse []Edit) {
	inverse = make([]Edit, len(edits))
	for i, e := range edits {
		mark := m[e.anchor()]
		value := mark.layer(e.Layer)
		back := e
		back.Value, *value = *value, e.Value
		inverse[len(edits)-1-i] = back
		if mark == (Mark{}) {
			delete(m, e.anchor())
		} else {
			m[e.anchor()] = mark
		}
	}
	return inverse
}

// Edits lists edits that paint the marks on an empty chart, in the order of
// section, round, column and layer.
func (m Marks) Edits() []Edit {
	edits := make([]Edit, 0, len(m))
	for at, mark := range m {
		for _, l := range []Layer{Stitches, Colours} {
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
	return e.Layer > f.Layer // the stitch before the colour
}

// The bounds of one stroke.
const (
	mostEdits = 20_000
	mostRound = 2_000
)

var column = regexp.MustCompile(`^[ABZH][1-9][0-9]{0,3}$`)

// Check refuses edits that no chart can hold; each fault names the edit by
// its place in the stroke.
func Check(edits []Edit) error {
	var faults fault.Fields
	if len(edits) == 0 || len(edits) > mostEdits {
		faults.Add("edits", "has %d edits; a stroke has 1 to %d", len(edits), mostEdits)
		return faults
	}
	for i, e := range edits {
		e.check(fmt.Sprintf("edits[%d]", i), &faults)
		if len(faults) > 20 {
			break
		}
	}
	return faults.Err()
}

func (e Edit) check(path string, faults *fault.Fields) {
	if e.Section != stitch.Gusset {
		faults.Add(path+".section", "is %.20q; write gusset", e.Section)
	}
	if e.Round < 1 || e.Round > mostRound {
		faults.Add(path+".round", "is %d; write a round from 1 to %d", e.Round, mostRound)
	}
	if !column.MatchString(e.Column) {
		faults.Add(path+".column", "is %.20q; write a column such as B1, A2, Z2 or H7", e.Column)
	}
	switch e.Layer {
	case Stitches:
		if op, ok := stitch.ByCode(e.Value); e.Value != "" && (!ok || !op.Paintable()) {
			faults.Add(path+".value", "is %.20q, which can't be painted; write the code of a stitch such as p", e.Value)
		}
	case Colours:
		if _, ok := YarnNamed(e.Value); e.Value != "" && !ok {
			faults.Add(path+".value", "is %.20q, which is no yarn; write a, b, c or d", e.Value)
		}
	default:
		faults.Add(path+".layer", "is %.20q; write stitch or colour", e.Layer)
	}
}
