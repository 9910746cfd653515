package paper

import (
	"bytes"
	"fmt"
	"image"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/grade"
	"thenar/internal/pdf"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// dpi is the resolution at which pages are rendered: a dot is 0.085 mm.
const dpi = 300

// onPaper writes pages as a PDF and returns its file.
func onPaper(t *testing.T, pages []*draw.Scene) string {
	t.Helper()
	var b bytes.Buffer
	missing, err := pdf.Write(t.Context(), &b, pdf.About{Title: "test"}, slices.Values(pages))
	require.NoError(t, err)
	require.Empty(t, missing)
	file := filepath.Join(t.TempDir(), "pages.pdf")
	require.NoError(t, os.WriteFile(file, b.Bytes(), 0o600))
	return file
}

func run(t *testing.T, name string, args ...string) string {
	t.Helper()
	out, err := exec.Command(testenv.Program(t, name), args...).Output()
	require.NoError(t, err)
	return string(out)
}

// dots renders a page of a PDF in greys.
func dots(t *testing.T, file string, page int) *image.Gray {
	t.Helper()
	return testenv.Grey(t, file, page, dpi)
}

// cellLines holds the upright and level lines of a chart's grid, in mm.
type cellLines struct{ upright, level []stroke }

// stroke is an upright or level line at a place, from one end to the other, in mm.
type stroke struct{ at, from, to float64 }

// chartLines returns the lines of the path with the most straight lines on a page,
// which is the grid of its chart.
func chartLines(p *draw.Scene) cellLines {
	var best cellLines
	p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind != draw.PathItem || i.Style.Fill != "" {
			return
		}
		var c cellLines
		var x, y float64
		draw.Walk(i.Path, func(op byte, n []float64) {
			if op != 'M' && op != 'L' {
				return
			}
			nx, ny := at.At(n[0], n[1])
			switch {
			case op == 'L' && nx == x:
				c.upright = append(c.upright, stroke{x, min(y, ny), max(y, ny)})
			case op == 'L' && ny == y:
				c.level = append(c.level, stroke{y, min(x, nx), max(x, nx)})
			}
			x, y = nx, ny
		})
		if len(c.upright) > 2 && len(c.upright)+len(c.level) > len(best.upright)+len(best.level) {
			best = c
		}
	})
	return best
}

// checkCells checks the lines of a page's chart on its rendering: each line is seen
// within 0.1 mm of its place, and neighbouring lines are a cell apart.
func checkCells(t *testing.T, img *image.Gray, p *draw.Scene, wide, tall float64) {
	t.Helper()
	lines := chartLines(p)
	require.NotEmpty(t, lines.upright)
	check := func(list []stroke, step float64, upright bool) {
		found := 0
		seen := map[int64]float64{} // place on paper by place as drawn, in µm
		for _, l := range list {
			mid := l.from + 0.3*step
			if at, ok := darkestNear(img, l.at, mid, upright); ok {
				found++
				require.InDelta(t, l.at, at, 0.1, "a line at %.2f mm, %.2f to %.2f, seen at %.2f, upright %v, cells %.2f × %.2f", l.at, l.from, l.to, mid, upright, wide, tall)
				seen[int64(math.Round(l.at*1000))] = at
			}
		}
		var places []int64
		for at := range seen {
			places = append(places, at)
		}
		slices.Sort(places)
		require.Greater(t, len(places), 3)
		require.GreaterOrEqual(t, found, len(list)*8/10, "lines that are seen")
		n := math.Round(float64(places[len(places)-1]-places[0]) / 1000 / step)
		whole := seen[places[len(places)-1]] - seen[places[0]]
		require.InDelta(t, step, whole/n, 0.1/n+0.001, "%d cells measure %.3f mm", int(n), whole)
		for i := 1; i < len(places); i++ {
			gap := seen[places[i]] - seen[places[i-1]]
			require.InDelta(t, math.Round(gap/step)*step, gap, 0.17, "two neighbouring lines: a cell, give or take a dot at each end")
		}
	}
	check(lines.upright, wide, true)
	check(lines.level, tall, false)
}

