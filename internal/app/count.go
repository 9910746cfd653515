package app

import (
	"context"
	"crypto/rand"
	"errors"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// Needles is a hand of a pair as it is knitted.
type Needles struct {
	ID    int64
	Doc   project.Document // of that hand
	Out   *project.Outputs // nil where there is no plan to knit by yet
	Done  int              // the number of tasks done
	Other OtherHand
	Rip   *words.Ripping // that a try led to and after which nothing is knitted; nil: none
}

// OtherHand is where the work on the other hand of a pair stands.
type OtherHand struct {
	Planned, Begun, Ended bool
	Knitted, Rounds       int
}

// Needles returns the hand of a mitt that is being knitted: right, left, or
// that of its document if hand is neither.
func (a *App) Needles(ctx context.Context, id int64, hand string) (Needles, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return Needles{}, err
	}
	if side := project.Side(hand); side == project.Right || side == project.Left {
		w.doc.Side = side
	}
	pl, done := a.plannerOf(&w)
	defer done()
	n := Needles{ID: w.ID, Doc: w.doc}
	n.Out, err = w.outputs(pl, w.doc)
	var fields fault.Fields
	if err != nil {
		if errors.As(err, &fields) {
			n.Out, err = nil, nil
		}
		return n, err
	}
	n.Done = w.done(w.doc.Side, tryon.Tasks(n.Out.Mitt))
	n.Other, n.Rip = w.other(pl), w.ripped(pl, w.doc, n.Out.Mitt)
	return n, nil
}

// other returns where the other hand of the pair stands.
func (w *work) other(pl *project.Planner) OtherHand {
	doc := w.doc
	doc.Side = doc.Side.Other()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return OtherHand{}
	}
	list := tryon.Tasks(p.Mitt())
	o := OtherHand{Planned: true, Rounds: list[len(list)-1].Knitted}
	if done := w.done(doc.Side, list); done > 0 {
		o.Begun, o.Ended, o.Knitted = true, done == len(list), list[done-1].Knitted
	}
	return o
}

// NeedleEntry is an entry made at the needles: a task that was done, or, if
// Note is set, a note on a round.
type NeedleEntry struct {
	Key     string      `json:"key"` // names the entry, so that one sent twice is taken once
	Side    string      `json:"side"`
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	Note    *string     `json:"note"`
}

// maxRounds is the highest number that a round of a section may have.
const maxRounds = 1500

func (e NeedleEntry) check() error {
	var faults fault.Fields
	if why := plain.Key(e.Key); why != "" {
		faults.Add("key", "%s", why)
	}
	if e.Side != "right" && e.Side != "left" {
		faults.Add("side", "is %.20q; write right or left", e.Side)
	}
	known := e.Section == "" && e.Round == 0 && e.Note == nil
	for _, p := range stitch.Worked() {
		known = known || e.Section == p && (e.Round > tryon.Opening && e.Round <= maxRounds ||
			e.Note == nil && (e.Round == tryon.Opening || e.Round == tryon.Ending || e.Round == tryon.Woven))
	}
	if !known {
		faults.Add("round", "is %d of %.20q; write a round of a part of the mitt", e.Round, e.Section)
	}
	if e.Note != nil {
		if why := plain.Line(*e.Note, chart.LongestNote); why != "" {
			faults.Add("note", "%s", why)
		}
	}
	return faults.Err()
}

// change returns the change that takes the entry: a count, or a stroke with a
// note on a whole round.
func (e NeedleEntry) change() store.Change {
	if e.Note == nil {
		return store.Change{Counts: []store.Count{{Key: e.Key, Side: e.Side, Section: string(e.Section), Round: e.Round}}}
	}
	edit := chart.Edit{Section: e.Section, Round: e.Round, Layer: chart.Notes, Value: strings.TrimSpace(*e.Note)}
	return store.Change{Strokes: []store.Request{{Kind: store.Do, Newest: true, Key: e.Key, Edits: []chart.Edit{edit}}}}
}

// Enter takes an entry made at the needles and returns the mitt's newest
// revision. An entry sent again, under the same key, is not taken again.
func (a *App) Enter(ctx context.Context, id int64, e NeedleEntry) (revision int64, err error) {
	if err := e.check(); err != nil {
		return 0, err
	}
	done, err := a.store.Commit(ctx, id, e.change())
	return done.Revision, err
}

// Count counts the first nth tasks of a hand as done. With a note, it leaves
// the count and notes it on the task after them.
func (a *App) Count(ctx context.Context, id int64, side string, nth int, note *string) error {
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, pl *project.Planner) (store.Change, error) {
		w.doc.Side = project.Side(side)
		p, err := pl.Plan(w.doc.Effective())
		if err != nil {
			return store.Change{}, fault.New(fault.Invalid, "This is no count of a mitt with a plan; open the page again.")
		}
		if note != nil {
			nth++ // the round that is knitted next
		}
		list := tryon.Tasks(p.Mitt())
		c := countAfter(w.doc.Side, list, min(max(nth, 0), len(list)))
		e := NeedleEntry{c.Key, side, stitch.Part(c.Section), c.Round, note}
		if err := e.check(); err != nil {
			return store.Change{}, err
		}
		change := e.change()
		change.Base = &w.Base
		return change, nil
	})
	return err
}

// countAfter returns the count of a hand of which the first done tasks are
// done.
func countAfter(side project.Side, list []tryon.Task, done int) store.Count {
	c := castOn(side)
	if done > 0 {
		c.Section, c.Round = string(list[done-1].Part), list[done-1].Round
	}
	return c
}

// castOn returns the count of a hand of which no task is done.
func castOn(side project.Side) store.Count {
	return store.Count{Key: rand.Text(), Side: string(side)}
}

// countMarked returns the count up to the round that edits mark as the one on
// the needles, if they mark one.
func (w *work) countMarked(pl *project.Planner, edits []chart.Edit) ([]store.Count, error) {
	for _, e := range edits {
		if e.Layer != chart.Needles || e.Value == "" {
			continue
		}
		p, err := pl.Plan(w.doc.Effective())
		if err != nil {
			return nil, nil // nothing is counted in a mitt without a plan
		}
		list := tryon.Tasks(p.Mitt())
		for done, next := range list {
			if next.Part == e.Section && next.Round == e.Round {
				return []store.Count{countAfter(w.doc.Side, list, done)}, nil
			}
		}
		return nil, nil
	}
	return nil, nil
}
