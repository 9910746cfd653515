package paper

import (
	"bytes"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/grade"
	"thenar/internal/pattern"
	"thenar/internal/project"
)

// sixEars is a design of six sizes whose motif has six stitches.
const sixEars = `{"format": "thenar/design@1",
 "sheet": {"kind": "fingerless", "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]}, "ease": {"hand": 0}, "stitch": {"repeat": 6}},
 "sizes": [{"name": "6", "hand": {"size": 6}}, {"name": "7", "hand": {"size": 7}}, {"name": "8", "hand": {"size": 8}},
  {"name": "9", "hand": {"size": 9}}, {"name": "10", "hand": {"size": 10}}, {"name": "11", "hand": {"size": 11}}]}`

// inSixSizes returns a pattern in six sizes with all that a designer writes.
func inSixSizes(tb testing.TB) PatternSheet {
	tb.Helper()
	d, err := grade.ParseDesign([]byte(sixEars))
	require.NoError(tb, err)
	g, err := grade.Grade(tb.Context(), d)
	require.NoError(tb, err)
	s := PatternSheet{
		Name: "Barley Sixes", About: "Fingerless mitts, for hands of six sizes", Designer: "Marit Haugen",
		Story: "Six stitches to the inch, six to an ear.", Notes: "Wash the swatch.\n\nThen measure it.", Year: 2026, Version: "Version 3, 28 November 2026",
	}
	for _, size := range g.Sizes {
		doc := project.Document{Name: s.Name, Side: project.Right, Sheet: size.Sheet}
		out, err := project.NewPlanner().Derive(doc, chart.Marks{})
		require.NoError(tb, err)
		s.Sizes = append(s.Sizes, pattern.Size{Name: size.Name, Out: out})
	}
	s.Text, err = pattern.Of(s.Sizes, pattern.Style{Rhythm: true})
	require.NoError(tb, err)
	return s
}

// photographed is a picture of a colour, 60 dots wide and 40 high.
func photographed(t *testing.T, c color.Color) draw.Picture {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 60, 40))
	for i := range 60 * 40 {
		img.Set(i%60, i/60, c)
	}
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, img, nil))
	return draw.Picture{JPEG: b.Bytes()}
}

// patternShots keeps pictures of the pages where they are asked for.
func patternShots(t *testing.T, name, file string) {
	if dir := os.Getenv("THENAR_SHOTS"); dir != "" {
		run(t, "pdftoppm", "-r", "70", "-png", file, filepath.Join(dir, name))
	}
}

// A pattern in six sizes takes at most eight pages, on both papers, in greys, with photographs
// or without. Poppler reads on each page but the first which page of how many it is and
// how the sizes stand, and finds in the list of contents the page on which each part begins.
func TestPatternPagesTellThemselves(t *testing.T) {
	s := inSixSizes(t)
	ring := photographed(t, color.RGBA{0x90, 0x20, 0x40, 0xFF})
	with := s
	with.Photos = []PatternPhoto{{ring, "On a hand"}, {ring, "The palm"}, {photographed(t, color.Gray{0x40}), ""}}
	for _, c := range []struct {
		name string
		of   PatternSheet
		o    Options
	}{
		{"a4", s, Options{Paper: A4}}, {"letter", with, Options{Paper: Letter}}, {"grey", with, Options{Paper: A4, Grey: true}}, {"large", s, Options{Paper: A4, Large: true}},
	} {
		pages := Pattern(c.of, c.o)
		file := onPaper(t, pages)
		patternShots(t, "pattern-"+c.name, file)
		n := len(pages)
		require.LessOrEqual(t, n, map[bool]int{false: 8, true: 12}[c.o.Large], c.name)
		require.GreaterOrEqual(t, n, fewestListed)
		text := strings.Split(run(t, "pdftotext", "-layout", file, "-"), "\f")
		assert.Contains(t, text[0], "Barley Sixes")
		assert.Contains(t, text[0], "Marit Haugen")
		assert.NotRegexp(t, `\d of \d`, text[0])
		for i, page := range text[1:n] {
			assert.Regexp(t, `size 6 \(7, 8, 9, 10, 11\) +mark yours all through before you begin`, page)
			assert.Regexp(t, `Barley Sixes · Marit Haugen · `+fmt.Sprintf("%d of %d", i+2, n)+` +50 mm`, page)
		}
		for _, part := range []string{"Sizes", "Abbreviations", "Notes", "Cuff", "Thumb gusset", "Hand", "Every number, to tick off"} {
			at := regexp.MustCompile(`(?m)(?:^|  )` + part + ` +(\d+)(?:$|  )`).FindStringSubmatch(text[1])
			require.NotNil(t, at, "%s: %s is in the list of contents", c.name, part)
			number, err := strconv.Atoi(at[1])
			require.NoError(t, err)
			page := pages[number-1]
			assert.Contains(t, headings([]*draw.Scene{page}), part, "%s: on page %s", c.name, at[1])
		}
		last := strings.Join(strings.Fields(text[n-1]), " ")
		assert.Contains(t, last, "Every number, to tick off size 6 7 8 9 10 11 Cast on 30 36 40 46 50 56")
		assert.Contains(t, last, "© 2026 Marit Haugen. Version 3, 28 November 2026.")
		assert.Regexp(t, `(?s)Wash the swatch\.\s+Then measure it\.`, strings.Join(text, "\n"))
	}
}