// darkestNear returns the middle of the dark dots across a line near its place; ok is
// false if there are none, since another mark lies over the line.
func darkestNear(img *image.Gray, at, along float64, upright bool) (float64, bool) {
	const reach = 0.3
	sum, weight := 0.0, 0.0
	for d := int((at - reach) / 25.4 * dpi); d <= int((at+reach)/25.4*dpi); d++ {
		a := int(along / 25.4 * dpi)
		x, y := d, a
		if !upright {
			x, y = a, d
		}
		dark := 255 - float64(img.GrayAt(x, y).Y)
		if dark > 20 {
			sum += dark * (float64(d) + 0.5)
			weight += dark
		}
	}
	if weight == 0 {
		return 0, false
	}
	return sum / weight / dpi * 25.4, true
}

func derived(t *testing.T, doc project.Document, marks chart.Marks) Sheet {
	t.Helper()
	out, err := project.NewPlanner().Derive(doc, marks)
	require.NoError(t, err)
	return Sheet{Doc: doc, Out: out}
}

// Printed cells have the size that was asked for, in both directions, on both papers,
// upright and sideways, in one part and in several, on wall charts and grid paper.
func TestCellsOnPaper(t *testing.T) {
	s := derived(t, project.Samples()[0], chart.Marks{})
	g := s.Out.Plan.Gauge
	ratio := g.Stitches / g.Rounds
	var charts, walls []Options
	for _, sideways := range []bool{false, true} {
		for _, cell := range map[bool][]float64{false: {3.5, 6.5, 14}, true: {5, 14}}[sideways] {
			for _, size := range Papers() {
				charts = append(charts, Options{Paper: size, Sideways: sideways, Cell: cell, Pieces: []Piece{Chart, Key}})
			}
		}
		for _, size := range Papers() {
			walls = append(walls, Options{Paper: size, Sideways: sideways, Cell: 18, Pieces: usual})
		}
	}
	for _, o := range testenv.Some(3, charts) {
		pages := Handout(s, o)
		file := onPaper(t, pages)
		for i, p := range pages[:min(len(pages), 3)] {
			if !hasChart(p) {
				continue // the key by itself
			}
			checkCells(t, dots(t, file, i+1), p, o.Cell, o.Cell*ratio)
		}
	}
	for _, o := range testenv.Some(1, walls) {
		wall := Wall(s, o, chart.GussetView)
		require.Greater(t, len(wall), 3)
		checkCells(t, dots(t, onPaper(t, wall), 2), wall[1], 18, 18*ratio)
		o.Cell = 4
		grid := Grid(o, g)
		checkCells(t, dots(t, onPaper(t, grid), 1), grid[0], 4, 4*ratio)
	}
}

// papers returns all papers in a long run, otherwise one.
func papers() []Size { return testenv.Some(1, Papers()) }

// hasChart reports whether a page has a chart.
func hasChart(p *draw.Scene) bool {
	return slices.ContainsFunc(p.Items, func(i draw.Item) bool { return strings.HasPrefix(i.Text, "Chart of the") })
}

var bbox = regexp.MustCompile(`xMin="([\d.]+)" yMin="([\d.]+)" xMax="([\d.]+)" yMax="([\d.]+)">([^<]*)<`)

// wordsAreOnPaper checks every page of a PDF: no word is cut off or in the margin, and
// no word is missing.
func wordsAreOnPaper(t *testing.T, pages []*draw.Scene) {
	t.Helper()
	_, text, _ := strings.Cut(run(t, "pdftotext", "-bbox", onPaper(t, pages), "-"), "<page ")
	texts := strings.Split(text, "<page ")
	require.Len(t, texts, len(pages))
	for i, p := range pages {
		text := texts[i]
		words := 0
		for _, m := range bbox.FindAllStringSubmatch(text, -1) {
			var at [4]float64
			for k := range at {
				at[k], _ = strconv.ParseFloat(m[k+1], 64)
				at[k] *= 25.4 / 72
			}
			words++
			assert.True(t, at[0] >= margin-4 && at[2] <= p.Width-margin+4 && at[1] >= margin-4 && at[3] <= p.Height-margin+4,
				"%q stands at %.1f … %.1f, %.1f … %.1f of %.0f × %.0f mm", m[5], at[0], at[2], at[1], at[3], p.Width, p.Height)
		}
		laid := 0
		for _, item := range p.Items {
			if item.Kind == draw.TextItem {
				laid += len(strings.Fields(item.Text))
			}
		}
		assert.GreaterOrEqual(t, words, laid*9/10, "page %d has %d words of %d", i+1, words, laid) // neighbours may be read as one
	}
}

