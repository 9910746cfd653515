package paper

// Size is a size of paper in mm.
type Size struct {
	Name          string
	Width, Height float64
}

// The sizes of paper: A4 by ISO 216, US Letter 8½ × 11 in.
var (
	A4     = Size{"a4", 210, 297}
	Letter = Size{"letter", 215.9, 279.4}
)

// Papers returns all sizes of paper.
func Papers() []Size { return []Size{A4, Letter} }

// SizeNamed finds a size by its name.
func SizeNamed(name string) (Size, bool) {
	for _, s := range Papers() {
		if s.Name == name {
			return s, true
		}
	}
	return Size{}, false
}

// Words returns the size's name as it is shown.
func (s Size) Words() string {
	if s.Name == Letter.Name {
		return "US Letter"
	}
	return "A4"
}

// Measures of a page.
const (
	margin   = 14.0 // mm
	footRoom = 8.0  // mm above the lower margin
)

// The height of a line, by the size of its letters. Small letters need more air between
// lines that the eye has to find its way back along; those of large print and of
// headings, over largeLetters mm, need less in proportion.
const (
	leading      = 1.35
	largeLeading = 1.2
	largeLetters = 6.0
)

// lineOf returns the height in mm of a line of letters of a size in mm.
func lineOf(size float64) float64 {
	if size > largeLetters {
		return size * largeLeading
	}
	return size * leading
}

// letters holds the sizes of type on a page, in mm.
type letters struct {
	body, small, heading, title float64
}

// Body text has 12 pt, the least that clear print guidance asks for (RNIB), and
// 18 pt in large print.
var (
	ordinary = letters{body: 4.23, small: 3.6, heading: 5.6, title: 7.5}
	large    = letters{body: 6.35, small: 6.35, heading: 7.6, title: 9}
)
