package picture

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/units"
)

// Girths are the girths of a mitt and of the hand in it by their height, without those
// of thumb and fingers.
type Girths struct {
	rows []fit.Row
	unit units.Unit
	name string // of what is knitted: "mitt"
}

// NewGirths returns the girths of rows of a mitt, named as in "mitten", with an axis in a
// unit.
func NewGirths(rows []fit.Row, u units.Unit, name string) *Girths {
	main, _, _ := splitDigits(rows)
	return &Girths{main, HandOptions{Unit: u}.unit(), name}
}

// title says what is drawn, and what a step of it is, in lines of a width.
func (g *Girths) title(width, letter float64) (title, step []string) {
	return draw.Wrap("girth round by round, "+string(g.unit), width, letter, draw.Regular),
		draw.Wrap("each step changes the count", width, letter, draw.Regular)
}

// Below returns the room below the girths for axis, key and title, in mm.
func (g *Girths) Below(width, letter float64) float64 {
	title, step := g.title(width, letter)
	return letter * (girthTitle + girthLine*float64(len(title)+1+len(step)) + 0.4)
}

// The lines below the girths, as multiples of the size of their letters.
const (
	girthTitle = 1.45 // base line of the ticks' labels
	girthLine  = 1.28
)

// Draw draws the girths on a page from x on in a width, with the cast-on at foot and
// heights to a scale: the mitt as steps of a filled band, the hand as a broken line, an
// axis, a title and a key below. Where the axis does not begin at 0, the band's edge is torn.
func (g *Girths) Draw(page *draw.Scene, x, foot, width, scale, letter float64) {
	if len(g.rows) == 0 {
		return
	}
	low, high, tick := g.axis(width, letter)
	inset := draw.Measure(units.FromMM(high).Format(g.unit), letter, draw.Regular) / 2 // for the last label, under its tick
	at := func(girth float64) float64 { return x + (girth-low)/(high-low)*(width-inset) }
	y := func(above float64) float64 { return foot - above*scale }
	last := g.rows[len(g.rows)-1]
	for _, part := range profiles(g.rows) {
		g.drawPart(page, part, x, at, y)
	}
	edge := draw.Style{Stroke: inkColour, Width: 0.25}
	if low > 0 {
		page.Path(torn(x, foot, y(last.AboveCastOn), 0.5*letter), draw.Style{Fill: groundColour})
	} else {
		page.Line(x, foot, x, y(last.AboveCastOn), edge)
	}
	var ticks draw.Pen
	for t := low; t < high+tick/2; t += tick {
		ticks.Move(at(t), foot).Line(at(t), foot+0.3*letter)
		page.Text(at(t), foot+1.35*letter, units.FromMM(t).Format(g.unit), draw.TextStyle{Size: letter, Anchor: draw.Middle})
	}
	ticks.Move(x, foot).Line(at(high), foot)
	page.Path(ticks.String(), edge)
	title, step := g.title(width, letter)
	base := foot + girthTitle*letter
	say := func(lines []string) {
		for _, line := range lines {
			base += girthLine * letter
			page.Text(x, base, line, draw.TextStyle{Size: letter})
		}
	}
	say(title)
	base += girthLine * letter
	g.drawKey(page, x, base, letter)
	say(step)
}

// torn returns the outline of what is torn off an upright edge: teeth to its right.
func torn(x, foot, top, tooth float64) string {
	n := max(math.Round((foot-top)/(2*tooth)), 1)
	step := (foot - top) / n
	var p draw.Pen
	p.Move(x-0.1, foot)
	for i := range int(n) {
		y := foot - float64(i)*step
		p.Line(x-0.1, y).Line(x+tooth, y-step/2)
	}
	p.Line(x-0.1, top).Close()
	return p.String()
}

// drawPart draws rows that follow each other: the mitt's steps and the hand's line.
func (g *Girths) drawPart(page *draw.Scene, rows []fit.Row, x float64, at, y func(float64) float64) {
	bottom := rows[0].AboveCastOn - roundHeight(rows[0])
	var band, steps, hand draw.Pen
	band.Move(x, y(bottom)).Line(at(rows[0].Fabric), y(bottom))
	steps.Move(at(rows[0].Fabric), y(bottom))
	for i, r := range rows {
		if i > 0 && r.Fabric != rows[i-1].Fabric { // a step
			low := y(r.AboveCastOn - roundHeight(r))
			band.Line(at(rows[i-1].Fabric), low).Line(at(r.Fabric), low)
			steps.Line(at(rows[i-1].Fabric), low).Line(at(r.Fabric), low)
		}
		if middle := y(r.AboveCastOn - roundHeight(r)/2); i == 0 {
			hand.Move(at(r.Body), middle)
		} else {
			hand.Line(at(r.Body), middle)
		}
	}
	last := rows[len(rows)-1]
	band.Line(at(last.Fabric), y(last.AboveCastOn))
	steps.Line(at(last.Fabric), y(last.AboveCastOn))
	band.Line(x, y(rows[len(rows)-1].AboveCastOn)).Close()
	page.Path(band.String(), draw.Style{Fill: mittColour})
	page.Path(steps.String(), draw.Style{Stroke: inkColour, Width: 0.35})
	page.Path(hand.String(), handLine)
}

// handLine is the line of the hand beside the mitt's girths.
var handLine = draw.Style{Stroke: inkColour, Width: 0.4, Dash: "1.4 0.9"}

// drawKey names band and line, side by side on a base line.
func (g *Girths) drawKey(page *draw.Scene, x, y, letter float64) {
	style := draw.TextStyle{Size: letter}
	page.Rect(x, y-0.7*letter, 1.2*letter, 0.75*letter, draw.Style{Fill: mittColour, Stroke: inkColour, Width: 0.25})
	page.Text(x+1.6*letter, y, g.name, style)
	x += 3*letter + draw.Measure(g.name, letter, draw.Regular)
	page.Line(x, y-0.3*letter, x+1.3*letter, y-0.3*letter, handLine)
	page.Text(x+1.6*letter, y, "hand", style)
}

// axis returns the ends of the axis in mm of girth, and the distance of its ticks: the
// least one whose labels are apart in the width.
func (g *Girths) axis(width, letter float64) (low, high, step float64) {
	least, most := math.Inf(1), 0.0
	for _, r := range g.rows {
		least, most = min(least, r.Fabric, r.Body), max(most, r.Fabric, r.Body)
	}
	for _, step = range fitSteps(g.unit) {
		low, high = math.Floor(least/step)*step, math.Ceil(most/step)*step
		if low == high {
			high += step
		}
		widest := 0.0
		for t := low; t < high+step/2; t += step {
			widest = max(widest, draw.Measure(units.FromMM(t).Format(g.unit), letter, draw.Regular))
		}
		if step/(high-low)*width >= 1.5*widest+0.6*letter { // the outer two stand inside the width
			break
		}
	}
	return low, high, step
}
