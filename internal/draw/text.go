package draw

import (
	"strings"
	"sync"
	"sync/atomic"
	"unicode"

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

// letter is what a face says of a rune.
type letter struct {
	wide float64 // its advance, as a share of the type size
	has  bool    // whether there is a glyph for it
}

// alphabet holds the letters of 256 runes in a row.
type alphabet [256]letter

// lacking is the alphabet of runes of which a face has none.
var lacking = func() (a alphabet) {
	for i := range a {
		a[i].wide = 0.6
	}
	return a
}()

// metrics caches what a face says of its letters, in alphabets that are read when
// one of their runes is first asked for. Those that the face lacks share one, so
// the cache stays as small as the face. It is read without a lock.
type metrics struct {
	font      *sfnt.Font
	alphabets [unicode.MaxRune/256 + 1]atomic.Pointer[alphabet]
}

func load(of Face) *metrics {
	f, err := sfnt.Parse(of.TrueType())
	if err != nil {
		panic("draw: a bundled face can't be read: " + err.Error())
	}
	return &metrics{font: f}
}

// letter returns what the face says of a rune.
func (f *metrics) letter(r rune) *letter {
	if r < 0 || r > unicode.MaxRune {
		return &lacking[0]
	}
	at := &f.alphabets[r/256]
	a := at.Load()
	if a == nil {
		a = f.read(r - r%256)
		at.Store(a) // another goroutine may have stored the same letters
	}
	return &a[r%256]
}

// read reads the alphabet from a rune on in the font.
func (f *metrics) read(from rune) *alphabet {
	const ppem = 1000
	var buf sfnt.Buffer
	a, has := lacking, false
	for i := range a {
		at, err := f.font.GlyphIndex(&buf, from+rune(i))
		if err != nil || at == 0 {
			continue
		}
		a[i].has, has = true, true
		if wide, err := f.font.GlyphAdvance(&buf, at, fixed.I(ppem), font.HintingNone); err == nil {
			a[i].wide = float64(wide) / 64 / ppem
		}
	}
	if !has {
		return &lacking
	}
	return &a
}

// Has reports whether the face has a glyph for a rune.
func (f Face) Has(r rune) bool { return loaded[f]().letter(r).has }

// Measure returns the width in mm of a text at a type size in mm.
func Measure(text string, size float64, face Face) float64 {
	f := loaded[face]()
	sum := 0.0
	for _, r := range text {
		sum += f.letter(r).wide
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
