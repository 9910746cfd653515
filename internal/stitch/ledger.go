package stitch

import "fmt"

// Unsound is one place where the loops don't add up.
type Unsound struct {
	Part  Part
	Round int // from 1; one more than the last round means the finish
	Left  int // loops that the round below left
	Eats  int // loops that this round eats
	Words string
}

// Ledger checks a whole mitt and lists what is unsound, in the order worked.
// A mitt is sound when every round eats exactly what the round below left,
// the held stitches come back exactly once, and nothing is left over.
func Ledger(m Mitt) []Unsound {
	var (
		faults []Unsound
		live   int  // loops on the needles
		held   int  // loops kept aside
		taken  bool // the held loops have come back
	)
	for _, s := range m.Sections {
		switch {
		case s.FromHeld:
			faults = append(faults, leftOver(s.Part, live)...)
			if taken {
				faults = append(faults, Unsound{s.Part, 1, 0, held, "the held stitches are taken up twice"})
			}
			live, held, taken = held, 0, true
		case s.CastOn > 0:
			faults = append(faults, leftOver(s.Part, live)...)
			live = s.CastOn
		}
		var more []Unsound
		more, live, held = ledgerSection(s, live, held)
		faults = append(faults, more...)
	}
	if live != 0 {
		faults = append(faults, Unsound{Left: live, Words: fmt.Sprintf("%d stitches are left on the needles at the end", live)})
	}
	if held != 0 {
		faults = append(faults, Unsound{Left: held, Words: fmt.Sprintf("%d held stitches never come back", held)})
	}
	return faults
}

func leftOver(p Part, live int) []Unsound {
	if live == 0 {
		return nil
	}
	return []Unsound{{p, 1, live, 0, fmt.Sprintf("%d stitches are still on the needles before the %s begins", live, p.Words())}}
}

// ledgerSection walks the rounds of one section; each fault is told once,
// and the walk goes on from what the round itself makes.
func ledgerSection(s Section, live, held int) (faults []Unsound, liveAfter, heldAfter int) {
	rounds := s.Rounds
	if len(s.Finish.Ops) > 0 {
		rounds = append(rounds[:len(rounds):len(rounds)], s.Finish)
	}
	for i, r := range rounds {
		if eats := r.In(); eats != live {
			faults = append(faults, Unsound{s.Part, i + 1, live, eats, unsoundWords(s, i, live, eats)})
		}
		live = r.Out()
		held += r.Held()
	}
	return faults, live, held
}

func unsoundWords(s Section, i, left, eats int) string {
	this := fmt.Sprintf("round %d", i+1)
	if i == len(s.Rounds) {
		this = "the last step"
	}
	if i == 0 {
		return fmt.Sprintf("%s, %s eats %d stitches, but %d are on the needles", s.Part.Words(), this, eats, left)
	}
	return fmt.Sprintf("%s: round %d makes %d stitches, %s eats %d", s.Part.Words(), i, left, this, eats)
}
