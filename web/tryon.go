package web

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"net/http"
	"slices"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/photo"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/web/view"
)

// showTries is the form of a new try, and all tries on a line of time.
func (s *Server) showTries(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	side := r.URL.Query().Get("side")
	if side != "left" && side != "right" {
		side = string(doc.Side)
	}
	form := view.TryForm{Try: tryon.Try{Key: rand.Text(), Date: time.Now().Format(time.DateOnly), Side: side}}
	if err := s.standing(r.Context(), m, doc, &form.Try); err != nil {
		return err
	}
	return s.triesPage(w, r, http.StatusOK, m, doc, form)
}

// standing fills in the last round that is knitted of the hand that is tried
// on, where there is a plan and a count.
func (s *Server) standing(ctx context.Context, m store.Mitt, doc project.Document, t *tryon.Try) error {
	doc.Side = project.Side(t.Side)
	pl, done := s.planner()
	defer done()
	p, err := pl.Plan(doc.Effective())
	var fields fault.Fields
	if errors.As(err, &fields) {
		return nil
	} else if err != nil {
		return err
	}
	at, err := s.stands(ctx, m.ID, t.Side, p.Mitt())
	if at.Nth > 0 {
		t.Section, t.Round = string(at.Part), strconv.Itoa(at.Round)
	}
	return err
}

func (s *Server) triesPage(w http.ResponseWriter, r *http.Request, status int, m store.Mitt, doc project.Document, form view.TryForm) error {
	t := view.Tries{ID: m.ID, Doc: doc, Form: form}
	pl, done := s.planner()
	defer done()
	tried := doc
	tried.Side = project.Side(form.Try.Side)
	p, err := pl.Plan(tried.Effective())
	var fields fault.Fields
	switch {
	case errors.As(err, &fields):
		t.Lacks = "There is no plan to try on yet: its measures have still to be filled."
	case err != nil:
		return err
	default:
		t.Plan, t.Places = p.Plan, tryon.Places(p.Mitt())
	}
	list, err := s.store.Tries(r.Context(), m.ID)
	if err != nil {
		return err
	}
	for _, one := range list {
		e, err := s.entry(doc, one)
		if err != nil {
			return err
		}
		t.Entries = append(t.Entries, e)
	}
	if q := r.URL.Query(); q.Has("beside") || q.Has("two") {
		t.Beside(q["beside"])
	}
	t.Back = r.URL.Query().Get("back") != ""
	if t.Plan != nil {
		habits, err := s.learned(r.Context())
		if err != nil {
			return err
		}
		t.Habits = view.HabitsFor(habits, doc, t.Plan)
	}
	return page(w, r, status, view.TriesPage(t))
}

// entry reads a stored try for the line of time.
func (s *Server) entry(doc project.Document, t store.Try) (view.TryEntry, error) {
	e := view.TryEntry{ID: t.ID, Noted: t.At, At: clock(t.At, time.Now()), Photo: t.Photo, Unit: doc.Sheet.Unit()}
	if err := json.Unmarshal(t.Record, &e.Try); err != nil {
		return e, fmt.Errorf("try %d: %w", t.ID, err)
	}
	if v := t.Verdict; v != nil { // taken back, it may be answered again
		if err := json.Unmarshal(v.Answer, &e.Answer); err != nil {
			return e, fmt.Errorf("verdict %d: %w", v.ID, err)
		}
		e.Answered = slices.Contains(doc.Sheet.Tried(), t.ID)
		e.Back = !e.Answered && v.Revision > v.Before
		e.Before, e.Revision = v.Before, v.Revision
	}
	return e, nil
}

// addTry keeps a try, and leads to what follows from it. What can't be used
// comes back as it was typed.
func (s *Server) addTry(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	t, picture, err := readTry(r)
	var faults fault.Fields
	if err != nil && !errors.As(err, &faults) {
		return err
	}
	doc.Side = project.Side(t.Side)
	pl, done := s.planner()
	p, err := pl.Plan(doc.Effective())
	done()
	if err != nil {
		return err
	}
	places := tryon.Places(p.Mitt())
	near, err := s.stands(r.Context(), m.ID, t.Side, p.Mitt())
	if err != nil {
		return err
	}
	seen, err := t.Read(places, near.Nth, doc.Sheet.Unit())
	var more fault.Fields
	if errors.As(err, &more) {
		faults = append(faults, more...)
	} else if errors.As(seen.CheckZones(places), &more) {
		faults = append(faults, more...)
	} else if len(faults) == 0 && seen.IsEmpty() && picture == nil {
		faults.Add("feel", "says nothing yet; tap how a zone feels, measure something, add a photograph, or write a note")
	}
	if day, err := time.Parse(time.DateOnly, t.Date); err == nil && day.After(time.Now().AddDate(0, 0, 1)) {
		faults.Add("date", "lies in the future; write the day of the try")
	}
	if len(faults) > 0 {
		if wantsJSON(r) {
			return faults
		}
		return s.triesPage(w, r, http.StatusBadRequest, m, doc, view.TryForm{Try: t, Faults: faults})
	}
	t.Section, t.Round = string(seen.Place.Part), strconv.Itoa(seen.Place.Round)
	record, err := json.Marshal(t)
	if err != nil {
		return err
	}
	id, err := s.store.NoteTry(r.Context(), m.ID, t.Key, record, picture)
	if err != nil {
		return err
	}
	return s.lead(w, r, fmt.Sprintf("/mitts/%d/tries/%d", m.ID, id))
}

