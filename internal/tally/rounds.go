package tally

import (
	"fmt"
	"slices"

	"thenar/internal/written"
)

// roundsOf works the rounds of a statement.
func (w *needles) roundsOf(s *written.Statement, ahead []written.Statement, size int) {
	if s.Label.Named != "" {
		if w.named == nil {
			w.named = map[string]*written.Statement{}
		}
		w.named[s.Label.Named] = s
		if w.names == nil {
			w.names = map[string]*written.Statement{}
		}
		w.names[s.Label.Named] = s
		if next := nextOf(ahead, size); next != nil && next.Kind == written.Pace {
			return // it is told how it is worked, and then in which rounds
		}
	}
	if s.Label.Written() {
		w.rows = s.Label.Row
		w.joined = w.joined || !s.Label.Row
	} else if s.Many.Written() && !s.Label.Row {
		w.joined = true
	}
	if s.Label.From.Written() && !s.Label.Next {
		w.keeps(s)
	}
	if len(s.Items) == 0 && s.Label.Written() && s.Kind == written.Rounds {
		w.settle()
		w.head = s
		return
	}
	if w.head != nil && !s.Label.Written() {
		s = headed(w.head, s, size)
		w.head = nil
	}
	if s.Label.Others {
		w.settle()
		w.others = s
		return
	}
	if n := len(s.Label.List); n > 0 {
		w.report.steps += n
		w.settle()
		for _, n := range s.Label.List {
			if w.later == nil {
				w.later = map[int]*written.Statement{}
			}
			w.later[n.For(0)] = s
		}
		w.due()
		return
	}
	w.numbered(s)
}

// headed returns a statement as that of a head that stands before it for itself, in the
// numbers of a size.
func headed(head, s *written.Statement, size int) *written.Statement {
	joined := *s
	joined.Label, joined.Side, joined.Counts = head.Label, head.Side, slices.Clone(s.Counts)
	at := placeOf(head, size)
	if at < 0 {
		return &joined
	}
	if head.Label.From.Written() {
		joined.Label.From, joined.Label.To = written.Is(head.Label.From.For(at)), written.Is(head.Label.To.For(at))
	}
	for _, c := range head.Counts {
		c.Number = written.Is(c.For(at))
		joined.Counts = append(joined.Counts, c)
	}
	return &joined
}

// nextOf returns the next statement of a size that tells something.
func nextOf(ahead []written.Statement, size int) *written.Statement {
	for i := range ahead {
		if s := &ahead[i]; s.Kind != written.Note && placeOf(s, size) >= 0 {
			return s
		}
	}
	return nil
}

// numbered works rounds that follow each other.
func (w *needles) numbered(s *written.Statement) {
	times, from := 1, 0
	switch l := &s.Label; {
	case l.From.Written() && !l.Next:
		from = l.From.For(w.size)
		to := l.To.For(w.size)
		if from == written.None || to == written.None {
			return
		}
		if l.Two && from == to {
			w.tell(w.placed(Finding{Kind: Misnumbered, At: s.At, To: s.To, Found: to, Expected: from, Message: fmt.Sprintf("Rounds %d to %d are only one.", from, to)}))
		}
		if times = to - from + 1; times < 1 {
			w.tell(Finding{Kind: Misnumbered, At: s.At, To: s.To, Found: to, Expected: from, Message: fmt.Sprintf("Rounds %d to %d go backwards.", from, to)})
			times = 1
		}
	case l.Next && l.To.Written():
		times = l.To.For(w.size)
	case s.Many.Written():
		if times = s.Many.For(w.size); times <= 0 {
			return
		}
	}
	if times > most {
		w.tell(Finding{Kind: Misnumbered, At: s.At, To: s.To, Found: times, Message: fmt.Sprintf("%d rounds are more than anybody knits.", times)})
		times = 1
	}
	if !s.Label.From.Written() || s.Label.Next {
		w.numbers, w.unnumbered = false, true
	}
	if s.Label.Written() || s.Many.Written() {
		w.settle()
		if s.Label.Written() {
			w.reach(s, from)
		}
	}
	if n := s.Many.For(w.size); s.Many.Written() && s.Label.From.Written() && n != written.None && n != times {
		w.tell(w.placed(Finding{Kind: Listed, At: s.At, To: s.To, Found: n, Expected: times, Message: fmt.Sprintf("These are %d rounds, and the line is for %d.", n, times)}))
	}
	if n := s.Over.For(w.size); s.Over.Written() && n != written.None && w.known && n != w.n {
		w.part(s, n)
	}
	if s.Unsure {
		w.lengthy(s)
		return
	}
	for n := range times {
		if !w.one(s) {
			w.skip(times - n - 1)
			return
		}
	}
	if w.going == nil {
		w.evenly(s)
	}
	if len(s.Counts) > 0 {
		w.settle()
	}
	if w.going == nil {
		w.counts(s.Counts)
	}
	if s.Label.Also {
		w.others = s
	}
}

