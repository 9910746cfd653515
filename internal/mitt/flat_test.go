package mitt

import (
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// inRows makes a request flat, with the fixed numbers that rows can have.
func inRows(r *Request) {
	r.Make.Flat = true
	for _, n := range fixable {
		switch pin := r.Pins.Pin(n); {
		case pin == nil || !pin.On:
		case n.Measure() == InRounds:
			pin.N += pin.N % 2
		case n.Measure() == AtRounds:
			pin.N = toAndFro.shaped(pin.N)
		}
	}
	for i := range r.Pins.Rhythm {
		r.Pins.Rhythm[i] = toAndFro.up(r.Pins.Rhythm[i])
	}
	if list := slices.Clone(r.Pins.IncreaseRounds); len(list) > 0 {
		for i := range list {
			list[i] = toAndFro.shaped(list[i])
		}
		r.Pins.IncreaseRounds = slices.Compact(list)
	}
}

// shapes reports whether a row makes or takes off stitches, or parts some off.
func shapes(r stitch.Round) bool {
	return slices.ContainsFunc(r.Ops, func(o stitch.Op) bool { return o.In() != 1 || o.Out() != 1 })
}

// Random hands in rows, every kind, cuff, top, increase and place: the ledger is sound on
// both hands and the mirror's mirror is the piece itself; each part has an even number
// of rows, begun on the right side; only odd rows are shaped; both edges are plain
// stitches, which the seam takes; a top has two rows for each decrease, and a thumb's
// corners are decreased in rows 3 and 5 (engine of the project; common practice, no
// source).
func TestFlatPieces(t *testing.T) {
	rng, pl, made := rand.New(rand.NewPCG(23, 13)), New(), map[stitch.Part]int{}
	corners := map[int]int{}
	for range testenv.Cases(600, 6_000) {
		r := likely(rng)
		if rng.IntN(4) == 0 && r.Kind.info().parts {
			r.Pins.ThumbDecreases = Fix(rng.IntN(5))
		}
		if rng.IntN(6) == 0 {
			r.Pins.CuffPlainRounds = Fix(0)
		}
		if rng.IntN(3) == 0 && r.Make.Construction != Straight && r.Make.Construction != Slit {
			r.Make.Direction, r.Make.Increase = Down, ""
		}
		inRows(r)
		p, err := pl.Plan(r)
		if err != nil {
			continue
		}
		m := p.Mitt()
		require.Empty(t, stitch.Ledger(m), "%+v", r)
		left := stitch.Mirror(m)
		require.Empty(t, stitch.Ledger(left), "%+v", r)
		require.True(t, reflect.DeepEqual(m, stitch.Mirror(left)), "%+v", r)
		edge := m.Sections[0].CastOn
		if p.Down() {
			edge = m.Section(stitch.Cuff).Finish.In()
		}
		require.Equal(t, p.Cuff.CastOn.N+2, edge)
		for _, s := range m.Sections {
			if s.Part == stitch.Gap {
				continue
			}
			made[s.Part]++
			require.Zero(t, len(s.Rounds)%2, "%s: %+v", s.Part, r)
			require.Equal(t, 1, s.Seam)
			for i, row := range s.Rounds {
				require.Equal(t, i%2 == 0, row.Side == stitch.RightSide, "%s, row %d", s.Part, i+1)
				require.True(t, i%2 == 0 || !shapes(row), "%s, row %d: %v of %+v", s.Part, i+1, row.Ops, r)
				for _, edge := range []stitch.Op{row.Ops[0], row.Ops[len(row.Ops)-1]} {
					require.True(t, slices.Contains([]stitch.Op{stitch.Knit, stitch.Purl, stitch.JoinHem, stitch.PickUp, stitch.CastOn}, edge), "%s, row %d: %+v", s.Part, i+1, r)
				}
			}
		}
		if p.Top != nil {
			require.GreaterOrEqual(t, p.Top.Rounds, 2*len(p.Top.DecreaseRounds), "%+v", r)
		}
		if list := p.Thumb.DecreaseRounds; len(list) > 0 && !p.Down() {
			require.Equal(t, []int{3, 5}[:len(list)], list, "%+v", r)
			corners[p.Thumb.Decreased]++
		}
	}
	for part, n := range made {
		assert.Greater(t, n, 20, "%s", part)
	}
	assert.Len(t, corners, 4)
	t.Logf("planned %v, corners %v", made, corners)
}

// What is knitted in rows stays, row for row, whatever changes after it.
func TestWorkedRowsStay(t *testing.T) {
	workedStays(t, testenv.Cases(600, 6_000), inRows, fingersOnly...)
}

// Whatever is knitted, a try that changes nothing changes no row.
func TestRowsWorkedAsPlanned(t *testing.T) { asPlanned(t, testenv.Cases(20, 200), inRows) }

// What is written of rows that are knitted may be wrong in any number.
func TestAnyRowsWorked(t *testing.T) { workedAnything(t, testenv.Cases(1_000, 10_000), inRows) }

// Worked by hand: 44 stitches round the hand of which 3 are the base leave 20 for the
// palm and 21 for the back; with an edge stitch at both ends a right hand's row is 22,
// the gusset, 21; a left hand's is 21, the gusset, 22. The thumb's 4 picked up are two at
// both sides of the held, and one more at each edge.
func TestARowBeginsAtTheSeam(t *testing.T) {
	r := adult(Pins{})
	r.Make.Flat = true
	p, err := New().Plan(r)
	require.NoError(t, err)
	m := p.Mitt()
	left := stitch.Mirror(m)
	for part, c := range map[stitch.Part]struct{ before, after int }{stitch.Gusset: {22, 21}, stitch.Hand: {22, 21}} {
		row := m.Section(part).Rounds[0]
		assert.Equal(t, c.before, row.Before, "%s", part)
		assert.Equal(t, c.after, len(row.Ops)-row.Before-row.Lead, "%s", part)
		assert.Equal(t, c.after, left.Section(part).Rounds[0].Before, "%s", part)
	}
	first := m.Section(stitch.Thumb).Rounds[0].Ops
	assert.Equal(t, typed(t, "pick3 gapk2tog k13 gapssk pick3").Ops, first)
}

// Worked by hand: 48 stitches are 24 of the palm and 24 of the back. The thumb's 9 lie 1
// stitch onto the palm, so that a right hand's row is the edge and 25, the 9, and the 14
// that are left with the other edge. Taken out, the waste yarn frees 8 above, half of
// them on both sides of the thumb's seam, where a stitch is cast on at each edge. Of 7
// above the right hand's row begins with 4 and ends with 3, the left hand's the other way.
func TestAThumbOnWasteYarnInRows(t *testing.T) {
	for _, kind := range []Kind{Fingerless, Mitten} {
		r := straightRequest(kind)
		r.Make.Flat = true
		m := must(t, r).Mitt()
		left := stitch.Mirror(m)
		first := m.Section(stitch.Hand).Rounds[0]
		assert.Equal(t, slices.Concat(typed(t, "k26").Ops, times(nil, stitch.Waste, 9), typed(t, "k15").Ops), first.Ops)
		assert.Equal(t, stitch.RightSide, first.Side)
		assert.Equal(t, 26, m.Section(stitch.BelowThumb).Rounds[0].Before)
		assert.Equal(t, 15, left.Section(stitch.BelowThumb).Rounds[0].Before)
		thumb := m.Section(stitch.Thumb)
		assert.Equal(t, typed(t, "co k4 cornerm1 k9 cornerm1 k4 co").Ops, thumb.Rounds[0].Ops)
		assert.Equal(t, []int{4, 4}, []int{thumb.Shift, thumb.Across})
		assert.Equal(t, typed(t, "k13 ssk k6").Ops, thumb.Rounds[2].Ops)

		r.Pins.Held = Fix(8)
		m = must(t, r).Mitt()
		require.Empty(t, stitch.Ledger(m))
		thumb, other := m.Section(stitch.Thumb), stitch.Mirror(m).Section(stitch.Thumb)
		assert.Equal(t, typed(t, "co k4 cornerm1 k8 cornerm1 k3 co").Ops, thumb.Rounds[0].Ops)
		assert.Equal(t, typed(t, "co k3 cornerm1 k8 cornerm1 k4 co").Ops, other.Rounds[0].Ops)
		assert.Equal(t, []int{3, 4}, []int{thumb.Shift, other.Shift}, "the loops that its row ends with")
	}
}

// From the fingertips the same row begins with the palm: 21, the gusset, 22. The thumb's 3
// for the gap stand at both its edges, two and one, and its seam's two beside them.
func TestARowFromTheTipBeginsAtTheSeam(t *testing.T) {
	r := adult(Pins{})
	r.Make.Flat, r.Make.Direction = true, Down
	p, err := New().Plan(r)
	require.NoError(t, err)
	m := p.Mitt()
	row := m.Section(stitch.Gusset).Rounds[0]
	assert.Equal(t, []int{21, 15, 22}, []int{row.Before, row.LeadIn(), len(row.Ops) - row.Before - row.Lead})
	hand := m.Section(stitch.Hand).Rounds
	assert.Equal(t, typed(t, "k21 hold3 take15 k22").Ops, hand[len(hand)-2].Ops, "the join, on the right side")
	assert.Equal(t, typed(t, "k58").Ops, hand[len(hand)-1].Ops)
	assert.Equal(t, typed(t, "bo hold18 bo").Ops, m.Section(stitch.Thumb).Finish.Ops)
	gap := make([]int, 0, 3)
	for i, set := range m.Section(stitch.Thumb).Finish.Aside {
		if set == stitch.GapOfThumb {
			gap = append(gap, i)
		}
	}
	assert.Equal(t, []int{1, 2, 18}, gap)
}

// Worked by hand: of six rows each pair changes its place with another and keeps its order;
// of six rounds each does by itself. Doing it twice leaves all in place.
func TestTheOtherWayUp(t *testing.T) {
	rows, rounds := make([]int, 0, 6), make([]int, 0, 6)
	for r := 1; r <= 6; r++ {
		rows, rounds = append(rows, toAndFro.turned(6, r)), append(rounds, allRound.turned(6, r))
		assert.Equal(t, r, toAndFro.turned(6, toAndFro.turned(6, r)))
		assert.Equal(t, r, allRound.turned(6, allRound.turned(6, r)))
	}
	assert.Equal(t, []int{5, 6, 3, 4, 1, 2}, rows)
	assert.Equal(t, []int{6, 5, 4, 3, 2, 1}, rounds)
	assert.Equal(t, []int{1, 3}, toAndFro.fromEnd(6, []int{3, 5}))
}

// A hem from the hand, flat: the rows outside, the purled one that turns it, then those of
// its facing, whichever side faces at the turn.
func TestFlatHemFromTheHand(t *testing.T) {
	seen := map[int]bool{}
	for depth := 12; depth <= 30; depth += 3 {
		r := cuffed(Fingerless, HemCuff)
		r.Make.Flat, r.Make.Direction, r.Make.CuffDepth = true, Down, units.FromMM(float64(depth))
		p := must(t, r)
		seen[p.Cuff.Facing%2] = true
		for i, row := range p.Mitt().Section(stitch.Cuff).Rounds {
			want := "k"
			if i == p.Cuff.Rounds-p.Cuff.Facing-1 {
				want = "p"
			}
			assert.Equal(t, want, one(row), "row %d of %d, %d inside", i+1, p.Cuff.Rounds, p.Cuff.Facing)
		}
	}
	assert.Len(t, seen, 2)
}
