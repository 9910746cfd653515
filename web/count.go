package web

import (
	"context"
	"crypto/rand"
	"fmt"
	"maps"
	"net/http"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/web/view"
)

// done is how many tasks of a hand are done. A round that the plan no longer
// has is taken as the last one of its section.
func (s *Server) done(ctx context.Context, id int64, side string, list []tryon.Task) (int, error) {
	c, ok, err := s.store.Standing(ctx, id, side)
	if err != nil || !ok {
		return 0, err
	}
	return reached(c, list), nil
}

// reached is how many tasks of a mitt a count comes to.
func reached(c store.Count, list []tryon.Task) int {
	return tryon.TasksDone(list, stitch.Part(c.Section), c.Round)
}

// stands is where the work on a hand stands in a mitt.
func (s *Server) stands(ctx context.Context, id int64, side string, m stitch.Mitt) (tryon.Place, error) {
	done, err := s.done(ctx, id, side, tryon.Tasks(m))
	return tryon.PlaceAfter(m, done), err
}

// counted is the count after a task; before the first it is the cast-on.
func counted(side string, list []tryon.Task, done int) store.Count {
	c := store.Count{Key: rand.Text(), Side: side}
	if done > 0 {
		c.Section, c.Round = string(list[done-1].Part), list[done-1].Round
	}
	return c
}

// other says where the other hand of the pair stands.
func (s *Server) other(r *http.Request, m store.Mitt, doc project.Document) (string, error) {
	doc.Side = doc.Side.Other()
	pl, release := s.planner()
	defer release()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return "no plan", nil
	}
	list := tryon.Tasks(p.Mitt())
	done, err := s.done(r.Context(), m.ID, string(doc.Side), list)
	switch {
	case err != nil:
		return "", err
	case done == 0:
		return "not begun", nil
	case done == len(list):
		return "done", nil
	}
	return fmt.Sprintf("%d of %d rounds", list[done-1].Knitted, list[len(list)-1].Knitted), nil
}

// pace is how fast a hand of a mitt is knitted, from its counts.
func (s *Server) pace(ctx context.Context, id int64, side string, m stitch.Mitt) (perMinute float64, own bool, err error) {
	counts, err := s.store.Counts(ctx, id, side)
	if err != nil {
		return 0, false, err
	}
	tasks, places := tryon.Tasks(m), tryon.Places(m)
	list := make([]tryon.Counted, len(counts))
	for i, c := range counts {
		list[i].At = c.At
		if done := reached(c, tasks); done > 0 {
			list[i].Nth = tasks[done-1].Knitted
		}
		if n := list[i].Nth; n > 0 {
			list[i].Stitches = places[n-1].After
		}
	}
	perMinute, own = tryon.Pace(list)
	return perMinute, own, nil
}

// chooseSecond says how a hand that is not begun is worked: like the other one,
// or from its cast-on.
func (s *Server) chooseSecond(w http.ResponseWriter, r *http.Request) error {
	m, _, err := s.load(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	how := r.PostForm.Get("second")
	if how != "alike" && how != sheet.Anew {
		return fault.New(fault.Invalid, "second: is %.20q; write alike or anew", how)
	}
	edits := []chart.Edit{{Layer: chart.Sheet, Column: sheet.PathSecond, Value: how}}
	if _, err := s.drawEdits(r.Context(), m.ID, m.Revision, edits); err != nil {
		return err
	}
	side := r.PostForm.Get("side")
	if side != "left" {
		side = "right"
	}
	http.Redirect(w, r, fmt.Sprintf("/mitts/%d/needles?side=%s", m.ID, side), http.StatusSeeOther)
	return nil
}

// next is what is done next, of a mitt that is on the needles:
// that of the hand that the mitt shows, or of the other one.
func (s *Server) next(r *http.Request, pl *project.Planner, m store.Mitt, doc project.Document) (string, error) {
	for _, side := range []project.Side{doc.Side, doc.Side.Other()} {
		c, ok, err := s.store.Standing(r.Context(), m.ID, string(side))
		if err != nil || !ok || c.Section == "" {
			if err != nil {
				return "", err
			}
			continue
		}
		doc.Side = side
		p, err := pl.Plan(doc.Effective())
		if err != nil {
			return "", nil // it has no plan now
		}
		is := p.Mitt()
		list := tryon.Tasks(is)
		if done := reached(c, list); done < len(list) {
			return fmt.Sprintf("next: %s, %s hand", view.TaskWords(is, list[done]), side), nil
		}
	}
	return "", nil
}

// markNeedles marks the round that is knitted next in the chart, as the count
// at the needles has it, in the place of one that was marked by hand.
func (s *Server) markNeedles(ctx context.Context, m store.Mitt, doc project.Document, out *project.Outputs) error {
	_, ok, err := s.store.Standing(ctx, m.ID, string(doc.Side))
	if err != nil || !ok {
		return err
	}
	at, err := s.stands(ctx, m.ID, string(doc.Side), out.Planned)
	if err != nil {
		return err
	}
	marks := maps.Clone(out.Charts.Marks)
	for at, mark := range marks {
		if mark.Needles = ""; mark == (chart.Mark{}) {
			delete(marks, at)
		} else {
			marks[at] = mark
		}
	}
	if list := tryon.Places(out.Planned); at.Nth < len(list) {
		next := chart.Anchor{Section: list[at.Nth].Part, Round: list[at.Nth].Round}
		mark := marks[next]
		mark.Needles = "here"
		marks[next] = mark
	}
	out.Charts.Marks = marks
	return nil
}

// countMarked counts up to a round that was marked in the chart as the one on
// the needles.
func (s *Server) countMarked(ctx context.Context, id int64, doc project.Document, edits []chart.Edit) error {
	for _, e := range edits {
		if e.Layer != chart.Needles || e.Value == "" {
			continue
		}
		pl, done := s.planner()
		p, err := pl.Plan(doc.Effective())
		done()
		if err != nil {
			return nil // nothing is counted in a mitt without a plan
		}
		list := tryon.Tasks(p.Mitt())
		for done, next := range list {
			if next.Part == e.Section && next.Round == e.Round {
				return s.store.NoteCount(ctx, id, counted(string(doc.Side), list, done))
			}
		}
		return nil
	}
	return nil
}
