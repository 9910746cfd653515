package picture

import (
	"thenar/internal/chart"
	"thenar/internal/draw"
)

// The cells of a motif in a key in mm, if it has room for them, and the height of a motif at
// most.
const (
	motifCell = 2.5
	motifHigh = 40.0
)

// motifDrawn is a motif as it is drawn in a key, in the yarns of its chart; the zero value
// draws nothing.
type motifDrawn struct {
	chart.LaidMotif
	yarns [chart.MaxYarns]chart.Yarn
	by    Convention
	ratio float64 // of the height of a cell to its width
}

// motifLines returns a line for each motif that is laid on a chart: its drawing once, under
// its name, its size and how often it is worked.
func motifLines(g chart.Grid, l Look) (list []keyLine) {
	for _, m := range g.Motifs() {
		drawn := motifDrawn{LaidMotif: m, by: l.Symbols, ratio: 1}
		if !l.Square && l.Gauge.Rounds > 0 {
			drawn.ratio = l.Gauge.Stitches / l.Gauge.Rounds
		}
		for i := range drawn.yarns {
			drawn.yarns[i] = g.Palette.Or(chart.ID(i))
		}
		list = append(list, keyLine{text: m.Words(), bare: true, grey: l.Grey, motif: drawn})
	}
	return list
}

// cell returns the width of the motif's cells in so much room.
func (m motifDrawn) cell(room float64) float64 {
	return min(motifCell, room/float64(m.Wide), motifHigh/(m.ratio*float64(m.High)))
}

// height returns the height that the motif takes in so much room.
func (m motifDrawn) height(room float64) float64 {
	if m.Wide == 0 {
		return 0
	}
	return m.cell(room)*m.ratio*float64(m.High) + keyGap
}

// draw draws the motif with its upper left corner at a point. A cell that it leaves open is
// blank.
func (m motifDrawn) draw(s *draw.Scene, left, top, room float64, grey bool) {
	if m.Wide == 0 {
		return
	}
	w := m.cell(room)
	b := block{
		wide: m.Wide, high: m.High, at: m.At, by: m.by, w: w, h: w * m.ratio, grey: grey,
		yarn: func(id string) chart.Yarn { return m.yarns[id[0]-chart.ID(0)[0]] },
	}
	b.draw(s, left, top)
	s.Rect(left, top, b.w*float64(m.Wide), b.h*float64(m.High), draw.Style{Class: "border", Stroke: fifthColour, Width: 0.25})
}
