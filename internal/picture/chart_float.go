package picture

import (
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// drawFloats draws every float that is too long over the stitches it passes, with
// its length in stitches.
func drawFloats(s *draw.Scene, g chart.Grid, at Geometry) {
	layer(s, "float")
	for _, f := range g.Floats {
		var p draw.Pen
		var best area
		for i := f.Row; i <= f.To; i++ {
			from, to := 0, len(g.Rows[i].Cells)
			if i == f.Row {
				from = f.At + 1
			}
			if i == f.To {
				to = f.Next
			}
			y := at.y(i+1) + 0.75*at.CellHeight
			for _, r := range shownRuns(g.Rows[i].Cells[from:to]) {
				a := area{at.x(r[0]), y, at.x(r[1] + 1), y}
				p.Move(a.left, y).Line(a.right, y)
				if a.right-a.left > best.right-best.left {
					best = a
				}
			}
		}
		if p.String() == "" {
			continue
		}
		s.Path(p.String(), draw.Style{Class: "float-edge", Stroke: edgeColour, Width: at.CellWidth / 4})
		s.Path(p.String(), draw.Style{Class: "float", Stroke: pinColour, Width: at.CellWidth / 8, Dash: draw.Number(at.CellWidth/3) + " " + draw.Number(at.CellWidth/5)})
		size := min(at.CellWidth*0.62, at.CellHeight*0.8)
		s.Text((best.left+best.right)/2, best.top-size*0.3, strconv.Itoa(f.Length), draw.TextStyle{Class: "float-length", Size: size, Anchor: draw.Middle, Face: draw.Semibold, Halo: edgeColour})
	}
	s.End()
}

// shownRuns returns the runs of neighbouring places that have a stitch, each as its
// first and last place from the left.
func shownRuns(cells []chart.Cell) [][2]int {
	var out [][2]int
	for _, c := range cells {
		if !c.Shown() {
			continue
		}
		if n := len(out); n > 0 && c.X == out[n-1][0]-1 {
			out[n-1][0] = c.X
			continue
		} else if n > 0 && c.X == out[n-1][1]+1 {
			out[n-1][1] = c.X
			continue
		}
		out = append(out, [2]int{c.X, c.X})
	}
	return out
}
