package tally

import (
	"slices"

	"thenar/internal/written"
)

// needles are the stitches of one size as the text goes on.
type needles struct {
	index   int // its place among all
	size    int // its place among those of the statement that is worked
	name    string
	report  *findings
	rounds  []Round
	since   written.Spot // where the present count comes from
	numbers bool         // the round before had a number in the text
	line    written.Spot // the rounds before
	through int          // the last round's number, in whatever section
	unsure  bool         // something was not counted
	section string

	live     bool         // there are stitches on the needles
	ever     bool         // there were, or it is told how they come there
	partial  bool         // the work was turned within a row, so that not all wait for the next
	stretch  *stretch     // what is worked of them; nil: all
	faced    faced        // the last row of which the side was told
	joined   bool         // they are worked in the round
	apart    bool         // only some of the stitches are worked for now
	charted  bool         // rounds were worked whose stitches are told elsewhere
	beneath  *needles     // the piece, while a pattern is worked that is told for itself
	beside   bool         // some of the text is told at another place
	cast     int          // stitches of a provisional cast-on, which can be worked again
	dropped  map[int]bool // sets of so many were taken up
	n        int          // so many
	known    bool         // n is known
	markers  []int
	growing  int          // the marker whose side grows; -1: none
	marked   written.Spot // where a marker was placed last
	lost     bool         // nobody knows where the markers are
	held     []held
	going    *pass // a round that is not finished
	other    *fork // another count that there may be; nil: there is none
	began    written.Spot
	finished int // pieces
	edges    Edges
	long     []Long
	piece    int // rounds that were counted before the piece began
	last     int // stitches of the last one when it was finished

	round      int // the last one of the section; 0: none
	rows       bool
	unnumbered bool // rounds were worked that no number tells
	bodies     map[int]*written.Statement
	later      map[int]*written.Statement // told, and not yet worked
	others     *written.Statement         // what all rounds between are
	named      map[string]*written.Statement
	names      map[string]*written.Statement // those of all sections
	told       map[int]*written.Statement    // rounds by their numbers, of all sections
	sections   []bodies
	past       []*written.Statement // every round in its order
	stars      map[int][2]int       // from where to where rounds stand between asterisks
	pace       []int                // in which rounds a named one comes, until it is told where that ends
	head       *written.Statement   // a label whose stitches are told in the lines that follow it
	shaped     []shaped             // rounds of the section that change the count
	plan       *planned
	sketch     *written.Statement   // how many rounds the section is said to have
	anew       bool                 // sections number their rounds anew
	tables     []*written.Statement // those that nothing was compared with yet
	trace      *Trace               // nil: nobody asks for it
	sets       int                  // how many were put aside
}

// shaped is a round that changed the count, and what there was after it.
type shaped struct {
	round, n, inside int
}

// held are stitches that wait.
type held struct {
	name  string
	n     int
	known bool
	waste bool // knitted with waste yarn, so that there are loops on both its sides
	at    written.Spot
	to    written.Spot
	of    *pass // the round in which they were put aside
	less  bool  // some were taken up
	into  *pass // the round into which the others were knitted
	maybe bool  // it may be taken up where something isn't counted
	id    int   // which of all sets it is, from 1
}

// pass is one round while it is worked.
type pass struct {
	in, at, out int // stitches of the round below, those eaten, those made
	on, off     int // stitches that are cast on, and cast off
	old, new    []int
	next        int  // the next of the old markers
	past        bool // the round's end was taken for a marker, and passed
	reached     int  // the marker that was worked to last; -1: none
	grew        int  // the segment that grew; -1: none
	open        bool
	start, end  int // where a row of a stretch begins, and where it ends
	after       int // stitches cast on after the turn
	beyond      int // stitches of the next round that are worked, since it begins there
	stretch     *stretch
	turning     bool // the work is turned after what was worked
	loose       bool // only how it changes the count is known: see loose.go
	needle      int  // where the needle ends that is worked
	turned      bool // the work was turned before its end
	charted     bool // some of its stitches are told elsewhere
	either      bool // numbers of repeats count the first
	failed      *Finding
	from        *written.Statement
	idle        bool // nothing was worked yet but stitches put aside and cast on
	trace       *Trace
	runs        []Run
	closed      int // as many runs as nothing joins any more
}

