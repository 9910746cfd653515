package shaping

// Parity says in which rounds a change may stand.
type Parity uint8

// The parities. Where only right sides are shaped, rows are shaped in odd rounds.
const (
	EveryRound Parity = iota
	OddRounds
	EvenRounds
)

// words returns the parity as a person writes it.
func (o Parity) words() string { return [...]string{"every", "odd", "even"}[o] }

// other returns the opposite parity.
func (o Parity) other() Parity { return OddRounds + EvenRounds - o }

// The rounds in which a change may stand are numbered as slots, from 1: all rounds,
// the odd ones or the even ones. Places and excesses (see Solver) are in slots, so
// that a problem of every second round is no more work than one of half the rounds.

// stride returns the number of rounds from one slot to the next.
func (p *Problem) stride() int {
	if p.Only == EveryRound {
		return 1
	}
	return 2
}

// round returns the round of a slot.
func (p *Problem) round(slot int) int {
	if p.Only == OddRounds {
		return 2*slot - 1
	}
	return p.stride() * slot
}

// slotFrom returns the first slot whose round is r (0 or more) or later.
func (p *Problem) slotFrom(r int) int {
	switch p.Only {
	case OddRounds:
		return r/2 + 1
	case EvenRounds:
		return (r + 1) / 2
	}
	return r
}

// slotUpTo returns the last slot whose round is r or earlier; 0 or less if there is
// none.
func (p *Problem) slotUpTo(r int) int {
	switch p.Only {
	case OddRounds:
		return (r + 1) / 2
	case EvenRounds:
		return r / 2
	}
	return r
}

// has reports whether a round has a slot.
func (p *Problem) has(r int) bool { return p.round(p.slotFrom(r)) == r }

// gap returns the least number of slots from one change to the next.
func (p *Problem) gap() int { return (p.Gap + p.stride() - 1) / p.stride() }

// offBeat reports whether the last worked change stands in a round without a slot.
func (p *Problem) offBeat() bool {
	n := len(p.Changed)
	return n > 0 && !p.has(p.Changed[n-1])
}
