package draw

import (
	"io"
	"testing"
)

// BenchmarkPNG writes a chart of 80 by 60 cells with a symbol, a ground and a
// number in each.
func BenchmarkPNG(b *testing.B) {
	s := &Scene{Width: 80*4 + 10, Height: 60*3 + 10}
	s.Rect(1, 1, 80*4+8, 60*3+8, Style{Stroke: "#23272E", Width: 0.4})
	for y := range 60 {
		for x := range 80 {
			at := new(Pen)
			left, top := 5+4*float64(x), 5+3*float64(y)
			s.Rect(left, top, 4, 3, Style{Fill: "#EEE8DD"})
			at.Move(left+1, top+2).Line(left+2, top+1).Line(left+3, top+2)
			at.Move(left+1, top+1.5).Curve(left+1, top+1, left+3, top+1, left+3, top+1.5)
			s.Path(at.String(), Style{Stroke: "#23272E", Width: 0.3})
			if x%10 == 0 {
				s.Text(left, top+2, "12", TextStyle{Size: 2})
			}
		}
	}
	grid := new(Pen)
	for x := range 81 {
		grid.Move(5+4*float64(x), 5).Line(5+4*float64(x), 185)
	}
	s.Path(grid.String(), Style{Stroke: "#808080", Width: 0.1})
	b.ReportAllocs()
	for b.Loop() {
		if err := WritePNG(b.Context(), io.Discard, s); err != nil {
			b.Fatal(err)
		}
	}
}
