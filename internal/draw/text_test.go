package draw

import (
	"math/rand/v2"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"

	"thenar/internal/testenv"
)

// The widths are those that the opentype package gives when it sets the same
// text in the same face at 1000 pixels to the em.
func TestMeasureAgreesWithTypesetting(t *testing.T) {
	for _, of := range Faces {
		parsed, err := opentype.Parse(of.TrueType())
		require.NoError(t, err)
		face, err := opentype.NewFace(parsed, &opentype.FaceOptions{Size: 1000, DPI: 72, Hinting: font.HintingNone})
		require.NoError(t, err)
		for _, text := range []string{"", "0123456789", "≈ 22.6 cm", "plain cuff", "7½ in", "Räuberhände"} {
			want := float64(font.MeasureString(face, text)) / 64 / 1000
			assert.InDelta(t, want*4, Measure(text, 4, of), 0.01, text)
		}
	}
}

// A handout asks for some 10,000 letters: nothing is built to answer.
func TestLettersAreLookedUpWithoutAllocating(t *testing.T) {
	for _, of := range Faces {
		asks := func() {
			for _, r := range "Rẽ ½ · 3 → 9 ☃ 😀" {
				of.Has(r)
			}
			Measure("Rẽ ½ · 3 → 9 ☃ 😀", 4, of)
		}
		asks()
		assert.Zero(t, testing.AllocsPerRun(10, asks))
	}
}

// Whether a face has a letter agrees with the font itself, also where it has none
// of a row and beyond all letters.
func TestHasAgreesWithTheFont(t *testing.T) {
	for _, of := range Faces {
		parsed, err := opentype.Parse(of.TrueType())
		require.NoError(t, err)
		for _, r := range []rune{'A', 'ß', '½', 'Ж', 'ế', '→', '☐', '☃', '一', 0xFFFF, 0x1F600, unicode.MaxRune, unicode.MaxRune + 1, -1, 0, 0x7F} {
			i, err := parsed.GlyphIndex(nil, r)
			assert.Equal(t, err == nil && i != 0, of.Has(r), "%U", r)
		}
	}
}

func TestWrapKeepsEveryWordWithinTheWidth(t *testing.T) {
	text := "slip two together knitwise, knit one, pass the slipped stitches over"
	for _, width := range []float64{20, 35, 60, 1000} {
		lines := Wrap(text, width, 3, Regular)
		assert.Equal(t, text, strings.Join(lines, " "))
		for i, line := range lines {
			assert.LessOrEqual(t, Measure(line, 3, Regular), width, line)
			if i > 0 { // no word would have fitted the line above
				first := strings.Fields(line)[0]
				assert.Greater(t, Measure(lines[i-1]+" "+first, 3, Regular), width)
			}
		}
	}
	assert.Empty(t, Wrap("  ", 10, 3, Regular))
}

// Lines are parts of the text, which is only measured; so breaking a paragraph builds
// no more than the list of its lines. Spaces of any kind but the hard one come to one.
func TestWrapBuildsNothingButTheList(t *testing.T) {
	text := strings.Repeat("knit to the second marker, make one right, knit 12; ", 20)
	wrap := func() { Wrap(text, 60, 3, Regular) }
	wrap()
	assert.LessOrEqual(t, testing.AllocsPerRun(10, wrap), 8.0, "as the list of some 40 lines grows")
	assert.Equal(t, []string{"a b c", "d"}, Wrap(" \t a\u2002b\n\u2003c   d ", Measure("a b c", 3, Regular)+0.01, 3, Regular))
	assert.Equal(t, Wrap("ab cd", 100, 3, Regular), Wrap("ab cd ", 100, 3, Regular))
}

// A line breaks where the text so far, measured whole, is too wide: by a plain reading
// of that rule, on random texts and widths.
func TestWrapAgreesWithItsRule(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 6))
	for range testenv.Cases(500, 20_000) {
		var words []string
		for range r.IntN(30) {
			words = append(words, strings.Repeat([]string{"i", "W", "ế", "—"}[r.IntN(4)], 1+r.IntN(6)))
		}
		width, face := 1+40*r.Float64(), Faces[r.IntN(len(Faces))]
		var want []string
		for _, word := range words {
			last := len(want) - 1
			if last >= 0 && Measure(want[last]+" "+word, 3, face) <= width {
				want[last] += " " + word
				continue
			}
			for Measure(word, 3, face) > width {
				letters := []rune(word)
				n := 1
				for n < len(letters) && Measure(string(letters[:n+1]), 3, face) <= width {
					n++
				}
				if n == len(letters) {
					break
				}
				want, word = append(want, string(letters[:n])), string(letters[n:])
			}
			want = append(want, word)
		}
		require.Equal(t, want, Wrap(strings.Join(words, " "), width, 3, face), "%q in %g mm", words, width)
	}
}

func TestWrapCutsAWordThatIsTooLong(t *testing.T) {
	word := strings.Repeat("strickm", 8)
	lines := Wrap("a "+word+" z", 12, 3, Semibold)
	assert.Equal(t, "a"+word+"z", strings.ReplaceAll(strings.Join(lines, ""), " ", ""))
	for _, line := range lines {
		assert.LessOrEqual(t, Measure(line, 3, Semibold), 12.0)
	}
	assert.Equal(t, []string{"W", "W"}, Wrap("WW", 0.1, 3, Regular), "a letter always finds a line")
}

// A hard space (U+00A0) holds a number and its unit on one line, unless they are wider
// than a line; on paper it is a space like any other.
func TestWrapHonoursHardSpaces(t *testing.T) {
	const size = 4.0
	text := "a tail of 125" + Hard + "cm" + Hard + "/" + Hard + "50" + Hard + "in"
	width := Measure("a tail of 125 cm", size, Regular) + 0.1
	assert.Equal(t, []string{"a tail of", "125" + Hard + "cm" + Hard + "/" + Hard + "50" + Hard + "in"}, Wrap(text, width, size, Regular))
	assert.Equal(t, []string{"125", "cm"}, Wrap("125"+Hard+"cm", Measure("125", size, Regular)+0.1, size, Regular))
	assert.InDelta(t, Measure("50 in", size, Regular), Measure("50"+Hard+"in", size, Regular), 1e-9)
	var s Scene
	s.Text(0, 0, "50"+Hard+"in", TextStyle{Size: size})
	assert.Equal(t, "50 in", s.Items[0].Text)
}
