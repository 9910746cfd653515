package picture

import (
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/fit"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

func fitRows(t *testing.T, p *mitt.Plan) []fit.Row {
	t.Helper()
	rows, err := fit.Rows(p, p.Mitt(), fit.DefaultBands)
	require.NoError(t, err)
	return rows
}

// banded returns the rows with all four bands in turn, for so many rounds each.
func banded(rows []fit.Row, each int) []fit.Row {
	out := append([]fit.Row(nil), rows...)
	for i := range out {
		out[i].Band = fit.Band(i / each % 4)
	}
	return out
}

func large(t *testing.T) *mitt.Plan {
	t.Helper()
	return planned(t, mitt.Fingerless, 30, 42, hand.Hand{Circumference: 235 * mm, Length: 205 * mm, Thumb: 80 * mm})
}

// readCurve is a curve as it is read back from the page: the axis from the numbers at the
// ticks, the lines from their path data.
type readCurve struct {
	list        []element
	zero, scale float64 // where girth 0 would lie, page mm over a mm of girth
	foot        float64
}

// readBack reads the axes of the panels: the lowest row of numbers is the hand's, the other
// the thumb's.
func readBack(t *testing.T, s *draw.Scene, thumb bool, foot float64, unit units.Unit) readCurve {
	t.Helper()
	ticks := map[string][][2]float64{} // by height on the page: place, girth
	list := elements(t, s)
	for _, e := range list {
		if girth, err := strconv.ParseFloat(e.chars, 64); err == nil && e.attr["text-anchor"] == "middle" {
			ticks[e.attr["y"]] = append(ticks[e.attr["y"]], [2]float64{num(t, e.attr["x"]), girth * unit.Size().MM()})
		}
	}
	require.Len(t, ticks, 2, "an axis for the hand and one for the thumb")
	for y, row := range ticks {
		if below := num(t, y) > foot; below != thumb {
			require.GreaterOrEqual(t, len(row), 2)
			first, last := row[0], row[len(row)-1]
			scale := (last[0] - first[0]) / (last[1] - first[1])
			return readCurve{list, first[0] - first[1]*scale, scale, foot}
		}
	}
	require.Fail(t, "no axis")
	return readCurve{}
}

// lines returns the unbroken lines of a class in one panel, as girths and heights above the
// cast-on in mm.
func (v readCurve) lines(t *testing.T, class string, panel int) [][]point {
	t.Helper()
	var out [][]point
	var paths []element
	for _, e := range having(v.list, "class", class) {
		if e.name == "path" {
			paths = append(paths, e)
		}
	}
	for _, part := range strings.Split(paths[panel].attr["d"], "M")[1:] {
		var line []point
		all := numbers.FindAllString(part, -1)
		for i := 0; i+1 < len(all); i += 2 {
			line = append(line, point{(num(t, all[i]) - v.zero) / v.scale, v.foot - num(t, all[i+1])})
		}
		out = append(out, line)
	}
	return out
}

// Read back from the page, every round is a step of the fabric's girth, and the body's line
// passes its girth at each upper edge. Both lines break between gusset and hand.
func TestTheCurveSaysWhatTheRowsSay(t *testing.T) {
	for name, p := range map[string]*mitt.Plan{"adult": adult(t), "child": child(t)} {
		t.Run(name, func(t *testing.T) {
			rows := fitRows(t, p)
			_, foot := Frame(p, HandOptions{})
			s := FitCurve(rows, p, FitOptions{Half: 0.05, Other: rows})
			below, above, thumb := []fit.Row{}, []fit.Row{}, []fit.Row{}
			for _, r := range rows {
				switch r.Section {
				case stitch.Thumb:
					thumb = append(thumb, r)
				case stitch.Hand, stitch.Top:
					above = append(above, r)
				default:
					below = append(below, r)
				}
			}
			for panel, profiles := range [][][]fit.Row{{below, above}, {thumb}} {
				v := readBack(t, s, panel == 1, foot, units.CM)
				fabric, body, other := v.lines(t, "fit-fabric", panel), v.lines(t, "fit-body", panel), v.lines(t, "fit-other", panel)
				require.Len(t, fabric, len(profiles))
				require.Len(t, body, len(profiles))
				assert.Equal(t, fabric, other, "the same rows make the same stairs")
				for i, profile := range profiles {
					checkProfile(t, profile, fabric[i], body[i], 1/p.Gauge.Rounds)
				}
			}
		})
	}
}

func checkProfile(t *testing.T, rows []fit.Row, fabric, body []point, round float64) {
	t.Helper()
	const fine = 0.02 // path data have three decimals, and girth is drawn smaller
	require.Len(t, fabric, 2*len(rows))
	require.Len(t, body, len(rows)+1)
	for i, r := range rows {
		low, high := fabric[2*i], fabric[2*i+1]
		assert.InDelta(t, r.Fabric, low.x, fine)
		assert.InDelta(t, r.Fabric, high.x, fine)
		assert.InDelta(t, r.AboveCastOn-round, low.y, fine)
		assert.InDelta(t, r.AboveCastOn, high.y, fine)
		assert.InDelta(t, r.Body, body[i+1].x, fine)
		assert.InDelta(t, r.AboveCastOn, body[i+1].y, fine)
	}
	assert.InDelta(t, rows[0].AboveCastOn-round, body[0].y, fine)
}

// The interval is drawn up along its lower girths and down along its upper ones.
func TestTheIntervalLiesAroundTheFabric(t *testing.T) {
	p := large(t)
	rows := fitRows(t, p)
	_, foot := Frame(p, HandOptions{Unit: units.MM})
	v := readBack(t, FitCurve(rows, p, FitOptions{Half: 0.04, Unit: units.MM}), false, foot, units.MM)
	below := v.lines(t, "fit-interval", 0)[0]
	for i, r := range rows[:p.Cuff.Rounds+p.Cuff.PlainRounds+p.Gusset.Rounds.N] {
		low, high := below[2*i+1], below[len(below)-2-2*i]
		assert.InDelta(t, 0.96*r.Fabric, low.x, 0.02)
		assert.InDelta(t, 1.04*r.Fabric, high.x, 0.02)
		assert.InDelta(t, r.AboveCastOn, low.y, 0.01)
		assert.InDelta(t, r.AboveCastOn, high.y, 0.01)
	}
	assert.Empty(t, having(elements(t, FitCurve(rows, p, FitOptions{})), "class", "fit-interval"), "none is known")
}

// Sections are at the same heights on the pages of curve and hand, each with one band for
// every round.
func TestTheCurveLinesUpWithTheHand(t *testing.T) {
	for _, p := range []*mitt.Plan{adult(t), child(t), large(t)} {
		o := HandOptions{Left: true, Unit: units.IN}
		drawn := Hand(p, o)
		s := FitCurve(fitRows(t, p), p, FitOptions{Left: o.Left, Unit: o.Unit})
		assert.InDelta(t, drawn.Height, s.Height, 1e-9)
		on, curve := elements(t, drawn), elements(t, s)
		var division string
		for _, section := range p.Mitt().Sections {
			part := string(section.Part)
			a := having(having(on, "class", "section"), "data-section", part)
			b := having(having(curve, "class", "section"), "data-section", part)
			require.Len(t, b, 1)
			assert.Equal(t, a[0].attr["data-rounds"], b[0].attr["data-rounds"])
			if section.Part == stitch.Thumb {
				assert.InDelta(t, num(t, division), num(t, b[0].attr["data-bottom"]), 0.01, "the thumb stands on the division")
			} else {
				assert.InDelta(t, num(t, a[0].attr["data-top"]), num(t, b[0].attr["data-top"]), 0.01)
				assert.InDelta(t, num(t, a[0].attr["data-bottom"]), num(t, b[0].attr["data-bottom"]), 0.01)
			}
			if section.Part == stitch.Gusset {
				division = b[0].attr["data-top"]
			}
			checkBands(t, having(having(curve, "class", "band"), "data-section", part), section, num(t, b[0].attr["data-bottom"]), 1/p.Gauge.Rounds)
		}
	}
}

func checkBands(t *testing.T, bands []element, section stitch.Section, bottom, round float64) {
	t.Helper()
	require.Len(t, bands, len(section.Rounds))
	for i, b := range bands {
		n := strconv.Itoa(i + 1)
		assert.Equal(t, []string{n, n, "0"}, []string{b.attr["data-from"], b.attr["data-to"], b.attr["fill-opacity"]})
		assert.True(t, strings.HasPrefix(b.attr["data-says"], section.Part.Words()+" round "+n+": fabric "), b.attr["data-says"])
		place := extent(t, b.attr["d"])
		assert.InDelta(t, bottom-float64(i)*round, place.bottom, 0.01)
		assert.InDelta(t, bottom-float64(i+1)*round, place.top, 0.01)
	}
}

// This writes pictures of the curve into the folder that THENAR_SHOTS names.
func TestWriteShotsOfCurves(t *testing.T) {
	dir := os.Getenv("THENAR_SHOTS")
	finer := func(kind mitt.Kind, h hand.Hand) []fit.Row { return fitRows(t, planned(t, kind, 26, 36, h)) }
	for name, c := range map[string]struct {
		p *mitt.Plan
		o FitOptions
	}{
		"adult":       {adult(t), FitOptions{Half: 0.045}},
		"adult-other": {adult(t), FitOptions{Half: 0.045, Other: finer(mitt.Fingerless, adult(t).Hand)}},
		"child":       {child(t), FitOptions{Half: 0.06, Unit: units.MM}},
		"child-other": {child(t), FitOptions{Other: finer(mitt.Mitten, child(t).Hand)}},
		"large":       {large(t), FitOptions{Half: 0.04, Unit: units.IN, Left: true}},
		"large-other": {large(t), FitOptions{Half: 0.04, Unit: units.IN, Other: finer(mitt.Fingerless, large(t).Hand)}},
	} {
		for _, each := range []int{0, 1, 9} {
			rows, file := fitRows(t, c.p), "fit-"+name+".svg"
			if each > 0 {
				rows, file = banded(rows, each), "fit-"+name+"-bands-"+strconv.Itoa(each)+".svg"
			}
			s := FitCurve(rows, c.p, c.o)
			readable(t, s)
			elements(t, s)
			var b strings.Builder
			require.NoError(t, draw.WriteSVG(&b, s, false))
			if dir != "" {
				require.NoError(t, os.WriteFile(filepath.Join(dir, file), []byte(b.String()), 0o600))
			}
		}
	}
}
