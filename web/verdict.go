package web

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"fmt"
	"net/http"
	"slices"
	"strconv"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/web/view"
)

// weigh works out what a try suggests, and how the mitt goes on with what is
// accepted of it.
func (s *Server) weigh(ctx context.Context, m store.Mitt, doc project.Document, e view.TryEntry, t ticks) (view.Verdict, error) {
	v := view.Verdict{ID: m.ID, Doc: doc, Entry: e, After: m.Decided, Key: rand.Text()}
	pl, done := s.planner()
	defer done()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return v, err
	}
	places := tryon.Places(p.Mitt())
	if v.Seen, err = e.Try.Read(places, 0, doc.Sheet.Unit()); err != nil {
		return v, err
	}
	if err := s.goneOn(ctx, m.ID, &v, p.Mitt()); err != nil {
		return v, err
	}
	if v.Pace, v.OwnPace, err = s.pace(ctx, m.ID, e.Try.Side, p.Mitt()); err != nil {
		return v, err
	}
	list, err := tryon.Correct(v.Seen, doc.Effective(), p.Plan)
	if err != nil {
		return v, err
	}
	if len(list) > 0 && list[0].Key == tryon.Fabric && !t.accept(list[0]) {
		felt, err := tryon.Correct(v.Seen.WithoutFabric(), doc.Effective(), p.Plan)
		if err != nil {
			return v, err
		}
		list = append(list[:1], felt...)
	}
	for _, c := range list {
		accepted := c.Changes() && t.accept(c)
		v.Corrections = append(v.Corrections, view.Suggested{Correction: c, Accepted: accepted})
	}
	other, err := s.knitted(ctx, pl, m, doc, doc.Side.Other())
	if err != nil {
		return v, err
	}
	v.Onward, err = pl.Onward(doc, v.Seen, other, v.Accepted())
	return v, err
}

// goneOn takes the work as it stands by now, where it was counted since the try
// was noted: what is knitted meanwhile stays, too, and what was ripped does not.
// A part that was ended by the time of the try stays as it is.
func (s *Server) goneOn(ctx context.Context, id int64, v *view.Verdict, m stitch.Mitt) error {
	c, ok, err := s.store.Standing(ctx, id, v.Entry.Try.Side)
	if err != nil || !ok {
		return err
	}
	at := tryon.PlaceAfter(m, reached(c, tryon.Tasks(m)))
	switch {
	case at.Nth == v.Seen.Place.Nth:
		v.Seen.Place = at
	case c.At.After(v.Entry.Noted):
		v.Seen.Place, v.GoneOn = at, true
	}
	return nil
}

// showTry shows what a try suggests, or what became of it.
func (s *Server) showTry(w http.ResponseWriter, r *http.Request) error {
	m, doc, e, err := s.tryOf(r)
	if err != nil {
		return err
	}
	if e.Answered {
		return page(w, r, http.StatusOK, view.VerdictPage(view.Verdict{ID: m.ID, Doc: doc, Entry: e}))
	}
	v, err := s.weigh(r.Context(), m, doc, e, ticksOf(r))
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.VerdictPage(v))
}

// takeBack brings the sheet back to what it was before a try was answered, as
// one stroke. What is knitted by now, by the plan that followed, stays knitted.
func (s *Server) takeBack(w http.ResponseWriter, r *http.Request) error {
	m, doc, e, err := s.tryOf(r)
	if err != nil {
		return err
	}
	if !e.Answered {
		return fault.New(fault.Conflict, "This try is not part of the mitt: there is nothing to take back.")
	}
	then, err := s.store.At(r.Context(), m.ID, e.Before)
	if err != nil {
		return err
	}
	before, err := project.Decode(then.Document)
	if err != nil {
		return err
	}
	before.Side = doc.Side
	pl, done := s.planner()
	defer done()
	var hands []project.Knitted
	for _, side := range []project.Side{doc.Side.Other(), doc.Side} {
		h, err := s.knitted(r.Context(), pl, m, doc, side)
		if err != nil {
			return err
		}
		hands = append(hands, h)
	}
	if _, err := s.drawEdits(r.Context(), m.ID, m.Revision, doc.Difference(project.Knit(before, hands))); err != nil {
		return err
	}
	return s.lead(w, r, fmt.Sprintf("/mitts/%d/tries?back=1#line", m.ID))
}

