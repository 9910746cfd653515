package app

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// Suggested is a correction with whether it is accepted.
type Suggested struct {
	tryon.Correction
	Accepted bool
}

// Weighed is a try with what it suggests, and how the mitt goes on with what is
// accepted of it. Of one that is answered already there are only the first
// three.
type Weighed struct {
	ID          int64
	Doc         project.Document // of the side that was tried
	Entry       TryEntry
	Seen        tryon.Reading
	Corrections []Suggested
	Onward      project.Onward
	After       int64   // the revision that the answer is given to
	Key         string  // of the answer, so that it is taken once
	GoneOn      bool    // the work was counted further since
	Pace        float64 // stitches a minute
	OwnPace     bool    // told by the person's own counts
}

// Ticks are the corrections that a page accepts, and those that it showed; what
// it did not show yet is accepted, unless it is doubtful.
type Ticks struct{ Keep, Offered []string }

func (t Ticks) accept(c tryon.Correction) bool {
	return slices.Contains(t.Keep, c.Key) || !slices.Contains(t.Offered, c.Key) && c.Doubt == ""
}

// Accepted are the corrections that are.
func (v Weighed) Accepted() []tryon.Correction {
	var list []tryon.Correction
	for _, c := range v.Corrections {
		if c.Accepted {
			list = append(list, c.Correction)
		}
	}
	return list
}

// answer is what is kept of the answer, where the mitt goes on from here.
func (v Weighed) answer() tryon.Answer {
	a := tryon.Answer{
		Accepted: []string{}, Declined: []string{}, Section: v.Seen.Place.Part, Round: v.Seen.Place.Round,
		Line: v.Onward.Line, Ease: v.Onward.Ease,
	}
	for _, c := range v.Corrections {
		switch {
		case c.Accepted:
			a.Accepted = append(a.Accepted, c.Key)
		case c.Changes():
			a.Declined = append(a.Declined, c.Key)
		}
	}
	return a
}

// weighing is what has to be read to weigh a try.
func weighing() store.Wants { return store.Wants{Tries: true, Counts: true} }

// WeighTry works out what a try suggests, and how the mitt goes on with what is
// ticked of it.
func (a *App) WeighTry(ctx context.Context, id, try int64, ticks Ticks) (Weighed, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, weighing()))
	if err != nil {
		return Weighed{}, err
	}
	t, err := w.try(try)
	if err != nil || t.Answered {
		return Weighed{ID: w.ID, Doc: w.doc, Entry: t}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	return w.weigh(pl, t, ticks)
}

// weigh works out what a try suggests.
func (w *work) weigh(pl *project.Planner, t TryEntry, ticks Ticks) (Weighed, error) {
	v := Weighed{ID: w.ID, Doc: w.doc, Entry: t, After: w.Decided, Key: rand.Text()}
	p, err := pl.Plan(w.doc.Effective())
	if err != nil {
		return v, err
	}
	is := p.Mitt()
	if v.Seen, err = t.Try.Read(tryon.Places(is), 0, w.doc.Sheet.Unit()); err != nil {
		return v, err
	}
	w.goneOn(&v, is)
	v.Pace, v.OwnPace = w.pace(t.Try.Side, is)
	if err := v.suggest(w.doc, p, ticks); err != nil {
		return v, err
	}
	other, err := w.knitted(pl, w.doc, w.doc.Side.Other())
	if err != nil {
		return v, err
	}
	v.Onward, err = pl.Onward(w.doc, v.Seen, other, v.Accepted())
	return v, err
}

// suggest lists the corrections. Where that of the fabric is declined, the
// others are worked out from what was felt alone.
func (v *Weighed) suggest(doc project.Document, p *project.Planned, ticks Ticks) error {
	list, err := tryon.Correct(v.Seen, doc.Effective(), p.Plan)
	if err != nil {
		return err
	}
	if len(list) > 0 && list[0].Key == tryon.Fabric && !ticks.accept(list[0]) {
		felt, err := tryon.Correct(v.Seen.WithoutFabric(), doc.Effective(), p.Plan)
		if err != nil {
			return err
		}
		list = append(list[:1], felt...)
	}
	for _, c := range list {
		v.Corrections = append(v.Corrections, Suggested{c, c.Changes() && ticks.accept(c)})
	}
	return nil
}

// goneOn takes the work as it stands by now, where it was counted since the try
// was noted: what is knitted meanwhile stays, too, and what was ripped does not.
// A part that was ended by the time of the try stays as it is.
func (w *work) goneOn(v *Weighed, m stitch.Mitt) {
	c, counted := w.Last[v.Entry.Try.Side]
	if !counted {
		return
	}
	at := tryon.PlaceAfter(m, reached(c, tryon.Tasks(m)))
	switch {
	case at.Nth == v.Seen.Place.Nth:
		v.Seen.Place = at
	case c.At.After(v.Entry.Noted):
		v.Seen.Place, v.GoneOn = at, true
	}
}

// pace is how fast a hand of the mitt is knitted, from its counts.
func (w *work) pace(side string, m stitch.Mitt) (perMinute float64, own bool) {
	tasks, places := tryon.Tasks(m), tryon.Places(m)
	var list []tryon.Counted
	for _, c := range w.Counts {
		if c.Side != side {
			continue
		}
		one := tryon.Counted{At: c.At}
		if done := reached(c, tasks); done > 0 {
			one.Nth = tasks[done-1].Knitted
		}
		if one.Nth > 0 {
			one.Stitches = places[one.Nth-1].After
		}
		list = append(list, one)
	}
	return tryon.Pace(list)
}

