package tally

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/written"
)

// again works earlier rounds once more, as often as it is told.
func (w *needles) again(s *written.Statement) {
	r := s.Repeat
	from := 0
	want := 0 // rounds that the label says
	if s.Label.From.Written() && !s.Label.Next {
		from = s.Label.From.For(w.size)
		if from == written.None {
			return
		}
		want = s.Label.To.For(w.size) - from + 1
		w.reach(s, from)
	} else {
		w.due()
	}
	list, ok := w.meant(s)
	if !ok {
		return
	}
	if r.Varied && !whole(list) {
		w.varies(s, w.made(list))
		return
	}
	if every := r.Every.For(w.size); r.Every.Written() && every > 1 {
		plain := w.plainRound(s)
		before := make([]*written.Statement, 0, every)
		for range every - 1 {
			before = append(before, plain)
		}
		list = append(before, list...)
	}
	start := w.round
	times := 1
	switch {
	case r.Times.Written():
		if times = r.Times.For(w.size); r.InAll && !r.Every.Written() && w.justWorked(list) {
			times--
		}
	case want > 0 && !r.Then.Written() && want%len(list) == 0:
		times = want / len(list)
	case len(r.Until) > 0:
		w.until(s, list)
		return
	case r.Open:
		w.openly(s, list)
		return
	}
	if times > most {
		times = 1
	}
	for n := range times {
		for at, one := range list {
			if !w.one(one) {
				w.skip((times-n)*len(list) - at - 1)
				w.counts(s.Counts)
				return
			}
		}
	}
	if r.Then.Written() {
		for n := r.Then.For(w.size); n <= r.ThenTo.For(w.size) && n > 0; n++ {
			if one := w.bodies[n]; one != nil {
				w.one(one)
			}
		}
	}
	if want > 0 && w.round-start != want {
		w.tell(w.placed(Finding{Kind: Listed, At: s.At, To: s.To, Found: w.round - start, Expected: want, Message: fmt.Sprintf("This comes to %d rounds, and the line is for %d.", w.round-start, want)}))
		w.round = start + want
	}
	w.total(s, len(list), w.round-start)
	w.counts(s.Counts)
}

// meant returns the rounds that are meant.
func (w *needles) meant(s *written.Statement) (list []*written.Statement, ok bool) {
	r := s.Repeat
	unknown := func(text string) ([]*written.Statement, bool) {
		w.tell(w.placed(Finding{Kind: Misnumbered, At: s.At, To: s.To, Message: text}))
		w.known, w.unsure = false, true
		return nil, false
	}
	switch {
	case r.Stars > 0:
		span, ok := w.stars[r.Stars]
		if !ok || span[1] <= span[0] || span[1] > len(w.past) {
			return unknown("Between such asterisks no round was told.")
		}
		return append(list, w.past[span[0]:span[1]]...), true
	case r.Shaping:
		one := w.shaping()
		if one == nil {
			return unknown("No shaping was told before.")
		}
		return []*written.Statement{one}, true
	case r.Named != "":
		one := w.roundNamed(r.Named)
		if one == nil {
			return unknown("No round of that name was told before.")
		}
		return []*written.Statement{one}, true
	case r.Last.Written():
		n := r.Last.For(w.size)
		if n < 1 || n > len(w.past) {
			return unknown(fmt.Sprintf("So many rounds were not worked before: %d of %d.", len(w.past), n))
		}
		return append(list, w.past[len(w.past)-n:]...), true
	}
	from, to := r.From.For(w.size), r.To.For(w.size)
	list, missing := w.numberedRounds(r.Of, from, to)
	if missing > 0 && r.Of != "" {
		w.charted, w.unsure, w.unnumbered = true, true, true // they stand elsewhere
		w.counts(s.Counts)
		return nil, false
	}
	if missing > 0 {
		return unknown(fmt.Sprintf("Round %d was not told before.", missing))
	}
	if len(list) == 0 {
		return unknown("Which rounds are meant isn't told.")
	}
	return list, true
}

// numberedRounds returns the rounds of some numbers: those of a section that is named, else of
// this one, else as they were told last. missing is the first that wasn't told, or 0.
func (w *needles) numberedRounds(of string, from, to int) (list []*written.Statement, missing int) {
	every := []map[int]*written.Statement{w.bodies}
	if of != "" {
		every = nil
		for _, b := range slices.Backward(append(w.sections, bodies{w.section, w.bodies})) {
			if strings.Contains(strings.ToLower(b.section), of) {
				every = append(every, b.rounds)
			}
		}
		if len(every) == 0 && strings.HasPrefix(of, "rib") { // it is what a piece begins with
			for _, b := range w.sections {
				every = append(every, b.rounds)
			}
		}
	} else {
		every = append(every, w.told)
	}
	missing = max(1, from)
	for _, rounds := range every {
		list = nil
		for n := from; n <= to && n-from < most; n++ {
			one := rounds[n]
			if one == nil {
				missing = n
				break
			}
			list = append(list, one)
		}
		if len(list) == to-from+1 {
			return list, 0
		}
	}
	if to < from {
		return nil, 0
	}
	return nil, missing
}

