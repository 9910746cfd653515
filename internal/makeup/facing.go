package makeup

import "math/bits"

// maxPairs is the number of pairs of a chart and its words.
const maxPairs = 8

// pairs is what of the pairs a page shows, a bit for each number.
type pairs struct{ charts, words uint8 }

func (p pairs) and(q pairs) pairs { return pairs{p.charts | q.charts, p.words | q.words} }

// only returns what belongs to the numbers of which both are in whole.
func (p pairs) only(whole pairs) pairs {
	both := whole.charts & whole.words
	return pairs{p.charts & both, p.words & both}
}

// shows returns what a part shows.
func (p *Part) shows() pairs { return pairs{bit(p.Chart), bit(p.Words)} }

func bit(number int) uint8 {
	if number == 0 {
		return 0
	}
	return 1 << (number - 1)
}

// apart returns how many charts and words of two facing pages lie without their
// counterparts. What is on both pages counts twice.
func apart(left, right pairs) int {
	both := left.and(right)
	charts, words := both.charts&^both.words, both.words&^both.charts
	return bits.OnesCount8(left.charts&charts) + bits.OnesCount8(right.charts&charts) +
		bits.OnesCount8(left.words&words) + bits.OnesCount8(right.words&words)
}

// side is where the next page lies: on the left of two facing ones, or on their
// right beside what the left one shows. Printed on one side, no page faces
// another, and it is always the zero value.
type side struct {
	right bool
	left  pairs
}

// firstSide is the side of page 1, which lies on the right with nothing beside it.
func (a Area) firstSide() side { return side{right: a.BothSides} }

// turn returns the side of the page after one that shows so much, and what of the
// two pages that are now open lies apart.
func (a Area) turn(s side, shows pairs) (next side, lies int) {
	switch {
	case !a.BothSides:
		return side{}, 0
	case s.right:
		return side{}, apart(s.left, shows)
	}
	return side{right: true, left: shows}, 0
}

// close returns what lies apart on a left page that is the last.
func (s side) close() int { return apart(s.left, pairs{}) }

// Facing returns the page that lies open beside a page, both counted from 1; 0 if
// none does. Every handout begins on the front of a fresh sheet, so that its odd
// pages are fronts and its even ones backs: turning a sheet over lays its back on
// the left of the next front (common practice of bookbinding, no source). Page 1
// lies alone, and so does a last page that is even.
func (a Area) Facing(page, pages int) int {
	other := page + 1
	if page%2 == 1 {
		other = page - 1
	}
	if !a.BothSides || other > pages {
		return 0
	}
	return other
}

// Sheets returns the number of sheets that a handout of so many pages takes. The
// back of its last one may be empty.
func (a Area) Sheets(pages int) int {
	if a.BothSides {
		return (pages + 1) / 2
	}
	return pages
}