func (w *needles) begin() *pass {
	p := &pass{in: w.n, end: w.n, old: w.markers, new: make([]int, 0, len(w.markers)), reached: -1, grew: -1, open: !w.known, loose: w.partial, idle: true, trace: w.trace}
	if w.stretch != nil && w.known && !p.loose {
		p.resumes(w.stretch)
	}
	return p
}

// passed takes the old markers to the new round that lie before a stitch, or at it.
func (p *pass) passed(to int) {
	for p.next < len(p.old) && p.old[p.next] <= to {
		p.new = append(p.new, p.out)
		p.next++
	}
}

// eat takes stitches of the round below and makes others; it reports whether there were
// enough.
func (p *pass) eat(in, out int) bool {
	switch {
	case p.open:
		p.out += out
		return true
	case p.loose:
		p.at, p.out = p.at+in, p.out+out
		return true
	case in > 0:
		p.passed(p.at)
	}
	if p.at+in > p.in {
		return false
	}
	p.at += in
	if out > in {
		p.grew = len(p.new)
	}
	p.out += out
	p.passed(p.at - 1) // those within stitches that were worked together
	return p.out >= 0
}

// many eats the same stitch over and over.
func (p *pass) many(times, in, out int) bool {
	switch {
	case p.open:
		p.out += times * out
		return true
	case p.loose:
		p.at, p.out = p.at+times*in, p.out+times*out
		return true
	case in == 0: // as one that makes so many
		return times == 0 || p.eat(0, times*out)
	case in != 1 || out != 1:
		for range times {
			if !p.eat(in, out) {
				return false
			}
		}
		return true
	}
	for times > 0 {
		p.passed(p.at)
		step := times
		if p.next < len(p.old) {
			step = min(step, p.old[p.next]-p.at)
		}
		if p.at+step > p.in {
			rest := p.in - p.at
			p.at, p.out = p.in, p.out+rest
			p.beyond += step - rest
			return p.from != nil && p.from.Further
		}
		p.at, p.out, times = p.at+step, p.out+step, times-step
	}
	return true
}

// marker returns where the next marker stands that wasn't reached yet; the round's end is the
// last one.
func (p *pass) marker() (at int) {
	if p.next < len(p.old) && p.old[p.next] == p.at && p.reached == p.next {
		p.new = append(p.new, p.out)
		p.next++
	}
	if p.next < len(p.old) {
		p.reached = p.next
		return p.old[p.next]
	}
	return p.end
}

// end takes over what the round made.
func (w *needles) end(p *pass) {
	w.partial, w.charted = p.turned, w.charted || p.charted
	if p.loose && !p.open {
		w.loosely(p)
		return
	}
	if w.stretch = nil; !p.open && (p.stretch != nil || p.turning) {
		w.endsRow(p)
		return
	}
	w.partial = w.partial || p.stretch != nil
	p.passed(p.in)
	w.n, w.known, w.markers = p.out, !p.open, p.new
	w.lost = (w.lost && len(p.new) == 0) || p.open
	if p.grew >= 0 {
		w.growing = p.grew
	}
	if w.rows {
		w.turn()
	}
	if p.beyond > 0 && p.from.Further {
		w.further(p.beyond)
	}
}

// turn turns the work, so that the row ends where it began.
func (w *needles) turn() {
	for i, at := range w.markers {
		w.markers[i] = w.n - at
	}
	slices.Reverse(w.markers)
	if w.growing >= 0 {
		w.growing = max(0, len(w.markers)-w.growing)
	}
}

// inside returns how many stitches there are between the markers where it grows, or where a
// single pair is.
func (w *needles) inside() (n int, ok bool) {
	if len(w.markers) == 0 || !w.known || w.lost {
		return 0, false
	}
	at := w.growing
	switch inner := len(w.markers) - 1; {
	case inner == 1:
		at = 1 // between the two
	case at < 0 || at > len(w.markers):
		at = 0
	}
	from, to := 0, w.n
	if at > 0 {
		from = w.markers[at-1]
	}
	if at < len(w.markers) {
		to = w.markers[at]
	}
	return to - from, true
}