// Photographs come into the file as they are, each once: poppler's pdfimages lists them in
// colour, and in grey for a copier.
func TestPhotographsOfAPattern(t *testing.T) {
	s := inSixSizes(t)
	ring := photographed(t, color.RGBA{0x90, 0x20, 0x40, 0xFF})
	s.Photos = []PatternPhoto{{ring, "On a hand"}, {ring, "The palm"}, {photographed(t, color.Gray{0x40}), ""}}
	listed := func(o Options) (list []string) {
		for _, m := range regexp.MustCompile(`(?m)^ +(\d+) +\d+ image +60 +40 +(\w+) +\d +8 +jpeg`).FindAllStringSubmatch(run(t, "pdfimages", "-list", onPaper(t, Pattern(s, o))), -1) {
			list = append(list, m[1]+" "+m[2])
		}
		return list
	}
	colour := listed(Options{Paper: A4})
	require.Len(t, colour, 3, "%q", colour)
	assert.Equal(t, "1 rgb", colour[0])
	for _, one := range listed(Options{Paper: A4, Grey: true}) {
		assert.Contains(t, one, " gray")
	}
	pages := Pattern(s, Options{Paper: A4})
	assert.Contains(t, pages[0].Label, "On a hand", "what is to be seen is told")
	assert.Contains(t, run(t, "pdftotext", onPaper(t, pages), "-"), "The palm")
	var b strings.Builder
	require.NoError(t, draw.WriteSVG(&b, pages[0], true))
	assert.Contains(t, b.String(), `href="data:image/jpeg;base64,`)
	s.Photos[0].Picture.Address = "/photo/1"
	b.Reset()
	require.NoError(t, draw.WriteSVG(&b, Pattern(s, Options{Paper: A4})[0], true))
	assert.Contains(t, b.String(), `href="/photo/1"`)
	assert.NotContains(t, b.String(), "base64")
}

// The tape of the title page is true: a tick every mm, a number every cm, from the left edge
// of the texts to the edge of the paper.
func TestTapeOfTheTitlePageIsTrue(t *testing.T) {
	cover := Pattern(inSixSizes(t), Options{Paper: Letter})[0]
	var at []float64
	cover.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) {
		if i.Kind == draw.PathItem && strings.Count(i.Path, "M") > 150 {
			draw.Walk(i.Path, func(op byte, p []float64) {
				if op == 'M' {
					at = append(at, p[0])
				}
			})
		}
		if i.Kind == draw.TextItem && i.Text == "10" {
			assert.InDelta(t, coverLeft+100, i.X, 1)
		}
	})
	require.Len(t, at, int(math.Ceil(Letter.Width-coverLeft)))
	for mm, x := range at {
		assert.InDelta(t, coverLeft+float64(mm), x, 0.01)
	}
}

// A title, a story and names of any length keep on the page, and a long story gets a page
// of its own.
func TestLongTextsOfAPattern(t *testing.T) {
	s := inSixSizes(t)
	s.Name = strings.Repeat("Barley and rye ", 8)
	s.Designer = strings.Repeat("Marit ", 20)
	s.Story = strings.Repeat("Six stitches to the inch. ", 60)
	for _, o := range []Options{{Paper: A4}, {Paper: Letter, Large: true}} {
		for i, p := range Pattern(s, o) {
			p.Each(draw.Place{Scale: 1}, func(it *draw.Item, at draw.Place) {
				if it.Kind != draw.TextItem {
					return
				}
				x, y := at.At(it.X, it.Y)
				wide := draw.Measure(it.Text, it.Letter.Size*at.Scale, it.Letter.Face)
				if it.Letter.Anchor == draw.End {
					x -= wide
				}
				assert.True(t, x > 5 && x+wide < p.Width-5 && y > 5 && y < p.Height-5, "page %d: %q at %.0f, %.0f", i+1, it.Text, x, y)
			})
		}
	}
}

// A pattern in six sizes is laid out while a page waits for it.
func BenchmarkPattern(b *testing.B) {
	s := inSixSizes(b)
	for b.Loop() {
		Pattern(s, Options{Paper: A4})
	}
}
