package app

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// Suggested is a suggested correction, and whether the person accepts it.
type Suggested struct {
	tryon.Correction
	Accepted bool
}

// Weighed is a try with the corrections that it suggests, and how the mitt goes
// on with the accepted ones. For a try that was answered already, only ID, Doc
// and Entry are set.
type Weighed struct {
	ID          int64
	Doc         project.Document // of the hand that was tried
	Entry       TryEntry
	Seen        tryon.Reading
	Corrections []Suggested
	Onward      project.Onward
	Worn        *picture.Worn // what the hand is knitted in; nil while it has no colour
	After       int64         // the newest decision when the try was weighed
	Key         string        // of the answer, so that one sent twice is taken once
	GoneOn      bool          // rounds were counted since the try was noted
	Free        []mitt.Number // the fixed numbers that are let go of with the answer
	Hinder      []mitt.Number // the fixed numbers without which the corrections change something
	Pace        float64       // stitches a minute
	OwnPace     bool          // measured from the person's own counts
}

// Ticks are the keys of the corrections that a page accepts, and of those that
// it offered. A correction that was not offered yet is accepted unless it is
// doubtful. Free are the keys of the fixed numbers to let go of.
type Ticks struct{ Keep, Offered, Free []string }

func (t Ticks) accept(c tryon.Correction) bool {
	return slices.Contains(t.Keep, c.Key) || !slices.Contains(t.Offered, c.Key) && c.Doubt == ""
}

// Accepted returns the accepted corrections.
func (v Weighed) Accepted() []tryon.Correction {
	var list []tryon.Correction
	for _, c := range v.Corrections {
		if c.Accepted {
			list = append(list, c.Correction)
		}
	}
	return list
}

// answer returns the record of the answer to go on from here.
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

// wantsTry is what has to be read to weigh a try, beside the tries.
func wantsTry() store.Wants { return store.Wants{Counts: true} }

// WeighTry returns what a try suggests, and how the mitt goes on with the
// corrections that are ticked.
func (a *App) WeighTry(ctx context.Context, id, try int64, ticks Ticks) (Weighed, error) {
	wants := wantsTry()
	wants.Marks = true
	w, err := a.readTried(ctx, id, wants)
	if err != nil {
		return Weighed{}, err
	}
	t, err := w.try(try)
	if err != nil || t.Answered {
		return Weighed{ID: w.ID, Doc: w.doc, Entry: t}, err
	}
	pl, done := a.plannerOf(w.work)
	defer done()
	v, err := w.weigh(pl, t, ticks)
	if was := v.Onward.Was; was != nil {
		v.Worn = picture.NewWorn(was.Charts(v.Doc, w.Marks))
	}
	return v, err
}

// weigh returns a try with the corrections that it suggests.
func (w triedWork) weigh(pl *project.Planner, t TryEntry, ticks Ticks) (Weighed, error) {
	v := Weighed{ID: w.ID, Doc: w.doc, Entry: t, After: w.Decided, Key: rand.Text()}
	p, err := pl.Plan(w.doc.Effective())
	if err != nil {
		return v, err
	}
	m := p.Mitt()
	if v.Seen, err = t.Try.Read(tryon.Places(m), 0, w.doc.Sheet.Unit()); err != nil {
		return v, err
	}
	w.goneOn(&v, m)
	v.Pace, v.OwnPace = w.pace(t.Try.Side, m)
	if err := v.suggest(w.doc, p, ticks); err != nil {
		return v, err
	}
	other, err := w.knitted(pl, w.doc, w.doc.Side.Other())
	if err != nil {
		return v, err
	}
	for _, n := range w.doc.Sheet.Fixed() {
		if slices.Contains(ticks.Free, n.Key()) {
			v.Free = append(v.Free, n)
		}
	}
	without := func(free []mitt.Number) (project.Onward, error) {
		return pl.Onward(w.doc, v.Seen, other, append(v.Accepted(), letGo(free)...))
	}
	if v.Onward, err = without(v.Free); err == nil && len(v.Free) == 0 && len(v.Accepted()) > 0 && !moves(v.Onward) {
		v.Hinder, err = hinder(w.doc.Sheet.Fixed(), without)
	}
	return v, err
}

// moves reports whether a way on has a plan, and a round in it that is new.
func moves(o project.Onward) bool { return o.Is != nil && o.Changed.Count() > 0 }

// letGo returns what lets go of fixed numbers, as a correction of the sheet.
func letGo(list []mitt.Number) []tryon.Correction {
	if len(list) == 0 {
		return nil
	}
	c := tryon.Correction{Key: "free"}
	for _, n := range list {
		c.Edits = append(c.Edits, tryon.Edit{Path: n.Path()})
	}
	return []tryon.Correction{c}
}

// hinder returns those of the fixed numbers that stand in the way of a change:
// what is planned without them is what is planned without any. It returns none
// if letting go of all changes nothing.
func hinder(fixed []mitt.Number, without func([]mitt.Number) (project.Onward, error)) ([]mitt.Number, error) {
	all, err := without(fixed)
	if err != nil || !moves(all) {
		return nil, err
	}
	list := fixed
	for _, n := range fixed {
		fewer := slices.DeleteFunc(slices.Clone(list), func(m mitt.Number) bool { return m == n })
		o, err := without(fewer)
		if err != nil {
			return nil, err
		}
		if moves(o) && project.Differing(all.Is.Mitt(), o.Is.Mitt()).Count() == 0 {
			list = fewer
		}
	}
	return list, nil
}

