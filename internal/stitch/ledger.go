package stitch

import (
	"fmt"
	"slices"
)

// Unsound is one place where the loops don't add up.
type Unsound struct {
	Part  Part
	Round int    // from 1; one more than the last round means the finish
	Left  int    // loops that the round below left
	Eats  int    // loops that this round eats
	Words string // what is wrong, as a person reads it
}

// Ledger checks a whole mitt and returns what is unsound, in the order worked.
// A mitt is sound if every round eats exactly what the round below left, every
// set that is kept aside is taken up once, by its name, and nothing is left at
// the end but the sets in m.Left.
func Ledger(m Mitt) []Unsound {
	var l ledger
	for i := range m.Sections {
		l.section(&m.Sections[i])
	}
	if l.live != 0 {
		l.add(Unsound{Left: l.live, Words: fmt.Sprintf("%d stitches are left on the needles at the end", l.live)})
	}
	for _, w := range l.kept {
		if !w.taken && w.set != "" && !slices.Contains(m.Left, w.set) {
			left := w.stitches - w.back
			text := "%d stitches held for the %s never come back"
			if left == 1 {
				text = "%d stitch held for the %s never comes back"
			}
			l.add(Unsound{Left: left, Words: fmt.Sprintf(text, left, w.set)})
		}
	}
	for _, s := range m.Left {
		if w := l.find(s); w == nil || w.taken {
			l.add(Unsound{Words: fmt.Sprintf("nothing is held for the %s at the end, but should be", s)})
		}
	}
	return l.faults
}

// ledger walks through a mitt and keeps count of what is on the needles and what
// is kept aside. After an unsound round it goes on with the loops that the round
// leaves, so that each mistake is reported once.
type ledger struct {
	faults []Unsound
	live   int // loops on the needles
	kept   []waiting
}

// waiting is a set that was put aside.
type waiting struct {
	set      Set
	by       Part // the part that put it aside
	stitches int
	back     int // those of them that have come into a round
	taken    bool
}

func (l *ledger) add(u Unsound) { l.faults = append(l.faults, u) }

// find returns the newest set of a name that was put aside, or nil if there is
// none.
func (l *ledger) find(s Set) *waiting {
	for i := len(l.kept) - 1; i >= 0; i-- {
		if l.kept[i].set == s {
			return &l.kept[i]
		}
	}
	return nil
}

func (l *ledger) section(s *Section) {
	if (len(s.From) > 0 || s.CastOn > 0) && l.live != 0 {
		l.add(Unsound{s.Part, 1, l.live, 0, fmt.Sprintf("%d stitches are still on the needles before the %s begins", l.live, s.Part.Words())})
	}
	if s.CastOn > 0 {
		l.live = s.CastOn
	}
	if len(s.From) > 0 {
		l.live = l.takeUp(s)
	}
	for i := range s.Rounds {
		l.round(s, i, &s.Rounds[i])
	}
	if len(s.Finish.Ops) > 0 {
		l.round(s, len(s.Rounds), &s.Finish)
	}
}

// takeUp puts the sets of a section on the needles and returns their stitches.
func (l *ledger) takeUp(s *Section) int {
	stitches := s.CastOn
	if stitches > 0 {
		l.add(Unsound{s.Part, 1, 0, stitches, fmt.Sprintf("the %s takes up stitches and casts on at once; cast on in its first round", s.Part.Words())})
	}
	for _, set := range s.From {
		w := l.find(set)
		switch {
		case w == nil:
			l.add(Unsound{s.Part, 1, 0, 0, fmt.Sprintf("the %s takes up the stitches held for the %s, but none are", s.Part.Words(), set)})
		case w.taken:
			l.add(Unsound{s.Part, 1, 0, w.stitches, fmt.Sprintf("the stitches held for the %s are taken up twice", set)})
		default:
			w.taken = true
			stitches += w.stitches - w.back
		}
	}
	return stitches
}

func (l *ledger) round(s *Section, i int, r *Round) {
	if eats := r.In(); eats != l.live {
		l.add(Unsound{s.Part, i + 1, l.live, eats, unsoundWords(s, i, l.live, eats)})
	}
	l.live = r.Out()
	for k, o := range r.Ops {
		switch o {
		case Hold, Waste:
			l.keep(s, i, r.SetAt(k))
		case Take:
			l.bring(s, i, r.SetAt(k))
		}
		if r.Freed(k) {
			l.keep(s, i, r.SetAt(k).Above())
		}
	}
}

// bring takes one stitch of a set into a round.
func (l *ledger) bring(s *Section, i int, set Set) {
	w := l.find(set)
	if w == nil || w.taken {
		l.add(Unsound{s.Part, i + 1, 0, 1, fmt.Sprintf("%s, round %d: takes in a stitch held for the %s, but none is left there", s.Part.Words(), i+1, set)})
		return
	}
	w.back++
	w.taken = w.back == w.stitches
}

// keep puts one stitch aside. Since the stitches of a set come back together,
// only one part may put them aside.
func (l *ledger) keep(s *Section, i int, set Set) {
	w := l.find(set)
	if w == nil || w.taken {
		if set == "" {
			l.add(Unsound{s.Part, i + 1, 0, 0, fmt.Sprintf("%s, %s %d: stitches are put aside without a name", s.Part.Words(), s.Noun(), i+1)})
		}
		l.kept = append(l.kept, waiting{set: set, by: s.Part})
		w = &l.kept[len(l.kept)-1]
	} else if w.by != s.Part {
		l.add(Unsound{s.Part, i + 1, w.stitches, 0, fmt.Sprintf("%s, %s %d: stitches are held for the %s, but those of the %s still wait there", s.Part.Words(), s.Noun(), i+1, set, w.by.Words())})
		w.by = s.Part
	}
	w.stitches++
}

func unsoundWords(s *Section, i, left, eats int) string {
	this := fmt.Sprintf("%s %d", s.Noun(), i+1)
	if i == len(s.Rounds) {
		this = "the last step"
	}
	from := fmt.Sprintf("%s %d leaves %d", s.Noun(), i, left)
	if i == 0 {
		from = fmt.Sprintf("%d on the needles%s", left, takenFrom(s))
	}
	return fmt.Sprintf("%s, %s: %s (%s; it takes %d)", s.Part.Words(), this, Balance(left, eats), from, eats)
}

// Balance says what is over or missing where a round takes another number of
// stitches than are left for it: "one stitch left over", "2 stitches short".
func Balance(left, takes int) string {
	n, how := left-takes, "left over"
	if n < 0 {
		n, how = -n, "short"
	}
	if n == 1 {
		return "one stitch " + how
	}
	return fmt.Sprintf("%d stitches %s", n, how)
}

// takenFrom names the sets that a part took up, except one of the part's own
// name.
func takenFrom(s *Section) string {
	text := ""
	for _, set := range s.From {
		if string(set) != string(s.Part) && !set.Lies() {
			text += ", held for the " + string(set)
		}
	}
	return text
}
