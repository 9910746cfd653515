package draw

import (
	"strings"
	"sync"
	"sync/atomic"
	"unicode"
	"unicode/utf8"

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
	return loaded[face]().add(0, text) * size
}

// add adds the advances of a text's letters to a sum, one after the other, so that a
// line measured word by word is as wide as one measured whole.
func (f *metrics) add(sum float64, text string) float64 {
	for _, r := range text {
		sum += f.letter(r).wide
	}
	return sum
}

// Hard is the space at which no line is broken. It is measured, drawn and copied as a
// space.
const Hard = "\u00A0"

// softened returns a text with plain spaces for the hard ones of what is wider than a line.
func softened(text string, width, size float64, face Face) string {
	if !strings.Contains(text, Hard) {
		return text
	}
	words := strings.Split(text, " ")
	for i, word := range words {
		if Measure(word, size, face) > width {
			words[i] = strings.ReplaceAll(word, Hard, " ")
		}
	}
	return strings.Join(words, " ")
}

// Wrap breaks a text into lines of at most width mm at spaces, and cuts a word
// that is wider than a line.
func Wrap(text string, width, size float64, face Face) []string {
	f := loaded[face]()
	text = softened(singleSpaced(text), width, size, face)
	var lines []string
	from, to, line := 0, 0, 0.0 // the line so far is text[from:to]; line is its advance
	for at := 0; at < len(text); {
		end := len(text)
		if n := strings.IndexByte(text[at:], ' '); n >= 0 {
			end = at + n
		}
		word := f.add(0, text[at:end])
		for word*size > width && utf8.RuneCountInString(text[at:end]) > 1 {
			if from < to {
				lines = append(lines, text[from:to])
			}
			n := f.fitting(text[at:end], width, size)
			lines = append(lines, text[at:at+n])
			at += n
			from, to, word = at, at, f.add(0, text[at:end])
		}
		switch longer := f.add(f.add(line, " "), text[at:end]); {
		case from == to:
			from, line = at, word
		case longer*size > width:
			lines = append(lines, text[from:to])
			from, line = at, word
		default:
			line = longer
		}
		to, at = end, end+1
	}
	if from < to {
		lines = append(lines, text[from:to])
	}
	return lines
}

// isSpace reports whether a line may be broken at a letter.
func isSpace(r rune) bool { return unicode.IsSpace(r) && r != '\u00A0' }

// singleSpaced returns a text with one space between its words and none around them.
func singleSpaced(text string) string {
	after := ' '
	for _, r := range text {
		if isSpace(r) && (r != ' ' || after == ' ') {
			return strings.Join(strings.FieldsFunc(text, isSpace), " ")
		}
		after = r
	}
	return strings.TrimSuffix(text, " ")
}

// fitting returns the number of bytes of a word's letters that fit into a width, at
// least one letter.
func (f *metrics) fitting(word string, width, size float64) int {
	sum := 0.0
	for i, r := range word {
		if sum += f.letter(r).wide; sum*size > width && i > 0 {
			return i
		}
	}
	return len(word)
}
