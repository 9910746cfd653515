package web

import (
	"encoding/json"
	"mime"
	"net/http"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showNeedles follows one hand of a pair round by round. A script is told only
// where it stands.
func (s *Server) showNeedles(w http.ResponseWriter, r *http.Request, id int64) error {
	hand, err := s.app.Needles(r.Context(), id, r.URL.Query().Get("side"))
	if err != nil {
		return err
	}
	if wantsJSON(r) && hand.Out != nil {
		n := view.NewTasks(hand)
		writeJSON(w, http.StatusOK, map[string]any{"nth": n.Nth, "tasks": n.Tasks})
		return nil
	}
	return page(w, r, http.StatusOK, view.NeedlesPage(view.NewNeedles(hand)))
}

// showStrips answers a script with the whole charts of one hand, of which its
// page has only the rows about the present round.
func (s *Server) showStrips(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	hand, err := s.app.Needles(r.Context(), id, r.URL.Query().Get("side"))
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, map[string][]view.Strip{"strips": view.WholeStrips(hand)})
	return nil
}

// saveNeedles takes a count or a note, from a script or from a plain form.
func (s *Server) saveNeedles(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if sent, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); sent != "application/json" {
		return s.countPressed(w, r, id)
	}
	var e app.NeedleEntry
	if err := json.NewDecoder(r.Body).Decode(&e); err != nil {
		return fault.New(fault.Invalid, "This is no count that can be read: %v.", err)
	}
	revision, err := s.app.Enter(r.Context(), id, e)
	if err != nil {
		return err
	}
	writeJSON(w, http.StatusOK, map[string]int64{"revision": revision})
	return nil
}

// countPressed takes a count or a note from a plain form, which numbers the
// tasks from the cast-on.
func (s *Server) countPressed(w http.ResponseWriter, r *http.Request, id int64) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	side := r.PostForm.Get("side")
	nth, err := strconv.Atoi(r.PostForm.Get("nth"))
	if err != nil {
		return fault.New(fault.Invalid, "This is no count of a mitt with a plan; open the page again.")
	}
	var note *string
	if r.PostForm.Has("note") {
		text := r.PostForm.Get("note")
		note = &text
	}
	if err := s.app.Count(r.Context(), id, side, nth, note); err != nil {
		return err
	}
	return toMitt(w, r, id, "/desk/knit?side="+side)
}

// chooseSecond decides how a hand that is not begun is worked: like the other
// one, or planned anew from its cast-on.
func (s *Server) chooseSecond(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	if err := s.app.ChooseSecond(r.Context(), id, r.PostForm.Get("second")); err != nil {
		return err
	}
	side := r.PostForm.Get("side")
	if side != "left" {
		side = "right"
	}
	return toMitt(w, r, id, "/desk/knit?side="+side)
}
