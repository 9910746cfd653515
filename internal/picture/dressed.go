package picture

import (
	"thenar/internal/draw"
	"thenar/internal/mitt"
)

// Dressed is a hand in its mitt, drawn once and set at any scale. It has no letters, so
// that those beside it keep their size on paper.
type Dressed struct {
	p     *mitt.Plan
	scene *draw.Scene
	box   area    // what is drawn, on the scene
	foot  float64 // y of the cast-on on the scene
	thumb point   // the tip of the thumb on the scene
}

// dressedPen is the size in mm of the hand by which the lines of a dressed hand are as
// thick as the letters of 3.2 mm ask for at half life size.
const dressedPen = 6.4

// NewDressed draws the hand of a plan in its mitt, palm towards the viewer.
func NewDressed(p *mitt.Plan, o HandOptions) *Dressed {
	f := posed(p)
	m := newFabric(p, f)
	f.room = m.room(f)
	c := &canvas{sign: 1, letter: dressedPen, ground: mittColour}
	if o.Left {
		c.sign = -1
	}
	c.clear()
	f.drawHand(c, m.foot().y-forearmShown*f.long)
	if o.Worn != nil {
		m.drawWorn(c, o.Worn)
	} else {
		m.lay(c, draw.Style{Fill: mittColour, Stroke: inkColour, Width: c.letter / 7, Round: true})
		m.ribs(c, "")
		m.seams(c)
		m.sewn(c)
	}
	m.drawCap(c, m.caps, sheer(o.Worn, draw.Style{Fill: mittColour}))
	tip := f.onThumb(f.h.ThumbLength.MM(), 0)
	return &Dressed{p, c.s, c.drawn, c.y(m.foot()), point{c.x(tip), c.y(tip)}}
}

const (
	forearmShown = 0.10      // below the cast-on, as a share of the hand's length
	mittColour   = gapColour // the mitt, beside the lighter hand
)

// Width returns the width in mm of the hand, to life.
func (d *Dressed) Width() float64 { return d.box.right - d.box.left }

// Above returns how far hand and mitt reach above the cast-on, in mm to life.
func (d *Dressed) Above() float64 { return d.foot - d.box.top }

// Below returns how far the forearm reaches below the cast-on, in mm to life.
func (d *Dressed) Below() float64 { return d.box.bottom - d.foot }

// Thumb returns where the thumb's tip is to the right of the hand's left edge and above
// the cast-on, in mm to life.
func (d *Dressed) Thumb() (right, above float64) {
	return d.thumb.x - d.box.left, d.foot - d.thumb.y
}

// Draw draws the hand on a page with its left edge at x and its cast-on at y.
func (d *Dressed) Draw(page *draw.Scene, x, y, scale float64) {
	page.Add(d.scene, x-d.box.left*scale, y-d.foot*scale, scale)
}

// Dotted reports whether each increase round has a dot on the edge of the gusset.
func (d *Dressed) Dotted(o HandOptions) bool { return o.Worn == nil && d.p.Gusseted() }
