package web

import (
	"fmt"
	"image"
	"image/png"
	"net/http"
	"net/url"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// dpi is the fineness at which paper is looked at.
const dpi = 300

// onPaper is where a part of the printed chart lies: its page and its middle
// in mm.
type onPaper struct {
	Page int
	X, Y float64
}

// printed prints the mitt on both papers and reads it back: the words as
// text, the chart as pixels.
func printed(b *browser, page string) {
	b.t.Helper()
	for paper, points := range map[string]string{"a4": "594.96 x 841.92 pts (A4)", "letter": "612 x 792 pts (letter)"} {
		b.open(page + "/print?paper=" + paper)
		b.media("print") // as large as it will be
		where := eval[[]onPaper](b, paintedPlaces)
		plain := eval[[]onPaper](b, plainPlaces)
		ruler := eval[[]onPaper](b, rulerEnds)
		require.Len(b.t, where, 2, "two cells on paper that are not as planned")
		b.media("")
		sheets := eval[int](b, `document.querySelectorAll(".sheet").length`)
		pdf, err := chromedp.Run(b.ctx, chromedp.PrintToPDF(chromedp.PDFPreferCSSPageSize(), chromedp.PDFPrintBackground()))
		require.NoError(b.t, err)
		file := filepath.Join(b.t.TempDir(), "sheet.pdf")
		require.NoError(b.t, os.WriteFile(file, pdf, 0o600))

		info := run(b.t, "pdfinfo", file)
		assert.Contains(b.t, info, points)
		assert.Contains(b.t, info, fmt.Sprintf("Pages:           %d\n", sheets))
		text := run(b.t, "pdftotext", "-layout", file, "-")
		for _, words := range []string{"A new mitt", "Chart of the thumb gusset", "make one leaning left", "purl", "rust", "Cast on 38 stitches", "k1, p1, k3"} {
			assert.Contains(b.t, text, words)
		}
		pages := pictures(b.t, file, slices.Concat(where, plain, ruler))
		for _, at := range where {
			assert.Less(b.t, darkest(pages[at.Page], at), 140, "ink in a painted cell, page %d at %.1f, %.1f mm", at.Page+1, at.X, at.Y)
		}
		for _, at := range plain {
			assert.Greater(b.t, darkest(pages[at.Page], at), 230, "an empty cell is empty")
		}
		measureRuler(b.t, pages[ruler[0].Page], ruler)
	}
}

// inSheets gives places on paper: of each element its middle, in mm from the
// corner of its sheet, however small that is shown.
const inSheets = `(elements) => elements.map((place) => {
	const sheets = [...document.querySelectorAll(".sheet > svg")];
	const page = sheets.findIndex((s) => s.contains(place.element));
	const frame = sheets[page].getBoundingClientRect();
	const scale = sheets[page].viewBox.baseVal.width / frame.width;
	return {Page: page, X: (place.x - frame.left) * scale, Y: (place.y - frame.top) * scale};
})`

// paintedPlaces are the middles of the cells that are not as planned: above the
// stitches of basting at their feet, which are 0.68 of a cell long.
const paintedPlaces = `(` + inSheets + `)([...document.querySelectorAll('.sheet path[fill="#7A5600"]')].map((p) => {
	const box = p.getBoundingClientRect();
	const size = p.getBBox().width / 0.68 * p.getScreenCTM().a;
	return {element: p, x: box.left + box.width / 2, y: box.top + box.height / 2 - 0.275 * size};
}))`

// plainPlaces are the middles of two cells of the last round of the gusset,
// which is all knit: the highest run of the ground's colour, whose cells are as
// wide as the painted marks say.
const plainPlaces = `(` + inSheets + `)([0.35, 0.65].map((share) => {
	const runs = [...document.querySelectorAll('.sheet path[fill="#FFFFFF"]')].map((element) => ({element, box: element.getBoundingClientRect()}));
	const mark = document.querySelector('.sheet path[fill="#7A5600"]');
	const row = runs.filter((r) => r.box.width > 50 && r.element.closest(".sheet").contains(mark)).sort((a, b) => a.box.top - b.box.top)[0];
	const cell = mark.getBBox().width / 0.68 * mark.getScreenCTM().a;
	const cells = Math.round(row.box.width / cell);
	return {element: row.element, x: row.box.left + (Math.floor(cells * share) + 0.5) * row.box.width / cells, y: row.box.top + row.box.height / 2};
}))`

// rulerEnds are both ends of the first page's ruler.
const rulerEnds = `(` + inSheets + `)(["left", "right"].map((side) => {
	const ruler = document.querySelector("[data-ruler]");
	const box = ruler.getBoundingClientRect();
	return {element: ruler, x: box[side], y: box.bottom};
}))`

func run(t testing.TB, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(testenv.Program(t, name), args...).Output()
	require.NoError(t, err)
	return string(out)
}

// pictures turns the pages of a PDF on which places lie into grey pictures.
func pictures(t testing.TB, file string, places []onPaper) map[int]*image.Gray {
	t.Helper()
	pages := map[int]*image.Gray{}
	for _, at := range places {
		if pages[at.Page] == nil {
			pages[at.Page] = testenv.Grey(t, file, at.Page+1, dpi)
			keepPicture(t, strings.TrimSuffix(filepath.Base(file), ".pdf")+"-"+strconv.Itoa(at.Page+1), pages[at.Page])
		}
	}
	return pages
}

// keepPicture keeps a picture of paper where THENAR_SHOTS names a folder.
func keepPicture(t testing.TB, name string, page image.Image) {
	t.Helper()
	dir := os.Getenv("THENAR_SHOTS")
	if dir == "" {
		return
	}
	f, err := os.Create(filepath.Join(dir, "paper-"+name+".png"))
	require.NoError(t, err)
	require.NoError(t, png.Encode(f, page))
	require.NoError(t, f.Close())
}

func pixel(mm float64) int { return int(mm / 25.4 * dpi) }

func grey(page *image.Gray, x, y int) int { return int(page.GrayAt(x, y).Y) }

// darkest is the darkest pixel within 0.7 mm of a place.
func darkest(page *image.Gray, at onPaper) int {
	low := 255
	for x := pixel(at.X - 0.7); x <= pixel(at.X+0.7); x++ {
		for y := pixel(at.Y - 0.7); y <= pixel(at.Y+0.7); y++ {
			low = min(low, grey(page, x, y))
		}
	}
	return low
}

// measureRuler measures the printed ruler: 50 mm from tick to tick, whose own
// width is 0.3 mm, within two pixels.
func measureRuler(t testing.TB, page *image.Gray, ends []onPaper) {
	t.Helper()
	row := pixel(ends[0].Y)
	longest := 0
	for y := row - 6; y <= row+6; y++ {
		length := 0
		for x := pixel(ends[0].X - 3); x <= pixel(ends[1].X+3); x++ {
			length++
			if grey(page, x, y) >= 128 { // letters beside it are no part of it
				length = 0
			}
			longest = max(longest, length)
		}
	}
	assert.InDelta(t, 50+0.3, float64(longest)/dpi*25.4, 2*25.4/dpi+0.1)
}

// Letters that the PDF's face lacks are told beside its link, before somebody
// prints boxes.
func TestLettersThatAPDFLacks(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	assert.Zero(t, a.get(at+"/print").doc().Find(".lacking").Length())
	require.Equal(t, http.StatusSeeOther, a.post(at+"/name", url.Values{"name": {"手袋 mitts 手"}}).status)
	assert.Contains(t, a.get(at+"/print").doc().Find(".lacking").Text(), "no shape for 手袋:")
}
