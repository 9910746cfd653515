package words

import (
	"fmt"

	"thenar/internal/mitt"
)

// Top returns in which rounds a top decreases, and how, with its counts.
func Top(t *mitt.Top) string {
	if t.Step > 0 {
		return Schedule(t.DecreaseRounds, t.Stitches, t.End, -t.Step, t.Rounds)
	}
	if len(t.DecreaseRounds) == 0 {
		return Schedule(nil, t.Stitches, t.End, -1, t.Rounds)
	}
	return fmt.Sprintf("K2tog all round in %s, %d → %d stitches.", Ranges(t.DecreaseRounds), t.Stitches, t.End)
}

// topWhy says what shape a top has, and how it ends.
func topWhy(p *mitt.Plan) string {
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
	return Top(p.Top) + " " + shape
}
