package gauge

import (
	"fmt"
	"math"

	"thenar/internal/units"
)

// rulerHalfWidth is the half-width of a ruler's reading error, in mm
// (rectangular error, JCGM 100:2008, 4.3.7).
const rulerHalfWidth = 1.0

// counting returns one of the two counts of a swatch, stitches over the width or
// rounds over the height. n is 0 if that was not counted.
type counting func(s *Swatch) (n float64, over units.Length)

func countStitches(s *Swatch) (float64, units.Length) { return s.Stitches, s.Width }
func countRounds(s *Swatch) (float64, units.Length)   { return s.Rounds, s.Height }

// Ratio is a count per mm after washing over the same before.
type Ratio struct {
	Value  float64 // 0 if no piece was counted before and after
	Pieces int     // number of pieces counted before and after
}

// combination decides which swatches are combined and how.
type combination struct {
	swatches    []Swatch
	uses        []Use
	convert     []bool // combined after conversion to the washed state
	unconverted []bool // combined although unwashed, since the ratio is not known
	treated     bool
}

// reading returns the count of swatch i per mm; ok is false if it was not
// counted.
func (c *combination) reading(i int, what counting) (reading, bool) {
	n, over := what(&c.swatches[i])
	if n == 0 {
		return reading{}, false
	}
	r := reading{value: n / over.MM(), errors: make([]float64, 2*len(c.swatches))}
	r.errors[2*c.firstAlike(i, what)] = c.swatches[i].CountedTo / 2 / n
	r.errors[2*i+1] = rulerHalfWidth / over.MM()
	return r, true
}

// firstAlike returns the first swatch that was worked and treated like swatch i
// and has the same count over the same width to the same fineness.
func (c *combination) firstAlike(i int, what counting) int {
	n, over := what(&c.swatches[i])
	for j := range i {
		m, width := what(&c.swatches[j])
		if m == n && width == over && c.swatches[j].group() == c.swatches[i].group() && c.swatches[j].CountedTo == c.swatches[i].CountedTo {
			return j
		}
	}
	return i
}

// choose decides for every swatch whether it is combined, converted or left
// out.
func (c *combination) choose() {
	n := len(c.swatches)
	c.uses, c.convert, c.unconverted = make([]Use, n), make([]bool, n), make([]bool, n)
	_, own := c.ratio(countStitches)
	best := math.MaxInt
	for _, s := range c.swatches {
		best = min(best, s.group())
	}
	if best == 1 && own > 0 { // unwashed in the round; a flat piece gives the ratio
		best = 0
	}
	c.treated = best == 0
	for i, s := range c.swatches {
		switch {
		case s.group() == best:
			c.uses[i] = Use{true, "as counted (" + s.String() + ")"}
		case c.treated && s.group() == 1 && own > 0 && !c.isPaired(i):
			c.uses[i], c.convert[i] = Use{true, "brought to the washed state by your own before and after"}, true
		case c.treated && s.group() == 1 && s.OnNeedles:
			c.uses[i], c.unconverted[i] = Use{true, "as counted on the needles; washing may change it, so 3\u00a0% more give or take"}, true
		case c.isPaired(i):
			c.uses[i] = Use{false, "tells what washing does (" + s.String() + ")"}
		default:
			c.uses[i] = Use{false, fmt.Sprintf("left out: %s is not like the others", s)}
		}
	}
}

// isPaired reports whether the piece of swatch i was counted both before and
// after washing.
func (c *combination) isPaired(i int) bool {
	for j := range c.swatches {
		if j != i && c.swatches[i].samePiece(c.swatches[j]) && c.swatches[i].Washed != c.swatches[j].Washed {
			return true
		}
	}
	return false
}

// ratio returns the mean ratio of after over before of the pieces counted before
// and after washing, and their number. Pieces that were worked otherwise than the fabric
// count only if no other was.
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
				at := boolInt(before.unlike())
				list[at] = append(list[at], a.times(b, -1))
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

// values returns the counts per mm of the combined swatches, converted where
// needed, and the index of each swatch. If one was counted on the needles, the
// others get the variance by which a mitt differs from its swatch.
func (c *combination) values(what counting) (list []reading, at []int) {
	washing, known := c.ratio(what)
	onNeedles := false
	for i, s := range c.swatches {
		onNeedles = onNeedles || s.OnNeedles && c.uses[i].Combined
	}
	for i := range c.swatches {
		r, ok := c.reading(i, what)
		if !ok || !c.uses[i].Combined || (c.convert[i] && known == 0) {
			continue
		}
		if c.convert[i] {
			r = r.times(washing, 1)
		}
		if c.unconverted[i] {
			r.other = otherTreatment
		}
		if onNeedles && !c.swatches[i].OnNeedles {
			r.apart = otherPiece
		}
		list, at = append(list, r), append(at, i)
	}
	return list, at
}

// mean returns the combined count per mm and its doubt. ok is false if no
// combined swatch has the count.
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

// contradictions asks about the combined swatch that differs most from the mean
// of the others, if count, ruler and an uneven hand don't explain that at 95 %.
// Of two swatches it asks about the later one.
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
				"has %.0f\u00a0%% %s %s than the other%s, where %.0f\u00a0%% is usual. Count it again. It is used as it is.",
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
