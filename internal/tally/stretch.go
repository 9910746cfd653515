package tally

import (
	"slices"

	"thenar/internal/written"
)

// stretch is what is worked of the stitches on the needles while the others wait beside it: the
// work was turned before the end of a row, or only so many are worked for now. Stitches are
// numbered as the next row meets them: in a flat piece from its edge, in a round those of the
// stretch first and then the others, which lie at both its ends.
type stretch struct {
	lo, hi int // from where to where it reaches
	at     int // the next row begins here
	gap    int // and here it comes to where the work was turned before
	round  bool
}

// turn turns the work within a row: the rest waits.
func (p *pass) turn() {
	switch {
	case p.open, p.loose:
		p.turnLoosely()
	case p.at > p.start && (p.at < p.end || p.stretch != nil):
		p.turning = true
	}
}

// resumes begins the next row of a stretch: what lies before it stays as it is.
func (p *pass) resumes(s *stretch) {
	p.stretch, p.end, p.start = s, s.hi, s.at
	p.does(Run{Does: written.Leave, Times: s.at, In: 1, Out: 1})
	p.many(s.at, 1, 1)
}

// goesBack works the next row within the same sentence, after the work was turned.
func (w *needles) goesBack(p *pass) {
	from, either := p.from, p.either
	w.end(p)
	w.worked(p, from, false)
	*p = *w.begin()
	p.from, p.either, p.idle = from, either, false
}

// endsRow takes over a row of a stretch, as the next one meets it.
func (w *needles) endsRow(p *pass) {
	s := stretch{round: w.joined}
	hi := p.end + p.out - p.at
	switch {
	case p.stretch != nil:
		s.round, s.lo = p.stretch.round, p.stretch.lo
	case s.round:
		hi = p.out
	}
	pos := p.out
	if p.at > p.end { // it took in some that waited
		hi = pos
	}
	left := max(0, p.in-p.at)
	p.does(Run{Does: written.Leave, Times: left, In: 1, Out: 1})
	p.many(left, 1, 1)
	p.passed(p.in)
	w.n, w.known, w.growing = p.out, true, -1
	around := w.n // the stitch that the order is turned round at
	if s.round {
		around = hi
	}
	w.markers = make([]int, 0, len(p.new))
	for _, at := range p.new {
		if at > around { // among the others of a round
			at = around + w.n - at
		} else {
			at = around - at
		}
		w.markers = append(w.markers, at)
	}
	slices.Sort(w.markers)
	s.at, s.gap = around-pos, around-p.start
	s.lo, s.hi = around-hi, around-s.lo
	if p.after > 0 {
		w.n += p.after
		s.hi, s.gap = s.hi+p.after, s.gap+p.after
		for i, at := range w.markers {
			if at >= s.at {
				w.markers[i] += p.after
			}
		}
	}
	w.stretch = &s
	if !s.round && s.at == 0 && s.lo == 0 && s.hi == w.n && p.start == 0 {
		w.stretch = nil
	}
}

// rejoins ends the rows of a stretch where a round is worked again over all stitches.
func (w *needles) rejoins(s *written.Statement) {
	st := w.stretch
	if st == nil || !st.round || s.Label.Row || !s.Label.Written() && !s.Many.Written() {
		return
	}
	w.stretch, w.rows = nil, false
	w.further(st.at)
}

// further begins the round so many stitches further on.
func (w *needles) further(n int) {
	for i, at := range w.markers {
		w.markers[i] = (at - n + w.n) % max(1, w.n)
	}
	slices.Sort(w.markers)
}

// stretched works so many of the stitches for now; it reports whether it is known which.
func (w *needles) stretched(n int) bool {
	st := w.stretch
	switch {
	case !w.known:
		return false
	case st == nil:
		return n == w.n
	case st.round && n <= w.n:
		st.hi = n
	case !st.round && st.at+n <= w.n:
		st.lo, st.hi = st.at, st.at+n
	default:
		return false
	}
	return true
}

// stretches reports whether so many stitches are those of the stretch, or of its last row.
func (w *needles) stretches(n int) bool {
	st := w.stretch
	return st != nil && (n == st.hi-st.lo || n == st.gap-st.at)
}

// finishStretch binds a stretch off; it reports whether there is one, and others go on.
func (w *needles) finishStretch(s *written.Statement, n int) bool {
	st := w.stretch
	if st == nil || st.hi-st.lo == w.n || n >= 0 && n != st.hi-st.lo {
		w.stretch = nil
		return false
	}
	n = st.hi - st.lo
	w.ended(s, n)
	w.edges.CastOff += n
	if w.n, w.markers, w.lost = w.n-n, nil, w.lost || len(w.markers) > 0; st.round {
		w.stretch = nil
		return true
	}
	w.stretch = &stretch{hi: w.n, at: st.lo, gap: st.lo}
	return true
}

// wholly works rounds until all stitches of a stretch were worked.
func (w *needles) wholly(list []*written.Statement) bool {
	for range most {
		st := w.stretch
		if st == nil || st.at == 0 && st.gap == st.hi {
			return st != nil
		}
		for _, one := range list {
			if !w.one(one) {
				return true
			}
		}
	}
	return true
}
