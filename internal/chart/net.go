package chart

import "sort"

// Net is what strokes in a row changed altogether. A cell that was painted and
// set back again is not part of it. The zero value is that of no stroke.
type Net struct {
	was, is map[aspect]string
}

// aspect is one layer of one cell.
type aspect struct {
	Anchor
	Layer
}

// Add adds a stroke, given by its edits and those that take it back. Edits of
// the sheet are skipped.
func (n *Net) Add(edits, inverse []Edit) {
	if n.is == nil {
		n.was, n.is = map[aspect]string{}, map[aspect]string{}
	}
	before := map[aspect]string{}
	for _, e := range inverse { // the last one sets a cell to what it was at first
		before[aspect{e.Anchor(), e.Layer}] = e.Value
	}
	for _, e := range edits {
		if e.Layer == Sheet {
			continue
		}
		at := aspect{e.Anchor(), e.Layer}
		if _, known := n.is[at]; !known {
			n.was[at] = before[at]
		}
		n.is[at] = e.Value
	}
}

// Edits returns the changes as edits, in the order of Marks.Edits.
func (n *Net) Edits() []Edit {
	var edits []Edit
	for at, value := range n.is {
		if n.was[at] != value {
			edits = append(edits, Edit{at.Section, at.Round, at.Column, at.Layer, value})
		}
	}
	sort.Slice(edits, func(i, j int) bool { return edits[i].before(edits[j]) })
	return edits
}