// TryAnswer is the person's answer to a try.
type TryAnswer struct {
	After int64  // the newest decision that the page knew
	Key   string // the page's own name of the answer, so that it is taken once; may be empty
	Rip   bool   // rip back, instead of going on from here
	Ticks
}

// AnswerTry puts the corrections that are accepted into the mitt, as one stroke
// that can be undone, with a name in the history, and sets the count of the
// hand to where it goes on from. It returns the hand that was tried.
//
// It fails with fault.Conflict where the mitt was changed since the page was
// opened, or where nothing has to be ripped back any more.
func (a *App) AnswerTry(ctx context.Context, id, try int64, answer TryAnswer) (side string, err error) {
	if answer.Key == "" {
		answer.Key = rand.Text() // a plain form without it is answered once for each press
	}
	if why := plain.Key(answer.Key); why != "" {
		return "", fault.New(fault.Invalid, "key: %s", why)
	}
	wants := weighing()
	wants.Key = answer.Key
	_, err = a.change(ctx, id, wants, func(w *work, pl *project.Planner) (store.Change, error) {
		t, err := w.try(try)
		side = t.Try.Side
		if err != nil || w.Drawn { // its answer was lost
			return store.Change{}, err
		}
		return w.answered(pl, t, answer)
	})
	return side, err
}

// answered is the change that answers a try.
func (w *work) answered(pl *project.Planner, t TryEntry, a TryAnswer) (store.Change, error) {
	v, err := w.weigh(pl, t, a.Ticks)
	if err != nil {
		return store.Change{}, err
	}
	kept, next, to := v.answer(), v.Onward.Next, v.Seen.Place
	if a.Rip {
		if v.Onward.Rip == nil {
			return store.Change{}, fault.New(fault.Conflict, "Nothing has to be ripped back any more; open the try again.")
		}
		next, to = v.Onward.Rip.Next, v.Onward.Rip.To
		kept.Ripped, kept.Section, kept.Round, kept.Line = v.Onward.Rip.Rounds, to.Part, to.Round, v.Onward.Rip.Line
	} else if v.Onward.Is == nil {
		return store.Change{}, v.Onward.Fault
	}
	next.Sheet = next.Sheet.Clone()
	path, tried := w.doc.Sheet.WithTried(t.ID)
	next.Sheet[path] = tried
	c := w.stroke(w.doc.Difference(next))
	c.After, c.Strokes[0].Key, c.Moment = a.After, a.Key, "after the try of "+t.Try.Date
	raw, err := json.Marshal(kept)
	if err != nil {
		return store.Change{}, err
	}
	c.Answer = &store.Answer{Try: t.ID, Text: raw}
	c.Counts, err = w.countTo(pl, next, to)
	return c, err
}

// countTo sets the count of a document's hand to where it goes on from; one that
// stands there already stays, with what ends its part.
func (w *work) countTo(pl *project.Planner, doc project.Document, to tryon.Place) ([]store.Count, error) {
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return nil, err
	}
	if at := w.place(doc.Side, p.Mitt()); at.Begun() && at.Nth == to.Nth {
		return nil, nil
	}
	c := castOn(doc.Side)
	c.Section, c.Round = string(to.Part), to.Round
	return []store.Count{c}, nil
}

// TakeBack brings the sheet back to what it was before a try was answered, as
// one stroke. What is knitted by now, by the plan that followed, stays knitted.
func (a *App) TakeBack(ctx context.Context, id, try int64) error {
	before := func(w store.Work) (int64, bool) {
		for _, t := range w.Tries {
			if t.ID == try && t.Answer != nil {
				return t.Answer.Before, false
			}
		}
		return 0, false
	}
	_, err := a.change(ctx, id, store.Wants{Tries: true, Earlier: []store.Pick{before}}, func(w *work, pl *project.Planner) (store.Change, error) {
		t, err := w.try(try)
		if err != nil {
			return store.Change{}, err
		}
		if !t.Answered {
			return store.Change{}, fault.New(fault.Conflict, "This try is not part of the mitt: there is nothing to take back.")
		}
		return w.takenBack(pl, t)
	})
	return err
}

func (w *work) takenBack(pl *project.Planner, t TryEntry) (store.Change, error) {
	before, err := w.document(t.Before)
	if err != nil {
		return store.Change{}, err
	}
	if before == nil {
		return store.Change{}, fault.New(fault.NotFound, "This mitt has no revision %d; its newest is %d.", t.Before, w.Revision)
	}
	before.Side = w.doc.Side
	var hands []project.Progress
	for _, side := range []project.Side{w.doc.Side.Other(), w.doc.Side} {
		h, err := w.knitted(pl, w.doc, side)
		if err != nil {
			return store.Change{}, err
		}
		hands = append(hands, h)
	}
	return w.stroke(w.doc.Difference(project.WithProgress(*before, hands))), nil
}

// SetAside puts a try that was noted by mistake out of the way, or takes it out
// again. One whose corrections are in the mitt can't be put away.
func (a *App) SetAside(ctx context.Context, id, try int64, aside bool) error {
	_, err := a.change(ctx, id, store.Wants{Tries: true}, func(w *work, _ *project.Planner) (store.Change, error) {
		t, err := w.try(try)
		if err != nil {
			return store.Change{}, err
		}
		if t.Answered {
			return store.Change{}, fault.New(fault.Conflict, "The corrections of this try are in the mitt: go back to before it first.")
		}
		raw, err := json.Marshal(tryon.Answer{Accepted: []string{}, Declined: []string{}, Aside: aside})
		return store.Change{Base: &w.Base, After: w.Decided, Answer: &store.Answer{Try: t.ID, Text: raw}}, err
	})
	return err
}
