package chart

import (
	"fmt"
	"strings"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// IsBoxed reports whether the chart is one of a boxed view.
func (g Grid) IsBoxed() bool { return g.uncut }

// BoxedRounds names the rounds that a chart of a boxed view stands for.
func (g Grid) BoxedRounds() string {
	if len(g.Rows) == 0 {
		return ""
	}
	first, last := g.Rows[0], g.lastRound()
	if last == first.Round {
		return first.Section.Words() + ", " + first.Name()
	}
	return fmt.Sprintf("%s, %ss %d to %d", first.Section.Words(), first.Noun(), first.Round, last)
}

// BoxWords says how often each box of a chart is worked across its rounds, and which rounds
// stand for others; it begins with a space.
func (g Grid) BoxWords() string {
	var b strings.Builder
	for _, f := range g.Across {
		fmt.Fprintf(&b, " Work the box of %s%s %s", counted(f.Whole(), "stitch", "stitches"), g.named(f), times(f.Times))
		if f.Whole() > f.Count {
			fmt.Fprintf(&b, "; this part has %d of them", f.Count)
		}
		b.WriteByte('.')
	}
	for _, f := range g.Up {
		n, noun := f.Whole(), g.Rows[f.From].Noun()
		from := g.Rows[f.From].Round - f.Before
		last := from + n*f.Times - 1
		if n == 1 {
			fmt.Fprintf(&b, " %s %d is worked %s, up to %s %d.", capital(noun), from, times(f.Times), noun, last)
			continue
		}
		fmt.Fprintf(&b, " %ss %d to %d are worked %s, up to %s %d.", capital(noun), from, from+n-1, times(f.Times), noun, last)
	}
	return b.String()
}

// times says how often something is worked that is worked more than once.
func times(n int) string {
	if n == 2 {
		return "twice"
	}
	return fmt.Sprintf("%d times", n)
}

// capital begins a sentence with words.
func capital(words string) string { return strings.ToUpper(words[:1]) + words[1:] }

// lastRound returns the number of the last round that a chart stands for.
func (g Grid) lastRound() int {
	last := g.Rows[len(g.Rows)-1].Round
	for _, f := range g.Up {
		if f.From+f.Count == len(g.Rows) {
			last += f.Whole() * (f.Times - 1)
		}
	}
	return last
}

// named returns the name of a fold's motif behind the count of its stitches.
func (g Grid) named(f Fold) string {
	if f.Repeat >= len(g.repeats) {
		return ""
	}
	if name := strings.TrimSpace(g.repeats[f.Repeat].Name); name != "" {
		return " (" + name + ")"
	}
	return ""
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

// LaidMotif is a motif that a chart shows, as it looks there.
type LaidMotif struct {
	Name       string
	Wide, High int
	Times      int    // how often it stands whole across the stitches; 0 in a gusset, where it grows
	cells      string // from the lowest round up, each from the left: a letter or a point for its yarn, then its stitch
}

// Motifs returns the motifs that the chart shows, in the order in which they are laid.
func (g Grid) Motifs() (list []LaidMotif) {
	shown := make([]bool, len(g.repeats))
	for _, row := range g.Rows {
		for _, c := range row.Shown() {
			if c.Laid > 0 {
				shown[c.Laid-1] = true
			}
		}
	}
	for i, one := range g.repeats {
		if !shown[i] {
			continue
		}
		m := LaidMotif{Name: one.Called(i), Wide: one.Motif.Wide, High: one.Motif.High}
		if one.Over != repeat.Gusset {
			m.Times = g.came[i].Across
		}
		var cells []byte
		for up := range m.High {
			for x := range m.Wide {
				right := m.Wide - 1 - x
				if g.turnsMotif(i) {
					right = x
				}
				yarn, op := one.Motif.At(right, up)
				letter, ok := repeat.Texture(op)
				if !ok {
					letter = noLetter
				}
				if yarn == "" {
					yarn = string(rune(noLetter))
				}
				cells = append(cells, yarn[0], letter)
			}
		}
		m.cells = string(cells)
		list = append(list, m)
	}
	return list
}

// noLetter stands for what a motif leaves as it is.
const noLetter = '.'

// At returns the yarn and the stitch of a cell, counted from 0 from the left and from
// below; an empty yarn and no stitch leave what lies under.
func (m LaidMotif) At(x, up int) (yarn string, op stitch.Op) {
	at := 2 * (up*m.Wide + x)
	if m.cells[at] != noLetter {
		yarn = m.cells[at : at+1]
	}
	op, _ = repeat.Stitch(m.cells[at+1])
	return yarn, op
}

// Words names the motif, its size, and how often it stands whole across the stitches.
func (m LaidMotif) Words() string {
	text := fmt.Sprintf("%s: %s, %s", m.Name, counted(m.Wide, "stitch", "stitches"), counted(m.High, "round", "rounds"))
	if m.Times > 1 {
		text += ", " + times(m.Times)
	}
	return text
}
