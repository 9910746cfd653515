package pdf

import (
	"bytes"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/testenv"
)

const dpi = 300

func made(t testing.TB, pages ...*draw.Scene) []byte {
	t.Helper()
	var b bytes.Buffer
	_, err := Write(t.Context(), &b, About{Title: "A title"}, slices.Values(pages))
	require.NoError(t, err)
	return b.Bytes()
}

// run writes a PDF to a file and runs a program of poppler on it.
func run(t testing.TB, raw []byte, name string, args ...string) string {
	t.Helper()
	file := filepath.Join(t.TempDir(), "file.pdf")
	require.NoError(t, os.WriteFile(file, raw, 0o600))
	for i, a := range args {
		if a == "FILE" {
			args[i] = file
		}
	}
	out, err := exec.Command(testenv.Program(t, name), args...).Output()
	require.NoError(t, err)
	return string(out)
}

// picture renders the first page at 300 dots to the inch.
func picture(t testing.TB, raw []byte) image.Image {
	t.Helper()
	img, err := png.Decode(strings.NewReader(run(t, raw, "pdftoppm", "-r", strconv.Itoa(dpi), "-png", "-singlefile", "FILE")))
	require.NoError(t, err)
	return img
}

// px converts mm to dots.
func px(mm float64) int { return int(mm / 25.4 * dpi) }

func dark(img image.Image, x, y int) bool {
	r, _, _, _ := img.At(x, y).RGBA()
	return r>>8 < 128
}

// A page is as large as its scene: A4 and US Letter, portrait and landscape.
func TestPageIsAsLargeAsItsScene(t *testing.T) {
	sizes := [][2]float64{{210, 297}, {297, 210}, {215.9, 279.4}, {279.4, 215.9}}
	var pages []*draw.Scene
	for _, s := range sizes {
		pages = append(pages, &draw.Scene{Width: s[0], Height: s[1]})
	}
	info := run(t, made(t, pages...), "pdfinfo", "-f", "1", "-l", "4", "FILE")
	found := regexp.MustCompile(`size: +([\d.]+) x ([\d.]+) pts`).FindAllStringSubmatch(info, -1)
	require.Len(t, found, len(sizes))
	for i, s := range sizes {
		for k := range 2 {
			pt, err := strconv.ParseFloat(found[i][k+1], 64)
			require.NoError(t, err)
			assert.InDelta(t, s[k], pt*25.4/72, 0.01)
		}
	}
	assert.Contains(t, info, "A title")
}

// A grid of cells of 5 by 3.7 mm, put into a page by groups that move and scale,
// keeps its measure: over 20 cells each line is within 0.1 mm of its place.
func TestCellsAreTrue(t *testing.T) {
	grid := &draw.Scene{Width: 50, Height: 50}
	var p draw.Pen
	for i := range 21 {
		p.Move(float64(i)*2.5, 0).Line(float64(i)*2.5, 37).Move(0, float64(i)*1.85).Line(50, float64(i)*1.85)
	}
	grid.Path(p.String(), draw.Style{Stroke: "#000000", Width: 0.1})
	inner := &draw.Scene{}
	inner.Add(grid, 5, 10, 0.5)
	page := &draw.Scene{Width: 210, Height: 297}
	page.Group("any")
	page.Add(inner, 20, 30, 4) // 20 + 4·5, 30 + 4·10; cells of 5 × 3.7
	page.End()
	img := picture(t, made(t, page))
	across, down := lines(img, px(71.85), true), lines(img, px(42.5), false)
	require.Len(t, across, 21)
	require.Len(t, down, 21)
	for i := range 21 {
		assert.InDelta(t, 40+5*float64(i), across[i], 0.1)
		assert.InDelta(t, 70+3.7*float64(i), down[i], 0.1)
	}
}

// lines returns the middles in mm of the dark runs along a row or column of dots.
func lines(img image.Image, at int, across bool) []float64 {
	var list []float64
	from := -1
	n := img.Bounds().Dy()
	if across {
		n = img.Bounds().Dx()
	}
	for i := range n {
		x, y := at, i
		if across {
			x, y = i, at
		}
		switch is := dark(img, x, y); {
		case is && from < 0:
			from = i
		case !is && from >= 0:
			list = append(list, float64(from+i)/2/dpi*25.4)
			from = -1
		}
	}
	return list
}

// Fills, dashes and widths scale with their groups.
func TestStylesScale(t *testing.T) {
	sub := &draw.Scene{}
	sub.Rect(0, 0, 10, 10, draw.Style{Fill: "#336699"})
	sub.Line(0, 20, 40, 20, draw.Style{Stroke: "#000000", Width: 1, Dash: "2 2"})
	page := &draw.Scene{Width: 210, Height: 297}
	page.Add(sub, 10, 10, 2)
	img := picture(t, made(t, page))
	r, g, b, _ := img.At(px(20), px(20)).RGBA()
	assert.Equal(t, []uint32{0x33, 0x66, 0x99}, []uint32{r >> 8, g >> 8, b >> 8})
	for i := range 20 { // dashes of 4 mm, 2 mm wide
		x := 10 + 2 + 4*float64(i)
		assert.Equal(t, i%2 == 0, dark(img, px(x), px(50)), "at %.0f mm", x)
	}
	assert.True(t, dark(img, px(12), px(50.9)))
	assert.False(t, dark(img, px(12), px(51.2)))
}

