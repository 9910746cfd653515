package mitt

import (
	"math"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/shaping"
	"thenar/internal/stitch"
)

// ending is how a top closes n stitches (common practice, no source).
type ending struct {
	even int // stitches that the round before it takes off
	n    int // stitches before its first round
	step int // stitches that a decrease round takes off; 0: it halves them
	end  int // stitches left to draw up or graft
	k    int // decrease rounds
}

// The least end of a top with two side lines, the usual width of a band and number of
// wedges, and about how many stitches wedges and a gathered top leave.
const (
	TopEnd       = 8
	usualBand    = 3
	usualWedges  = 4
	fewestLeft   = 10
	sideStitches = 2 // decreased beside a side line
)

// closes returns how a top of this kind closes n stitches.
//
// Rounded, pointed and banded tops take off four in a decrease round, two at each side
// line or band, down to an end of 8 + (n mod 4), more for a wide band; an odd stitch
// goes in the round before. Wedges take off one each, once the round before has made
// them equal, down to about ten in all. A gathered top is halved while more than ten
// are left.
func (m *Make) closes(n int) ending {
	switch m.Top {
	case WedgesTop:
		k := m.WedgeCount()
		c := ending{even: n % k, step: k, end: k * max(1, fewestLeft/k)}
		c.n = n - c.even
		if c.n <= c.end {
			return ending{n: n, end: n}
		}
		c.k = (c.n - c.end) / k
		return c
	case GatheredTop:
		c := ending{n: n, end: n}
		for ; c.end > fewestLeft; c.k++ {
			c.end = (c.end + 1) / 2
		}
		return c
	}
	c := ending{even: n % 2, n: n - n%2, step: 4}
	least := TopEnd
	if m.Top == BandedTop {
		least = max(least, 2*(m.BandStitches()+sideStitches))
	}
	if c.end = least + (c.n-least)%4; c.n < least+4 {
		c.end = c.n
	}
	c.k = (c.n - c.end) / c.step
	return c
}

// top plans the top of a mitten. A rounded or banded one narrows slowly at first and
// then ever faster (common practice, no source): with n stitches, K decrease rounds and
// R rounds
//
//	R = nearest to max(q(0.19 L + 5 mm), 1.5 K)
//	T(r) = n + (end − n)·x^1.5 − 2,  x = (r − ½)/R
//
// A pointed one decreases every 2nd round along a straight line, wedges every 2nd round
// and then every round, so that R is nearest to q(0.19 L + 5 mm); a gathered one is
// halved every 2nd round. What is left of the hand's length plus 5 mm, less the top, is
// worked plain. So is a round that would stand between the last decrease and drawing up.
func (d *draft) top(pl *Planner) error {
	p := &d.plan
	c := d.req.Make.closes(p.Bridge.HandAfter)
	if c.n < 1 {
		return d.nothingToClose()
	}
	top := &Top{Stitches: c.n, Odd: c.even, End: c.end, Step: c.step}
	top.Rounds = max(d.pins.TopRounds.Or(d.topRounds(c)), d.topLeast(c.k))
	if d.progress.past(stitch.Top) {
		top.Rounds = d.progress.TopRounds
	}
	p.Top = top
	if k := d.progress; k != nil && k.Down && k.begun(stitch.Top) {
		top.DecreaseRounds = k.Decreases
	} else if c.k > 0 {
		found, err := d.topOnward(pl, d.topProblem(pl, c))
		if err != nil {
			return fault.Fields{{Path: "hand.hand_length", Message: err.Error()}}
		}
		top.DecreaseRounds, top.Cost = found.Rounds, found.Cost.Float()
		if !d.pins.TopRounds.On && !d.progress.past(stitch.Top) {
			top.Rounds = d.req.Make.pace().up(max(last(found.Rounds), d.progress.in(stitch.Top)))
		}
	}
	d.roundsBelowTop(top)
	return nil
}

// nothingToClose refuses a top of a hand that has parted with nearly all of its stitches,
// at what may leave it more.
func (d *draft) nothingToClose() error {
	path := hand.FieldCircumference
	for _, n := range []Number{BridgeStitches, GussetBase, HandStitches} {
		if d.pins.Pin(n).On {
			path = n.Path()
			break
		}
	}
	var faults fault.Fields
	works(&faults, path, "", "leaves fewer than 2 stitches above the thumb, too few for a top")
	return faults
}

// TopLength returns the length in mm of a rounded top, for a hand of length l (common
// practice, no source).
func TopLength(l float64) float64 { return 0.19*l + 5 }

// TopRounded reports whether a top follows the line of the finger tips: slowly at first,
// then ever faster.
func (m *Make) TopRounded() bool {
	kind := or(m.Top, RoundedTop)
	return kind == RoundedTop || kind == BandedTop
}

// topRounds returns the number of rounds of a top when none is fixed.
func (d *draft) topRounds(c ending) int {
	wish, pace := d.q*d.len.top, d.req.Make.pace()
	switch d.req.Make.Top {
	case PointedTop, GatheredTop:
		return pace.up(max(1, 2*c.k-1))
	case WedgesTop:
		return min(max(pace.nearest(wish), pace.takes(c.k)), pace.up(max(1, pace.takes(2*c.k-1))))
	}
	return max(pace.nearest(max(wish, 1.5*float64(c.k))), pace.takes(c.k))
}

