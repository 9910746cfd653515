package roster

import (
	"fmt"

	"thenar/internal/hand"
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

// Numbers returns the row of the teacher's table: stitches over 10 cm, cast-on,
// increases, rounds of the gusset, held stitches, thumb stitches, rounds above
// the gusset, the most metres of yarn for the pair. Without a plan it is empty.
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
	cells := []string{
		fmt.Sprintf("%.1f", p.Gauge.Stitches*100), fmt.Sprint(p.Cuff.CastOn.N), "–", "–", "–", "–", fmt.Sprint(p.Body.RoundsAbove),
		fmt.Sprintf("%d m", most),
	}
	if p.Gusseted() {
		cells[2], cells[3] = fmt.Sprintf("%d × %d", p.Gusset.Increases, p.Gusset.Step), fmt.Sprint(p.Gusset.Rounds.N)
	}
	if p.Thumbed() {
		cells[4], cells[5] = fmt.Sprint(p.Thumb.Held), fmt.Sprint(p.Thumb.Stitches.N)
	}
	return &summary{cells, most}
}
