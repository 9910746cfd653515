package picture

import (
	"thenar/internal/draw"
	"thenar/internal/mitt"
)

// Measures of the small drawing of a finger's end, in mm of the example hand.
const (
	endBelow  = 17.0 // cloth below where the finger begins
	endBeside = 3.0  // from the finger to the drawing's edge
	endLoose  = 1.1  // how much broader than the finger its cloth is
	endOver   = 2.0  // cloth above the tip
	endRibs   = 7.0  // ribbing of a half finger
)

// endShares are how far up a finger of cloth ends, as a share of the finger: half or, open,
// after a few rounds.
var endShares = map[mitt.FingerEnd]float64{mitt.HalfFinger: 0.45, mitt.OpenFinger: 0.14}

// FingerEnd draws an example finger as far as it is covered: to its tip, half, or hardly; for
// a choice between them. All are as large as each other.
func FingerEnd(end mitt.FingerEnd, left bool) *draw.Scene {
	h := Example()
	f := newFigure(&h)
	f.leans = leans{}
	fingers := f.fingers()
	d := fingers[len(fingers)-1]
	share, cut := endShares[end]
	c := fitCanvas(left, 5, endBeside, endBeside, func(c *canvas) {
		on := func(up, out float64) point {
			return d.root.plus(d.along.times(up)).plus(point{d.along.y, -d.along.x}.times(out))
		}
		c.include(on(d.long+endOver, 0))
		foot := on(-endBelow, 0).y
		skin := append([]point{{d.left[0].x, foot}}, d.left...)
		skin = append(append(skin, d.tip...), d.right...)
		skin = append(skin, point{d.right[len(d.right)-1].x, foot})
		c.pen().smooth(skin).path(draw.Style{Class: "body skin-edge", Fill: skinColour, Stroke: pencilColour, Width: 1, Round: true})
		folds := c.pen()
		for _, j := range d.joints[1:] {
			folds.fold(j[0], j[1])
		}
		folds.path(draw.Style{Class: "fold", Stroke: gridColour, Width: 0.8, Round: true})
		half := endLoose * d.half
		cloth := func(open bool) *pen {
			p := c.pen()
			p.move(on(-endBelow, -half))
			if cut {
				top := share * d.long
				p.line(on(top, -half)).bow(on(top, -half), on(top, half), -nearEdge)
			} else {
				round := d.long + endOver - half
				p.line(on(round, -half)).curve(on(round+0.55*half, -half), on(round+half, -0.55*half), on(round+half, 0)).
					curve(on(round+half, 0.55*half), on(round+0.55*half, half), on(round, half))
			}
			p.line(on(-endBelow, half))
			if !open {
				p.Close()
			}
			return p
		}
		cloth(false).path(draw.Style{Class: "cloth-in", Fill: cardColour})
		if end == mitt.HalfFinger {
			ribs := c.pen()
			for x := -0.7; x < 0.8; x += 0.35 {
				sag := 4 * nearEdge * half * 2 * (0.25 - x*x/4)
				ribs.move(on(share*d.long-endRibs, x*half)).line(on(share*d.long-sag, x*half))
			}
			ribs.path(draw.Style{Class: "ribs", Stroke: gridColour, Width: 0.9, Round: true})
		}
		cloth(true).path(draw.Style{Class: "cloth-edge", Stroke: inkColour, Width: 2, Round: true})
	})
	s := c.s
	s.Width, s.Height = c.drawn.right+endBeside, c.drawn.bottom
	s.Root = []draw.Attr{{Name: "width", Value: px(s.Width)}, {Name: "height", Value: px(s.Height)}}
	s.Label = map[bool]string{true: "A finger whose tip stays free", false: "A finger covered to its tip"}[cut]
	return s
}