// topProblem returns what the solver is asked for a top. Where the kind of top says in
// which rounds it decreases, the target is just that.
func (d *draft) topProblem(pl *Planner, c ending) shaping.Problem {
	rounds := d.plan.Top.Rounds
	p := shaping.Problem{From: c.n, To: c.end, Step: -c.step, Rounds: rounds, Gap: topGap, Lambda: DefaultLambda * 1000, Quicken: true, Only: d.req.Make.pace().only()}
	pl.target = pl.target[:0]
	if d.req.Make.TopRounded() {
		for r := 1; r <= rounds; r++ {
			x := (float64(r) - 0.5) / float64(rounds)
			t := float64(c.n) + float64(c.end-c.n)*math.Pow(x, 1.5) - 2
			pl.target = append(pl.target, int64(math.Round(t*10_000)))
		}
	} else {
		p.From, p.To, p.Step, p.Lambda = c.k, 0, -1, 0 // the changes still to come
		pace := d.req.Make.pace()
		ideal, left := slower(c.k, rounds/int(pace)), c.k
		for r := 1; r <= rounds; r++ {
			if r == pace.shaped(r) && slices.Contains(ideal, pace.shapings(0, r)) {
				left--
			}
			pl.target = append(pl.target, int64(left)*10_000)
		}
	}
	p.Target = pl.target
	return p
}

// slower returns k rounds of so many, the last among them: every 2nd round as long as
// there is room, then every round.
func slower(k, rounds int) []int {
	list := make([]int, k)
	twos := min(max(rounds-k, 0), k-1)
	at := rounds - (k - 1) - twos
	for i := range list {
		if list[i] = at; i < twos {
			at++
		}
		at++
	}
	return list
}

// topOnward solves a top of which some rounds may be knitted. If those rounds
// are how the best schedule of the whole top begins, that schedule stays:
// solved anew from the present round, its first interval might grow.
func (d *draft) topOnward(pl *Planner, problem shaping.Problem) (shaping.Schedule, error) {
	dst := make([]int, 0, problem.Changes())
	found, err := pl.solver.Solve(&problem, dst)
	if !d.progress.begun(stitch.Top) {
		return found, err
	}
	problem.Worked, problem.Changed = d.topWorked(), d.progress.changed(stitch.Top, d.progress.Decreases)
	done := problem.Changed
	if err == nil && len(done) <= len(found.Rounds) && slices.Equal(done, found.Rounds[:len(done)]) &&
		(len(done) == len(found.Rounds) || found.Rounds[len(done)] > problem.Worked) {
		return found, nil
	}
	return pl.solver.Solve(&problem, dst)
}

// roundsBelowTop sets the number of rounds between division and top. There is
// at least the division round, and by default a second one if stitches must be taken
// off first. Without a thumb nothing is divided, so one round is enough and takes off
// those, too.
func (d *draft) roundsBelowTop(top *Top) {
	pace := d.req.Make.pace()
	rounds := nearestIn(d.q*d.len.above, int(pace), 0) - top.Rounds
	if given := d.req.Lengths.AboveGusset; given != 0 {
		rounds = pace.nearest(d.q * given.MM())
	}
	least, evens := int(pace), pace.takes(boolInt(top.Odd > 0))
	if d.plan.Parted() {
		least += evens
	}
	above := d.pins.RoundsAboveGusset.Or(max(least, rounds))
	switch k := d.progress; {
	case k != nil && k.Down:
		if !k.handDone() {
			above = max(above, k.handLeast())
		}
	case k.past(stitch.Hand), k.in(stitch.Hand) >= k.lastOfHand()-pace.rest() && k.begun(stitch.Hand) && evens > 0:
		above = k.RoundsAbove
	default:
		above = pace.up(max(above, k.in(stitch.Hand)+boolInt(k.begun(stitch.Hand))*evens))
	}
	d.plan.Body.RoundsAbove = above
}

// topFits refuses a fixed number of rounds in which the top can't be closed.
func (d *draft) topFits() error {
	n, pin := d.plan.Body.Stitches.N, d.pins.TopRounds
	takes := func(n int) int { return d.req.Make.pace().takes(d.req.Make.closes(n).k) }
	needs := takes(n)
	if !pin.On || pin.N >= needs {
		return nil
	}
	var faults fault.Fields
	works(&faults, TopRounds.Path(), Fix(needs).text(), "is %d; %d stitches close in no fewer than %d rounds", pin.N, n, needs)
	if d.pins.HandStitches.On {
		most := n
		for takes(most) > pin.N {
			most--
		}
		works(&faults, HandStitches.Path(), Fix(most).text(), "is %d; in %d rounds of the top at most %d stitches close", n, pin.N, most)
	}
	return faults
}

// BandStitches returns the stitches of the band between the two decreases of a side; 0
// if the top has none.
func (m *Make) BandStitches() int {
	if m.Top != BandedTop {
		return 0
	}
	return m.Band.Or(usualBand)
}

// WedgeCount returns how many wedges the top has; 0 if it has none.
func (m *Make) WedgeCount() int {
	if m.Top != WedgesTop {
		return 0
	}
	return m.Wedges.Or(usualWedges)
}
