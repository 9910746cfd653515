package project

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/readback"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/tryon"
	"thenar/internal/wale"
	"thenar/internal/words"
)

// looksOf returns how every round of a hand looks that is knitted up to a place, cell by cell.
func looksOf(p *Planned, d Document, side Side, at tryon.Place) (list [][]chart.Cell) {
	d.Side = side
	s := p.Charts(d, nil)
	for _, k := range tryon.Places(p.Mitt())[:at.Nth] {
		cells := s.Dyed(k.Part, k.Round)
		own := make([]chart.Cell, len(cells))
		for j, c := range cells {
			own[j] = chart.Cell{Op: c.Op, Yarn: c.Yarn}
		}
		list = append(list, own)
	}
	return list
}

// Whatever is laid, turned off, moved or planned otherwise: what is knitted of either hand has
// the stitches and colours that it was worked in, through one change after the other, and so has
// the hand that is worked like it. What is brought back needs nothing kept.
func TestWhatIsKnittedKeepsItsColours(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(25, 4))
	pl := NewPlanner()
	times, kept, coloured := testenv.Cases(20, 200), 0, 0
	for range times {
		d := knitter(rng)
		bare, err := pl.Plan(d.Sheet)
		require.NoError(t, err)
		names, _ := wale.Trace(bare.Mitt(), bare.UnderThumb(), false)
		d.Side = []Side{Right, Left}[rng.IntN(2)]
		testenv.AnyRepeats(rng, d.Sheet)
		stranger(rng, d.Sheet, names)
		p, err := pl.Plan(d.Sheet)
		if err != nil {
			continue
		}
		all := tryon.Places(p.Mitt())
		hands := []Progress{{d.Side, p, all[rng.IntN(len(all))]}, {d.Side.Other(), p, tryon.Place{}}}
		if rng.IntN(2) == 0 {
			hands[1].At = all[rng.IntN(len(all))]
		}
		require.Equal(t, d, pl.Keep(d, hands), "nothing is changed")
		upTo := []tryon.Place{hands[0].At, hands[1].At}
		if !upTo[1].Begun() {
			upTo[1] = upTo[0]
		}
		was := [][][]chart.Cell{looksOf(p, d, hands[0].Side, upTo[0]), looksOf(p, d, hands[1].Side, upTo[1])}
		now := d
		for range 3 {
			other := knitter(rng)
			other.Side, other.Sheet["kind"] = d.Side, d.Sheet["kind"]
			testenv.AnyRepeats(rng, other.Sheet)
			stranger(rng, other.Sheet, names)
			for _, side := range []Side{Right, Left} {
				other.Sheet.SetKnitted(string(side), now.Sheet.Knitted(string(side)))
			}
			if _, err := pl.Plan(other.Sheet); err != nil {
				continue
			}
			now = pl.Keep(other, hands)
			for i, h := range hands {
				now.Side = h.Side
				is, err := pl.Plan(now.Effective())
				require.NoError(t, err)
				require.Equal(t, was[i], looksOf(is, now, h.Side, upTo[i]), "%s up to %s %d", h.Side, upTo[i].Part, upTo[i].Round)
				if hands[i].At.Begun() {
					hands[i].Plan = is
				}
			}
			now.Side = d.Side
			readsBack(t, pl, now)
			if len(now.Sheet.Knitted(string(d.Side))) > 0 {
				kept++
			}
		}
		if slices.ContainsFunc(was[0], func(round []chart.Cell) bool { return len(round) > 0 }) {
			coloured++
		}
		back := now
		back.Sheet = d.Sheet.Clone()
		for i := range hands {
			if hands[i].At.Begun() {
				now.Side = hands[i].Side
				hands[i].Plan, err = pl.Plan(now.Effective())
				require.NoError(t, err)
			}
		}
		again := pl.Keep(back, hands)
		assert.Nil(t, again.Sheet.Knitted(string(d.Side)), "as it was laid, nothing has to be kept")
	}
	assert.Greater(t, kept, times/4)
	assert.Greater(t, coloured, times/4)
}

// A try finds the mitt half knitted, with a motif that ends in the gusset, counted from the
// end. The hand gets longer, so that the motif would now reach higher: what is knitted stays in
// its colours.
func TestATryLeavesTheColours(t *testing.T) {
	t.Parallel()
	pl := NewPlanner()
	d := Document{Name: "x", Side: Right, Sheet: Samples()[0].Sheet.Clone()}
	for key, text := range map[string]string{"motif": "bbb", "set": "centred", "gusset": "grow"} {
		d.Sheet[sheet.RepeatPath(0, key)] = text
	}
	plain := func(p *Planned, d Document, round int) bool {
		return p.Charts(d, nil).Dyed(stitch.Gusset, round) == nil
	}
	var p *Planned
	for to := -1; p == nil || !plain(p, d, 9); to-- {
		var err error
		d.Sheet[sheet.RepeatPath(0, "to")] = strconv.Itoa(to)
		p, err = pl.Plan(d.Effective())
		require.NoError(t, err)
	}
	require.False(t, plain(p, d, 4), "below it is coloured")
	at, ok := tryon.At(tryon.Places(p.Mitt()), stitch.Gusset, 9)
	require.True(t, ok)
	was := looksOf(p, d, Right, at)
	longer := []tryon.Correction{{Key: "hand", Edits: []tryon.Edit{{Path: "length.above_gusset", Text: "9"}}}}
	on, err := pl.Onward(d, tryon.Reading{Place: at}, Progress{Side: Left}, longer)
	require.NoError(t, err)
	require.NoError(t, on.Fault)
	bare := on.Next
	bare.Sheet = bare.Sheet.Clone()
	bare.Sheet.SetKnitted("right", nil)
	is, err := pl.Plan(bare.Effective())
	require.NoError(t, err)
	require.False(t, plain(is, bare, 9), "else the motif would reach it")
	is, err = pl.Plan(on.Next.Effective())
	require.NoError(t, err)
	assert.Equal(t, was, looksOf(is, on.Next, Right, at))
	assert.False(t, plain(is, on.Next, 10), "above, it is laid")
}

// readsBack holds the words of a mitt against its chart, by what they say alone.
func readsBack(t *testing.T, pl *Planner, d Document) {
	t.Helper()
	d.Sheet = d.Sheet.Clone()
	d.Sheet.SetProgress(nil, string(d.Side.Other()))
	out, err := pl.Derive(d, nil)
	require.NoError(t, err)
	if len(out.Unsound) > 0 {
		return
	}
	var b strings.Builder
	require.NoError(t, words.Write(&b, out.Words))
	read, err := readback.Read(b.String())
	require.NoError(t, err, "%v\n%s", d.Sheet, b.String())
	require.NoError(t, differs(read, out.Mitt), "%v\n%s", d.Sheet, b.String())
	require.NoError(t, dyedAlike(read, out), "%v\n%s", d.Sheet, b.String())
}
