package picture

import (
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// GridPaper draws a blank chart in a gauge's proportions: as many whole cells of a width in
// mm as fit an area, each as high as its width times stitches per mm over rounds per mm.
// Every fifth line is heavier. Rounds are numbered at the right, stitches along the foot,
// from the lower right corner.
func GridPaper(g gauge.Gauge, width, height, cell float64) *draw.Scene {
	tall := cell * g.Stitches / g.Rounds
	letter := min(max(cell*0.6, 2.2), 3.6)
	across, up := int((width-3*letter)/cell), int((height-2*letter)/tall)
	s := &draw.Scene{Width: width, Height: height, Label: "Blank grid paper"}
	if across < 1 || up < 1 {
		return s
	}
	right, foot := float64(across)*cell, float64(up)*tall
	var fine, heavy draw.Pen
	pen := func(i int) *draw.Pen {
		if i%5 == 0 {
			return &heavy
		}
		return &fine
	}
	for i := range across + 1 {
		x := right - float64(i)*cell
		pen(i).Move(x, 0).Line(x, foot)
		if i%10 == 0 && i > 0 {
			s.Text(x+cell/2, foot+1.3*letter, strconv.Itoa(i), draw.TextStyle{Size: letter, Anchor: draw.Middle})
		}
	}
	for i := range up + 1 {
		y := foot - float64(i)*tall
		pen(i).Move(0, y).Line(right, y)
		if i%10 == 0 && i > 0 {
			s.Text(right+0.4*letter, y+tall/2+0.35*letter, strconv.Itoa(i), draw.TextStyle{Size: letter})
		}
	}
	s.Path(fine.String(), draw.Style{Stroke: fifthColour, Width: 0.15})
	s.Path(heavy.String(), draw.Style{Stroke: inkColour, Width: 0.3})
	return s
}

// Styles of lines to cut along and of scales.
var (
	cutLine  = draw.Style{Stroke: inkColour, Width: 0.3, Dash: "2 1.5"}
	tickLine = draw.Style{Stroke: inkColour, Width: 0.25}
)

// rulerHigh is the height of a ruler in mm.
const rulerHigh = 24.0

// SwatchRuler draws a ruler to cut out, true to scale and so many mm long: centimetres with
// millimetres along its upper edge, inches with eighths along its lower edge, both from the
// left end.
func SwatchRuler(length, letter float64) *draw.Scene {
	const (
		end  = 4.0 // before and after the scales
		edge = 1.0 // between a scale and the line to cut along
	)
	s := &draw.Scene{Width: length, Height: rulerHigh, Label: "A ruler to cut out, in centimetres and inches"}
	s.Rect(0.2, 0.2, length-0.4, rulerHigh-0.4, cutLine)
	var ticks draw.Pen
	room := length - 2*end
	for i := 0; float64(i) <= room+1e-9; i++ { // millimetres
		high := 2.5
		switch {
		case i%10 == 0:
			high = 5
			s.Text(end+float64(i), 5.5+letter, strconv.Itoa(i/10), draw.TextStyle{Size: letter, Anchor: draw.Middle})
		case i%5 == 0:
			high = 3.7
		}
		ticks.Move(end+float64(i), edge).Line(end+float64(i), high)
	}
	eighth := units.Inch.MM() / 8
	for i := 0; float64(i)*eighth <= room+1e-9; i++ {
		x, high := end+float64(i)*eighth, 2.5
		switch {
		case i%8 == 0:
			high = 5
			s.Text(x, rulerHigh-6, strconv.Itoa(i/8), draw.TextStyle{Size: letter, Anchor: draw.Middle})
		case i%4 == 0:
			high = 3.7
		}
		ticks.Move(x, rulerHigh-edge).Line(x, rulerHigh-high)
	}
	s.Path(ticks.String(), tickLine)
	middle := (5.5+rulerHigh-6)/2 + 0.35*letter // between the figures of both scales
	s.Text(end, middle, "centimetres above", draw.TextStyle{Size: letter * 0.9})
	s.Text(length-end, middle, "inches below", draw.TextStyle{Size: letter * 0.9, Anchor: draw.End})
	return s
}

// SwatchWindow draws a frame to cut out and lay on a swatch. Its opening is 10 cm square;
// 4 in, which are 1.6 mm more, are marked on the frame.
func SwatchWindow(letter float64) *draw.Scene {
	const frame, open = 14.0, 100.0
	side := open + 2*frame
	s := &draw.Scene{Width: side, Height: side, Label: "A window of 10 cm to count in, to cut out"}
	s.Rect(0.2, 0.2, side-0.4, side-0.4, cutLine)
	s.Rect(frame, frame, open, open, cutLine)
	var ticks draw.Pen
	for i := range 11 {
		at := frame + 10*float64(i)
		ticks.Move(at, frame).Line(at, frame-3).Move(frame, at).Line(frame-3, at)
	}
	inches := frame + 4*units.Inch.MM()
	ticks.Move(inches, frame+open).Line(inches, frame+open+6).Move(frame+open, inches).Line(frame+open+6, inches)
	s.Path(ticks.String(), tickLine)
	mid := draw.TextStyle{Size: letter, Anchor: draw.Middle}
	s.Text(side/2, frame-5, "10 cm: count the stitches along this edge", mid)
	s.Text(side/2, frame+open+5.5, "and the rounds up the left one", mid)
	s.Text(inches-1, frame+open+5.5+letter, "4 in", draw.TextStyle{Size: letter * 0.9, Anchor: draw.End})
	return s
}

// MeasureHand draws an example hand that shows where the tapes go, in a width and at most a
// height in mm, with letters of at least a size in mm.
func MeasureHand(left bool, width, height, least float64) *draw.Scene {
	return measuring(HandOptions{Left: left, Example: true}, width, height, least)
}

// MeasureFingers draws the same hand with the tapes of its fingers.
func MeasureFingers(left bool, width, height, least float64) *draw.Scene {
	return measuring(HandOptions{Left: left, Example: true, Fingers: true, Apart: true}, width, height, least)
}

func measuring(o HandOptions, width, height, least float64) *draw.Scene {
	bare := Bare(Example(), nil, o)
	scale := min(width/bare.Width, height/bare.Height)
	h := Example()
	for try := 0; try < 12 && scale*leastLetter(o, &h) < least; try++ { // larger letters make the drawing larger
		o.Letter = 1.001 * least / scale
		bare = Bare(Example(), nil, o)
		scale = min(width/bare.Width, height/bare.Height)
	}
	s := &draw.Scene{Width: width, Height: bare.Height * scale, Label: bare.Label}
	s.Add(bare, (width-bare.Width*scale)/2, 0, scale)
	return s
}

// leastLetter returns the size of the smallest letters of a bare hand in mm of the drawing.
func leastLetter(o HandOptions, h *hand.Hand) float64 {
	if o.Letter > 0 {
		return o.Letter
	}
	return 0.9 * letterSize(h)
}
