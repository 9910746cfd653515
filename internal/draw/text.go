package draw

import (
	"strings"
	"sync"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

// faces are the bundled faces, Go Regular and Go Bold. They are Go modules, so
// the program needs no font files.
var faces = [2]func() *face{
	sync.OnceValue(func() *face { return load(goregular.TTF) }),
	sync.OnceValue(func() *face { return load(gobold.TTF) }),
}

// face caches the advance of each letter as a share of the type size.
type face struct {
	font  *sfnt.Font
	ascii [128]float64 // measured once, so that the common letters need no lock
	mu    sync.Mutex
	wide  map[rune]float64
}

func load(ttf []byte) *face {
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic("draw: a bundled face can't be read: " + err.Error())
	}
	out := &face{font: f, wide: map[rune]float64{}}
	for r := range out.ascii {
		out.ascii[r] = out.measure(rune(r))
	}
	return out
}

func (f *face) advance(r rune) float64 {
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
func (f *face) measure(r rune) float64 {
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

// Faces returns the bundled faces as TrueType files.
func Faces() (regular, bold []byte) { return goregular.TTF, gobold.TTF }

// Has reports whether the face has a glyph for a rune.
func Has(r rune, bold bool) bool {
	f := faces[0]()
	if bold {
		f = faces[1]()
	}
	f.mu.Lock()
	defer f.mu.Unlock()
	var buf sfnt.Buffer
	i, err := f.font.GlyphIndex(&buf, r)
	return err == nil && i != 0
}

// Measure returns the width in mm of a text at a type size in mm.
func Measure(text string, size float64, bold bool) float64 {
	f := faces[0]()
	if bold {
		f = faces[1]()
	}
	sum := 0.0
	for _, r := range text {
		sum += f.advance(r)
	}
	return sum * size
}

// Wrap breaks a text into lines of at most width mm at spaces, and cuts a word
// that is wider than a line.
func Wrap(text string, width, size float64, bold bool) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		for Measure(word, size, bold) > width && len([]rune(word)) > 1 {
			if line != "" {
				lines, line = append(lines, line), ""
			}
			cut := fitting(word, width, size, bold)
			lines = append(lines, string([]rune(word)[:cut]))
			word = string([]rune(word)[cut:])
		}
		longer := strings.TrimSpace(line + " " + word)
		if Measure(longer, size, bold) > width && line != "" {
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
func fitting(word string, width, size float64, bold bool) int {
	n := 0
	for i := range []rune(word) {
		if Measure(string([]rune(word)[:i+1]), size, bold) > width {
			break
		}
		n = i + 1
	}
	return max(n, 1)
}
