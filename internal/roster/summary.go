package roster

import (
	"fmt"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// HandText returns the student's girth in the class's unit or their glove size, or "–".
func (s *Student) HandText(u units.Unit) string {
	if text := s.Sheet.Given(hand.FieldCircumference); text != "" {
		return girth(text, u)
	}
	if text := s.Sheet.Given(hand.FieldSize); text != "" {
		return "size " + text
	}
	return "–"
}

// girth returns a girth as a table has it, however it was typed: one decimal in
// centimetres, so that the numbers of a column line up; millimetres and inches as a
// tape is divided. What is no length stays as it was typed.
func girth(text string, u units.Unit) string {
	l, err := units.Parse(text, u)
	switch {
	case err != nil:
		return text + " " + string(u)
	case u == units.CM:
		return fmt.Sprintf("%.1f cm", l.MM()/10)
	}
	return l.With(u)
}

// summary holds what Numbers and Metres return, without the outputs.
type summary struct {
	numbers []string
	metres  int
}

// NumberColumn is a column of the teacher's table of numbers.
type NumberColumn struct {
	Of   mitt.Number // of the plan; mitt.Rib: none, see Head
	Head string
}

// The columns that every table has beside the plan's numbers.
const (
	gaugeHead = "stitches / 10 cm"
	yarnHead  = "yarn"
)

// tabled are the numbers of the plan in the teacher's table, if the mitt has them.
var tabled = []mitt.Number{mitt.CastOn, mitt.Increases, mitt.GussetRounds, mitt.Held, mitt.ThumbStitches, mitt.RoundsAboveGusset}

// NumberColumns returns the columns of the teacher's table for mitts whose numbers are called so.
func NumberColumns(w mitt.Names) []NumberColumn {
	list := []NumberColumn{{Head: gaugeHead}}
	for _, n := range tabled {
		if w.Has(n) {
			list = append(list, NumberColumn{n, w.Head(n)})
		}
	}
	return append(list, NumberColumn{Head: yarnHead})
}

// Numbers returns the row of the teacher's table, a cell for each of NumberColumns: stitches over
// 10 cm, the plan's numbers, the most metres of yarn for the pair. Without a plan it is
// empty.
func (l *Line) Numbers() []string { return l.summarize().numbers }

// Metres returns the most metres of yarn that the pair takes, as on its handout; 0
// without a plan.
func (l *Line) Metres() int { return l.summarize().metres }

func (l *Line) summarize() *summary {
	switch {
	case l.summary != nil:
		return l.summary
	case l.Out == nil:
		return &summary{}
	}
	_, _, most := l.Out.Yarn.Pair.Metres().Rounded()
	p := l.Out.Plan
	var cells []string
	for _, c := range NumberColumns(p.Names()) {
		switch {
		case c.Head == gaugeHead:
			cells = append(cells, fmt.Sprintf("%.1f", p.Gauge.Stitches*100))
		case c.Head == yarnHead:
			cells = append(cells, fmt.Sprintf("%d m", most))
		case c.Of == mitt.CastOn:
			cells = append(cells, fmt.Sprint(p.OnNeedles()))
		case c.Of == mitt.Increases:
			cells = append(cells, fmt.Sprintf("%d × %d", p.Gusset.Increases, p.Gusset.Step))
		default:
			cells = append(cells, fmt.Sprint(p.Count(c.Of)))
		}
	}
	return &summary{cells, most}
}