// setAside puts a try that was noted by mistake out of the way, or takes it out
// again. Its corrections, if they are in the mitt, stay there.
func (s *Server) setAside(w http.ResponseWriter, r *http.Request) error {
	m, _, e, err := s.tryOf(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	if e.Answered {
		return fault.New(fault.Conflict, "The corrections of this try are in the mitt: go back to before it first.")
	}
	raw, err := json.Marshal(tryon.Answer{Accepted: []string{}, Declined: []string{}, Aside: r.PostForm.Get("aside") != "false"})
	if err != nil {
		return err
	}
	if _, err := s.store.Judge(r.Context(), m.ID, e.ID, store.Request{Kind: store.Do, After: m.Revision}, raw); err != nil {
		return err
	}
	return s.lead(w, r, fmt.Sprintf("/mitts/%d/tries#line", m.ID))
}

// countTo sets the count of a hand to where it goes on from; one that stands
// there already stays, with what ends its part.
func (s *Server) countTo(ctx context.Context, id int64, doc project.Document, side string, to tryon.Place) error {
	doc.Side = project.Side(side)
	pl, release := s.planner()
	defer release()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return err
	}
	at, err := s.stands(ctx, id, side, p.Mitt())
	if err != nil || at.Begun() && at.Nth == to.Nth {
		return err
	}
	return s.store.NoteCount(ctx, id, store.Count{Key: rand.Text(), Side: side, Section: string(to.Part), Round: to.Round})
}

// ticks are the corrections that the address or the form accepts, and those
// that it showed; what it did not show yet is accepted, unless it is doubtful.
type ticks struct{ keep, offered []string }

func ticksOf(r *http.Request) ticks {
	_ = r.FormValue("keep") // reads the form
	return ticks{r.Form["keep"], r.Form["offered"]}
}

func (t ticks) accept(c tryon.Correction) bool {
	return slices.Contains(t.keep, c.Key) || !slices.Contains(t.offered, c.Key) && c.Doubt == ""
}

// answerTry puts the accepted corrections into the mitt, one stroke that can
// be undone, and goes on at the needles.
func (s *Server) answerTry(w http.ResponseWriter, r *http.Request) error {
	m, doc, e, err := s.tryOf(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	after, err := strconv.ParseInt(r.PostForm.Get("after"), 10, 64)
	if err != nil {
		return fault.New(fault.Invalid, "after: is no revision; open the try again")
	}
	key := r.PostForm.Get("key")
	if key == "" {
		key = rand.Text() // a plain form without it is answered once for each press
	}
	if why := plain.Key(key); why != "" {
		return fault.New(fault.Invalid, "key: %s", why)
	}
	v, err := s.weigh(r.Context(), m, doc, e, ticksOf(r))
	if err != nil {
		return err
	}
	answer, next, to := v.Answer(), v.Onward.Next, v.Seen.Place
	if r.PostForm.Get("how") == "rip" {
		if v.Onward.Rip == nil {
			return fault.New(fault.Conflict, "Nothing has to be ripped back any more; open the try again.")
		}
		next, to = v.Onward.Rip.Next, v.Onward.Rip.To
		answer.Ripped, answer.Section, answer.Round, answer.Line = v.Onward.Rip.Rounds, to.Part, to.Round, v.Onward.Rip.Line
	} else if v.Onward.Is == nil {
		return v.Onward.Fault
	}
	path, tried := doc.Sheet.WithTried(e.ID)
	next.Sheet[path] = tried
	raw, err := json.Marshal(answer)
	if err != nil {
		return err
	}
	request := store.Request{Kind: store.Do, After: after, Key: key, Edits: doc.Difference(next), Rewrite: project.Rewrite}
	applied, err := s.store.Judge(r.Context(), m.ID, e.ID, request, raw)
	if err != nil {
		return err
	}
	if applied.Revision > m.Revision { // so that it is found in the history
		if err := s.store.Name(r.Context(), m.ID, applied.Revision, "after the try of "+e.Try.Date); err != nil {
			return err
		}
	}
	if err := s.countTo(r.Context(), m.ID, next, e.Try.Side, to); err != nil {
		return err
	}
	return s.lead(w, r, fmt.Sprintf("/mitts/%d/needles?side=%s", m.ID, e.Try.Side))
}
