// Package shaping finds the exact schedule of increases or decreases over a
// number of rounds, and spreads them evenly over a round or row. It knows no
// wool: whole numbers in, whole numbers out.
package shaping

// The largest problems that are taken: far beyond anything knitted, and small
// enough to be solved in about a second and 100 MB at the worst.
const (
	MaxRounds   = 2_000
	maxStitches = 1_000_000
	maxLambda   = 1_000_000_000 // thousandths
)

// targetScale is the fineness of Target: 1/10 000 stitch.
const targetScale = 10_000

// Problem asks for the rounds r₁ < … < r_K of K = (To − From)/Step changes,
// within 1 + LeadIn … Rounds − LeadOut, neighbours at least Gap apart, that
// minimise
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

	// Quicken bars a rhythm that slows down again: no interval between two
	// changes is longer than the one before it.
	Quicken bool

	// What is worked stays, however near its changes stand to each other or to
	// the ends: Changed are the rounds of the changes that lie in the first
	// Worked rounds. All others are chosen above those, and the last one that
	// was worked is the neighbour of the first that is chosen: Gap and λ hold
	// across. Quicken does not, so that what is worked can't trap the rest.
	Worked  int
	Changed []int

	// Target is T(1) … T(R) in 1/10 000 stitch, within ±1 000 000 stitches.
	// Without it T is the middle line of a staircase whose first step is in
	// round 1:
	//
	//	T(r) = From + (To − From)·(r − ½)/R + Step/2
	Target []int64
}

// Changes is K, the number of changes; 0 if Step is 0, leads away from To or
// does not divide the way.
func (p Problem) Changes() int {
	if p.Step == 0 || (p.To-p.From)%p.Step != 0 {
		return 0
	}
	return max((p.To-p.From)/p.Step, 0)
}

// first is the earliest round of the first change.
func (p *Problem) first() int {
	if p.First != 0 {
		return p.First
	}
	return 1 + p.LeadIn
}

// last is the latest round of the last change.
func (p *Problem) last() int { return p.Rounds - p.LeadOut }

// onward is the earliest round of the first change that is still to be chosen.
func (p *Problem) onward() int {
	from := max(p.first(), p.Worked+1)
	if n := len(p.Changed); n > 0 {
		from = max(from, p.Changed[n-1]+p.Gap)
	}
	return from
}

// origin is the round from which the places of the first change are counted.
// Where changes are worked it lies so that the place of the last of them is
// the excess before it.
func (p *Problem) origin() int {
	n := len(p.Changed)
	if n == 0 {
		return p.first()
	}
	return p.Changed[n-1] - (n-1)*p.Gap - p.place()
}

// place is where the last change that was worked stands; 0 if none was.
func (p *Problem) place() int { return max(p.excess(), 0) }

// excess is the last interval that was worked less the gap; 0 if there is
// none, negative if it is shorter than the gap.
func (p *Problem) excess() int {
	n := len(p.Changed)
	if n < 2 {
		return 0
	}
	return p.Changed[n-1] - p.Changed[n-2] - p.Gap
}

// slack is by how many rounds the changes can move when they stand as close
// together and as early as they may.
func (p *Problem) slack() int { return p.last() - p.origin() - (p.Changes()-1)*p.Gap }

// target is T(r) in 1/line stitch.
func (p *Problem) target(r int, line int64) int64 {
	if p.Target != nil {
		return p.Target[r-1]
	}
	return int64(p.From)*line + int64(p.To-p.From)*int64(2*r-1) + int64(p.Step)*int64(p.Rounds)
}
