package picture

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// stretchLook is how a band of stretch is hatched. Tighter bands are denser, so that they differ
// without colour.
type stretchLook struct {
	step   float64 // level distance of its lines, as a multiple of the letters' size
	colour string
}

var stretchLooks = [...]stretchLook{
	fit.TooLoose: {1.5, bastingColour},
	fit.Easy:     {0.85, fitsColour},
	fit.Snug:     {0.5, fitsColour},
	fit.TooTight: {0.27, pinColour},
}

// hatch draws a rectangle in the look of a band.
func (c *fitCurve) hatch(b fit.Band, x, y, w, h float64) {
	look, class := stretchLooks[b], "stretch-"+strings.ReplaceAll(b.Words(), " ", "-")
	c.s.PathWith(new(draw.Pen).Rect(x, y, w, h).String(), draw.Style{Class: "fit-tint " + class, Fill: look.colour}, draw.Attr{Name: "fill-opacity", Value: "0.12"})
	c.s.Path(Texture("d", x, y, w, h, look.step*c.letter), draw.Style{Class: "fit-hatch " + class, Stroke: look.colour, Width: c.letter / 14})
	c.s.Path(new(draw.Pen).Rect(x, y, w, h).String(), draw.Style{Class: "fit-edge", Stroke: fifthColour, Width: c.letter / 25})
}

// drawStretch draws the column of bands beside a panel's spine.
func (c *fitCurve) drawStretch(p *panel) {
	for _, run := range bandRuns(p.rows) {
		top, bottom := c.extent(run)
		c.hatch(run[0].Band, p.spine, top, p.column, bottom-top)
	}
}

// extent returns the upper and lower edge on the page of rows that follow each other.
func (c *fitCurve) extent(rows []fit.Row) (top, bottom float64) {
	return c.y(rows[len(rows)-1].AboveCastOn), c.y(rows[0].AboveCastOn) + roundHeight(rows[0])
}

// drawWords names each run of equal bands once, if there is room at the left of the spine; the
// thumb's names may be beside its curves instead.
func (c *fitCurve) drawWords(p *panel) {
	if p.finger { // the hatching tells
		return
	}
	l := c.letter
	for _, run := range bandRuns(p.rows) {
		top, bottom := c.extent(run)
		if bottom-top < l {
			continue
		}
		text, style := run[0].Band.Words(), draw.TextStyle{Class: "soft fit-over", Size: c.small(), Halo: groundColour}
		middle := (top+bottom)/2 + 0.3*l
		var spots []point
		for _, up := range []float64{0, 1, -1, 2, -2} {
			if y := middle - up*0.6*l; y-0.7*l >= top && y <= bottom {
				spots = append(spots, point{p.spine - 0.9*l, y})
			}
		}
		left := style
		left.Anchor = draw.End
		if !c.place(text, left, spots...) && p == &c.thumb {
			c.place(text, style, c.placesBeside(p, text, style, middle)...)
		}
	}
}

// drawBands lays an invisible band for the page's script over every round, as wide as its panel
// with its spine; the hand's begin at the page's left edge.
func (c *fitCurve) drawBands() {
	for _, p := range c.panels() {
		left := p.spine - 0.6*c.letter
		if p == &c.hand {
			left = 0
		}
		for _, s := range sections(p.rows) {
			part := draw.Attr{Name: "data-section", Value: string(s[0].Section)}
			top, bottom := c.extent(s)
			c.s.Group("section", part, draw.Attr{Name: "data-rounds", Value: strconv.Itoa(len(s))},
				draw.Attr{Name: "data-top", Value: draw.Number(top)}, draw.Attr{Name: "data-bottom", Value: draw.Number(bottom)})
			for _, r := range s {
				y, n := c.y(r.AboveCastOn), strconv.Itoa(r.Round)
				c.s.PathWith(new(draw.Pen).Rect(left, y, p.right-left, roundHeight(r)).String(), draw.Style{Class: "band", Fill: inkColour},
					draw.Attr{Name: "fill-opacity", Value: "0"}, part,
					draw.Attr{Name: "data-from", Value: n}, draw.Attr{Name: "data-to", Value: n}, draw.Attr{Name: "data-says", Value: c.says(r)})
			}
			c.s.End()
		}
	}
}

// says describes a round in words: "gusset round 7: fabric 19.8 cm ± 0.9, hand 20.1 cm, snug
// stretched 0.3 cm".
func (c *fitCurve) says(r fit.Row) string {
	body := "hand"
	if r.Section.Over() == stitch.OverDigit {
		body = r.Section.Words()
	}
	fabric := c.girth(r.Fabric)
	if c.o.Half > 0 {
		fabric += " ± " + c.half(r.Fabric)
	}
	text := fmt.Sprintf("%s %s %d: fabric %s, %s %s, %s, %s", r.Section.Words(), r.Side.Noun(), r.Round, fabric, body, c.girth(r.Body), r.Band.Words(), c.room(r))
	if off := r.Fabric - r.Wanted; c.o.Tolerance > 0 && math.Abs(off) > c.o.Tolerance {
		way := "wider"
		if off < 0 {
			way = "narrower"
		}
		text += fmt.Sprintf(", %s %s than wanted", c.girth(math.Abs(off)), way)
	}
	return text
}

func (c *fitCurve) girth(mm float64) string { return units.FromMM(mm).With(c.unit) }

// half returns half the interval of a girth as a number in the unit, rounded up to what a tape
// shows, so that it is never understated (as JCGM 100:2008, 7.2.6, allows).
func (c *fitCurve) half(girth float64) string {
	return units.FromMM(girth * c.o.Half).RoundUp(c.unit).Format(c.unit)
}

// room says how a round lies on the body: "stretched 0.3 cm", "1 cm of room".
func (c *fitCurve) room(r fit.Row) string {
	off := r.Fabric - r.Body
	switch {
	case math.Abs(off) < 0.5:
		return "just as wide"
	case off < 0:
		return "stretched " + c.girth(-off)
	}
	return c.girth(off) + " of room"
}
