package picture

import "math"

// outline is the hand's contour, from the forearm on the little finger's side
// round the fingers and the thumb to the forearm again.
func outline(f *frame) string {
	p := &pen{f: f}
	l := f.h.Length.MM()
	forearm := f.wrist * 1.06
	p.move(-forearm, f.bottom)
	p.curve(-f.wrist, f.bottom*0.6, -f.wrist, f.bottom*0.3, -f.wrist, 0)
	p.curve(-f.wrist, 0.12*l, -f.palm, 0.18*l, -f.palm, 0.34*l)
	p.line(-f.palm, littleParts*l)
	drawFingers(p, l)
	p.line(f.palm, fingersPart*l)
	p.curve(f.palm, 0.50*l, f.palm, f.crotch+0.06*l, f.palm+0.5, f.crotch+0.01*l)
	drawThumb(p, l)
	p.curve(f.wrist*1.02, f.bottom*0.3, f.wrist, f.bottom*0.6, forearm, f.bottom)
	return p.String()
}

// drawFingers goes from the little finger to the index. The fingers share the
// palm's width by their own, with a little room between.
func drawFingers(p *pen, l float64) {
	f := p.f
	total := 0.0
	for _, g := range fingers {
		total += g.girth
	}
	x := -f.palm
	for i := len(fingers) - 1; i >= 0; i-- {
		width := 2 * f.palm * fingers[i].girth / total
		from := fingersPart * l
		if i == len(fingers)-1 {
			from = littleParts * l
		}
		if i == len(fingers)-2 { // the valley between little and ring finger
			p.line(x, littleParts*l+2)
		}
		drawFinger(p, x+width*0.04, x+width*0.96, from, from+fingers[i].long*l)
		x += width
	}
}

// drawFinger goes up its left side, round the tip and down the right.
func drawFinger(p *pen, left, right, from, tip float64) {
	r := (right - left) / 2
	const bow = 0.5523
	p.line(left, from)
	p.line(left+r*0.08, tip-r)
	p.curve(left+r*0.08, tip-r+r*bow, left+r-r*bow, tip, left+r, tip)
	p.curve(left+r+r*bow, tip, right-r*0.08, tip-r+r*bow, right-r*0.08, tip-r)
	p.line(right, from)
}

// drawThumb goes up the inner line, round the tip, down the outer line and
// over the mound to the wrist.
func drawThumb(p *pen, l float64) {
	f := p.f
	long, r := f.h.ThumbLength.MM(), f.thumbR
	const bow = 0.5523
	at := func(along, out float64) [2]float64 {
		x, y := f.thumbAt(along, out)
		return [2]float64{x, y}
	}
	inner := at(long-r, 0)
	p.line(inner[0], inner[1])
	a, b, c := at(long-r+r*bow, 0), at(long, r-r*bow), at(long, r)
	p.curve(a[0], a[1], b[0], b[1], c[0], c[1])
	a, b, c = at(long, r+r*bow), at(long-r+r*bow, 2*r), at(long-r, 2*r)
	p.curve(a[0], a[1], b[0], b[1], c[0], c[1])
	low := at(0, 2*r)
	p.line(low[0], low[1])
	mound := math.Min(f.base, f.crotch*0.2)
	end := f.wrist
	p.curve(low[0]-0.16*l*math.Sin(thumbLean), low[1]-0.16*l*math.Cos(thumbLean), end+2, mound+0.10*l, end, mound)
	p.line(end, 0)
}
