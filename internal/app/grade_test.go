package app

import (
	"io"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// sixEars is a design of six sizes whose motif has six stitches.
const sixEars = `{"format": "thenar/design@1",
 "sheet": {"kind": "fingerless", "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]}, "ease": {"hand": 0}, "stitch": {"repeat": 6}},
 "sizes": [{"name": "6", "hand": {"size": 6}}, {"name": "7", "hand": {"size": 7}}, {"name": "8", "hand": {"size": 8}},
  {"name": "9", "hand": {"size": 9}}, {"name": "10", "hand": {"size": 10}}, {"name": "11", "hand": {"size": 11}}]}`

// The pages of a pattern in six sizes: at most eight, on both papers, and twelve in large print;
// an independent reader (poppler) finds title and page size, and every line of the text
// in the order in which it is read.
func TestPatternPages(t *testing.T) {
	var text strings.Builder
	require.NoError(t, GradeWords(t.Context(), []byte(sixEars), PatternAsk{}, &text))
	for _, c := range []struct {
		q    url.Values
		size string
		most int
	}{
		{url.Values{"paper": {"a4"}}, "(A4)", 8}, {url.Values{"paper": {"letter"}}, "(letter)", 8}, {url.Values{"paper": {"a4"}, "large": {"1"}}, "(A4)", 12},
	} {
		sheets, err := GradePages(t.Context(), []byte(sixEars), "Barley Sixes", PatternAsk{}, Layout{Asked: c.q, Final: true})
		require.NoError(t, err)
		file := filepath.Join(t.TempDir(), "pattern.pdf")
		out, err := os.Create(file)
		require.NoError(t, err)
		lacking, err := sheets.WritePDF(t.Context(), out, sheets.Name)
		require.NoError(t, err)
		require.Empty(t, lacking)
		require.NoError(t, out.Close())
		about, err := exec.Command(testenv.Program(t, "pdfinfo"), file).Output()
		require.NoError(t, err)
		require.Regexp(t, `Title: +Barley Sixes`, string(about))
		require.Contains(t, string(about), c.size)
		checked, err := exec.Command(testenv.Program(t, "qpdf"), "--check", file).Output()
		require.NoError(t, err)
		require.Contains(t, string(checked), "No syntax or stream encoding errors")
		outline, err := exec.Command(testenv.Program(t, "pdftohtml"), "-xml", "-i", "-stdout", file).Output()
		require.NoError(t, err)
		require.Regexp(t, `(?s)<outline>.*>Barley Sixes<.*>Sizes<.*>Abbreviations<.*>Cuff<.*>Thumb gusset<.*>Hand<.*>Thumb<`, string(outline))
		n := 0
		for range sheets.Pages() {
			n++
		}
		require.LessOrEqual(t, n, c.most)
		read, err := exec.Command(testenv.Program(t, "pdftotext"), "-raw", file, "-").Output()
		require.NoError(t, err)
		page := squeezed(string(read))
		_, passages, _ := strings.Cut(text.String(), "\nCuff\n")
		for _, line := range strings.Split(passages, "\n") {
			if line == "" || strings.HasPrefix(line, " ") {
				continue // a table is set in cells
			}
			at := strings.Index(page, squeezed(line))
			if c.q.Get("large") != "" && at < 0 {
				continue // fractions are spelt in large print, and headings repeated
			}
			require.GreaterOrEqual(t, at, 0, "%q is not on the pages, in its order", line)
			page = page[at+len(squeezed(line)):]
		}
		require.Contains(t, squeezed(page), squeezed("Tingling, cold or pale fingers"))
	}
}

// squeezed leaves out spaces, since lines break differently.
func squeezed(text string) string { return strings.Join(strings.Fields(text), "") }

// Six sizes are planned jointly and written out in at most a tenth of a second.
func BenchmarkSixSizesWritten(b *testing.B) {
	for b.Loop() {
		if err := GradeWords(b.Context(), []byte(sixEars), PatternAsk{}, io.Discard); err != nil {
			b.Fatal(err)
		}
	}
}

// A design's own sentences stand in its words, with the numbers of its sizes; a text that no
// pattern has is refused by its name.
func TestSentencesOfADesignFile(t *testing.T) {
	design := func(pattern string) []byte {
		return []byte(`{"format": "thenar/design@1", "sheet": {"gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10}]}},
			"sizes": [{"name": "7", "hand": {"hand_circumference": 17.8}}, {"name": "8", "hand": {"hand_circumference": 20.3}}], "pattern": ` + pattern + `}`)
	}
	var plain, own strings.Builder
	require.NoError(t, GradeWords(t.Context(), design(`{}`), PatternAsk{}, &plain))
	found := regexp.MustCompile(`(?m)^Cast on (\d+ \(\d+\)) stitches`).FindStringSubmatch(plain.String())
	require.NotNil(t, found, plain.String())
	require.NoError(t, GradeWords(t.Context(), design(`{"after cuff/cast-on-stitches-with-a/1": "Count them: {1=99}.", "after cuff/title": "Begin here."}`), PatternAsk{}, &own))
	assert.Contains(t, own.String(), "\nBegin here.\nCast on")
	assert.NotContains(t, own.String(), "Count them", "without the mark of what it was written for its numbers may be others")
	require.ErrorContains(t, GradeWords(t.Context(), design(`{"colour": "red"}`), PatternAsk{}, &own), "has no text of this name")
}
