package tally

import (
	"fmt"
	"slices"

	"thenar/internal/written"
)

// listedRounds works a named round in the rounds that are listed, or that a table tells, and plain
// ones between.
func (w *needles) listedRounds(s *written.Statement) {
	one := w.roundNamed(s.Name)
	var rounds []int
	for _, n := range s.Label.List {
		rounds = append(rounds, n.For(w.size))
	}
	if len(rounds) == 0 {
		rounds = w.tabled()
	}
	switch {
	case one == nil:
		w.tell(w.placed(Finding{Kind: Misnumbered, At: s.At, To: s.To, Message: "No round of that name was told before."}))
		w.known, w.unsure = false, true
	case len(rounds) == 0:
		w.tell(w.placed(Finding{Kind: Unread, At: s.At, To: s.To, Message: "In which rounds that is was not understood."}))
		w.known, w.unsure = false, true
	default:
		if s.Schedule != nil {
			if said := s.Schedule.Rounds.For(w.size); said != written.None && said != len(rounds) {
				w.tell(w.placed(Finding{Kind: Listed, At: s.At, To: s.To, Found: len(rounds), Expected: said, Message: fmt.Sprintf("The list has %d rounds, not %d.", len(rounds), said)}))
			}
		}
		w.atRounds(s, one, rounds)
	}
	w.counts(s.Counts)
}

// atRounds works a round wherever the list has it. A list that begins before the round that comes
// next counts from elsewhere: then only how far its rounds are apart is taken.
func (w *needles) atRounds(s, one *written.Statement, rounds []int) {
	plain := w.plainRound(s)
	if rounds[0] <= w.round {
		if one.At.Line == w.line.Line && len(w.past) > 0 && w.past[len(w.past)-1] == one && rounds[0] == w.round {
			rounds = rounds[1:] // it was worked once already where it is told
		}
		w.unnumbered = true
	}
	before := w.round
	if w.unnumbered && len(rounds) > 0 {
		before = rounds[0] - 1
	}
	for _, n := range rounds {
		if n-before < 1 || n-before > most {
			w.tell(w.placed(Finding{Kind: Misnumbered, At: s.At, To: s.To, Found: n, Expected: before + 1, Message: fmt.Sprintf("Round %d follows round %d in the list.", n, before)}))
			return
		}
		for ; before < n-1; before++ {
			if !w.one(plain) {
				return
			}
		}
		if !w.one(one) {
			return
		}
		before = n
	}
}

// tabled returns the rounds in which the last table says that the count changes.
func (w *needles) tabled() (rounds []int) {
	for _, s := range slices.Backward(w.tables) {
		for _, c := range s.Table {
			if c.Tells != written.InRounds || !slices.Contains(c.For, w.index) {
				continue
			}
			for _, cell := range c.Cells {
				if cell.N != written.None {
					rounds = append(rounds, cell.N)
				}
			}
			return rounds
		}
	}
	return nil
}

// closeTables compares what tables tell with the rounds of the section that changed the count. A
// table that stands before them waits for them.
func (w *needles) closeTables() {
	if len(w.shaped) == 0 || len(w.tables) == 0 || w.beneath != nil {
		return
	}
	for _, s := range w.tables {
		for i := range s.Table {
			if c := &s.Table[i]; slices.Contains(c.For, w.index) {
				w.column(s, c)
			}
		}
	}
	w.tables = nil
}

// closeSketch compares how many rounds a section is said to have with those of its numbers.
func (w *needles) closeSketch() {
	s := w.sketch
	w.sketch = nil
	if s == nil || w.unnumbered || w.round == 0 || w.unsure {
		return
	}
	if n := s.Schedule.Total.For(w.size); n != written.None && n != w.round {
		w.tell(Finding{Kind: Listed, At: s.At, To: s.To, Look: w.line, Found: w.round, Expected: n, Message: fmt.Sprintf("%d rounds are told after this, not %d.", w.round, n)})
	}
}

// column compares a column of a table with the rounds.
func (w *needles) column(s *written.Statement, c *written.Column) {
	cells := make([]written.Cell, 0, len(c.Cells))
	for _, cell := range c.Cells {
		if cell.N != written.None {
			cells = append(cells, cell)
		}
	}
	if len(cells) == 0 || !w.known || w.unsure && c.Tells == written.InRounds {
		return
	}
	if c.Tells == written.HowOften {
		if n := len(w.shaped); cells[0].N != n {
			w.tell(Finding{Kind: Listed, At: cells[0].At, To: cells[0].To, Found: n, Expected: cells[0].N, Message: fmt.Sprintf("%d rounds of shaping are worked, not %d.", n, cells[0].N)})
		}
		return
	}
	got := w.shaped
	if c.Tells != written.InRounds {
		got = slices.DeleteFunc(slices.Clone(got), func(s shaped) bool { return c.Tells == written.InGusset && s.inside == 0 })
	}
	if w.unnumbered && c.Tells == written.InRounds {
		return
	}
	value := func(s shaped) int {
		switch c.Tells {
		case written.Stitches:
			return s.n
		case written.InGusset:
			return s.inside
		}
		return s.round
	}
	skip := 0 // rounds before that are told elsewhere, such as a set-up round
	for from, most := 0, -1; from < len(got); from++ {
		same := 0
		for k := 0; k < len(cells) && from+k < len(got); k++ {
			if value(got[from+k]) == cells[k].N {
				same++
			}
		}
		if same > most {
			most, skip = same, from
		}
	}
	got = got[skip:]
	for k, cell := range cells {
		if k >= len(got) {
			if len(c.For) == 1 { // else another size that shares the column has more
				w.tell(Finding{Kind: Listed, At: cell.At, To: cell.To, Found: len(got), Expected: len(cells), Message: fmt.Sprintf("The table has %d rounds of shaping here, and %d are worked.", len(cells), len(got))})
			}
			return
		}
		if found := value(got[k]); found != cell.N {
			w.tell(Finding{Kind: Listed, At: cell.At, To: cell.To, Found: found, Expected: cell.N, Message: fmt.Sprintf(tableSays[c.Tells], found, cell.N)})
			return
		}
	}
	if over := len(got) - len(cells); over > 0 && c.Tells == written.InRounds && got[len(cells)].round <= cells[len(cells)-1].N {
		w.tell(Finding{Kind: Listed, At: s.At, To: s.To, Found: len(got), Expected: len(cells), Message: fmt.Sprintf("The table has %d rounds of shaping, and %d are worked.", len(cells), len(got))})
	}
}

// tableSays is what is told where a table and the rounds don't agree.
var tableSays = map[written.Tells]string{
	written.InRounds: "It is shaped in round %d, not %d.",
	written.Stitches: "After it there are %d stitches, not %d.",
	written.InGusset: "Between the markers there are then %d stitches, not %d.",
}
