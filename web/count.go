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
)

// nth is how many rounds of a hand are knitted. A round that the plan no
// longer has is taken as the last one of its section.
func (s *Server) nth(ctx context.Context, id int64, side string, list []tryon.Place) (int, error) {
	c, ok, err := s.store.Standing(ctx, id, side)
	if err != nil || !ok {
		return 0, err
	}
	return reached(c, list), nil
}

// reached is how many rounds of a mitt a count comes to.
func reached(c store.Count, list []tryon.Place) (nth int) {
	for _, p := range list {
		if p.Part == stitch.Part(c.Section) && p.Round <= c.Round {
			nth = p.Nth
		}
	}
	return nth
}

// other says where the other hand of the pair stands.
func (s *Server) other(r *http.Request, m store.Mitt, doc project.Document) (string, error) {
	doc.Side = doc.Side.Other()
	pl, done := s.planner()
	defer done()
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		return "no plan", nil
	}
	list := tryon.Places(p.Mitt())
	nth, err := s.nth(r.Context(), m.ID, string(doc.Side), list)
	switch {
	case err != nil:
		return "", err
	case nth == 0:
		return "not begun", nil
	case nth == len(list):
		return "done", nil
	}
	return fmt.Sprintf("%d of %d rounds", nth, len(list)), nil
}

// pace is how fast a hand of a mitt is knitted, from its counts.
func (s *Server) pace(ctx context.Context, id int64, side string, list []tryon.Place) (perMinute float64, own bool, err error) {
	counts, err := s.store.Counts(ctx, id, side)
	if err != nil {
		return 0, false, err
	}
	counted := make([]tryon.Counted, len(counts))
	for i, c := range counts {
		counted[i] = tryon.Counted{At: c.At, Nth: reached(c, list)}
		if n := counted[i].Nth; n > 0 {
			counted[i].Stitches = list[n-1].After
		}
	}
	perMinute, own = tryon.Pace(counted)
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

// next is the round that is knitted next, of a mitt that is on the needles:
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
		list := tryon.Places(p.Mitt())
		if nth := reached(c, list); nth < len(list) {
			return fmt.Sprintf("next: round %d of the %s, %s hand", list[nth].Round, list[nth].Part.Words(), side), nil
		}
	}
	return "", nil
}

// markNeedles marks the round that is knitted next in the chart, as the count
// at the needles has it, in the place of one that was marked by hand.
func (s *Server) markNeedles(ctx context.Context, m store.Mitt, doc project.Document, out *project.Outputs) error {
	list := tryon.Places(out.Planned)
	c, ok, err := s.store.Standing(ctx, m.ID, string(doc.Side))
	if err != nil || !ok {
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
	if nth := reached(c, list); nth < len(list) {
		at := chart.Anchor{Section: list[nth].Part, Round: list[nth].Round}
		mark := marks[at]
		mark.Needles = "here"
		marks[at] = mark
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
		list := tryon.Places(p.Mitt())
		at, ok := tryon.At(list, e.Section, e.Round)
		if !ok {
			return nil
		}
		c := store.Count{Key: rand.Text(), Side: string(doc.Side)}
		if at.Nth > 1 {
			c.Section, c.Round = string(list[at.Nth-2].Part), list[at.Nth-2].Round
		}
		return s.store.NoteCount(ctx, id, c)
	}
	return nil
}
