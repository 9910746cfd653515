package picture

import "thenar/internal/draw"

// Loop returns a stitch as it lies over a needle: up from one foot, over the top and
// down to the other, bulging below it as a loop does (our own drawing). Its middle is
// at x, its feet half to each side. The script of the chart draws the same.
func Loop(x, half, top, foot float64) string {
	bulge, bend := loopBulge*half, top+loopBend*(foot-top)
	var p draw.Pen
	p.Move(x-half, foot)
	p.Curve(x-bulge, bend, x-half, top, x, top)
	p.Curve(x+half, top, x+bulge, bend, x+half, foot)
	return p.String()
}

// How far a loop bulges, by half the distance of its feet, and how far below the top its
// sides bend inward, as a share of its height.
const (
	loopBulge = 1.45
	loopBend  = 0.4
)
