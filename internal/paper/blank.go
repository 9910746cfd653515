package paper

import (
	"fmt"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/picture"
)

// Measuring lays out a blank measuring sheet: the hand with its tapes, and lines to
// write on; for a glove a page of the fingers, too.
func Measuring(o Options, left, fingers bool) []*draw.Scene {
	f := newFlow(o, "Measuring sheet")
	f.text(margin, f.width(), "Measuring sheet", draw.TextStyle{Size: f.title, Face: draw.Serif})
	f.ruled([]string{"Name", "Date"}, 2)
	f.measuring(left)
	if fingers {
		f.measuringFingers(left)
	}
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

// The units that a length and a gauge are written in, each with a box to tick.
var (
	lengthUnits = []string{"cm", "in"}
	gaugeUnits  = []string{"10 cm", "4 in"}
)

// field is a line to write on, with boxes for the units that it may be in.
type field struct {
	name  string
	units []string
}

// gauges are the lines below those for the hand.
var gauges = []field{{"Stitches over", gaugeUnits}, {"Rounds over", gaugeUnits}, {"Needles", nil}, {"Yarn", nil}}

const layTape = "Lay the tape without pulling, and tick the unit. A swatch is knitted in the round, washed and dried before it is counted."

// leastOnHand is the least size in mm of letters on the hand of an ordinary measuring
// sheet: 9 pt.
const leastOnHand = 3.175

// measuring draws the hand with its tapes beside lines to write on; in large print
// the lines have a page of their own.
func (f *flow) measuring(left bool) {
	const room = 6.0
	sideways := f.size.Width > f.size.Height
	if f.body > ordinary.body {
		high := f.heightLeft() - f.textHeight(layTape, f.width(), f.small) - 0.1
		f.put(picture.MeasureHand(left, f.width(), high, f.body), margin, 1)
		f.say(layTape, f.small)
		f.freshPage()
		across := 1
		if sideways {
			across = 2
		}
		f.measures(across, (f.width()-6*float64(across-1))/float64(across), 2*float64(len(gauges)/across)*f.body+2)
		f.fields(gauges, across, f.width())
		return
	}
	column, top := 0.48*f.width(), f.y+2
	below := 2*2*f.body + 3*lineOf(f.small) // the height of what follows the measures
	if sideways {
		below *= 2
	}
	drawing := picture.MeasureHand(left, f.width()-column-room, min(f.heightLeft()-2, 150), leastOnHand)
	f.page().Add(drawing, margin+column+room, top, 1)
	f.measures(1, column, below)
	if sideways {
		f.fields(gauges, 1, column)
		f.text(margin, column, layTape, draw.TextStyle{Size: f.small})
		return
	}
	f.y = max(f.y, top+drawing.Height) + 3
	f.fields(gauges, 2, f.width())
	f.say(layTape, f.small)
}

// measures writes the lines for a hand in so many columns, and leaves so much below
// them. The room for writing grows with the page.
func (f *flow) measures(across int, column, below float64) {
	how := min(f.small, 4.2)
	if f.body > ordinary.body {
		how = f.small
	}
	each, top, foot := len(measures)/across, f.y, f.y
	left := f.heightLeft() - below
	for i := range across {
		free := left
		for _, m := range measures[i*each : (i+1)*each] {
			free -= 1.2 + f.textHeight(m.how, column, how)
		}
		step := min(3.2*f.body, max(1.1*f.body, free/float64(each)))
		x := margin + float64(i)*(column+6)
		f.y = top
		for _, m := range measures[i*each : (i+1)*each] {
			f.y += step
			f.field(field{m.name, lengthUnits}, x, f.y, column, draw.Semibold)
			f.y += 1.2
			f.text(x, column, m.how, draw.TextStyle{Size: how})
		}
		foot = max(foot, f.y)
	}
	f.y = foot
}

// fields writes names with lines to write on, so many side by side in a width.
func (f *flow) fields(list []field, across int, width float64) {
	part := (width - 6*float64(across-1)) / float64(across)
	for i, one := range list {
		if i%across == 0 {
			f.need(2 * f.body)
			f.y += 2 * f.body
		}
		f.field(one, margin+float64(i%across)*(part+6), f.y-1, part, draw.Regular)
	}
	f.y += 2
}

// field writes a name on a baseline, a box for each unit at the end of the width, and
// a line to write on between them. After a name such as "Stitches over" the boxes
// come first.
func (f *flow) field(one field, x, y, width float64, face draw.Face) {
	f.page().Text(x, y, one.name, draw.TextStyle{Size: f.body, Face: face})
	box, gap := 0.7*f.body, 0.25*f.body
	room := 0.0
	for _, unit := range one.units {
		room += 2*gap + box + gap + draw.Measure(unit, f.body, draw.Regular)
	}
	from, to := x+draw.Measure(one.name, f.body, face)+2, x+width
	at := to - room
	if slices.Equal(one.units, gaugeUnits) {
		at = from - 2*gap
		from = at + room + 2
	} else {
		to = at
	}
	for _, unit := range one.units {
		at += 2 * gap
		f.page().Rect(at, y-box, box, box, draw.Style{Stroke: ink, Width: 0.25})
		at += box + gap
		f.page().Text(at, y, unit, draw.TextStyle{Size: f.body})
		at += draw.Measure(unit, f.body, draw.Regular)
	}
	f.line(from, to, y+0.6)
}

// ruled writes names with lines to write on, so many side by side; in large print one
// below the other.
func (f *flow) ruled(names []string, across int) {
	if f.body > ordinary.body {
		across = 1
	}
	var list []field
	for _, name := range names {
		list = append(list, field{name: name})
	}
	f.fields(list, across, f.width())
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
