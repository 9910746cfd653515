package words

import (
	"fmt"

	"thenar/internal/mitt"
)

// Top returns in which rounds a top decreases, and how, with its counts; from the tip,
// in which it grows.
func Top(p *mitt.Plan) string {
	t := p.Top
	if p.Down() {
		return topDown(t, p.FromBase(t.Rounds, t.DecreaseRounds))
	}
	if t.Step > 0 {
		return Schedule(t.DecreaseRounds, t.Stitches, t.End, -t.Step, t.Rounds)
	}
	if len(t.DecreaseRounds) == 0 {
		return Schedule(nil, t.Stitches, t.End, -1, t.Rounds)
	}
	return fmt.Sprintf("K2tog all round in %s, %d → %s.", Ranges(t.DecreaseRounds), t.Stitches, Plural(t.End, "stitch"))
}

// topDown returns in which rounds, counted as they are worked, a top grows from the tip.
func topDown(t *mitt.Top, rounds []int) string {
	if t.Step > 0 || len(rounds) == 0 {
		return Schedule(rounds, t.End, t.Stitches, max(t.Step, 1), t.Rounds)
	}
	return fmt.Sprintf("Doubled all round in %s, %d → %d stitches.", Ranges(rounds), t.End, t.Stitches)
}

// topWhy says what shape a top has, and how it ends.
func topWhy(p *mitt.Plan) string {
	if p.Down() {
		return Top(p) + " " + topDownWhy(p)
	}
	shape := "A rounded tip: slowly at first, then every round."
	switch p.Make.Top {
	case mitt.PointedTop:
		shape = "A point: every 2nd round, in a straight line."
	case mitt.BandedTop:
		shape = "A rounded tip between two bands: slowly at first, then every round."
	case mitt.WedgesTop:
		shape = fmt.Sprintf("%d equal wedges: every 2nd round, then every round.", p.Top.Step)
	case mitt.GatheredTop:
		shape = "Gathered: halved, and halved again while more than ten are left."
	}
	return Top(p) + " " + shape
}

// topDownWhy says the same of a top that is worked from the tip.
func topDownWhy(p *mitt.Plan) string {
	switch p.Make.Top {
	case mitt.PointedTop:
		return "A point: every 2nd round, in a straight line."
	case mitt.BandedTop:
		return "A rounded tip between two bands: every round at first, then more slowly."
	case mitt.WedgesTop:
		return fmt.Sprintf("%d equal wedges: every round at first, then every 2nd.", p.Top.Step)
	case mitt.GatheredTop:
		return "Gathered: doubled, and doubled again."
	}
	return "A rounded tip: every round at first, then more slowly."
}
