// Package paper lays out the printed sheet of a mitt as pages in millimetres.
package paper

// Size is a size of paper in mm, upright.
type Size struct {
	Name          string
	Width, Height float64
}

// The sizes of paper: A4 by ISO 216, US Letter 8½ × 11 in.
var (
	A4     = Size{"a4", 210, 297}
	Letter = Size{"letter", 215.9, 279.4}
)

// Named finds a size by its name.
func Named(name string) (Size, bool) {
	for _, s := range []Size{A4, Letter} {
		if s.Name == name {
			return s, true
		}
	}
	return Size{}, false
}

// The measures of a page, in mm. Body text is 12 pt, the least that clear
// print guidance asks for (RNIB).
const (
	margin   = 14.0
	body     = 4.23
	heading  = 5.6
	title    = 7.5
	leading  = 1.35
	footRoom = 8.0
)
