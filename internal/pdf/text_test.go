package pdf

import (
	"bytes"
	"html"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"
	"unicode"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"thenar/internal/draw"
)

// Every letter of all faces is read back as itself, and is as wide as draw
// measured it, within 1 %.
func TestEveryLetterIsReadBack(t *testing.T) {
	for _, face := range draw.Faces {
		letters := printable(face)
		require.Greater(t, len(letters), 600, "Latin, Greek and Cyrillic at the least")
		var pages []*draw.Scene
		for i, r := range letters {
			if i%100 == 0 {
				pages = append(pages, &draw.Scene{Width: 210, Height: 1000})
			}
			pages[i/100].Text(10, 10+9*float64(i%100), strings.Repeat(string(r), 10), draw.TextStyle{Size: 5, Face: face})
		}
		wide := widths(run(t, made(t, pages...), "pdftotext", "-bbox", "FILE", "-"))
		for _, r := range letters {
			want := draw.Measure(strings.Repeat(string(r), 10), 5, face)
			assert.InEpsilon(t, want, wide[strings.Repeat(string(r), 10)], 0.01, "%c U+%04X, face %d", r, r, face)
		}
	}
}

// printable returns the letters of a face without combining marks, ligatures,
// those that normal form C replaces, and the two slashes that share a glyph.
func printable(face draw.Face) []rune {
	var list []rune
	for r := '!'; r <= math.MaxUint16; r++ {
		if face.Has(r) && norm.NFC.IsNormalString(string(r)) && unicode.IsPrint(r) && !unicode.Is(unicode.Mn, r) && draw.Measure(string(r), 1, face) > 0 && !strings.ContainsRune("ﬁﬂ⁄∕", r) {
			list = append(list, r)
		}
	}
	return list
}

// widths returns the width in mm of each word that pdftotext finds.
func widths(boxes string) map[string]float64 {
	found := map[string]float64{}
	for _, m := range regexp.MustCompile(`xMin="([\d.]+)"[^>]*xMax="([\d.]+)"[^>]*>(.*)</word>`).FindAllStringSubmatch(boxes, -1) {
		left, _ := strconv.ParseFloat(m[1], 64)
		right, _ := strconv.ParseFloat(m[2], 64)
		found[html.UnescapeString(m[3])] = (right - left) * point
	}
	return found
}

// A title is typed by a person: it may hold any letters, and invalid UTF-8.
func TestTitleInAnyLetters(t *testing.T) {
	page := &draw.Scene{Width: 210, Height: 297}
	for title, want := range map[string]string{
		`Mitt (left) \ č Ŝ Ċ`: `Mitt (left) \ č Ŝ Ċ`,
		"雪 and 🧶":             "雪 and 🧶",
		"cut off \xe9":        "cut off \uFFFD",
		"":                    "",
	} {
		var b bytes.Buffer
		_, err := Write(t.Context(), &b, About{Title: title}, slices.Values([]*draw.Scene{page}))
		require.NoError(t, err)
		info := run(t, b.Bytes(), "pdfinfo", "-enc", "UTF-8", "FILE")
		first, _, _ := strings.Cut(info, "\n")
		assert.Equal(t, want, strings.TrimSpace(strings.TrimPrefix(first, "Title:")))
		assert.Regexp(t, `Creator: +Thenar\n`, info)
		assert.Contains(t, b.String(), "/Lang (en)")
	}
}

// Texts that can't be set don't spoil the others.
func TestTextsThatCannotBeSet(t *testing.T) {
	page := &draw.Scene{Width: 210, Height: 297}
	size := draw.TextStyle{Size: 5}
	page.Text(20, 20, "before", size)
	page.Text(20, 30, "nosize", draw.TextStyle{})
	page.Text(math.NaN(), 40, "noplace", size)
	page.Text(math.Inf(1), 45, "toofar", size)
	page.Text(20, 50, "two\twords\nmore", size)
	page.Text(20, 60, "bytes\xff", size)
	page.Text(20, 70, "", draw.TextStyle{Size: 5, Halo: "#FFFFFF"})
	page.Text(20, 80, `a\b (c) d`, size)
	text := run(t, made(t, page), "pdftotext", "-layout", "FILE", "-")
	assert.True(t, utf8.ValidString(text))
	assert.Equal(t, []string{"before", "two", "words", "more", "bytes☐", `a\b`, "(c)", "d"}, strings.Fields(text))

	tab, space := &draw.Scene{Width: 30, Height: 10}, &draw.Scene{Width: 30, Height: 10}
	tab.Text(2, 8, "a\tb\x7fc", size)
	space.Text(2, 8, "a b c", size)
	assert.Equal(t, made(t, space), made(t, tab), "a tab draws nothing")
}

// Letters that the face lacks are returned once each, and the boxes in their
// place end where the text should.
func TestMissingLettersBecomeBoxes(t *testing.T) {
	page := &draw.Scene{Width: 210, Height: 297}
	page.Text(190, 30, "日本日", draw.TextStyle{Size: 5, Anchor: draw.End})
	var b bytes.Buffer
	missing, err := Write(t.Context(), &b, About{Title: "x"}, slices.Values([]*draw.Scene{page, page}))
	require.NoError(t, err)
	assert.Equal(t, "日本", missing)
	boxes := run(t, b.Bytes(), "pdftotext", "-bbox", "-f", "1", "-l", "1", "FILE", "-")
	m := regexp.MustCompile(`xMax="([\d.]+)"[^>]*>☐☐☐<`).FindStringSubmatch(boxes)
	require.NotNil(t, m)
	right, err := strconv.ParseFloat(m[1], 64)
	require.NoError(t, err)
	assert.InDelta(t, 190, right*point, 0.05)
}

// A halo draws letters a second time, but not as text that is found or copied,
// and it does not cover them.
func TestHaloIsNoText(t *testing.T) {
	page := &draw.Scene{Width: 60, Height: 30}
	page.Rect(0, 0, 60, 30, draw.Style{Fill: "#336699"})
	page.Text(30, 20, "I", draw.TextStyle{Size: 20, Anchor: draw.Middle, Face: draw.Semibold, Halo: "#FFFF00"})
	page.Text(3, 6, "plain", draw.TextStyle{Size: 4})
	raw := made(t, page)
	content := unpacked(t, raw)
	assert.Equal(t, 3, strings.Count(content, "Tj"), "the halo, its letter, and the other text")
	assert.True(t, regexp.MustCompile(`(?s)ActualText \(\)>> BDC[^T]*1 Tr\nBT[^)]*\) Tj ET\nQ EMC`).MatchString(content), "the halo is marked as no text")
	img := picture(t, raw)
	var runs []string
	for x := range img.Bounds().Dx() {
		r, g, b, _ := img.At(x, px(14)).RGBA()
		name := map[[3]uint32]string{{0x33, 0x66, 0x99}: "ground", {0xFF, 0xFF, 0}: "halo", {0, 0, 0}: "letter"}[[3]uint32{r >> 8, g >> 8, b >> 8}]
		if name != "" && (len(runs) == 0 || runs[len(runs)-1] != name) {
			runs = append(runs, name)
		}
	}
	assert.Equal(t, []string{"ground", "halo", "letter", "halo", "ground"}, runs)
}
