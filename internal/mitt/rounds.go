package mitt

import (
	"slices"

	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// times appends n times an operation to ops.
func times(ops []stitch.Op, op stitch.Op, n int) []stitch.Op {
	from := len(ops)
	ops = slices.Grow(ops, max(n, 0))[:from+max(n, 0)]
	for i := from; i < len(ops); i++ {
		ops[i] = op
	}
	return ops
}

// knits are what all plain rounds share: a mitt has a hundred and more. Nobody writes
// into the operations of a round that is built; what changes one copies them.
var knits = times(nil, stitch.Knit, 256)

// allKnit returns the operations of a plain round of n stitches, for reading only.
func allKnit(n int) []stitch.Op {
	if n < 0 || n > len(knits) {
		return times(nil, stitch.Knit, n)
	}
	return knits[:n:n]
}

// spread spreads a part's change of count over a round: as it was knitted, or by
// the present rule if it isn't yet.
func (p *Plan) spread(part stitch.Part, ops []stitch.Op, change int) []stitch.Op {
	return spreadOver(ops, change, p.turned(part))
}

// spread changes the count of a round by change stitches, evenly: after each run
// of stitches comes an M1 to increase or a k2tog to decrease. The places are
// turned by half a run, so that the last one is not beside the beginning of the
// round: half of the first run, the longest, moves to the end. A round makes at
// most one stitch for each stitch, or takes off one of every two; earlier checks
// have refused more.
func spread(ops []stitch.Op, change int) []stitch.Op { return spreadOver(ops, change, true) }

// spreadOver spreads a change evenly over a round, turned by half a run or, by
// the earlier rule, not turned.
func spreadOver(ops []stitch.Op, change int, turned bool) []stitch.Op {
	if change == 0 {
		return ops
	}
	how := shaping.Spread{Stitches: len(ops), Events: change}
	if change < 0 {
		how.Events, how.Uses = -change, 2
	}
	runs, err := shaping.Evenly(how)
	if err != nil {
		panic("mitt: a change that check let pass: " + err.Error())
	}
	if turned {
		runs[0] -= runs[0] / 2
	}
	out := make([]stitch.Op, 0, len(ops)+max(change, 0))
	at := 0
	for _, run := range runs {
		out = append(out, ops[at:at+run]...)
		at += run
		if change > 0 {
			out = append(out, stitch.M1)
		} else {
			out = append(out, stitch.K2tog)
			at += 2
		}
	}
	return append(out, ops[at:]...)
}
