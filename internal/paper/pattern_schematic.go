package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/units"
)

// The heights in mm of the schematic: at most, the least for which its table may have two
// lines a row, and the least for which that stands on the same page.
const (
	highestSchematic = 112.0
	roomySchematic   = 80.0
	leastSchematic   = 60.0
)

// lettersHigh is the least height of the schematic by the size of its letters.
const lettersHigh = 18.0

// schematic sets the sizes over each other, to scale, with letters at what is measured, and
// below it the table of the measures. It is as large as its table lets it be on one page; a
// long table has the inches beside the cm, and one that is longer still goes on overleaf.
func (p patternPages) schematic() block {
	const head = "Measurements"
	list := picture.LetteredOf(p.nested())
	b := block{name: head, above: aboveHeading}
	room := 0.0
	var rows []part
	for _, beside := range []bool{false, true} {
		set := append(p.measureRows(list, head, beside), p.underMeasures(beside)...)
		if rows != nil && !p.fitsBeside() {
			break
		}
		rows = set
		if room = p.areaHeight() - float64(stack(append(p.headingPart(head), rows...)).Height)/10 - 3; room >= roomySchematic {
			break
		}
	}
	together := rows // on the page of the drawing, or the last of them overleaf
	if room < max(leastSchematic, lettersHigh*p.small) {
		room, together = highestSchematic, rows[max(0, len(rows)-4):]
	}
	for i := range together[:len(together)-1] {
		together[i].Keep = true
	}
	for s, share := range shrinking() {
		drawn := p.drawnSizes(min(highestSchematic, room) * share)
		drawn.Keep = true
		b.ways = append(b.ways, way{s, append(keptWith(p.headingPart(head), []part{drawn}), rows...)})
	}
	return b
}

// nested returns the sizes as they are drawn over each other.
func (p patternPages) nested() []picture.NestedSize {
	list := make([]picture.NestedSize, len(p.Sizes))
	for i, s := range p.Sizes {
		list[i] = picture.NestedSize{Name: s.Name, Plan: s.Out.Plan}
	}
	return list
}

// besideSchematic is the least width in mm for what the picture says beside it.
const besideSchematic = 38.0

// drawnSizes sets the schematic at most so high, with what it says beside it, or below it
// where there is no room.
func (p patternPages) drawnSizes(high float64) part {
	o := picture.SchematicOptions{Left: p.Left, Letter: 1, Plain: len(p.Sizes) == 1}
	s := picture.Schematic(p.nested(), o)
	scale := 1.0
	for range 3 { // letters are as large on paper as its text, so the room for them grows as the drawing shrinks
		scale = min(scale, scale*high/(s.Height*scale), scale*(p.width()-besideSchematic-columnGap)/(s.Width*scale))
		o.Letter = p.small / scale
		s = picture.Schematic(p.nested(), o)
	}
	wide := s.Width * scale
	about := func(width float64) []part {
		return keptLines(setLines(p.schematicWords(scale), width, draw.TextStyle{Size: p.small}))
	}
	shown := scene(s.Height, scale, func() *draw.Scene { return s }, 0)
	if p.width()-wide-columnGap < besideSchematic {
		return stack(append([]part{shown}, about(p.width())...))
	}
	return stack([]part{beside(wide+columnGap, []part{shown}, about(p.width()-wide-columnGap)), space(15)})
}

// schematicWords says what the schematic shows.
func (p patternPages) schematicWords(scale float64) string {
	side := "right"
	if p.Left {
		side = "left"
	}
	if len(p.Sizes) == 1 {
		return fmt.Sprintf("Lying flat, palm up, for the %s hand, at 1 : %.1f.", side, 1/scale)
	}
	return fmt.Sprintf("All sizes from one edge, lying flat, palm up, for the %s hand, at 1 : %.1f. Size %s is tinted, and the letters show where it is measured.",
		side, 1/scale, p.middleName())
}

// underMeasures says how the table is read.
func (p patternPages) underMeasures(beside bool) []part {
	first, second := p.unitsShown()
	text := "Upper line %s, lower line %s, to the nearest eighth of an inch."
	if beside {
		text = "Bold %s, beside them %s, to the nearest eighth of an inch."
	}
	text = fmt.Sprintf(text, unitWords[first], unitWords[second])
	if p.Sizes[0].Out.Plan.Ribbed() {
		text += " Ribbing is measured by its stitches; unworn it draws in."
	}
	return []part{stack([]part{space(10), setWhole(text, p.width(), draw.TextStyle{Size: p.small})})}
}

