package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// halfLife is the wished scale of the drawn hand.
const halfLife = 0.5

// figure is the drawing of all numbers of a plan: at the left the ladder, whose rungs lie
// at the heights of the mitt on its hand in the middle; at the right the girths of both,
// and the thumb above them.
type figure struct {
	*handout
	hand   *picture.Dressed
	girths *picture.Girths
	set    *setLadder
	thumb  part
	wide   float64 // of all
	curve  float64 // width of the girths

	thumbWide float64 // width of what is said of the thumb
}

// The room in mm of the figure.
const (
	scaleRoom   = 9.0  // between ladder and hand: leaders, and the scale of rounds
	curveGap    = 3.5  // between hand and girths
	leastLadder = 54.0 // width
	mostLadder  = 84.0
	leastCurve  = 30.0
	mostCurve   = 48.0
	underThumb  = 3.0 // below what is said of the thumb
	underLeader = 0.8 // between what is said of the thumb and the line to it
	tipRoom     = 8.0 // mm of the hand that may reach above the last rung of a closed mitt
)

// handOptions says how the hand is shown.
func (h *handout) handOptions() picture.HandOptions {
	return picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit(), Worn: h.worn()}
}

// figures sets the drawing of the numbers in a width in each of its sizes: in steps of 5 %
// from half of life, or the largest that is no wider and no higher than its room, down.
func (h *handout) figures(wide, high float64) block {
	o := h.handOptions()
	base := figure{handout: h, wide: wide, hand: picture.NewDressed(h.Out.Plan, o), girths: picture.NewGirths(h.Out.Fit, o.Unit, h.noun())}
	b := block{name: "numbers", above: 15}
	l := h.newLadder()
	var f *figure
	for percent := 100; percent >= leastHand || len(b.ways) == 0; percent -= 5 {
		scale := halfLife * float64(percent) / 100
		if f == nil || percent == wideFrom { // so that the texts use the width that a smaller hand leaves
			set := base
			if !set.lay(l, scale) && percent > leastFigure {
				continue
			}
			f = &set
		}
		if drawn := f.at(scale); float64(drawn.Height) <= 10*high || percent <= leastFigure {
			b.ways = append(b.ways, way{(100 - percent) / 5, []part{drawn}})
		}
	}
	return b
}

// wideFrom is the share of half of life from which on the ladder is as wide as the smaller
// hand lets it be, in percent.
const wideFrom = 85

// leastHand is the least share of half of life in which a hand is drawn where all of it
// would fit in a larger size, but not with what stands above it on the page; in percent.
const leastHand = 50

// leastFigure is the least share of half of life in which a hand is drawn, in percent.
const leastFigure = 10

// lay divides the width for a hand at a scale and sets all texts; it reports false if there
// is no room for them.
func (f *figure) lay(l ladder, scale float64) bool {
	rest := f.wide - scaleRoom - curveGap - f.hand.Width()*scale
	f.curve = min(max(0.44*rest, leastCurve), mostCurve)
	wide := min(rest-f.curve, mostLadder)
	if wide < leastLadder && scale > halfLife*leastFigure/100 {
		return false
	}
	f.set = f.setLadder(l, wide)
	f.thumb = part{draw: func(*draw.Scene, float64, float64) {}}
	if l.thumb.rounds > 0 {
		f.thumbWide = f.curve
		if f.hand.Above()-f.set.top() < tipRoom { // nothing else stands above a mitten
			f.thumbWide = f.wide - wide - scaleRoom
		}
		f.thumb = f.setStage(l.thumb, f.thumbWide, f.thumbWide > f.curve)
	}
	return true
}

// lifeWords says how large the hand is drawn, as it goes on in a sentence.
func lifeWords(scale float64) string {
	if scale == halfLife {
		return ", half life size"
	}
	return fmt.Sprintf(", %.3g\u00a0%% of life size", 100*scale)
}

// handCaption explains the drawn hand.
func (h *handout) handCaption(hand *picture.Dressed, size string) string {
	text := side(h.Doc.Side) + " palm towards you" + size + "."
	if !h.o.Large { // which has no scale of rounds
		text += h.said(" Each tick is a round, the long ones count by fives.")
	}
	if hand.Dotted(h.handOptions()) {
		change := "an increase"
		if h.Out.Plan.Down() {
			change = "a decrease"
		}
		text += h.said(" Each dot is " + change + " round.")
	}
	if len(h.Out.Plan.Filled) > 0 {
		text += " ≈ estimated."
	}
	return text
}

// side returns a side as it begins a sentence.
func side(s project.Side) string {
	if s == project.Left {
		return "Left"
	}
	return "Right"
}

// at sets the figure with its hand at a scale.
func (f *figure) at(scale float64) part {
	lines := f.set.lines(scale)
	n := len(lines) - 1
	top := lines[n] + float64(f.set.rungs[n].Height)/10 + underRung
	above := max(f.hand.Above()*scale, top)
	if f.thumb.Height > 0 {
		under := f.set.top() * scale
		if f.thumbWide > f.curve {
			under = f.hand.Above() * scale
		}
		above = max(above, under+underThumb+float64(f.thumb.Height)/10)
	}
	caption := f.handCaption(f.hand, lifeWords(scale))
	if f.o.Sideways { // whose table has no room for it
		caption += " " + f.easeSaid()
	}
	said := setWhole(caption, f.wide-f.curve-curveGap, draw.TextStyle{Size: f.note()})
	under := float64(said.Height) / 10
	below := max(f.hand.Below()*scale+under, f.girths.Below(f.curve, f.note()))
	up := max(min(above-top, 1-lines[0]+under-below), 0) // the ladder rises where there is room above it
	for i := range lines {
		lines[i] += up
	}
	below = max(below, 1-lines[0]+under)
	return drawn(tenths(above+below), func(p *draw.Scene, x, y float64) {
		s := f.draw(scale, above, lines)
		said.draw(s, 0, above+max(f.hand.Below()*scale, 1-lines[0]))
		p.Add(s, x, y, 1)
	})
}

// draw draws the figure with the cast-on so far below its upper edge.
func (f *figure) draw(scale, foot float64, lines []float64) *draw.Scene {
	s := &draw.Scene{}
	wide := f.wide
	left := f.set.width + scaleRoom
	right := wide - f.curve
	f.set.drawLines(s, 0, wide, scale, foot, lines)
	drawScale(s, left-3, scale, foot, f.Out.Plan.Gauge.Rounds, f.set.top())
	at := left + (right-curveGap-left-f.hand.Width()*scale)/2
	f.hand.Draw(s, at, foot, scale)
	f.girths.Draw(s, right, foot, f.curve, scale, f.note())
	f.set.draw(s, 0, foot, lines)
	f.thumb.draw(s, wide-f.thumbWide, 0)
	f.drawLeader(s, at, foot, scale)
	return s
}

// drawLeader draws a line from what is said of the thumb to its tip, on a hand whose left
// edge is at x, unless all fingers are between them.
func (f *figure) drawLeader(s *draw.Scene, x, foot, scale float64) {
	right, above := f.hand.Thumb()
	across := f.thumbWide == f.curve && right < f.hand.Width()/2 // it would lie over the fingers
	if f.thumb.Height == 0 || across {
		return
	}
	toX, toY := x+right*scale, foot-above*scale
	from, y := f.wide-f.thumbWide, float64(f.thumb.Height)/10+underLeader
	var p draw.Pen
	p.Move(f.wide, y).Line(from, y)
	if toX > from {
		p.Move(toX, y)
	}
	p.Line(toX, toY)
	s.Path(p.String(), draw.Style{Stroke: ink, Width: 0.2})
}
