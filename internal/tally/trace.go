package tally

import (
	"slices"

	"thenar/internal/written"
)

// mostRuns is how many runs a trace keeps at most, far beyond what anybody knits.
const mostRuns = 100_000

// Trace is what the text tells of one size and hand, in the order worked: enough to draw it
// stitch by stitch.
type Trace struct {
	Size, Hand string
	Steps      []Step
	Cut        bool // there was more than is kept

	runs int
}

// Act is what a step does.
type Act uint8

const (
	Works  Act = iota // a round or row; also what leaves the stitches between two as they are
	Casts             // a piece begins with stitches cast on
	Takes             // a piece begins with stitches that waited
	Shifts            // the round begins so many stitches further on
	Ends              // stitches are bound off, drawn up or grafted
	Jumps             // what is done isn't told stitch by stitch, or was not understood
)

// Step is a round or row, or what is done before, between or after them.
type Step struct {
	Does    Act
	Section string
	Round   int          // its number in the section; 0: it is none that was counted
	Side    written.Side // of a row: the one that faces; NoSide: it is worked in the round
	Line    int          // of the text
	Before  int          // stitches on the needles; -1: nobody knows
	After   int          // and after it; it is not what Runs leave where the text doesn't tell where it grows
	Runs    []Run        // in the order in which the hands work them
	Markers []int        // after so many of the stitches that it leaves, in that order
	Open    bool         // something in it was not understood, or before it: Runs are not all that it does
	Failed  bool         // it doesn't come out: what is left over is Unread
	Long    bool         // it is worked over and over, as long as it is told in a measure
}

// Run is the same thing done so many times, one beside the other.
type Run struct {
	Does    written.Does // Stitch, CastOn, PickUp, Hold, Waste, TakeIn, BindOff; Leave: they stay as they are; Unread
	Name    string       // of a stitch; what a set is for that waits; of an end "draw" or "graft"
	Times   int
	In, Out int            // loops that each takes and makes; psso takes away one that is made
	Even    bool           // not told one by one,
	As      written.Fabric // but by what they are in
	Set     int            // which set they go into or come from, from 1; 0: none
}

// TraceOf works a text for one size and hand only, and returns what is done. The names are
// those of a report's sizes.
func TraceOf(t *written.Text, size, hand string) (trace Trace, ok bool) {
	at := slices.Index(t.Sizes, size)
	if at < 0 || !slices.Contains(handsOf(t), hand) {
		return Trace{}, false
	}
	w := begun(at, size, newFindings())
	w.trace = &Trace{Size: size, Hand: hand}
	w.all(t, hand)
	return *w.trace, true
}

// did adds a step to the trace, if one is kept.
func (w *needles) did(s Step) {
	if w.trace == nil || w.trace.Cut {
		return
	}
	if w.trace.runs++; w.trace.runs > mostRuns {
		w.trace.Cut = true
		return
	}
	s.Section = w.section
	w.trace.Steps = append(w.trace.Steps, s)
}

// worked adds a round to the trace. An idle one is none that is counted.
func (w *needles) worked(p *pass, s *written.Statement, idle bool) {
	if w.trace == nil {
		return
	}
	step := Step{
		Round: w.round, Side: w.facing(s, idle), Line: s.At.Line, Before: p.in, After: p.out, Runs: p.runs,
		Markers: slices.Clone(p.new), Open: p.open || p.failed != nil && p.failed.Kind == Unread, Failed: p.failed != nil, Long: s.Unsure,
	}
	if w.rows && p.stretch == nil && !p.turning { // the work was turned already
		slices.Reverse(step.Markers)
		for i, at := range step.Markers {
			step.Markers[i] = p.out - at
		}
	}
	if idle || s.Unsure {
		step.Round = 0
	}
	if p.open {
		step.Before, step.After = -1, -1
	}
	w.did(step)
}

// facing returns the side that faces in a row: where it isn't told, the other one than in the
// row before.
func (w *needles) facing(s *written.Statement, idle bool) written.Side {
	last := written.NoSide
	if n := len(w.trace.Steps); n > 0 {
		last = w.trace.Steps[n-1].Side
	}
	switch {
	case idle:
		return last
	case s.Side != written.NoSide:
		return s.Side
	case !w.rows, s.Label.Written() && !s.Label.Row:
		return written.NoSide
	case last == written.Right:
		return written.Wrong
	}
	return written.Right
}

// now takes over a count that is stated or told for what was worked last.
func (w *needles) now(n int) {
	if w.trace == nil || w.trace.Cut || len(w.trace.Steps) == 0 {
		return
	}
	w.trace.Steps[len(w.trace.Steps)-1].After = n
}

// note adds what an item does to the round's runs, if a trace is kept.
func (p *pass) note(i *written.Item, times, in, out int) {
	if p.trace != nil {
		p.does(Run{Does: i.Does, Name: i.Name, Times: times, In: in, Out: out, Even: i.Even, As: i.As})
	}
}

func (p *pass) does(r Run) {
	if p.trace == nil || r.Times < 1 || p.trace.Cut {
		return
	}
	if n := len(p.runs); n > 0 {
		last := p.runs[n-1]
		if last.Times = r.Times; last == r && p.closed < n {
			p.runs[n-1].Times += r.Times
			return
		}
	}
	if p.trace.runs++; p.trace.runs > mostRuns {
		p.trace.Cut = true
		return
	}
	p.runs = append(p.runs, r)
}

// of says which set the last run goes into or comes from.
func (p *pass) of(h *held) {
	if n := len(p.runs); n > 0 && p.trace != nil {
		p.runs[n-1].Set, p.runs[n-1].Name, p.closed = h.id, h.name, n
	}
}

// taken is a run of stitches that waited.
func (h *held) taken(n int) Run {
	return Run{Does: written.TakeIn, Name: h.name, Times: n, Out: 1, Set: h.id}
}

// ended adds that so many stitches come to an end.
func (w *needles) ended(s *written.Statement, n int) {
	if w.trace == nil {
		return
	}
	step := Step{Does: Ends, Line: s.At.Line, Before: w.n, After: w.n - n}
	switch {
	case !w.known:
		step.Before, step.After = -1, 0
	case n > 0:
		step.Runs = []Run{{Does: written.BindOff, Name: s.Name, Times: n, In: 1}}
	}
	w.did(step)
}

// longer marks so many rounds as worked over and over, as long as it is told.
func (w *needles) longer(rounds int) {
	if w.trace == nil {
		return
	}
	for i := len(w.trace.Steps) - 1; i >= 0 && rounds > 0; i-- {
		w.trace.Steps[i].Long = true
		rounds--
	}
}
