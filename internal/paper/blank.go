package paper

import (
	"fmt"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/picture"
)

// Measuring lays out a blank measuring sheet: the hand with its tapes, and lines to
// write on.
func Measuring(o Options, left bool) []*draw.Scene {
	f := newFlow(o, "Measuring sheet")
	f.text(margin, f.width(), "Measuring sheet", draw.TextStyle{Size: f.title, Face: draw.Serif})
	f.ruled([]string{"Name", "Date"}, 2)
	f.measuring(left)
	f.foot()
	return finish(f.pages, o.Grey)
}

// measures holds the lines of a measuring sheet: what to measure, and how.
var measures = []struct{ name, how string }{
	{"Hand", "round the knuckles, without the thumb"},
	{"Wrist", "round the bones"},
	{"Thumb", "round its joint"},
	{"Hand length", "wrist crease to the tip of the middle finger"},
	{"Wrist to thumb", "wrist crease straight up to where the thumb parts"},
	{"Gusset length", "along the thumb’s side, from the bone at the wrist to where the thumb parts"},
	{"Thumb length", "from where it parts to its tip"},
	{"Palm with thumb", "round where the thumb parts, the thumb laid along the palm"},
}

// measuring draws the hand with its tapes beside ruled lines.
func (f *flow) measuring(left bool) {
	const room = 6.0
	wide := f.width() > f.size.Height // sideways
	column := 0.46 * f.width()
	high := min(f.heightLeft()-30, 150)
	if wide {
		high = f.heightLeft() - 12
	}
	top := f.y + 2
	drawing := picture.MeasureHand(left, f.width()-column-room, high)
	f.page().Add(drawing, margin+column+room, top, 1)
	f.y = top
	how := min(f.small, 4.2)
	below := 24 + 2*f.body // the height of what follows on the same page
	for _, m := range measures {
		below += 1.2 + f.textHeight(m.how, column, how)
	}
	step := min(1.9*f.body, max(1.1*f.body, (f.heightLeft()-below)/float64(len(measures))))
	for _, m := range measures {
		f.y += step
		f.page().Text(margin, f.y, m.name, draw.TextStyle{Size: f.body, Face: draw.Semibold})
		f.line(margin+draw.Measure(m.name, f.body, draw.Semibold)+2, margin+column, f.y+0.8)
		f.y += 1.2
		f.text(margin, column, m.how, draw.TextStyle{Size: how})
	}
	f.y = max(f.y, top+drawing.Height) + 3
	f.ruled([]string{"Stitches over 10 cm", "Rounds over 10 cm", "Needles", "Yarn"}, 2)
	f.say("Lay the tape without pulling. A swatch is knitted in the round, washed and dried before it is counted.", f.small)
}

// ruled writes names with lines to write on, so many side by side.
func (f *flow) ruled(names []string, across int) {
	if f.body > ordinary.body {
		across = 1
	}
	part := (f.width() - 6*float64(across-1)) / float64(across)
	for i, name := range names {
		if i%across == 0 {
			f.need(2 * f.body)
			f.y += 2 * f.body
		}
		x := margin + float64(i%across)*(part+6)
		f.page().Text(x, f.y-1, name, draw.TextStyle{Size: f.body})
		f.line(x+draw.Measure(name, f.body, draw.Regular)+2, x+part, f.y-0.4)
	}
	f.y += 2
}

// Grid lays out blank grid paper in a gauge's proportions. Its cells have the width
// in mm that the options ask for, or 5.
func Grid(o Options, g gauge.Gauge) []*draw.Scene {
	f := newFlow(o, "Grid paper")
	f.say(fmt.Sprintf("Grid paper for %.1f stitches and %.1f rounds over 10 cm", g.Stitches*100, g.Rounds*100), f.body)
	f.y++
	cell := o.Cell
	if cell == 0 {
		cell = dividedCell
	}
	scene := picture.GridPaper(g, f.width(), f.heightLeft(), cell)
	f.page().Add(scene, margin, f.y, 1)
	f.foot()
	return finish(f.pages, o.Grey)
}

// Ruler lays out swatch rulers and a window to count in, all to be cut out.
func Ruler(o Options) []*draw.Scene {
	f := newFlow(o, "Swatch ruler")
	f.text(margin, f.width(), "Swatch ruler", draw.TextStyle{Size: f.title, Face: draw.Serif})
	f.say("Print at 100 %. Check one ruler against a tape before you use it, and cut along the broken lines.", f.body)
	f.y += 3
	for _, scene := range []*draw.Scene{picture.SwatchRuler(min(f.width(), 180), 3.6), picture.SwatchWindow(3.6)} {
		f.put(scene, margin, 1)
		f.y += 6
	}
	f.foot()
	return finish(f.pages, o.Grey)
}
