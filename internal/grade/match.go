package grade

import (
	"slices"

	"thenar/internal/mitt"
)

// matches finds, for a choice of one size, the cheapest of the size before with any
// of the text's numbers alike. For each set of the numbers it keeps the least cost
// of those that agree in it: whoever agrees in more is found under the larger set,
// at fewer changes. So a step looks at 32 sets, not at all pairs.
type matches struct {
	j    *joint
	keys [1 << textNumbers]map[textKey]int // of the numbers in the set, to the row of costs
	rows [][]int64                         // least cost by number of changes; nil: none yet
}

// inRhythm is the bit of the rhythm in a set of numbers.
const inRhythm = 1 << (textNumbers - 1)

func newMatches(j *joint) *matches {
	m := &matches{j: j}
	for set := range m.keys {
		m.keys[set] = map[textKey]int{}
	}
	return m
}

// clear forgets the costs, for the next size.
func (m *matches) clear() {
	for _, row := range m.rows {
		for c := range row {
			row[c] = never
		}
	}
}

// textKey has the numbers of the common text; those that are not in a set are 0.
type textKey [textNumbers]uint16

// keyOf returns those numbers of a choice that are in a set. ok is false if it has no
// rhythm to agree in.
func keyOf(x *mitt.Choice, set int) (key textKey, ok bool) {
	for bit, n := range text(x) {
		if set&(1<<bit) != 0 {
			key[bit] = uint16(n)
		}
	}
	return key, set&inRhythm == 0 || x.Every > 0
}

// row returns the costs of those that agree with x in a set.
func (m *matches) row(x *mitt.Choice, set int) []int64 {
	key, ok := keyOf(x, set)
	if !ok {
		return nil
	}
	at, known := m.keys[set][key]
	if !known {
		at = len(m.rows)
		m.keys[set][key] = at
		m.rows = append(m.rows, slices.Repeat([]int64{never}, len(m.j.best[0])))
	}
	return m.rows[at]
}

// add lets choice u of the n-th size be found.
func (m *matches) add(n, u int) {
	x := &m.j.sizes[m.j.first[n]][u]
	for set := range m.keys {
		row := m.row(x, set)
		for c := range row {
			row[c] = min(row[c], m.j.best[n][c][u])
		}
	}
}

// take adds to the cost of choice v of the n-th size that of the best way to it.
func (m *matches) take(n, v int) {
	x := &m.j.sizes[m.j.first[n]][v]
	var alike [1 << textNumbers][]int64
	for set := range alike {
		alike[set] = m.row(x, set)
	}
	for c := range m.j.best[n] {
		least := int64(never)
		for set, row := range alike {
			if left := c - changed[set]; left >= 0 && row != nil {
				least = min(least, row[left])
			}
		}
		if least == never {
			m.j.best[n][c][v] = never
		} else {
			m.j.best[n][c][v] += least
		}
	}
}

// changed is, for each set, how many numbers are not in it.
var changed = func() (list [1 << textNumbers]int) {
	for set := range list {
		for bit := range textNumbers {
			list[set] += 1 - set>>bit&1
		}
	}
	return list
}()
