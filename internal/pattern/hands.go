package pattern

import (
	"slices"
	"strings"

	"thenar/internal/words"
)

// Hands returns one text for both hands out of those of the right and the left one, of the
// same sizes: what reads alike stands once, the rest once for each hand.
func Hands(right, left *Text) *Text {
	both := &Text{Sizes: right.Sizes, Head: right.Head, out: right.out, both: true}
	both.Head.Signs = slices.Clone(right.Head.Signs)
	for _, sign := range left.Head.Signs {
		if !slices.ContainsFunc(both.Head.Signs, func(s words.Sign) bool { return s.Sign == sign.Sign }) {
			both.Head.Signs = append(both.Head.Signs, sign)
		}
	}
	for _, c := range inColumns([][]Passage{right.Passages, left.Passages}, func(a, b Passage) int {
		if a.Part == b.Part {
			return same
		}
		return unlike
	}) {
		if len(c.cells) == 2 && slices.Equal(c.cells[0].For, c.cells[1].For) && slices.Equal(right.told(c.cells[0]), left.told(c.cells[1])) {
			both.Passages = append(both.Passages, c.cells[0])
			continue
		}
		if p, ok := besides(right, left, c.cells); ok {
			both.Passages = append(both.Passages, p)
			continue
		}
		if len(c.cells) == 2 {
			c.cells[1] = apart(right, left, c.cells[0], c.cells[1])
		}
		for i, p := range c.cells {
			p.Hand = []string{"right", "left"}[c.sizes[i]]
			both.Passages = append(both.Passages, p)
		}
	}
	return both
}

// besides returns one passage for both hands, if what is worked is the same and only remarks
// differ: these stand once for each hand.
func besides(right, left *Text, cells []Passage) (Passage, bool) {
	if len(cells) != 2 || !slices.Equal(cells[0].For, cells[1].For) || cells[0].Title != cells[1].Title {
		return Passage{}, false
	}
	p := cells[0]
	p.Lines = nil
	for _, c := range inColumns([][]Line{cells[0].Lines, cells[1].Lines}, func(a, b Line) int {
		one, other := cells[0], cells[1]
		one.Lines, other.Lines = []Line{a}, []Line{b}
		if slices.Equal(right.told(one), left.told(other)) {
			return same
		}
		return unlike
	}) {
		l := c.cells[0]
		if len(c.cells) == 1 {
			if !l.remark() {
				return Passage{}, false
			}
			if l.Hand = []string{"right", "left"}[c.sizes[0]]; l.Hand == "left" {
				l.Key += leftMark
			}
		}
		p.Lines = append(p.Lines, l)
	}
	return p, true
}

// remark reports whether a line tells something about the work, and nothing to count.
func (l *Line) remark() bool {
	return l.Label == nil && l.Count == nil && l.Table == nil && !l.Under && !strings.ContainsAny(Plain(l.Body), "0123456789")
}

// leftMark ends the key of a line of the left hand that the right hand's text tells otherwise.
const leftMark = wayMark + "left"

// apart returns a passage of the left hand in which the lines have keys of their own that
// the right hand's doesn't tell alike.
func apart(right, left *Text, of, p Passage) Passage {
	told := map[string]string{}
	for _, l := range of.Lines {
		told[l.Key] = right.Told(of, l)
	}
	p.Lines = slices.Clone(p.Lines)
	for i, l := range p.Lines {
		if alike, ok := told[l.Key]; !ok || alike != left.Told(p, l) {
			p.Lines[i].Key += leftMark
		}
	}
	return p
}
