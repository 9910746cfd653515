package project

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/readback"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// codes types a round: "3k m1l | 2k" is three knits and a make one that lead,
// then two knits.
func codes(t *testing.T, text string) stitch.Round {
	t.Helper()
	var r stitch.Round
	for _, word := range strings.Fields(text) {
		if word == "|" {
			r.Lead = len(r.Ops)
			continue
		}
		n, code := 1, strings.TrimLeft(word, "0123456789")
		if digits := strings.TrimSuffix(word, code); digits != "" {
			n = 0
			for _, d := range digits {
				n = 10*n + int(d-'0')
			}
		}
		op, ok := stitch.ByCode(code)
		require.True(t, ok, word)
		r.Ops = append(r.Ops, slices.Repeat([]stitch.Op{op}, n)...)
	}
	return r
}

// twoSets is a made-up mitt of fourteen stitches, which no builder makes: its
// hand puts five stitches aside for the thumb and later three for the index
// finger, each with a bridge, and the finger is worked first.
func twoSets(t *testing.T) stitch.Mitt {
	division, parting := codes(t, "5hold 3co | 11k"), codes(t, "3k | 2k 3hold 2co 6k")
	division.Keep(stitch.ThumbSet)
	parting.Keep("index")
	return stitch.Mitt{Sections: []stitch.Section{
		{Part: stitch.Cuff, CastOn: 14, Rounds: []stitch.Round{{Ops: codes(t, "14k").Ops, Even: true}}},
		{
			Part: stitch.Gusset, Rounds: []stitch.Round{codes(t, "k m1l k m1r k | 11k"), codes(t, "5k | 11k")},
			About: stitch.About{Shaping: &stitch.Shaping{Rounds: []int{1}, From: 3, To: 5, Step: 2}},
		},
		{Part: stitch.Hand, Rounds: []stitch.Round{division, parting, codes(t, "3k | 10k")}, Finish: codes(t, "13bo")},
		{Part: "forefinger", From: []stitch.Set{"index"}, Rounds: []stitch.Round{codes(t, "2pick | 3k"), codes(t, "2k | 3k")}, Finish: codes(t, "5draw")},
		{
			Part: stitch.Thumb, From: []stitch.Set{stitch.ThumbSet},
			Rounds: []stitch.Round{codes(t, "4pick | gapk2tog 3k gapssk"), codes(t, "4k | 3k ssk")}, Finish: codes(t, "8bo"),
		},
	}}
}

func written(t *testing.T, m stitch.Mitt, by words.Hands) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, words.Write(&b, words.Instructions(m, by)))
	return b.String()
}

// What is kept aside under two names and taken up in another order goes through
// ledger, mirror, charts, words and what is done at the needles: none of them
// knows which sets there are.
func TestTwoNamedSets(t *testing.T) {
	other := twoSets(t)
	other.Sections[3], other.Sections[4] = other.Sections[4], other.Sections[3]
	for name, right := range map[string]stitch.Mitt{"finger first": twoSets(t), "thumb first": other} {
		for _, left := range []bool{false, true} {
			source := chart.Source{Mitt: right, Base: 3, Mirrored: left}.Prepare()
			m := source.Put()
			require.Empty(t, stitch.Ledger(m), name)
			text := written(t, m, words.Hands{Left: left})
			read, err := readback.Read(text)
			require.NoError(t, err, text)
			require.NoError(t, differs(read, m), text)
			assert.Contains(t, text, "lip 5 to waste yarn, cast on a bridge of 3", "the thumb's wait without a name")
			assert.Contains(t, text, "slip 3 to waste yarn for the index, cast on a bridge of 2")
			assert.Contains(t, text, "Put the 3 stitches held for the index back on the needles.")
			assert.Contains(t, text, "Put the 5 held stitches back on the needles.")
			assert.ElementsMatch(t, []chart.View{chart.GussetView, chart.TubeView, chart.ThumbView, chart.CuffView, "forefinger"}, source.Views())
			for _, v := range source.Views() {
				for _, layout := range []chart.Layout{chart.Wedge, chart.Columns} {
					g := source.Grid(chart.Options{View: v, Layout: layout})
					assert.Empty(t, g.Faults(), v)
					require.NoError(t, charted(t, read, g))
				}
			}
			var opened []stitch.Part
			for _, task := range tryon.Tasks(m) {
				if task.Round == tryon.Opening {
					opened = append(opened, task.Part)
				}
			}
			assert.Equal(t, []stitch.Part{stitch.Cuff, right.Sections[3].Part, right.Sections[4].Part}, opened)
		}
	}
}

// A text in which the sets are exchanged can't be knitted.
func TestTwoSetsMistaken(t *testing.T) {
	text := written(t, twoSets(t), words.Hands{})
	for _, c := range [][2]string{
		{"3 stitches held for the index", "3 stitches held for the middle"},
		{"3 stitches held for the index", "3 held stitches"},
		{"slip 3 to waste yarn for the index", "slip 3 to waste yarn"},
	} {
		require.Contains(t, text, c[0])
		_, err := readback.Read(strings.Replace(text, c[0], c[1], 1))
		assert.ErrorContains(t, err, "waste yarn", "%s for %s", c[1], c[0])
	}
}
