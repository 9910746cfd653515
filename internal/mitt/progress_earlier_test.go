package mitt

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// earlierThumb is the work on a thumb as the earlier rule planned it: the
// edging over the nearest multiple of the rib, also a larger one, and the
// corners of an open thumb decreased in the rounds under the change to it.
// Nothing of what came later is written down.
func earlierThumb(p *Plan, rounds, edging, at int) *Progress {
	k := p.ProgressAt(stitch.Thumb, at)
	k.ThumbCorners, k.CuffRib, k.EdgingRib, k.ThumbRib = nil, 0, 0, 0
	k.Knits = 0
	k.CuffTurned, k.HandTurned, k.ThumbTurned = false, false, false
	k.ThumbRounds, k.ThumbEdging, k.ThumbEdged = rounds, edging, k.Thumb
	if edging > 0 {
		k.ThumbEdged = nearestIn(float64(k.Thumb), k.Rib, 0)
		if k.ThumbEdged == 0 || k.ThumbEdged > 2*k.Thumb {
			k.ThumbEdged = k.Thumb
		}
	}
	return k
}

// earlierRounds are the rounds of such a thumb.
func earlierRounds(p *Plan, k *Progress) []stitch.Round {
	n, left, change := p.Thumb.FirstRound, k.ThumbDecreases, k.ThumbEdged-k.Thumb
	rounds := []stitch.Round{p.pickUpRound()}
	plain, first := k.ThumbRounds-k.ThumbEdging, 2
	if k.TopRounds > 0 {
		plain = max(k.ThumbRounds-allRound.closing(k.Thumb), 1+decreaseRounds(left))
	} else if first = plain - decreaseRounds(left) + 1; change != 0 {
		first--
	}
	for r := 2; r <= k.ThumbRounds; r++ {
		ops := times(nil, stitch.Knit, n)
		switch {
		case r > plain && k.TopRounds > 0:
			if (r-plain)%2 == 1 {
				ops = halved(n).Ops
			}
		case r > plain:
			ops = Stitches{}.ribbing(n, k.Rib)
		case r >= first && left > 0:
			var round stitch.Round
			round, left = cornerRound(n, p.Thumb.PickedUp, p.Thumb.PickedUp, left)
			ops = round.Ops
		}
		if r == plain && change != 0 {
			ops = spreadOver(ops, change, false)
		}
		rounds = append(rounds, stitch.Round{Ops: ops})
		n = rounds[len(rounds)-1].Out()
	}
	return rounds
}

// A thumb that was begun by the earlier rule stays as it is knitted, at every
// round, and ends soundly by the rule of now. One of them is the thumb that was
// decreased and then made again: "k17, ssk (18)", then "(k9, M1) twice (20)".
func TestWorkedKeepsAThumbOfTheEarlierRule(t *testing.T) {
	pl := New()
	look := func(r *Request, rounds, edging int) (kept, made int) {
		p, err := pl.Plan(r)
		require.NoError(t, err)
		for at := 1; at <= rounds; at++ {
			k := earlierThumb(p, rounds, edging, at)
			was := earlierRounds(p, k)
			require.Len(t, was, rounds)
			on := *r
			on.Progress = k
			again, err := pl.Plan(&on)
			require.NoError(t, err, "at %d of %+v: %+v", at, k, r)
			require.Empty(t, stitch.Ledger(again.Mitt()), "at %d of %+v: %+v", at, k, r)
			now := again.Mitt().Section(stitch.Thumb).Rounds
			require.GreaterOrEqual(t, len(now), at)
			for i := range at {
				require.Equal(t, was[i].Ops, now[i].Ops, "round %d at %d of %+v: %+v", i+1, at, k, r)
				made += max(0, now[i].Out()-now[i].In()-boolInt(i == 0)*now[i].Out())
			}
			kept++
			next := *r // and so it stays once it is written down again
			next.Progress = again.ProgressAt(stitch.Thumb, at)
			third, err := pl.Plan(&next)
			require.NoError(t, err)
			require.Equal(t, again.Mitt(), third.Mitt(), "at %d of %+v", at, k)
		}
		return kept, made
	}
	adult := request(Fingerless, per10(24, 32), hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
	adult.Stitch.Rib = 4
	kept, made := look(adult, 14, 3)
	require.Equal(t, 14, kept)
	require.Positive(t, made, "18 were made into 20")

	rng := rand.New(rand.NewPCG(19, 9))
	for range testenv.Cases(30, 300) {
		r := likely(rng)
		r.Kind, r.Make.Construction = []Kind{Fingerless, Mitten}[rng.IntN(2)], ByGusset
		p, err := pl.Plan(r)
		require.NoError(t, err)
		edging := 0
		if r.Kind == Fingerless {
			edging = 1 + rng.IntN(4)
		}
		n, _ := look(r, p.Thumb.Rounds+edging+3, edging)
		kept += n
	}
	t.Logf("kept %d half-knitted thumbs", kept)
}