// shaping returns the last round that changed the count.
func (w *needles) shaping() *written.Statement {
	for i, s := range slices.Backward(w.past) {
		at := len(w.rounds) - len(w.past) + i
		if at >= 0 && w.rounds[at].Before >= 0 && w.rounds[at].After >= 0 && w.rounds[at].Before != w.rounds[at].After {
			return s
		}
	}
	return nil
}

// roundNamed returns the round of a name, of this section or else of an earlier one; nil:
// there is none.
func (w *needles) roundNamed(name string) *written.Statement {
	if one := w.named[name]; one != nil {
		return one
	}
	return w.names[name]
}

// justWorked reports whether rounds are the last ones.
func (w *needles) justWorked(list []*written.Statement) bool {
	n := len(w.past) - len(list)
	return n >= 0 && slices.Equal(w.past[n:], list)
}

// plainRound is a round in which all stitches are worked as they are.
func (w *needles) plainRound(s *written.Statement) *written.Statement {
	return &written.Statement{Kind: written.Rounds, At: s.At, To: s.To, Items: []written.Item{{Does: written.Stitch, Name: "k", In: 1, Out: 1, Reach: written.ToEnd, Even: true, At: s.At, To: s.To}}, Label: written.Label{Next: true, Row: w.rows}}
}

// until works rounds until a count is there.
func (w *needles) until(s *written.Statement, list []*written.Statement) {
	w.untilThere(s.Repeat.Until[0], func() bool {
		for _, one := range list {
			if !w.one(one) {
				return false
			}
		}
		return true
	})
	w.counts(s.Counts)
}

// untilThere works something over and over until a count is there, or tells that it never comes.
func (w *needles) untilThere(c written.Count, works func() bool) {
	n := c.For(w.size)
	have := func() (int, bool) {
		if c.Inside {
			return w.inside()
		}
		return w.n, w.known
	}
	for range most {
		now, ok := have()
		if !ok || now == n || n == written.None {
			break
		}
		if !works() {
			return
		}
		next, ok := have()
		if !ok {
			break
		}
		if next == now || now < n && next > n || now > n && next < n {
			w.tell(w.placed(Finding{Kind: Miscounted, At: c.At, To: c.To, Found: next, Expected: n, Message: fmt.Sprintf("It goes from %d to %d stitches: %d never come.", now, next, n)}))
			break
		}
	}
	if _, ok := have(); !ok && !c.Inside && n != written.None {
		w.n, w.known = n, true
	}
}

// openly works rounds as often as a length takes: the count is known if they leave it.
func (w *needles) openly(s *written.Statement, list []*written.Statement) {
	if s.Repeat.All && w.stretch != nil && w.wholly(list) {
		w.counts(s.Counts)
		return
	}
	before, known := w.n, w.known
	for _, one := range list {
		if !w.one(one) {
			return
		}
	}
	if w.n != before || !known {
		w.known, w.unsure = false, true
	}
	w.longer(len(list))
	w.unnumbered = true
	w.counts(s.Counts)
	w.lasts(s, len(list))
}

// pacing takes in which rounds a named round comes, and works them once it is told where that
// ends.
func (w *needles) pacing(s *written.Statement) {
	w.settle()
	if s.Name != "" {
		w.listedRounds(s)
		return
	}
	if s.Label.From.Written() {
		rounds := []int{s.Label.From.For(w.size)}
		for _, step := range s.Steps {
			every, times := step.Every.For(w.size), step.Times.For(w.size)
			if every == written.None || times == written.None {
				continue
			}
			for range min(times, most) {
				rounds = append(rounds, rounds[len(rounds)-1]+every)
			}
		}
		w.pace = rounds
		w.report.steps += len(rounds)
		return
	}
	if w.pace == nil {
		return
	}
	last := s.Label.To.For(w.size)
	rounds := w.pace
	if end := rounds[len(rounds)-1]; end > last {
		w.tell(Finding{Kind: Listed, At: s.At, To: s.To, Found: end, Expected: last, Message: fmt.Sprintf("The last shaping comes in round %d, after the end in round %d.", end, last)})
		last = end
	}
	var shaping *written.Statement
	for _, name := range []string{"increase", "decrease"} {
		if one := w.named[name]; one != nil {
			shaping = one
		}
	}
	plain := w.plainRound(s)
	for n, at := 1, 0; n <= min(last, most); n++ {
		one := plain
		if at < len(rounds) && rounds[at] == n {
			at++
			if shaping != nil {
				one = shaping
			}
		}
		if !w.one(one) {
			break
		}
	}
	w.pace = nil
}
