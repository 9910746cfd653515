// Package shaping finds the best schedule of increases or decreases over a
// number of rounds, exactly, and spreads them evenly over a round or row. It
// works with whole numbers and knows nothing of wool.
package shaping

// The largest numbers that a problem may have: far beyond anything knitted, and
// small enough to be solved in about a second and 100 MB at worst.
const (
	MaxRounds   = 2_000
	maxStitches = 1_000_000
	maxLambda   = 1_000_000_000 // thousandths
)

// targetScale is the number of units of Target in a stitch.
const targetScale = 10_000

// Problem asks for the rounds r₁ < … < r_K of K = (To − From)/Step changes
// (increases or decreases), from 1 + LeadIn to Rounds − LeadOut and at least Gap
// apart, that minimise
//
//	Σ_{r=1..R} (S(r) − T(r))² + λ · (changes among the intervals r₂ − r₁, …, r_K − r_{K−1})
//
// where S(r) = From + Step × (changes worked in rounds 1 … r).
type Problem struct {
	From, To, Step  int   // stitches before, stitches after, what one change makes; within ±1 000 000
	Rounds          int   // R, 1 … MaxRounds
	Gap             int   // from one change to the next, at least 1
	LeadIn, LeadOut int   // rounds without a change at the beginning and at the end, not negative
	Lambda          int64 // λ in 1/1000 stitch², 0 … 1 000 000 000
	First           int   // round of the first change; 0 leaves it free

	// Only says in which rounds a change may stand. Of intervals it leaves the even
	// ones, so that a Gap of 3 keeps changes 4 rounds apart.
	Only Parity

	// Quicken forbids an interval between two changes that is longer than the
	// interval before it.
	Quicken bool

	// Worked is the number of rounds already knitted, and Changed are the rounds
	// of the changes among them. These stay, even if they break Gap, Only or the leads;
	// all other changes are chosen above. Gap and λ hold between the last worked
	// change and the first chosen one. Quicken does not: knitting whose rhythm
	// broke it could not be finished otherwise.
	Worked  int
	Changed []int

	// Target is T(1) … T(R) in 1/10 000 stitch, within ±1 000 000 stitches. If
	// it is nil, T is the middle line of a staircase whose first step is in round
	// 1:
	//
	//	T(r) = From + (To − From)·(r − ½)/R + Step/2
	Target []int64
}

// Changes returns K, the number of changes. It is 0 if Step is 0, leads away
// from To or does not divide To − From.
func (p Problem) Changes() int {
	if p.Step == 0 || (p.To-p.From)%p.Step != 0 {
		return 0
	}
	return max((p.To-p.From)/p.Step, 0)
}

// earliestFirst returns the earliest slot of the first change.
func (p *Problem) earliestFirst() int {
	if p.First != 0 {
		return p.slotFrom(p.First)
	}
	return p.slotFrom(1 + p.LeadIn)
}

// latestLast returns the latest slot of the last change.
func (p *Problem) latestLast() int { return p.slotUpTo(p.Rounds - p.LeadOut) }

// earliestNext returns the earliest slot of the first change to be chosen.
func (p *Problem) earliestNext() int {
	from := max(p.earliestFirst(), p.slotFrom(p.Worked+1))
	n := len(p.Changed)
	if n == 0 {
		return from
	}
	gap := p.Gap
	if p.offBeat() && p.Quicken && n+1 < p.Changes() {
		gap = p.stride() * p.gap() // the interval after it must not be longer
	}
	return max(from, p.slotFrom(p.Changed[n-1]+gap))
}

// origin returns the slot at which the first change would have place 0 (see
// Solver). If changes are worked, it makes the place of the last of them equal
// to the excess before it, or 0 if that is negative; if the last of them has no
// slot, it makes the earliest place of the next change 0.
func (p *Problem) origin() int {
	n := len(p.Changed)
	switch {
	case n == 0:
		return p.earliestFirst()
	case p.offBeat():
		return p.earliestNext() - n*p.gap()
	}
	return p.slotFrom(p.Changed[n-1]) - (n-1)*p.gap() - p.workedPlace()
}

// workedPlace returns the place of the last worked change, 0 if there is none.
func (p *Problem) workedPlace() int { return max(p.workedExcess(), 0) }

// workedExcess returns the last worked interval minus the gap, in slots: 0 if there
// is none, negative if it is shorter than the gap or no whole number of slots.
func (p *Problem) workedExcess() int {
	last := p.lastInterval()
	switch {
	case last == 0 || p.offBeat():
		return 0
	case last%p.stride() != 0:
		return -1
	}
	return last/p.stride() - p.gap()
}

// lastInterval returns the interval between the last two worked changes, 0 if there
// are fewer.
func (p *Problem) lastInterval() int {
	n := len(p.Changed)
	if n < 2 {
		return 0
	}
	return p.Changed[n-1] - p.Changed[n-2]
}

// slack returns the number of slots by which all changes can move up when they
// stand as early and as close together as allowed. It is negative if they don't
// fit.
func (p *Problem) slack() int { return p.latestLast() - p.origin() - (p.Changes()-1)*p.gap() }

// target returns T(r) in units of 1/perStitch stitch.
func (p *Problem) target(r int, perStitch int64) int64 {
	if p.Target != nil {
		return p.Target[r-1]
	}
	return int64(p.From)*perStitch + int64(p.To-p.From)*int64(2*r-1) + int64(p.Step)*int64(p.Rounds)
}
