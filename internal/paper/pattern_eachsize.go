package paper

import (
	"thenar/internal/draw"
	"thenar/internal/picture"
)

// The height in mm of a size that is drawn by itself, at least; it has that of its measures.
// Below it is so much room.
const (
	eachHigh  = 64.0
	belowEach = 6.0
)

// eachSize sets every size by itself with its measures beside it, all at one scale, two and
// two beside each other where there is room.
func (p patternPages) eachSize() []block {
	if !p.Each || len(p.Sizes) < 2 {
		return nil
	}
	const head = "Each size by itself"
	n := 2
	if p.o.Large {
		n = 1
	}
	all := p.nested()
	list, column := picture.LetteredOf(all), p.columnWidth(n)
	scale := p.scaleOfEach(all, list, column)
	var rows []part
	for at := 0; at < len(all); at += n {
		var row []part
		var wide []float64
		for i := at; i < min(at+n, len(all)); i++ {
			row, wide = append(row, p.oneSize(all, list, i, scale, column)), append(wide, column)
		}
		rows = append(rows, stack([]part{inARow(row, wide), space(tenths(belowEach))}))
	}
	first, second := p.unitsShown()
	about := stack(append(setLines("At one scale, with the letters of the table. Bold "+unitWords[first]+", beside them "+unitWords[second]+".", p.width(), draw.TextStyle{Size: p.small}), space(20)))
	return []block{p.headed(head, keptWith([]part{about}, rows))}
}

// drawnAlone draws a size by itself at a scale.
func (p patternPages) drawnAlone(of picture.NestedSize, list []picture.Lettered, scale float64) *draw.Scene {
	return picture.Schematic([]picture.NestedSize{of}, picture.SchematicOptions{Left: p.Left, Letter: 0.85 * p.small / scale, Plain: true, By: list})
}

// scaleOfEach returns the scale at which every size finds its room.
func (p patternPages) scaleOfEach(all []picture.NestedSize, list []picture.Lettered, column float64) float64 {
	scale, wide := 0.6, column-p.eachListWide()
	high := max(eachHigh, float64(len(list))*p.eachLine())
	for range 4 { // letters keep their size, so the room for them grows as the drawing shrinks
		fits := scale
		for _, of := range all {
			s := p.drawnAlone(of, list, scale)
			fits = min(fits, scale*high/(s.Height*scale), scale*wide/(s.Width*scale))
		}
		scale = fits
	}
	return scale
}

// oneSize sets a size by itself: its name, the drawing, and its measures beside that.
func (p patternPages) oneSize(all []picture.NestedSize, list []picture.Lettered, i int, scale, column float64) part {
	s := p.drawnAlone(all[i], list, scale)
	first, second := p.unitsShown()
	wide := column - p.eachListWide()
	var lines []part
	for _, l := range list {
		if l.MM[i] <= 0 {
			continue
		}
		lines = append(lines, drawn(tenths(p.eachLine()), func(page *draw.Scene, x, y float64) {
			base, right := y+1.1*p.small, x+1.9*p.small+p.valuesWide()
			page.Text(x, base, l.Letter, draw.TextStyle{Size: p.small})
			page.Text(right-p.inchesWide(), base, measured(l.MM[i], first), draw.TextStyle{Size: p.small, Anchor: draw.End, Face: draw.Semibold})
			page.Text(right, base, measured(l.MM[i], second), draw.TextStyle{Size: p.small, Anchor: draw.End})
		}))
	}
	drawing := []part{setWhole(all[i].Name, wide, draw.TextStyle{Size: p.heading, Face: draw.Serif}), scene(s.Height, scale, func() *draw.Scene { return s }, 0)}
	return beside(wide, drawing, append([]part{space(lineHeight(p.heading))}, lines...))
}

// eachLine is the height of a measure beside a size that is drawn by itself, and eachListWide
// the width of all of them with the room before them, in mm.
func (p patternPages) eachLine() float64 { return lineOf(p.small) + 0.3 }

func (p patternPages) eachListWide() float64 { return 1.9*p.small + p.valuesWide() + 3 }

// inchesWide is the room of the second unit beside the first in mm.
func (p patternPages) inchesWide() float64 {
	return draw.Measure("88⅞", p.small, draw.Regular) + 1
}

func (p patternPages) valuesWide() float64 {
	return p.inchesWide() + draw.Measure("88.8", p.small, draw.Semibold) + 1
}
