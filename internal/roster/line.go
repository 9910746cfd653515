package roster

import (
	"fmt"

	"thenar/internal/hand"
	"thenar/internal/units"
)

// HandText is what is known of a student's hand, in a word.
func (s *Student) HandText(u units.Unit) string {
	if text := s.Sheet.Given(hand.FieldCircumference); text != "" {
		return text + " " + string(u)
	}
	if text := s.Sheet.Given(hand.FieldSize); text != "" {
		return "size " + text
	}
	return "–"
}

// told is what a table tells of a line.
type told struct {
	numbers []string
	metres  float64
}

// Numbers are those of the teacher's table: stitches over 10 cm, cast-on,
// increases, rounds of the gusset, held, thumb, rounds above, metres of yarn
// for the pair at the most. Without a plan there are none.
func (l *Line) Numbers() []string { return l.tell().numbers }

// Metres are those of the yarn for the pair at the most; 0 without a plan.
func (l *Line) Metres() float64 { return l.tell().metres }

func (l *Line) tell() *told {
	switch {
	case l.told != nil:
		return l.told
	case l.Out == nil:
		return &told{}
	}
	most := l.Out.Yarn.Pair.Metres().High
	p := l.Out.Plan
	cells := []string{
		fmt.Sprintf("%.1f", p.Gauge.Stitches*100), fmt.Sprint(p.Cuff.CastOn.N), "–", "–", "–", "–", fmt.Sprint(p.Body.RoundsAbove),
		fmt.Sprintf("%.0f m", most),
	}
	if p.Thumbed() {
		cells[2], cells[3] = fmt.Sprintf("%d × %d", p.Gusset.Increases, p.Gusset.Step), fmt.Sprint(p.Gusset.Rounds.N)
		cells[4], cells[5] = fmt.Sprint(p.Thumb.Held), fmt.Sprint(p.Thumb.Stitches.N)
	}
	return &told{cells, most}
}
