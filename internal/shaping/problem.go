// Package shaping finds the exact schedule of increases or decreases over a
// number of rounds, and spreads them evenly over a round or row. It knows no
// wool: whole numbers in, whole numbers out.
package shaping

import "fmt"

// The largest problems that are taken: far beyond anything knitted, and small
// enough that every cost stays a whole number of 64 bits.
const (
	MostRounds   = 2_000
	mostStitches = 1_000_000
	mostLambda   = 1_000_000_000 // thousandths
	mostTable    = 25_000_000    // choices kept while solving
)

// targetScale is the fineness of Target: 1/10 000 stitch.
const targetScale = 10_000

// Problem asks for the rounds r₁ < … < r_K of K = (To − From)/Step changes,
// within 1 + LeadIn … Rounds − LeadOut, neighbours at least Gap apart, that
// minimise
//
//	Σ_{r=1..R} (S(r) − T(r))² + λ · (changes among the intervals)
//
// where S(r) = From + Step × (changes worked in rounds 1 … r).
type Problem struct {
	From, To, Step  int
	Rounds          int // R, 1 … MostRounds
	Gap             int // at least 1
	LeadIn, LeadOut int
	Lambda          int64 // λ in 1/1000 stitch², not negative
	First           int   // round of the first change; 0 leaves it free

	// Target is T(1) … T(R) in 1/10 000 stitch. Without it T is the middle
	// line of a staircase whose first step is in round 1:
	//
	//	T(r) = From + (To − From)·(r − ½)/R + Step/2
	Target []int64
}

// Changes is K, the number of changes; 0 if Step does not divide the way.
func (p *Problem) Changes() int {
	if p.Step == 0 || (p.To-p.From)%p.Step != 0 {
		return 0
	}
	return (p.To - p.From) / p.Step
}

// first is the earliest round of the first change, last the latest of the
// last one.
func (p *Problem) first() int {
	if p.First != 0 {
		return p.First
	}
	return 1 + p.LeadIn
}

func (p *Problem) last() int { return p.Rounds - p.LeadOut }

// Impossible says which bound is in the way of a schedule. Bound is one of
// from, step, rounds, gap, lead-in, lead-out, lambda, first, target; Message
// goes on after it and says what would be right.
type Impossible struct {
	Bound, Message string
}

// Error is the bound and the message.
func (e *Impossible) Error() string { return e.Bound + " " + e.Message }

func impossible(bound, format string, args ...any) error {
	return &Impossible{bound, fmt.Sprintf(format, args...)}
}

// check refuses what can't be scheduled.
func (p *Problem) check() error {
	switch {
	case p.Rounds < 1 || p.Rounds > MostRounds:
		return impossible("rounds", "is %d; write a whole number from 1 to %d", p.Rounds, MostRounds)
	case outside(p.From) || outside(p.To) || outside(p.Step):
		return impossible("from", "to and step lie within ±%d stitches", mostStitches)
	case p.Step == 0:
		return impossible("step", "is 0; write what one change makes, such as 2 or -4")
	case p.Gap < 1 || p.Gap > MostRounds:
		return impossible("gap", "is %d; write a whole number from 1 to %d", p.Gap, MostRounds)
	case p.LeadIn < 0 || p.LeadIn > MostRounds:
		return impossible("lead-in", "is %d; write a whole number from 0 to %d", p.LeadIn, MostRounds)
	case p.LeadOut < 0 || p.LeadOut > MostRounds:
		return impossible("lead-out", "is %d; write a whole number from 0 to %d", p.LeadOut, MostRounds)
	case p.Lambda < 0 || p.Lambda > mostLambda:
		return impossible("lambda", "lies between 0 and %d", mostLambda/1000)
	case p.Target != nil && len(p.Target) != p.Rounds:
		return impossible("target", "has %d counts; write one for each of the %d rounds", len(p.Target), p.Rounds)
	case (p.To-p.From)%p.Step != 0:
		return impossible("step", "of %d can't reach %d from %d; %d or %d can be reached", p.Step, p.To, p.From,
			p.To-(p.To-p.From)%p.Step, p.To-(p.To-p.From)%p.Step+p.Step)
	case (p.To-p.From)/p.Step < 0:
		return impossible("step", "is %d, which leads away from %d; write %d", p.Step, p.To, -p.Step)
	}
	for _, t := range p.Target {
		if t < -mostStitches*targetScale || t > mostStitches*targetScale {
			return impossible("target", "lies within ±%d stitches", mostStitches)
		}
	}
	return p.checkRoom()
}

func outside(n int) bool { return n < -mostStitches || n > mostStitches }

// checkRoom refuses changes that the rounds have no room for, and names the
// nearest that they have room for.
func (p *Problem) checkRoom() error {
	k := p.Changes()
	if k == 0 {
		return nil
	}
	if p.First != 0 && (p.First <= p.LeadIn || p.First > p.last()) {
		return impossible("first", "is round %d; the first change lies within rounds %d to %d", p.First, 1+p.LeadIn, p.last())
	}
	room := 0
	if p.last() >= p.first() {
		room = (p.last()-p.first())/p.Gap + 1
	}
	if k > room {
		needs := p.first() + (k-1)*p.Gap + p.LeadOut
		return impossible("rounds", "is %d, with room for %d changes at least %d apart from round %d to %d; %d changes need %d rounds (%d more), or make %d changes (%d fewer)",
			p.Rounds, room, p.Gap, p.first(), p.last(), k, needs, needs-p.Rounds, room, k-room)
	}
	if width := int64(p.slack() + 1); int64(k)*width*width > mostTable {
		return impossible("rounds", "is %d; with %d changes this is more than can be worked out, write fewer rounds", p.Rounds, k)
	}
	return nil
}

// slack is by how many rounds the changes can move when they stand as close
// together and as early as they may.
func (p *Problem) slack() int { return p.last() - p.first() - (p.Changes()-1)*p.Gap }