// Text is read back letter for letter, and is as wide as draw measured it.
func TestTextIsReadBackAndAsWide(t *testing.T) {
	const line = "Round 12: k1, M1L → 7½ in ⅜ ≈ 6 cm – “fits” ’tis 5 × 3° · ≥ 2 • Žofia Åse Ελένη"
	page := &draw.Scene{Width: 297, Height: 210}
	page.Text(20, 30, line, draw.TextStyle{Size: 5})
	page.Text(280, 60, "to the end", draw.TextStyle{Size: 5, Anchor: draw.End, Face: draw.Semibold})
	page.Text(150, 90, "in the middle", draw.TextStyle{Size: 8, Anchor: draw.Middle, Halo: "#FFFFFF"})
	raw := made(t, page)
	assert.Contains(t, run(t, raw, "pdftotext", "-layout", "FILE", "-"), line)
	boxes := run(t, raw, "pdftotext", "-bbox", "FILE", "-")
	word := regexp.MustCompile(`xMin="([\d.]+)"[^>]*xMax="([\d.]+)"[^>]*>([^<]*)<`)
	left, right := math.Inf(1), math.Inf(-1)
	for _, m := range word.FindAllStringSubmatch(boxes, -1) {
		a, _ := strconv.ParseFloat(m[1], 64)
		b, _ := strconv.ParseFloat(m[2], 64)
		switch m[3] {
		case "end":
			assert.InDelta(t, 280, b*25.4/72, 0.3)
		case "middle":
			assert.InDelta(t, 150+draw.Measure("in the middle", 8, draw.Regular)/2, b*25.4/72, 0.3)
		}
		if strings.Contains(line, m[3]) && m[3] != "end" && m[3] != "middle" && m[3] != "the" && m[3] != "to" && m[3] != "in" {
			left, right = min(left, a), max(right, b)
		}
	}
	wide := draw.Measure(line, 5, draw.Regular)
	assert.InDelta(t, wide, (right-left)*25.4/72, wide/100)
}

// The same pages make the same bytes, also when several files are written at once.
//
//thenar:race
func TestSameBytes(t *testing.T) {
	pages := busy(4)
	want := made(t, pages...)
	got := make([][]byte, 4)
	var wait sync.WaitGroup
	for i := range got {
		wait.Add(1)
		go func() {
			defer wait.Done()
			got[i] = made(t, pages...)
		}()
	}
	wait.Wait()
	for _, g := range got {
		assert.True(t, bytes.Equal(want, g))
	}
}

// Letters that the face lacks are named, and the file is sound all the same.
func TestMissingLetters(t *testing.T) {
	page := &draw.Scene{Width: 210, Height: 297}
	page.Text(20, 30, "Yuki 雪 and 雪 again, 🧶", draw.TextStyle{Size: 5})
	page.Text(20, 40, "after it", draw.TextStyle{Size: 5})
	var b bytes.Buffer
	missing, err := Write(t.Context(), &b, About{Title: "雪"}, slices.Values([]*draw.Scene{page}))
	require.NoError(t, err)
	assert.Equal(t, "雪🧶", missing)
	text := run(t, b.Bytes(), "pdftotext", "FILE", "-")
	assert.Contains(t, text, "Yuki")
	assert.Contains(t, text, "after it")
}

func TestWriteReturnsTheWritersError(t *testing.T) {
	_, err := Write(t.Context(), failing{}, About{Title: "x"}, slices.Values(busy(1)))
	require.Error(t, err)
}

type failing struct{}

func (failing) Write([]byte) (int, error) { return 0, io.ErrShortWrite }

// busy returns pages as full as a handout's: 4,000 lines and 150 texts each.
func busy(n int) []*draw.Scene {
	pages := make([]*draw.Scene, n)
	for k := range pages {
		s := &draw.Scene{Width: 210, Height: 297}
		for i := range 80 {
			var p draw.Pen
			for j := range 50 {
				x, y := 14+float64(j)*3.6, 20+float64(i)*3.35
				p.Move(x, y).Line(x+3.1, y+1.234)
			}
			s.Path(p.String(), draw.Style{Stroke: "#23272E", Width: 0.2})
		}
		for i := range 150 {
			s.Text(14+float64(i%3)*60, 20+float64(i/3)*5, fmt.Sprintf("Round %d: k%d, M1L", i+k, i), draw.TextStyle{Size: 4.23, Face: draw.Faces[i%3]})
		}
		pages[k] = s
	}
	return pages
}

// BenchmarkPages reports the time for a PDF as a multiple of that for the SVG of
// the same pages.
func BenchmarkPages(b *testing.B) {
	pages := busy(210)
	start := time.Now()
	const times = 3
	for range times {
		for _, p := range pages {
			require.NoError(b, draw.WriteSVG(io.Discard, p, true))
		}
	}
	svg := float64(time.Since(start).Nanoseconds()) / times
	size := 0
	for b.Loop() {
		size = len(made(b, pages...))
	}
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/svg, "times-the-SVG")
	b.ReportMetric(float64(size)/1e6, "MB")
}
