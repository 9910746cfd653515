package shaping

import (
	"fmt"
	"strings"
)

// Impossible is the error of a problem that has no schedule.
type Impossible struct {
	Bound   string // from, step, rounds, gap, lead-in, lead-out, lambda, first, only, target or worked
	Message string // what is wrong with it and what would be right; continues a sentence begun with Bound
}

// Error returns the bound and the message.
func (e *Impossible) Error() string { return e.Bound + " " + e.Message }

func impossible(bound, format string, args ...any) error {
	return &Impossible{Bound: bound, Message: fmt.Sprintf(format, args...)}
}

// check returns an Impossible if the problem has no schedule.
func (p *Problem) check() error {
	if err := p.checkNumbers(); err != nil {
		return err
	}
	return p.checkRoom()
}

// checkNumbers refuses numbers out of range, and a step that doesn't lead
// from From to To.
func (p *Problem) checkNumbers() error {
	switch {
	case p.Rounds < 1 || p.Rounds > MaxRounds:
		return impossible("rounds", "is %d; write a whole number from 1 to %d", p.Rounds, MaxRounds)
	case outOfRange(p.From) || outOfRange(p.To) || outOfRange(p.Step):
		return impossible("from", "to and step lie within ±%d stitches", maxStitches)
	case p.Gap < 1 || p.Gap > MaxRounds:
		return impossible("gap", "is %d; write a whole number from 1 to %d", p.Gap, MaxRounds)
	case p.LeadIn < 0 || p.LeadIn > MaxRounds:
		return impossible("lead-in", "is %d; write a whole number from 0 to %d", p.LeadIn, MaxRounds)
	case p.LeadOut < 0 || p.LeadOut > MaxRounds:
		return impossible("lead-out", "is %d; write a whole number from 0 to %d", p.LeadOut, MaxRounds)
	case p.Lambda < 0 || p.Lambda > maxLambda:
		return impossible("lambda", "lies between 0 and %d", maxLambda/1000)
	case p.Only > EvenRounds:
		return impossible("only", "is %d; write odd or even", p.Only)
	case p.Target != nil && len(p.Target) != p.Rounds:
		return impossible("target", "has %d counts; write one for each of the %d rounds", len(p.Target), p.Rounds)
	}
	for _, t := range p.Target {
		if t < -maxStitches*targetScale || t > maxStitches*targetScale {
			return impossible("target", "lies within ±%d stitches", maxStitches)
		}
	}
	return p.checkStep()
}

func outOfRange(n int) bool { return n < -maxStitches || n > maxStitches }

func (p *Problem) checkStep() error {
	way := p.To - p.From
	switch {
	case p.Step == 0:
		return impossible("step", "is 0; write what one change makes, such as 2 or -4")
	case way/p.Step < 0:
		return impossible("step", "is %d, which leads away from %d; write %d", p.Step, p.To, -p.Step)
	case way%p.Step != 0:
		near := p.To - way%p.Step
		if (way < 0) != (p.Step < 0) {
			return impossible("step", "is %d, which leads away from %d; write %d", p.Step, p.To, -p.Step)
		}
		return impossible("step", "of %d can't reach %d from %d; %d or %d can be reached", p.Step, p.To, p.From, near, near+p.Step)
	}
	return nil
}

// checkRoom refuses changes that don't fit into the rounds, and names the
// nearest ones that do.
func (p *Problem) checkRoom() error {
	k := p.Changes()
	if k == 0 || len(p.Changed) > 0 {
		return p.checkWorked()
	}
	if p.LeadIn+p.LeadOut >= p.Rounds {
		return p.leadsTooLong()
	}
	first, last := p.slotFrom(1+p.LeadIn), p.latestLast()
	if first > last { // so there is one round, which has no slot
		return impossible("only", "is %s, but round %d is the only one with room for a change; write %s", p.Only.words(), 1+p.LeadIn, p.Only.other().words())
	}
	if p.First != 0 && (p.First <= p.LeadIn || p.First > p.Rounds-p.LeadOut) {
		return impossible("first", "is round %d; the first change lies within rounds %d to %d", p.First, p.round(first), p.round(last))
	}
	if p.First != 0 && !p.has(p.First) {
		near := p.round(min(p.slotFrom(p.First), last))
		return impossible("first", "is round %d, but changes stand in %s rounds; write %d", p.First, p.Only.words(), near)
	}
	if p.slack() < 0 { // so there are at least two changes
		return p.tooManyChanges(k)
	}
	return p.checkWorked()
}

