package words

import (
	"fmt"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// joinsThumb returns what is done before the round that brings a thumb that was worked
// first into the hand.
func joinsThumb(r stitch.Round) string {
	text := "The next round joins the thumb: hold it beside the hand, both pointing the same way. "
	if r.Held() == 0 {
		return text + "Nothing waits for the gap: pull snug on both sides of it."
	}
	return text + "What waits for the gap waits side by side, the thumb’s against the hand’s."
}

// gapWaits returns how the gap beside a thumb that was worked first is taken up.
func (h Hands) gapWaits(s *stitch.Section) string {
	n := s.Finish.In() / 2
	return fmt.Sprintf("Put the thumb’s %s that %s for the gap on one needle, the hand’s %d on another. Their right sides are outside. Join the yarn%s.",
		Plural(n, "stitch"), waits(n), n, h.leaving(h.Tails.End))
}

func waits(n int) string {
	if n == 1 {
		return "waits"
	}
	return "wait"
}

// grafted returns how the gap is closed.
func grafted(s *stitch.Section) string {
	n := s.Finish.In() / 2
	return fmt.Sprintf("Graft the thumb’s %d to the hand’s %d. Or turn the mitt inside out and bind them off together, with a third needle. The tails close both corners.", n, n)
}

// thumbDown adds the reasons of a thumb that is worked first.
func (r *reasons) thumbDown() {
	p, t := r.p, &r.p.Thumb
	corners := "its count stays"
	switch d := t.Decreased; {
	case d > 0:
		corners = fmt.Sprintf("%d made at the corners", d)
	case d < 0:
		corners = fmt.Sprintf("%d decreased at the corners", -d)
	}
	r.add(mitt.ThumbStitches,
		fmt.Sprintf("thumb %s and %s room to move: %s. It ends with %d, of which %d join the hand; %s. The fabric is %s.",
			p.Hand.Thumb.With(r.u), r.length(p.Ease.ThumbAdded), r.near(t.Stitches, p.Gauge.Stitches), t.FirstRound, t.Held, corners, r.within(t.Stitches.N)))
	from := "its tip"
	if !t.Closed {
		from = "its edge"
	}
	r.add(mitt.ThumbRounds, fmt.Sprintf("%s from %s to the hand%s.", r.length(float64(t.Rounds)/p.Gauge.Rounds), from, thumbEnd(p)))
}

// brings says which round changes between the counts of cuff and hand. From the tip the
// first of a part is the last, and the last the first.
func brings(p *mitt.Plan, which string) string {
	from, to := p.Cuff.Wrist.N, p.Body.Stitches.N
	if p.Down() {
		from, to = to, from
		which = strings.NewReplacer("first", "last", "last", "first").Replace(which)
	}
	return fmt.Sprintf("%s brings %d to %d stitches, spread evenly.", which, from, to)
}