// evenly takes over how many stitches a round makes or takes besides, wherever that is.
func (w *needles) evenly(s *written.Statement) {
	by, ok := w.by(s)
	if !ok || by == 0 || !w.known {
		return
	}
	w.n += by
	w.since = s.At
	w.lost = w.lost || len(w.markers) > 0
	if at := len(w.rounds) - 1; at >= 0 {
		w.rounds[at].After = w.n
		w.shaped = append(w.shaped, shaped{w.round, w.n, 0})
	}
	w.now(w.n)
}

// lengthy works what is told by its length: nobody knows how many rounds that is, but each
// must come out, and leave the count as it is for the count to be known.
func (w *needles) lengthy(s *written.Statement) {
	w.settle()
	w.unnumbered = true
	p := w.begin()
	p.from = s
	if ok := w.items(p, s.Items) && w.whole(p, s); !ok {
		w.failed(p, s)
	} else if p.out != w.n {
		w.known, w.unsure = false, true
		w.did(Step{Does: Jumps, Line: s.At.Line, Before: w.n, After: -1})
	} else {
		w.worked(p, s, false)
	}
	w.evenly(s)
	w.counts(s.Counts)
	w.lasts(s, 1)
}

// lasts keeps that so many rounds are worked as long as it is told in a measure.
func (w *needles) lasts(s *written.Statement, again int) {
	l := Long{At: len(w.rounds), Since: len(w.rounds) - w.piece, Stitches: w.n, Again: again, Place: w.size, From: s.At, To: s.To}
	if !w.known {
		l.Stitches = -1
	}
	w.long = append(w.long, l)
}

// skip counts rounds that can't be worked any more.
func (w *needles) skip(n int) { w.round += n }

// reach comes to a round by its number: rounds in between are those that were told before.
func (w *needles) reach(s *written.Statement, from int) {
	if !s.Label.From.Written() || s.Label.Next {
		return
	}
	w.faces(s, from)
	w.due()
	for w.others != nil && w.round+1 < from && w.round > 0 && w.alike(w.others) && w.one(w.others) {
	}
	wrong := Finding{Kind: Misnumbered, At: s.At, To: s.To, Look: w.line, Found: from, Expected: w.round + 1}
	switch {
	case w.unnumbered && from > 0, from == w.round+1, w.round == 0 && len(w.past) == 0 && (from == 1 || from == w.through+1 && !w.anew || len(w.rounds) == 0 && from > 0 && w.section == ""):
	case from == 1 && (!w.numbers || s.At.Line != w.line.Line+1):
		w.past, w.bodies = nil, nil
	case w.round == 0 && len(w.past) == 0:
		wrong.Message = fmt.Sprintf("Round %d is the first here.", from)
		w.tell(wrong)
	case from > w.round+1:
		wrong.Message = fmt.Sprintf("Round %d follows round %d: what is between is not told.", from, w.round)
		w.tell(wrong)
	default:
		wrong.Message = fmt.Sprintf("Round %d was there already: this would be round %d.", from, w.round+1)
		w.tell(wrong)
	}
	w.anew = w.anew || from == 1 && w.through > 1 && w.numbers
	w.round, w.unnumbered, w.numbers = from-1, false, true
}

// alike reports whether the next round is one of those between: every even one, say.
func (w *needles) alike(s *written.Statement) bool {
	return s.Label.Alike == 0 || s.Label.Alike == 1+(w.round+1)%2
}

// due works rounds that were told ahead, as far as they follow on each other.
func (w *needles) due() {
	for {
		s, ok := w.later[w.round+1]
		if !ok {
			return
		}
		delete(w.later, w.round+1)
		w.one(s)
		w.counts(s.Counts)
	}
}