// checkWorked refuses worked changes that don't climb or lie outside the worked
// rounds, and remaining changes that don't fit above them.
func (p *Problem) checkWorked() error {
	if p.Worked < 0 || p.Worked > p.Rounds {
		return impossible("worked", "is %d; write a whole number from 0 to the %d rounds", p.Worked, p.Rounds)
	}
	for i, r := range p.Changed {
		switch {
		case r < 1 || r > p.Worked || (i > 0 && r <= p.Changed[i-1]):
			return impossible("worked", "has a change in round %d; they lie within rounds 1 to %d, from the first to the last", r, p.Worked)
		case p.First != 0 && i == 0 && r != p.First:
			return impossible("worked", "begins with a change in round %d; the first is fixed in round %d", r, p.First)
		}
	}
	rest := p.Changes() - len(p.Changed)
	switch last := p.earliestNext() + (rest-1)*p.gap(); {
	case rest < 0:
		return impossible("worked", "has %s; only %d are asked for", changes(len(p.Changed)), p.Changes())
	case rest > 0 && len(p.Changed) == 0 && p.First != 0 && p.First <= p.Worked:
		return impossible("first", "is round %d, which is worked without a change; the first change can be in round %d", p.First, p.round(p.slotFrom(p.Worked+1)))
	case rest > 0 && last > p.latestLast():
		return impossible("worked", "leaves rounds %d to %d for %s at least %d apart; that takes up to round %d (%d more)",
			p.round(p.earliestNext()), p.Rounds-p.LeadOut, changes(rest), p.stride()*p.gap(), p.round(last), p.round(last)-p.Rounds+p.LeadOut)
	}
	return nil
}

// leadsTooLong is the error of leads that leave no round between them. It names
// the longer one and how short it must be.
func (p *Problem) leadsTooLong() error {
	bound, n := "lead-out", p.LeadOut
	if p.LeadIn > p.LeadOut {
		bound, n = "lead-in", p.LeadIn
	}
	over := p.LeadIn + p.LeadOut + 1 - p.Rounds
	if n < over {
		return impossible(bound, "is %d; lead-in and lead-out leave no round of %d: shorten them by %d in all", n, p.Rounds, over)
	}
	return impossible(bound, "is %d, which leaves no round of the %d for a change; write at most %d", n, p.Rounds, n-over)
}

// tooManyChanges is the error of k changes that don't fit. It names the nearest
// problems that do: an earlier first change, more rounds, fewer changes, a
// smaller gap.
func (p *Problem) tooManyChanges(k int) error {
	bound, n := "rounds", p.Rounds
	var ways []string
	if latest := p.latestLast() - (k-1)*p.gap(); p.First > p.round(latest) && latest >= p.slotFrom(1+p.LeadIn) {
		bound, n = "first", p.First
		ways = append(ways, fmt.Sprintf("write at most %d", p.round(latest)))
	}
	if needs := p.round(p.latestLast()-p.slack()) + p.LeadOut; needs <= MaxRounds {
		ways = append(ways, fmt.Sprintf("%d changes need %d rounds (%d more)", k, needs, needs-p.Rounds))
	}
	span := p.latestLast() - p.earliestFirst()
	room := span/p.gap() + 1
	ways = append(ways, fmt.Sprintf("make %s (%d fewer)", changes(room), k-room))
	closer := ""
	if gap := span / (k - 1); gap > 0 {
		closer = fmt.Sprintf(" (%d at least %d apart)", span/gap+1, gap*p.stride())
	}
	return impossible(bound, "is %d, with room for %s at least %d apart from round %d to %d%s; %s",
		n, changes(room), p.stride()*p.gap(), p.round(p.earliestFirst()), p.round(p.latestLast()), closer, strings.Join(ways, ", or "))
}

func changes(n int) string {
	if n == 1 {
		return "1 change"
	}
	return fmt.Sprintf("%d changes", n)
}
