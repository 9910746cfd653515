package web

import (
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"mime"
	"net/http"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/web/view"
)

// showNeedles follows one hand of a pair, round by round; a script is told
// where it stands.
func (s *Server) showNeedles(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	if side := project.Side(r.URL.Query().Get("side")); side == project.Right || side == project.Left {
		doc.Side = side
	}
	n := view.Needles{ID: m.ID, Doc: doc, Side: string(doc.Side)}
	out, err := s.outputs(r.Context(), m, doc)
	if err != nil {
		var fields fault.Fields
		if !errors.As(err, &fields) {
			return err
		}
		n.Lacks = "There is no plan to knit by yet: its measures have still to be filled."
		return page(w, r, http.StatusOK, view.NeedlesPage(n))
	}
	if n.Nth, err = s.done(r.Context(), m.ID, n.Side, tryon.Tasks(out.Mitt)); err != nil {
		return err
	}
	if n.Other, err = s.other(r, m, doc); err != nil {
		return err
	}
	n = view.NewNeedles(n, out)
	if wantsJSON(r) {
		writeJSON(w, http.StatusOK, map[string]any{"nth": n.Nth, "tasks": n.Tasks})
		return nil
	}
	return page(w, r, http.StatusOK, view.NeedlesPage(n))
}

// elbow is what a page at the elbow sends: a task that was done, or a note on a
// round.
type elbow struct {
	Key     string      `json:"key"`
	Side    string      `json:"side"`
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	Note    *string     `json:"note"`
}

// saveNeedles takes a count or a note, from a script or from a plain form.
func (s *Server) saveNeedles(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.head(r)
	if err != nil {
		return err
	}
	script, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type"))
	var e elbow
	if script == "application/json" {
		if err := json.NewDecoder(r.Body).Decode(&e); err != nil {
			return fault.New(fault.Invalid, "This is no count that can be read: %v.", err)
		}
	} else if e, err = s.pressed(r, doc); err != nil {
		return err
	}
	if err := e.check(); err != nil {
		return err
	}
	revision := m.Revision
	if e.Note != nil {
		revision, err = s.noteRound(r, m, e)
	} else {
		err = s.store.NoteCount(r.Context(), m.ID, store.Count{Key: e.Key, Side: e.Side, Section: string(e.Section), Round: e.Round})
	}
	if err != nil {
		return err
	}
	if script == "application/json" {
		writeJSON(w, http.StatusOK, map[string]int64{"revision": revision})
		return nil
	}
	http.Redirect(w, r, fmt.Sprintf("/mitts/%d/needles?side=%s", m.ID, e.Side), http.StatusSeeOther)
	return nil
}

// pressed reads a plain form, which counts tasks from the cast-on.
func (s *Server) pressed(r *http.Request, doc project.Document) (elbow, error) {
	if err := r.ParseForm(); err != nil {
		return elbow{}, bodyFault(err)
	}
	e := elbow{Key: rand.Text(), Side: r.PostForm.Get("side")}
	nth, err := strconv.Atoi(r.PostForm.Get("nth"))
	doc.Side = project.Side(e.Side)
	pl, done := s.planner()
	defer done()
	p, errPlan := pl.Plan(doc.Effective())
	if err != nil || errPlan != nil {
		return e, fault.New(fault.Invalid, "This is no count of a mitt with a plan; open the page again.")
	}
	list := tryon.Tasks(p.Mitt())
	if r.PostForm.Has("note") {
		note := r.PostForm.Get("note")
		e.Note = &note
		nth++ // the round that is knitted next
	}
	c := counted(e.Side, list, min(max(nth, 0), len(list)))
	e.Section, e.Round = stitch.Part(c.Section), c.Round
	return e, nil
}

// maxRounds is the most rounds of a part.
const maxRounds = 1500

func (e elbow) check() error {
	var faults fault.Fields
	if why := plain.Key(e.Key); why != "" {
		faults.Add("key", "%s", why)
	}
	if e.Side != "right" && e.Side != "left" {
		faults.Add("side", "is %.20q; write right or left", e.Side)
	}
	known := e.Section == "" && e.Round == 0 && e.Note == nil
	for _, p := range stitch.Parts() {
		known = known || e.Section == p && (e.Round > tryon.Opening && e.Round <= maxRounds ||
			e.Note == nil && (e.Round == tryon.Opening || e.Round == tryon.Ending))
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

// noteRound writes a note on a whole round, which is a stroke of the chart.
func (s *Server) noteRound(r *http.Request, m store.Mitt, e elbow) (int64, error) {
	applied, err := s.store.Draw(r.Context(), m.ID, store.Request{
		Kind: store.Do, After: m.Revision, Key: e.Key,
		Edits: []chart.Edit{{Section: e.Section, Round: e.Round, Layer: chart.Notes, Value: strings.TrimSpace(*e.Note)}},
	})
	return applied.Revision, err
}
