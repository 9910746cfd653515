package view

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/words"
)

// sizeField is a field of one size.
type sizeField struct{ path, label, unit string }

// sizeFields are the fields of a size, as far as they stand in its row.
func (d Design) fields() []sizeField {
	u := string(d.UnitOf())
	return []sizeField{
		{"name", "called", ""},
		{hand.FieldSize, "glove size", ""},
		{hand.FieldCircumference, "or hand", u},
		{hand.FieldLength, "hand length", u},
		{hand.FieldWrist, "wrist", u},
		{hand.FieldThumb, "thumb", u},
	}
}

// rows returns the numbers of the sizes that the form shows, one empty one at its end.
func (d Design) rows() []int {
	rows := make([]int, min(d.Texts.Sizes()+1, grade.MaxSizes))
	for i := range rows {
		rows[i] = i
	}
	return rows
}

// more says what else is known of the hand of a size, beside the fields of its row.
func (d Design) more(i int) string {
	var list []string
	for _, path := range d.Texts.Paths() {
		field, ok := strings.CutPrefix(path, grade.SizePath(i, ""))
		if !ok || slices.ContainsFunc(d.fields(), func(f sizeField) bool { return f.path == field }) {
			continue
		}
		name := field[strings.LastIndexByte(field, '.')+1:]
		list = append(list, strings.ReplaceAll(name, "_", " ")+" "+d.Texts[path])
	}
	return strings.Join(list, ", ")
}

// sizeNumber is one line of the table of numbers.
type sizeNumber struct {
	name  string
	cells []sizeCell
}

type sizeCell struct {
	value, off string
	worst      bool
}

// numbers returns the table of every number for every size, each with what rounding
// leaves where that is known. The worst of a line is marked.
func (d Design) numbers() []sizeNumber {
	names := d.Graded.Design.Sheet.Names()
	var lines []sizeNumber
	for _, n := range mitt.Ladder() {
		if n.List() || !names.Has(n) {
			continue
		}
		line, worst, at := sizeNumber{name: names.Label(n)}, 0.0, -1
		some := false
		for i, s := range d.Graded.Sizes {
			c := sizeCell{value: "–"}
			if s.Plan != nil {
				if v := s.Plan.Number(n); v != "" {
					c.value, some = v, true
				}
				if off, ok := offOf(s.Plan, n); ok {
					c.off = words.Signed(off, d.UnitOf())
					if math.Abs(off) > worst {
						worst, at = math.Abs(off), i
					}
				}
			}
			line.cells = append(line.cells, c)
		}
		if at >= 0 && worst >= 1 {
			line.cells[at].worst = true
		}
		if some {
			lines = append(lines, line)
		}
	}
	return lines
}

// offOf returns how far a number of a plan is off the wish, in mm.
func offOf(p *mitt.Plan, n mitt.Number) (float64, bool) {
	places := map[mitt.Number]mitt.Place{
		mitt.CastOn: mitt.PlaceCuff, mitt.HandStitches: mitt.PlaceHand, mitt.GussetRounds: mitt.PlaceGussetLength,
		mitt.Increases: mitt.PlaceCrotch, mitt.ThumbStitches: mitt.PlaceThumb, mitt.ThumbRounds: mitt.PlaceThumbLength,
		mitt.RoundsAboveGusset: mitt.PlaceHandLength, mitt.TopRounds: mitt.PlaceTop,
	}
	at, ok := places[n]
	return p.Off[at], ok
}

// lookAt is what the designer should see: what can't be made, what falls, what is
// spare, and where a size is furthest off.
func (d Design) lookAt() []string {
	var list []string
	names := d.Graded.Design.Sheet.Names()
	worst := slices.Clone(d.Graded.Sizes)
	slices.SortStableFunc(worst, func(a, b grade.Planned) int { return cmp.Compare(math.Abs(b.Off), math.Abs(a.Off)) })
	for _, s := range d.Graded.Sizes {
		switch {
		case s.Err != nil:
			list = append(list, fmt.Sprintf("Size %s can't be made: %s", s.Name, fault.Message(s.Err)))
		case s.Same:
			list = append(list, fmt.Sprintf("Size %s is knitted as the size before: one of the two is spare.", s.Name))
		}
		for _, f := range s.Falls {
			if f.Held {
				list = append(list, fmt.Sprintf("Size %s: %s would fall to %d; it stays %d, which is %s.", s.Name, names.Words(f.Number), f.To, f.From, held(f.MM)))
			} else {
				list = append(list, fmt.Sprintf("Size %s: %s falls from %d to %d.", s.Name, names.Words(f.Number), f.From, f.To))
			}
		}
	}
	if !d.Graded.Barred {
		list = append(list, "Every way to make these sizes has a gusset with fewer stitches than the size before.")
	}
	if w := worst[0]; w.Plan != nil && math.Abs(w.Off) >= 1 {
		list = append(list, fmt.Sprintf("Furthest off: size %s, %s, %s.", w.Name, w.Worst.Words(w.Plan), words.Signed(w.Off, d.UnitOf())))
	}
	return list
}

// held says what it costs to hold a number.
func held(mm float64) string {
	if mm < 0 {
		return fmt.Sprintf("%.1f mm nearer", -mm)
	}
	return fmt.Sprintf("%.1f mm further off", mm)
}

// strips returns the numbers of the common text, each as runs over the sizes.
func (d Design) strips() []grade.Split {
	return slices.DeleteFunc(slices.Clone(d.Graded.Splits), func(s grade.Split) bool { return len(s.Groups) == 0 })
}

// groupValue says the value of a run.
func groupValue(n mitt.Number, g grade.Group) string {
	switch {
	case n == mitt.Rhythm && g.Value == 0:
		return "its own"
	case n == mitt.Rhythm:
		return words.Ordinal(g.Value)
	case g.Value == 0:
		return "none"
	}
	return strconv.Itoa(g.Value)
}