// lead sends a browser, or tells a script, where to go on.
func (s *Server) lead(w http.ResponseWriter, r *http.Request, to string) error {
	if wantsJSON(r) {
		writeJSON(w, http.StatusOK, map[string]string{"to": to})
		return nil
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// readTry reads the form of a try with its photograph.
func readTry(r *http.Request) (t tryon.Try, picture []byte, err error) {
	if err := readParts(r); err != nil {
		return t, nil, err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll() // nothing of it stays on the disk
	}
	text := func(name string) string { return strings.TrimSpace(r.PostFormValue(name)) }
	t = tryon.Try{
		Key: text("key"), Date: text("date"), Side: text("side"), Section: text("section"), Round: text("round"), Count: text("count"),
		Stitches: text("stitches"), Width: text("width"), Rounds: text("rounds"), Height: text("height"),
		Base: text("base"), Top: text("top"), Note: text("note"), Feel: map[tryon.Zone]string{},
	}
	for _, zone := range tryon.Zones() {
		if felt := text("feel." + string(zone)); felt != "" {
			t.Feel[zone] = felt
		}
	}
	if plain.Key(t.Key) != "" {
		return t, nil, fault.Fields{{Path: "key", Message: "is missing; open the page again"}}
	}
	file, _, err := r.FormFile("photo")
	if err != nil {
		return t, nil, nil // none was sent
	}
	defer file.Close()
	picture, err = photo.Read(r.Context(), file)
	return t, picture, err
}

// tryOf is the try of the address, with the mitt on the side that was tried.
func (s *Server) tryOf(r *http.Request) (store.Mitt, project.Document, view.TryEntry, error) {
	m, doc, err := s.load(r)
	if err != nil {
		return m, doc, view.TryEntry{}, err
	}
	id, _ := strconv.ParseInt(chi.URLParam(r, "try"), 10, 64)
	list, err := s.store.Tries(r.Context(), m.ID)
	if err != nil {
		return m, doc, view.TryEntry{}, err
	}
	at := slices.IndexFunc(list, func(t store.Try) bool { return t.ID == id })
	if at < 0 {
		return m, doc, view.TryEntry{}, fault.New(fault.NotFound, "This mitt has no such try.")
	}
	e, err := s.entry(doc, list[at])
	doc.Side = project.Side(e.Try.Side)
	return m, doc, e, err
}

// showPhoto is the photograph of a try.
func (s *Server) showPhoto(w http.ResponseWriter, r *http.Request) error {
	m, _, e, err := s.tryOf(r)
	if err != nil {
		return err
	}
	picture, err := s.store.Photo(r.Context(), m.ID, e.ID)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/jpeg")
	_, err = w.Write(picture)
	return err
}

// changed are the rounds that the last try whose corrections stand has changed,
// of the hand that is shown.
func (s *Server) changed(ctx context.Context, pl *project.Planner, m store.Mitt, doc project.Document, out *project.Outputs) (project.Changed, error) {
	list, err := s.store.Tries(ctx, m.ID)
	if err != nil {
		return nil, err
	}
	for _, t := range slices.Backward(list) {
		e, err := s.entry(doc, t)
		if err != nil {
			return nil, err
		}
		if !e.Answered {
			continue
		}
		before, err := s.store.At(ctx, m.ID, e.Before)
		if err != nil {
			return nil, err
		}
		then, err := project.Decode(before.Document)
		if err != nil {
			return nil, err
		}
		then.Side = doc.Side
		p, err := pl.Plan(then.Effective())
		if err != nil {
			return nil, nil // what was there before has no plan any more
		}
		return project.Differing(p.Mitt(), out.Planned), nil
	}
	return nil, nil
}
