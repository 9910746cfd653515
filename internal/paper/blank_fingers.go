package paper

import (
	"thenar/internal/draw"
	"thenar/internal/picture"
)

// fingerMeasures are the lines for the fingers, by what is measured of each.
var fingerMeasures = []struct {
	title, how string
	names      []string
}{
	{"Round each finger", "round its middle joint", []string{"Index", "Middle", "Ring", "Little"}},
	{"Length of each finger", "from where it parts to its tip; the ring finger’s from half-way between its two partings", []string{"Index", "Middle", "Ring", "Little"}},
	{"Wrist to where two part", "wrist crease straight up", []string{"Index and middle", "Middle and ring", "Ring and little"}},
}

const (
	fingersTitle = "The fingers, for a glove"
	layFingers   = "One by one, without pulling; tick the unit. What you leave out is filled from the hand."
)

// measuringFingers draws the hand with the tapes of its fingers beside lines to write on, on
// a page of its own; in large print the lines have another.
func (f *flow) measuringFingers(left bool) {
	const room = 6.0
	f.freshPage()
	f.text(margin, f.width(), fingersTitle, draw.TextStyle{Size: f.heading, Face: draw.Serif})
	f.say(layFingers, f.small)
	f.y += 2
	if f.body > ordinary.body {
		f.put(picture.MeasureFingers(left, f.width(), f.heightLeft()-0.1, f.body), margin, 1)
		f.freshPage()
		across := 1
		if f.size.Width > f.size.Height {
			across = 2
		}
		f.fingerLines(across, (f.width()-room*float64(across-1))/float64(across))
		return
	}
	column := 0.48 * f.width()
	drawing := picture.MeasureFingers(left, f.width()-column-room, min(f.heightLeft()-2, 170), leastOnHand)
	f.page().Add(drawing, margin+column+room, f.y, 1)
	f.fingerLines(1, column)
}

// fingerLines writes the lines for the fingers in one column or two; in two the partings have
// the second. The room for writing grows with the page.
func (f *flow) fingerLines(across int, column float64) {
	const room = 6.0
	columns := [][]int{{0, 1, 2}, {}}
	if across == 2 {
		columns = [][]int{{0, 1}, {2}}
	}
	free, lines := f.heightLeft(), 0
	for _, i := range columns[0] {
		m := &fingerMeasures[i]
		free -= lineOf(f.body) + f.textHeight(m.how, column, f.small) + f.body
		lines += len(m.names)
	}
	step, top := min(3.2*f.body, max(1.4*f.body, free/float64(lines))), f.y
	for i, titles := range columns {
		f.y = top
		x := margin + float64(i)*(column+room)
		for _, k := range titles {
			m := &fingerMeasures[k]
			f.text(x, column, m.title, draw.TextStyle{Size: f.body, Face: draw.Semibold})
			f.text(x, column, m.how, draw.TextStyle{Size: f.small})
			for _, name := range m.names {
				f.y += step
				f.field(field{name, lengthUnits}, x, f.y, column, draw.Regular)
			}
			f.y += f.body
		}
	}
}
