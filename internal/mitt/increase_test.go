package mitt

import (
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// withBase is an adult's fingerless mitt with a base of b stitches, grown in a way.
func withBase(b int, how Increase) *Request {
	r := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	r.Make.Increase, r.Pins.GussetBase = how, Fix(b)
	return r
}

// blocks returns the gusset's part of the first rounds of a plan's gusset.
func blocks(p *Plan, n int) [][]stitch.Op {
	var list [][]stitch.Op
	for _, r := range p.GussetRounds(p.Gusset.Rounds.N, p.Gusset.IncreaseRounds)[:n] {
		list = append(list, r.Ops[:r.Lead])
	}
	return list
}

// The rounds of each way to grow, typed from how the trade works them (common
// practice; that a lifted increase is made of the stitch below, from the Craft Yarn
// Council's list, from memory).
func TestIncreaseRounds(t *testing.T) {
	for _, c := range []struct {
		how    Increase
		base   int
		one    bool
		rounds []string // 1, 2 and that of the second increase
	}{
		{"", 3, false, []string{"k m1l k m1r k", "k5", "k m1l k3 m1r k"}},
		{MakeOne, 1, false, []string{"m1l k m1r", "k3", "k m1l k m1r k"}},
		{MakeOne, 2, false, []string{"m1l k2 m1r", "k4", "k m1l k2 m1r k"}},
		{MakeOne, 3, true, []string{"k m1l k2", "k4", "k m1l k3"}},
		{Lifted, 3, false, []string{"k lli k rli k", "k5", "k lli k3 rli k"}},
		{Lifted, 4, false, []string{"k lli k2 rli k", "k6", "k lli k4 rli k"}},
		{Lifted, 1, false, []string{"rli k lli", "k3", "k lli k rli k"}},
		{Lifted, 2, false, []string{"rli k2 lli", "k4", "k lli k2 rli k"}},
		{Lifted, 2, true, []string{"k lli k", "k3", "k lli k2"}},
		{YoClosed, 3, false, []string{"k yo k yo k", "k ktbl k ktbl k", "k yo k3 yo k"}},
		{YoClosed, 1, false, []string{"yo k yo", "ktbl k ktbl", "k yo k yo k"}},
		{YoClosed, 3, true, []string{"k yo k2", "k ktbl k2", "k yo k3"}},
		{FrontAnd, 3, false, []string{"kfb kfb k", "k5", "kfb k2 kfb k"}},
		{FrontAnd, 5, false, []string{"kfb k2 kfb k", "k7", "kfb k4 kfb k"}},
		{FrontAnd, 4, true, []string{"kfb k3", "k5", "kfb k4"}},
		{InCentre, 1, false, []string{"m1r k m1l", "k3", "k m1r k m1l k"}},
		{InCentre, 3, false, []string{"k m1r k m1l k", "k5", "k2 m1r k m1l k2"}},
		{InCentre, 7, false, []string{"k3 m1r k m1l k3", "k9", "k4 m1r k m1l k4"}},
	} {
		t.Run(fmt.Sprint(c.how, c.base, c.one), func(t *testing.T) {
			r := withBase(c.base, c.how)
			r.Stitch.OneSided = c.one
			p := must(t, r)
			second := p.Gusset.IncreaseRounds[1]
			got := blocks(p, second)
			for i, at := range []int{1, 2, second} {
				assert.Equal(t, typed(t, c.rounds[i]).Ops, got[at-1], "round %d", at)
			}
			require.Greater(t, second, 2)
		})
	}
}

// Every way to grow, at both edges and at one, from a base of 1 to 8 stitches, of
// each kind, for random hands: it is refused at the field that is in the way, with
// the nearest base that works, or is sound on both hands, which mirror each other.
func TestEveryWayToGrow(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(23, 1))
	pl := New()
	ways, refusals := 0, 0
	for _, how := range []Increase{MakeOne, Lifted, YoClosed, FrontAnd, InCentre} {
		for _, one := range []bool{false, true} {
			for _, kind := range []Kind{Fingerless, Mitten} {
				for base := 0; base <= maxBase; base++ {
					refused := how == InCentre && (one || base != 0 && base%2 == 0) || how == FrontAnd && (base == 1 || base == 2)
					planned := 0
					for range testenv.Cases(3, 200) {
						r := likely(rng)
						r.Kind, r.Stitch.OneSided, r.Make.Increase, r.Make.Construction = kind, one, how, ByGusset
						if base > 0 {
							r.Pins.GussetBase, r.Make.Inset = Fix(base), Pin{} // a small palm has no room for any two
						}
						p, err := pl.Plan(r)
						if refused {
							requireRefused(t, pl, r, err)
							refusals++
							continue
						}
						require.NoError(t, err, "%+v", r)
						requireGrown(t, p)
						planned++
					}
					if planned > 0 {
						ways++
					}
				}
			}
		}
	}
	t.Logf("%d ways, %d refusals", ways, refusals)
	require.Equal(t, 2*(3*2*9+2*7+5), ways)
}

// requireRefused asks for a fault at the increase or the base, and that the nearest
// that it offers is planned.
func requireRefused(t *testing.T, pl *Planner, r *Request, err error) {
	t.Helper()
	var fields fault.Fields
	require.True(t, errors.As(err, &fields), "%+v", r)
	next := *r
	for _, f := range fields {
		switch f.Path {
		case PathIncrease:
			next.Make.Increase = Increase(f.Works)
		case GussetBase.Path():
			next.Pins.set(GussetBase, f.Works)
		default:
			t.Fatalf("%v", err)
		}
	}
	_, err = pl.Plan(&next)
	require.NoError(t, err, "%v is offered", fields)
}

