package draw

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"thenar/static/fonts"
)

// Face is a face of the program's own type, which stands on pages, in pictures
// and in PDFs alike.
type Face int

// The faces: Source Sans 3 for all that is worked with, Source Serif 4 for names
// and headings.
const (
	Regular Face = iota
	Semibold
	Serif // semibold
)

// Faces are all faces.
var Faces = []Face{Regular, Semibold, Serif}

// TrueType returns the face as a TrueType file.
func (f Face) TrueType() []byte {
	return [...]func() []byte{fonts.SansRegular, fonts.SansSemiBold, fonts.SerifSemiBold}[f]()
}

// Family returns the name of the face's family.
func (f Face) Family() string {
	if f == Serif {
		return "Source Serif 4"
	}
	return "Source Sans 3"
}

// Heavy reports whether the face is a semibold one.
func (f Face) Heavy() bool { return f != Regular }

var loaded = [...]func() *metrics{
	sync.OnceValue(func() *metrics { return load(Regular) }),
	sync.OnceValue(func() *metrics { return load(Semibold) }),
	sync.OnceValue(func() *metrics { return load(Serif) }),
}

// metrics caches the advance of each letter as a share of the type size.
type metrics struct {
	font  *sfnt.Font
	ascii [128]float64 // measured once, so that the common letters need no lock
	mu    sync.Mutex
	wide  map[rune]float64
}

func load(of Face) *metrics {
	f, err := sfnt.Parse(of.TrueType())
	if err != nil {
		panic("draw: a bundled face can't be read: " + err.Error())
	}
	out := &metrics{font: f, wide: map[rune]float64{}}
	for r := range out.ascii {
		out.ascii[r] = out.measure(rune(r))
	}
	return out
}

func (f *metrics) advance(r rune) float64 {
	if r >= 0 && int(r) < len(f.ascii) {
		return f.ascii[r]
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	w, ok := f.wide[r]
	if !ok {
		w = f.measure(r)
		f.wide[r] = w
	}
	return w
}

// measure returns the advance of a letter in the font.
func (f *metrics) measure(r rune) float64 {
	const ppem = 1000
	var buf sfnt.Buffer
	w := 0.6 // for a letter that the face lacks
	if i, err := f.font.GlyphIndex(&buf, r); err == nil && i != 0 {
		if a, err := f.font.GlyphAdvance(&buf, i, fixed.I(ppem), font.HintingNone); err == nil {
			w = float64(a) / 64 / ppem
		}
	}
	return w
}

// Has reports whether the face has a glyph for a rune.
func (f Face) Has(r rune) bool {
	m := loaded[f]()
	m.mu.Lock()
	defer m.mu.Unlock()
	var buf sfnt.Buffer
	i, err := m.font.GlyphIndex(&buf, r)
	return err == nil && i != 0
}

// Measure returns the width in mm of a text at a type size in mm.
func Measure(text string, size float64, face Face) float64 {
	f := loaded[face]()
	sum := 0.0
	for _, r := range text {
		sum += f.advance(r)
	}
	return sum * size
}

// Wrap breaks a text into lines of at most width mm at spaces, and cuts a word
// that is wider than a line.
func Wrap(text string, width, size float64, face Face) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for Measure(word, size, face) > width && len([]rune(word)) > 1 {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			cut := fitting(word, width, size, face)
			lines = append(lines, string([]rune(word)[:cut]))
			word = string([]rune(word)[cut:])
		}
		longer := strings.TrimSpace(line + " " + word)
		if Measure(longer, size, face) > width && line != "" {
			lines, longer = append(lines, line), word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}

// fitting returns the number of letters of a word that fit into a width, at
// least one.
func fitting(word string, width, size float64, face Face) int {
	n := 0
	for i := range []rune(word) {
		if Measure(string([]rune(word)[:i+1]), size, face) > width {
			break
		}
		n = i + 1
	}
	return max(n, 1)
}