var unitWords = map[units.Unit]string{units.CM: "cm", units.IN: "inches"}

// unitsShown returns the unit of the sheet first.
func (p patternPages) unitsShown() (first, second units.Unit) {
	if strings.HasSuffix(p.Text.Head.Sizes[0].Name, string(units.IN)) {
		return units.IN, units.CM
	}
	return units.CM, units.IN
}

// widestSize is the greatest width in mm of a size's column.
const widestSize = 24.0

// measureColumns returns the columns of the table: the letter, the name, each size.
func (p patternPages) measureColumns() []column {
	name := max(2.4, p.width()/widestSize-0.5-float64(len(p.Sizes)))
	letter := 2.1*p.small + 1.5
	columns := []column{{"", letter * (name + float64(len(p.Sizes))) / (p.width() - letter), false, false}, {"", name, false, false}}
	for _, s := range p.Sizes {
		columns = append(columns, column{s.Name, 1, true, true})
	}
	return columns
}

// fitsBeside reports whether cm and inches find room beside each other in a column.
func (p patternPages) fitsBeside() bool {
	w := p.widths(p.measureColumns())
	return w[len(w)-1] >= betweenCells+p.valuesWide()
}

// measureRows sets the measures of all sizes below their names, each in both units, one
// below or beside the other, after the letter of the drawing.
func (p patternPages) measureRows(list []picture.Lettered, heading string, beside bool) []part {
	first, second := p.unitsShown()
	columns := p.measureColumns()
	below := slices.Clone(columns)
	for i := range below {
		below[i].bold = false
	}
	t := table{p.handout, columns, below}
	head := p.sizeHeads(columns)
	parts := []part{head}
	parts[0].Keep = true
	for _, l := range list {
		r := row{cells: []string{"", l.Name}, second: []string{"", ""}}
		for _, mm := range l.MM {
			r.cells = append(r.cells, measured(mm, first))
			r.second = append(r.second, measured(mm, second))
		}
		var set part
		if beside {
			set = p.besideRow(t, r)
		} else {
			set = t.row(r)[0]
		}
		set.goesOn, set.headAgain = heading, &head
		parts = append(parts, p.lettered(set, l.Letter))
	}
	return parts
}

// besideRow sets a row with both units of each measure beside each other.
func (p patternPages) besideRow(t table, r row) part {
	widths := p.widths(t.first)
	values := r.cells[2:]
	r.cells = slices.Concat(r.cells[:2], make([]string, len(values)))
	second := r.second[2:]
	r.second = nil
	set := t.row(r)[0]
	of := set.draw
	set.draw = func(page *draw.Scene, x, y float64) {
		of(page, x, y)
		at := x + widths[0] + widths[1]
		for i := range values {
			at += widths[i+2]
			line := y + 0.9 + p.small
			page.Text(at-betweenCells-p.inchesWide(), line, values[i], draw.TextStyle{Size: p.small, Anchor: draw.End, Face: draw.Semibold})
			if values[i] != second[i] { // both are a dash
				page.Text(at-betweenCells, line, second[i], draw.TextStyle{Size: p.small, Anchor: draw.End})
			}
		}
	}
	return set
}

// sizeHeads sets the names of the sizes on a grey tab above their columns.
func (p patternPages) sizeHeads(columns []column) part {
	widths := p.widths(columns)
	from := widths[0] + widths[1]
	line := lineOf(p.small)
	return drawn(tenths(line+1.2), func(page *draw.Scene, x, y float64) {
		page.Rect(x+from, y, p.width()-from, line+0.4, draw.Style{Fill: tabGrey})
		at := x + from
		for i, c := range columns[2:] {
			at += widths[i+2]
			page.Text(at-betweenCells, y+1.1*p.small, c.head, draw.TextStyle{Size: p.small, Anchor: draw.End, Face: draw.Semibold})
		}
	})
}

// lettered draws a letter in a circle at the beginning of a row.
func (p patternPages) lettered(row part, letter string) part {
	of := row.draw
	row.Height = max(row.Height, tenths(1.2+1.5*p.small))
	row.draw = func(page *draw.Scene, x, y float64) {
		of(page, x, y)
		picture.Ringed(page, x+p.small, y+0.9+0.64*p.small, letter, p.small)
	}
	return row
}

// measured returns a length without its unit; "–" for none.
func measured(mm float64, unit units.Unit) string {
	if mm <= 0 {
		return "–"
	}
	return units.FromMM(mm).Format(unit)
}