// requireGrown asks that a gusset is sound on both hands, that every round is the
// other hand's in a mirror, and that its columns are named once, A and Z in equal
// numbers if it grows at both edges.
func requireGrown(t *testing.T, p *Plan) {
	t.Helper()
	m := p.Mitt()
	left := stitch.Mirror(m)
	require.Empty(t, stitch.Ledger(m))
	require.Empty(t, stitch.Ledger(left))
	require.Equal(t, m, stitch.Mirror(left))
	grow, list := p.Make.Increase.growth(), p.Gusset.IncreaseRounds
	for i := range list {
		require.True(t, i == 0 || list[i]-list[i-1] >= gussetGap)
	}
	require.LessOrEqual(t, list[len(list)-1], p.Gusset.Rounds.N-gussetLeadOut)
	require.True(t, grow.allows(p.Gusset.Base, p.Gusset.Kept))
	names := wale.Mitt(m, p.Gusset.Base)[stitch.Hand][0]
	of := map[byte]int{}
	seen := map[string]bool{}
	for _, name := range names {
		require.False(t, seen[name], "%s stands twice in %v", name, names)
		seen[name] = true
		of[name[0]]++
	}
	if p.Gusset.Step == 2 {
		require.Equal(t, p.Gusset.Increases, of[wale.First], "%v", names)
	}
	require.Equal(t, p.Gusset.Increases*(p.Gusset.Step-1), of[wale.Last], "%v", names)
	mirrored := wale.Mirror(m, p.Gusset.Base)[stitch.Gusset]
	for r, own := range wale.Mitt(m, p.Gusset.Base)[stitch.Gusset] {
		round := m.Section(stitch.Gusset).Rounds[r]
		if slices.Contains(round.Ops, stitch.KFB) {
			continue // its stitches are worked in neighbouring columns
		}
		want := slices.Clone(own)
		slices.Reverse(want[:round.Lead])
		slices.Reverse(want[round.Lead:])
		require.Equal(t, want, mirrored[r], "round %d", r+1)
	}
}

// Knit front and back is the same round on both hands where it is worked at both
// edges, as it is knitted in the trade; at one edge it goes to the other one.
func TestFrontAndBackOnBothHands(t *testing.T) {
	for _, one := range []bool{false, true} {
		r := withBase(3, FrontAnd)
		r.Stitch.OneSided = one
		p := must(t, r)
		left := stitch.Mirror(p.Mitt()).Section(stitch.Gusset).Rounds[0]
		want := "kfb kfb k"
		if one {
			want = "k kfb k"
		}
		assert.Equal(t, typed(t, want).Ops, left.Ops[:left.Lead])
	}
}

// A fixed list of increase rounds that can't be worked in a way is refused, with the
// nearest list that can.
func TestFixedListsOfIncreases(t *testing.T) {
	for _, c := range []struct {
		how   Increase
		list  []int
		works []int // nil: as it is
	}{
		{MakeOne, []int{1, 2, 4, 6, 8, 19}, nil},
		{FrontAnd, []int{1, 2, 4, 6, 8, 19}, nil},
		{InCentre, []int{1, 2, 4, 6, 8, 19}, nil},
		{Lifted, []int{1, 3, 5, 8, 10, 19}, nil},
		{Lifted, []int{1, 2, 4, 6, 8, 19}, []int{1, 3, 5, 7, 9, 18}},
		{YoClosed, []int{1, 3, 5, 8, 10, 18}, nil},
		{YoClosed, []int{1, 3, 5, 8, 10, 19}, []int{1, 3, 5, 8, 10, 18}},
		{YoClosed, []int{1, 4, 5, 8, 10, 12}, []int{1, 4, 6, 8, 10, 12}},
	} {
		r := withBase(3, c.how)
		r.Pins.GussetRounds, r.Pins.IncreaseRounds = Fix(19), c.list
		_, err := New().Plan(r)
		if c.works == nil {
			require.NoError(t, err, "%s %v", c.how, c.list)
			continue
		}
		var fields fault.Fields
		require.True(t, errors.As(err, &fields), "%s %v: %v", c.how, c.list, err)
		i := slices.IndexFunc(fields, func(f fault.Field) bool { return f.Path == IncreaseRounds.Path() })
		require.GreaterOrEqual(t, i, 0, "%v", err)
		assert.Equal(t, commas(c.works), fields[i].Works, "%s %v", c.how, c.list)
	}
}

// What is on the needles keeps its way; what isn't begun takes the new one.
func TestTheWayOfWhatIsKnittedStays(t *testing.T) {
	p := must(t, withBase(3, YoClosed))
	for _, at := range []struct {
		part  stitch.Part
		round int
		is    Increase
	}{{stitch.CuffPlain, 3, Lifted}, {stitch.Gusset, 1, YoClosed}, {stitch.Thumb, 2, YoClosed}} {
		next := withBase(3, Lifted)
		next.Progress = p.ProgressAt(at.part, at.round)
		again := must(t, next)
		assert.Equal(t, at.is, again.Make.Increase, "%v", at)
		if at.is == YoClosed {
			assert.Equal(t, p.Mitt().Section(stitch.Gusset), again.Mitt().Section(stitch.Gusset))
		}
	}
}