// suggest lists the corrections. Where the correction of the fabric is
// declined, the others are worked out from what was felt alone.
func (v *Weighed) suggest(doc project.Document, p *project.Planned, ticks Ticks) error {
	list, err := tryon.Correct(v.Seen, doc.Effective(), p.Plan)
	if err != nil {
		return err
	}
	fabric := slices.IndexFunc(list, func(c tryon.Correction) bool { return c.Key == tryon.Fabric })
	if fabric >= 0 && !ticks.accept(list[fabric]) {
		felt, err := tryon.Correct(v.Seen.WithoutFabric(), doc.Effective(), p.Plan)
		if err != nil {
			return err
		}
		list = tryon.FirstTold(append([]tryon.Correction{list[fabric]}, felt...))
	}
	for _, c := range list {
		v.Corrections = append(v.Corrections, Suggested{c, c.Changes() && ticks.accept(c)})
	}
	return nil
}

// goneOn moves the place of the try to where the work stands now, if rounds
// were counted since: what was knitted in the meantime stays, and what was
// ripped is gone. A section that was finished at the time of the try stays
// finished.
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

// pace returns how fast a hand of the mitt is knitted, in stitches a minute,
// and whether that was measured from the person's own counts.
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
	Key   string // names the answer, so that one sent twice is taken once; may be empty
	Rip   bool   // rip back, instead of going on from here
	// Finger is a finger of a glove that is ripped back by itself, or empty.
	Finger stitch.Part
	Ticks
}

// AnswerTry puts the accepted corrections into the mitt as one stroke that can
// be undone, names that moment in the history, and sets the count of the hand
// to where it goes on from. It returns the hand that was tried.
//
// It fails with fault.Conflict where the mitt was changed since the page was
// opened, or where nothing has to be ripped back any more.
func (a *App) AnswerTry(ctx context.Context, id, try int64, answer TryAnswer) (side string, err error) {
	if answer.Key == "" {
		answer.Key = rand.Text() // a form without a script sends none: each press is an answer
	}
	if why := plain.Key(answer.Key); why != "" {
		return "", fault.New(fault.Invalid, "key: %s", why)
	}
	wants := wantsTry()
	wants.Key = answer.Key
	_, err = a.changeTried(ctx, id, wants, func(w triedWork, pl *project.Planner) (store.Change, error) {
		t, err := w.try(try)
		side = t.Try.Side
		if err != nil || w.Drawn { // taken already; only the response was lost
			return store.Change{}, err
		}
		return w.answered(pl, t, answer)
	})
	return side, err
}

// answered returns the change that answers a try.
func (w triedWork) answered(pl *project.Planner, t TryEntry, a TryAnswer) (store.Change, error) {
	v, err := w.weigh(pl, t, a.Ticks)
	if err != nil {
		return store.Change{}, err
	}
	kept, next, to := v.answer(), v.Onward.Next, v.Seen.Place
	if finger := slices.IndexFunc(v.Onward.Fingers, func(r project.FingerRip) bool { return r.Part == a.Finger }); a.Finger != "" {
		if finger < 0 {
			return store.Change{}, fault.New(fault.Conflict, "This finger has not to be ripped back any more; open the try again.")
		}
		rip := v.Onward.Fingers[finger]
		next, to = rip.Next, rip.At
		kept.Ripped, kept.Section, kept.Round, kept.Line = rip.Rounds, rip.Part, rip.To, rip.Line
	} else if a.Rip {
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

// countTo returns the count that puts a document's hand where it goes on from.
// A hand that stands there already keeps its count, which may also say that its
// section is finished.
func (w *work) countTo(pl *project.Planner, doc project.Document, to tryon.Place) ([]store.Count, error) {
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return nil, err
	}
	if at := w.place(doc.Side, p.Mitt()); at.Begun() == to.Begun() && at.Nth == to.Nth {
		return nil, nil
	}
	c := castOn(doc.Side)
	c.Section, c.Round = string(to.Part), to.Round
	return []store.Count{c}, nil
}

// TakeBack undoes the answer to a try: the sheet becomes what it was before, as
// one stroke. What was knitted since, by the plan that followed, stays knitted.
func (a *App) TakeBack(ctx context.Context, id, try int64) error {
	before := func(w store.Work) (int64, bool) {
		for _, t := range w.Tries {
			if t.ID == try && t.Answer != nil {
				return t.Answer.Before, false
			}
		}
		return 0, false
	}
	_, err := a.changeTried(ctx, id, store.Wants{Earlier: []store.Pick{before}}, func(w triedWork, pl *project.Planner) (store.Change, error) {
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

func (w triedWork) takenBack(pl *project.Planner, t TryEntry) (store.Change, error) {
	before, err := w.document(t.Before)
	if err != nil {
		return store.Change{}, err
	}
	if before == nil {
		return store.Change{}, fault.New(fault.NotFound, "This mitt has no moment %d; its newest is %d.", t.Before, w.Revision)
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
	return w.stroke(w.doc.Difference(pl.WithProgress(*before, hands))), nil
}

// SetAside puts away a try that was noted by mistake, or brings it back. A try
// whose corrections are in the mitt can't be put away.
func (a *App) SetAside(ctx context.Context, id, try int64, aside bool) error {
	_, err := a.changeTried(ctx, id, store.Wants{}, func(w triedWork, _ *project.Planner) (store.Change, error) {
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
