package mitt

import (
	"slices"

	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// times appends n of an operation.
func times(ops []stitch.Op, op stitch.Op, n int) []stitch.Op {
	ops = slices.Grow(ops, max(n, 0))
	for range n {
		ops = append(ops, op)
	}
	return ops
}

// ribbing is n stitches of rib: knits, then purls, over and over.
func ribbing(n, rib int) []stitch.Op {
	knits, _ := ribPattern(rib)
	ops := make([]stitch.Op, n)
	for i := range ops {
		ops[i] = stitch.Knit
		if i%rib >= knits {
			ops[i] = stitch.Purl
		}
	}
	return ops
}

// ribPattern is the rib over its multiple: knits first, then purls. A
// multiple of 1 is no rib but stocking stitch.
func ribPattern(rib int) (knits, purls int) {
	return rib - rib/2, rib / 2
}

// spread spreads a part's change of count over a round as it is knitted, or,
// where it is not yet, by the rule of now.
func (p *Plan) spread(part stitch.Part, ops []stitch.Op, change int) []stitch.Op {
	return spreadOver(ops, change, p.turned(part))
}

// spread changes the count of a round by change stitches, evenly: M1 after
// each run of stitches to increase, k2tog after it to decrease. The places are
// turned by half a run, so that the last one is not beside the beginning of
// the round: of the first run, the longest, the half is left to the end. The
// change is at most a stitch for every stitch, or for every two to decrease;
// check has seen to that.
func spread(ops []stitch.Op, change int) []stitch.Op { return spreadOver(ops, change, true) }

// spreadOver spreads a change; turned, or by the earlier rule from the
// beginning of the round.
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