// Every kind of sheet on both papers, upright and sideways, in ordinary and large print
// and in greys: nothing is cut off or lost.
func TestNothingIsCutOff(t *testing.T) {
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{
		{Section: stitch.Gusset, Round: 2, Column: "B1", Layer: chart.Stitches, Value: "p"},
		{Section: stitch.Hand, Round: 4, Column: "H12", Layer: chart.Colours, Value: "c"},
		{Section: stitch.Thumb, Round: 2, Layer: chart.Notes, Value: strings.Repeat("knit it looser ", 12)},
	})
	type sheets struct {
		Options
		kind int
	}
	var all []sheets
	for k, o := range []Options{{}, {Sideways: true}, {Large: true}, {Grey: true, Cell: 5}, {Large: true, Sideways: true, FromLeft: true}} {
		for _, size := range Papers() {
			o.Paper, o.Pieces = size, Pieces()
			all = append(all, sheets{o, k})
		}
	}
	for _, s := range testenv.Some(3, all) {
		o, k := s.Options, s.kind
		doc := project.Samples()[k%3]
		doc.FromLeft = o.FromLeft
		pages := Handout(derived(t, doc, marks), o)
		shot(t, fmt.Sprintf("%s-all-%d", o.Paper.Name, k), pages)
		wordsAreOnPaper(t, pages)
		for name, pages := range map[string][]*draw.Scene{
			"measure": Measuring(o, k == 1, k%2 == 0), "ruler": Ruler(o), "wall": Wall(derived(t, doc, marks), o, chart.TubeView),
		} {
			shot(t, fmt.Sprintf("%s-%s-%d", o.Paper.Name, name, k), pages)
			wordsAreOnPaper(t, pages)
		}
	}
}

// A class set and a table of sizes on both papers: nothing is cut off, charts have the
// size that was asked for, and each page has its student's name.
func TestClassSetOnPaper(t *testing.T) {
	class := roster.New("Tuesday")
	doc := project.Samples()[0]
	class.SetPattern(roster.Pattern{Mitt: 1, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet})
	table, err := roster.Read([]byte("name\thand\tsize\tstitches\trounds\tknits\nAda\t18.5\t\t24\t32\t\nBertil of the very long name that goes on and on and on\t21\t\t22\t30\t\nCelia\t\t7.5\t\t\tleft\nFinn\t\t\t20\t28\t\n"), class.Unit)
	require.NoError(t, err)
	_, err = class.Add(table.Students...)
	require.NoError(t, err)
	grid, err := grade.Table(t.Context(), doc.Sheet, grade.DefaultRequest("cm"))
	require.NoError(t, err)
	for _, size := range papers() {
		o := Usual()
		o.Paper, o.Cell, o.Double = size, 5, true
		pl := project.NewPlanner()
		brief, err := class.Review(t.Context(), pl, class.Whole())
		require.NoError(t, err)
		var lines []roster.Line
		pages := slices.Collect(Class(t.Context(), class, class.Whole(), brief, func(l roster.Line) roster.Line {
			lines = append(lines, class.Complete(pl, l))
			return lines[len(lines)-1]
		}, o))
		shot(t, size.Name+"-class", pages)
		wordsAreOnPaper(t, pages)
		file := onPaper(t, pages)
		charts := 0
		for i, p := range pages {
			if strings.Contains(p.Label, ", page 1 of") {
				assert.Zero(t, i%2, "%s begins on an odd page", p.Label)
			}
			if !hasChart(p) {
				continue
			}
			for _, l := range lines {
				if l.Out != nil && strings.HasPrefix(p.Label, l.Student.Name) {
					g := l.Out.Plan.Gauge
					checkCells(t, dots(t, file, i+1), p, 5, 5*g.Stitches/g.Rounds)
					charts++
				}
			}
		}
		assert.GreaterOrEqual(t, charts, 3)
		table := SizeTable(o, doc.Name, grade.DefaultRequest("cm"), grid)
		shot(t, size.Name+"-sizes", table)
		wordsAreOnPaper(t, table)
		text := run(t, "pdftotext", "-layout", onPaper(t, table), "-")
		assert.Contains(t, text, "24 stitches and 32 rounds over 10 cm")
	}
}
