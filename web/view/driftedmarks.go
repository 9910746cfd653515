package view

import (
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// driftBlock is a block of painted stitches under which one motif moved.
type driftBlock struct {
	lostBlock
	Name  string // of the motif
	Along bool   // whether they can be taken along
}

// driftBlocks gathers painted stitches under which a motif moved, by the motif and the part of
// the mitt.
func (a Answer) driftBlocks() (blocks []driftBlock) {
	drifted := a.Out.Drifted
	list := make([]chart.PageLost, len(drifted))
	for i, d := range drifted {
		list[i] = chart.PageLost{Edit: chart.Edit{Section: d.At.Section, Round: d.At.Round, Column: d.At.Column}, Words: a.paintedAt(d.At)}
	}
	type key struct {
		which int
		part  stitch.Part
		along bool
	}
	groups := map[key][]int{}
	var order []key
	for i, d := range drifted {
		k := key{d.Which, d.At.Section, d.To.Column != ""}
		if groups[k] == nil {
			order = append(order, k)
		}
		groups[k] = append(groups[k], i)
	}
	for _, k := range order {
		blocks = append(blocks, driftBlock{newLostBlock(list, groups[k]), repeatName(a.Out.Repeats[k.which]), k.along})
	}
	return blocks
}

// paintedAt says what is painted on a cell.
func (a Answer) paintedAt(at chart.Anchor) string {
	var list []string
	mark := a.Out.Charts.Marks[at]
	for layer, value := range map[chart.Layer]string{chart.Stitches: mark.Stitch, chart.Colours: mark.Colour} {
		if value != "" {
			list = append(list, chart.Edit{Layer: layer, Value: value}.Words(a.Out.Charts.Palette))
		}
	}
	slices.Sort(list)
	return strings.Join(list, ", ")
}
