package mitt

import (
	"math/rand/v2"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
)

// What a section goes on with lies on the needles where its first round works it, on both
// hands: the columns that the section before left, from where the round now begins. The
// names of a left hand's columns are those of the right hand's operations, so they alone
// say nothing of where its round begins.
func TestEveryRoundGoesOnWhereItsColumnsLie(t *testing.T) {
	rng := rand.New(rand.NewPCG(24, 11))
	pl := New()
	looked, inset := 0, 0
	for i := range testenv.Cases(500, 8000) {
		r := likely(rng)
		if i%4 > 0 {
			gloved(rng, r)
		}
		p, err := pl.Plan(r)
		if err != nil || p.Make.Flat || p.Down() || !p.Parted() { // both hands wear the same mitt
			continue
		}
		m := p.Mitt()
		requireGoesOn(t, m, wale.Mitt(m, p.UnderThumb()), r)
		requireGoesOn(t, stitch.Mirror(m), wale.Mirror(m, p.UnderThumb()), r)
		if looked++; p.Fingered() {
			requireSides(t, p, m, wale.Mitt(m, p.UnderThumb()), false, r)
			requireSides(t, p, stitch.Mirror(m), wale.Mirror(m, p.UnderThumb()), true, r)
			if p.Gusset.Inset > 0 {
				inset++
			}
		}
	}
	t.Logf("looked at %d, of them %d gloves with a thumb that is set in", looked, inset)
	require.Greater(t, inset, looked/8)
}

// requireGoesOn compares the columns of each section's first round with what lies on the
// needles.
func requireGoesOn(t *testing.T, m stitch.Mitt, names wale.Names, about any) {
	t.Helper()
	for i := range m.Sections {
		s := &m.Sections[i]
		if i == 0 || len(s.From) > 0 || s.CastOn > 0 || len(s.Rounds) == 0 || s.Part.Marked() || s.Rounds[0].Even {
			continue
		}
		under := &m.Sections[i-1]
		last := under.Rounds[len(under.Rounds)-1]
		spread := slices.ContainsFunc(under.Rounds, func(r stitch.Round) bool { return r.Even && r.In() != r.Out() })
		if under.Part.Passing() || spread || last.Out() != s.Rounds[0].In() {
			continue // its columns are numbered anew, or were counted from the other end
		}
		var lie, worked []string
		for k, op := range last.Ops {
			if op.Out() == 1 {
				lie = append(lie, names[under.Part][len(under.Rounds)-1][k])
			}
		}
		at := ((s.Shift % len(lie)) + len(lie)) % len(lie)
		lie = slices.Concat(lie[at:], lie[:at])
		for k, op := range s.Rounds[0].Ops {
			switch op.In() {
			case 1:
				worked = append(worked, names[s.Part][0][k])
			case 2: // one of the two goes on
				require.Contains(t, lie[len(worked):len(worked)+2], names[s.Part][0][k], "%s: %+v", s.Part, about)
				worked = append(worked, lie[len(worked):len(worked)+2]...)
			}
		}
		require.Equal(t, lie, worked, "%s: %+v", s.Part, about)
	}
}

// requireSides asks that the fingers have the palm's columns for their palm and the back's
// for their back: what lies beside the thumb on the palm's side is in the palm of one.
func requireSides(t *testing.T, p *Plan, m stitch.Mitt, names wale.Names, left bool, about any) {
	t.Helper()
	var palm []string
	for i, part := range fingerParts {
		s := m.Section(part)
		r, own := &s.Rounds[0], []string(nil)
		for k, op := range r.Ops {
			if op != stitch.Hold && op != stitch.CastOn && (k >= r.Lead || part == stitch.Little) {
				own = append(own, names[part][0][k])
			}
		}
		f := &p.Fingers.Each[i]
		require.Len(t, own, f.Palm+f.Back, "%s: %+v", part, about)
		if first := left != (part == stitch.Little); first {
			palm = append(palm, own[:f.Palm]...)
		} else {
			palm = append(palm, own[f.Back:]...)
		}
	}
	hand := names[stitch.Hand][len(names[stitch.Hand])-1]
	n, c := len(hand), p.bridgeWidth()
	bridge, rest := hand[:c], hand[c:]
	if left {
		rest = slices.Clone(rest)
		slices.Reverse(rest)
	}
	// From here on as a right hand's round: the thumb, the palm, the back.
	if p.Make.Place == InPalm || !p.Gusseted() {
		in := p.Gusset.Inset
		want := slices.Concat(bridge, rest[:n/2-c-in], rest[n-c-in:])
		require.ElementsMatch(t, want, palm, "%+v", about)
		return
	}
	require.Subset(t, palm, rest[:(n-c)/2], "%+v", about)
	for _, back := range rest[(n-c)/2:] {
		require.NotContains(t, palm, back, "%+v", about)
	}
}
