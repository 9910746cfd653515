package gauge

import (
	"fmt"
	"math"

	"thenar/internal/units"
)

// ruler is the half-width of the reading error of a ruler, in mm
// (rectangular error, JCGM 100:2008, 4.3.7).
const ruler = 1.0

// counting picks what is counted of a swatch: stitches over the width or
// rounds over the height; n is 0 where it was not counted.
type counting func(s *Swatch) (n float64, over units.Length)

func countStitches(s *Swatch) (float64, units.Length) { return s.Stitches, s.Width }
func countRounds(s *Swatch) (float64, units.Length)   { return s.Rounds, s.Height }

// Ratio is what washing makes of a count per mm: after over before.
type Ratio struct {
	After  float64 // 0: no piece was counted both ways
	Pieces int
}

// combination decides which swatches are combined and how.
type combination struct {
	swatches []Swatch
	uses     []Use
	convert  []bool // combined after conversion
	asItIs   []bool // combined although it was not washed, and washing is not known
	treated  bool
}

func (c *combination) reading(i int, what counting) (reading, bool) {
	n, over := what(&c.swatches[i])
	if n == 0 {
		return reading{}, false
	}
	r := reading{value: n / over.MM(), errors: make([]float64, 2*len(c.swatches))}
	r.errors[2*c.sameCount(i, what)] = c.swatches[i].CountedTo / 2 / n
	r.errors[2*i+1] = ruler / over.MM()
	return r, true
}

// sameCount is the first swatch that was treated like swatch i and has the
// same count over the same width to the same fineness.
func (c *combination) sameCount(i int, what counting) int {
	n, over := what(&c.swatches[i])
	for j := range i {
		m, width := what(&c.swatches[j])
		if m == n && width == over && c.swatches[j].group() == c.swatches[i].group() && c.swatches[j].CountedTo == c.swatches[i].CountedTo {
			return j
		}
	}
	return i
}

// choose says for every swatch whether it is combined, converted or left out.
func (c *combination) choose() {
	n := len(c.swatches)
	c.uses, c.convert, c.asItIs = make([]Use, n), make([]bool, n), make([]bool, n)
	_, own := c.ratio(countStitches)
	best := math.MaxInt
	for _, s := range c.swatches {
		best = min(best, s.group())
	}
	if best == 1 && own > 0 { // unwashed in the round, but washing is known from a flat piece
		best = 0
	}
	c.treated = best == 0
	for i, s := range c.swatches {
		switch {
		case s.group() == best:
			c.uses[i] = Use{true, "as counted (" + s.String() + ")"}
		case c.treated && s.group() == 1 && own > 0 && !c.pairedPiece(i):
			c.uses[i], c.convert[i] = Use{true, "brought to the washed state by your own before and after"}, true
		case c.treated && s.group() == 1 && s.OnNeedles:
			c.uses[i], c.asItIs[i] = Use{true, "as counted on the needles, with 3 % more doubt: what washing does to it is not known, since no swatch was counted before and after"}, true
		case c.pairedPiece(i):
			c.uses[i] = Use{false, "tells what washing does (" + s.String() + ")"}
		default:
			c.uses[i] = Use{false, fmt.Sprintf("left out: %s is not like the others", s)}
		}
	}
}

// pairedPiece tells whether a piece was counted both before and after.
func (c *combination) pairedPiece(i int) bool {
	for j := range c.swatches {
		if j != i && c.swatches[i].samePiece(c.swatches[j]) && c.swatches[i].Washed != c.swatches[j].Washed {
			return true
		}
	}
	return false
}

// ratio is the mean of after over before of all pieces that were counted both
// ways, from pieces in the round if there are any.
func (c *combination) ratio(what counting) (reading, int) {
	var list [2][]reading
	for i, before := range c.swatches {
		for j, after := range c.swatches {
			if before.Washed || !after.Washed || !before.samePiece(after) {
				continue
			}
			b, ok := c.reading(i, what)
			a, also := c.reading(j, what)
			if ok && also {
				list[boolInt(before.Flat)] = append(list[boolInt(before.Flat)], a.times(b, -1))
			}
		}
	}
	for _, l := range list {
		if len(l) > 0 {
			return weighted(l), len(l)
		}
	}
	return reading{}, 0
}

func (c *combination) washing(what counting) Ratio {
	r, pieces := c.ratio(what)
	return Ratio{r.value, pieces}
}

// values are the combined swatches' counts per mm, converted where they are.
// Where the work itself is among them, any other piece tells of it only as far
// as a mitt comes out like its swatch.
func (c *combination) values(what counting) (list []reading, at []int) {
	washing, known := c.ratio(what)
	work := false
	for i, s := range c.swatches {
		work = work || s.OnNeedles && c.uses[i].Combined
	}
	for i := range c.swatches {
		r, ok := c.reading(i, what)
		if !ok || !c.uses[i].Combined || (c.convert[i] && known == 0) {
			continue
		}
		if c.convert[i] {
			r = r.times(washing, 1)
		}
		if c.asItIs[i] {
			r.other = otherTreatment
		}
		if work && !c.swatches[i].OnNeedles {
			r.apart = otherPiece
		}
		list, at = append(list, r), append(at, i)
	}
	return list, at
}

// mean is the combined count per mm with its doubt; ok is false if no
// combined swatch was counted so.
func (c *combination) mean(what counting) (float64, Doubt, bool) {
	list, _ := c.values(what)
	if len(list) == 0 {
		return 0, Doubt{}, false
	}
	m := weighted(list)
	d := Doubt{Other: m.other}
	for _, a := range m.errors {
		if a != 0 {
			d.Rectangles = append(d.Rectangles, math.Abs(a))
		}
	}
	return m.value, d, true
}

// contradictions asks about the combined swatch that lies furthest beyond
// what count, ruler and an uneven hand explain at 95 %, against the mean of
// the others; of two that differ, about the later.
func (c *combination) contradictions(variation float64) []Query {
	var queries []Query
	for k, what := range []counting{countStitches, countRounds} {
		list, at := c.values(what)
		if len(list) < 2 {
			continue
		}
		var worst, off, most float64
		asked := -1
		for i := len(list) - 1; i >= 0; i-- {
			others := append(append([]reading(nil), list[:i]...), list[i+1:]...)
			apart := list[i].times(weighted(others), -1)
			explained := normal95 * math.Sqrt(apart.variance()+2*variation*variation)
			if ratio := math.Abs(apart.value-1) / explained; ratio > 1 && ratio > worst*(1+1e-9) {
				asked, worst, off, most = at[i], ratio, apart.value-1, explained
			}
			if len(list) == 2 {
				break
			}
		}
		if asked >= 0 {
			queries = append(queries, Query{asked, fmt.Sprintf(
				"has %.0f %% %s %s than the other%s; counting, ruler and an uneven hand explain %.0f %%. Count it again, or see whether yarn, needle and treatment were the same. It is used as it is.",
				math.Abs(off)*100, moreOrFewer(off), [...]string{"stitches", "rounds"}[k], plural(len(list)-1), most*100)})
		}
	}
	return queries
}

func moreOrFewer(off float64) string {
	if off > 0 {
		return "more"
	}
	return "fewer"
}

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}

func boolInt(b bool) int {
	if b {
		return 1
	}
	return 0
}
