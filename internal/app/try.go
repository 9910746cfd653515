package app

import (
	"context"
	"crypto/rand"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"
	"time"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/photo"
	"thenar/internal/picture"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
	"thenar/internal/units"
)

// MaxPhoto is the most bytes in the photograph of a try.
const MaxPhoto = photo.MaxBytes

// TryEntry is a try as it was noted, and what became of it.
type TryEntry struct {
	ID       int64
	Noted    time.Time
	Try      tryon.Try
	Photo    bool
	Unit     units.Unit
	Answered bool  // its corrections are in the mitt
	Back     bool  // it was answered, and that was taken back
	Before   int64 // the revision before its corrections went in
	Revision int64 // the revision that they made
	Answer   tryon.Answer
}

// entryOf decodes a stored try of the mitt that has this document.
func entryOf(doc project.Document, t store.Try) (TryEntry, error) {
	entry := TryEntry{ID: t.ID, Noted: t.At, Photo: t.Photo, Unit: doc.Sheet.Unit()}
	if err := json.Unmarshal(t.Record, &entry.Try); err != nil {
		return entry, fmt.Errorf("try %d: %w", t.ID, err)
	}
	if a := t.Answer; a != nil { // one that was taken back can be answered again
		if err := json.Unmarshal(a.Text, &entry.Answer); err != nil {
			return entry, fmt.Errorf("answer %d: %w", a.ID, err)
		}
		entry.Answered = slices.Contains(doc.Sheet.Tried(), t.ID)
		entry.Back = !entry.Answered && a.Revision > a.Before
		entry.Before, entry.Revision = a.Before, a.Revision
	}
	return entry, nil
}

// Tries is all tries of a mitt, and the form for a new one.
type Tries struct {
	ID     int64
	Doc    project.Document
	Plan   *mitt.Plan    // of the hand in the form; nil if there is nothing to try on yet
	Worn   *picture.Worn // what that hand is knitted in; nil while it has no colour
	Places []tryon.Place
	Form   tryon.Try
	Tries  []TryEntry // from the first on
	Habits []tryon.Habit
}

// Tries returns the tries of a mitt, and a new form at a round of a section; at
// the last round that is knitted if no section is asked for. hand is the hand it
// is for: right, left, or otherwise that of the mitt.
func (a *App) Tries(ctx context.Context, id int64, hand, section, round string) (Tries, error) {
	return a.tries(ctx, id, func(w *work, pl *project.Planner) tryon.Try {
		side := project.Side(hand)
		if side != project.Left && side != project.Right {
			side = w.doc.Side
		}
		form := tryon.Try{Key: rand.Text(), Date: time.Now().Format(time.DateOnly), Side: string(side)}
		if section != "" {
			form.Section, form.Round = section, round
		} else if p, err := w.planOf(pl, side); err == nil {
			if at := w.place(side, p.Mitt()); at.Nth > 0 {
				form.Section, form.Round = string(at.Part), strconv.Itoa(at.Round)
			}
		}
		return form
	})
}

// RefusedTry returns the tries of a mitt with a form that can't be used, as it
// was typed.
func (a *App) RefusedTry(ctx context.Context, id int64, t tryon.Try) (Tries, error) {
	return a.tries(ctx, id, func(*work, *project.Planner) tryon.Try { return t })
}

// NotedAgain returns the tries of a mitt with the form of a noted try, to be put
// right and noted anew.
func (a *App) NotedAgain(ctx context.Context, id int64, t tryon.Try) (Tries, error) {
	t.Key = rand.Text() // a key is noted once
	return a.RefusedTry(ctx, id, t)
}

func (a *App) tries(ctx context.Context, id int64, form func(*work, *project.Planner) tryon.Try) (Tries, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{Tries: true, Habits: true, Marks: true}))
	if err != nil {
		return Tries{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	t := Tries{ID: w.ID, Doc: w.doc, Form: form(&w, pl)}
	p, err := w.planOf(pl, project.Side(t.Form.Side))
	var fields fault.Fields
	switch {
	case errors.As(err, &fields):
	case err != nil:
		return t, err
	default:
		t.Plan, t.Places = p.Plan, tryon.Places(p.Mitt())
		t.Worn = picture.NewWorn(p.Charts(w.doc, w.Marks))
		if t.Habits, err = learned(w.Habits); err != nil {
			return t, err
		}
	}
	for _, one := range w.Work.Tries {
		entry, err := entryOf(w.doc, one)
		if err != nil {
			return t, err
		}
		t.Tries = append(t.Tries, entry)
	}
	return t, nil
}

// told returns the zones of which a try that stands says something, each once.
func (w *work) told() ([]tryon.Zone, error) {
	var list []tryon.Zone
	for _, one := range w.Work.Tries {
		t, err := entryOf(w.doc, one)
		if err != nil {
			return list, err
		}
		if !t.Answer.Aside {
			list = append(list, t.Try.Told()...)
		}
	}
	slices.Sort(list)
	return slices.Compact(list), nil
}

// planOf returns the plan of one hand.
func (w *work) planOf(pl *project.Planner, side project.Side) (*project.Planned, error) {
	doc := w.doc
	doc.Side = side
	return pl.Plan(doc.Effective())
}

// NewTry is a try that a form sent. What could not be read stands in Faults.
type NewTry struct {
	tryon.Try
	Photo  []byte // a JPEG, or nil
	Faults fault.Fields
}

// ReadTry reads the form of a try. text returns the text of a field; photograph
// is nil if none was sent.
func ReadTry(ctx context.Context, text func(name string) string, photograph io.Reader) (NewTry, error) {
	field := func(name string) string { return strings.TrimSpace(text(name)) }
	t := NewTry{Try: tryon.Try{
		Key: field("key"), Date: field("date"), Side: field("side"), Section: field("section"), Round: field("round"), Count: field("count"),
		Stitches: field("stitches"), Width: field("width"), Rounds: field("rounds"), Height: field("height"),
		Base: field("base"), BaseWay: tryon.Way(field("base_way")), Top: field("top"), TopWay: tryon.Way(field("top_way")), Note: field("note"), Feel: map[tryon.Zone]string{},
	}}
	for _, zone := range tryon.Zones() {
		if felt := field("feel." + string(zone)); felt != "" {
			t.Feel[zone] = felt
		}
	}
	t.Ends, t.EndsWays = map[tryon.Zone]string{}, map[tryon.Zone]tryon.Way{}
	for _, zone := range tryon.Measured() {
		length, way := zone.EndField()
		t.Ends[zone], t.EndsWays[zone] = field(length), tryon.Way(field(way))
	}
	t.Try, t.Faults = t.Sided(field("ways") != "")
	if plain.Key(t.Key) != "" {
		t.Faults.Add("key", "is missing; open the page again")
		return t, nil
	}
	if photograph == nil {
		return t, nil
	}
	var err error
	t.Photo, err = photo.Read(ctx, photograph)
	more, err := fieldsOf(err)
	t.Faults = append(t.Faults, more...)
	return t, err
}

// AddTry saves a try as it was typed, and returns its number. A try sent again,
// under the same key, is saved once. It fails with fault.Fields for what can't
// be used.
func (a *App) AddTry(ctx context.Context, id int64, t NewTry) (try int64, err error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return 0, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	side := project.Side(t.Side)
	p, err := w.planOf(pl, side)
	if err != nil {
		return 0, err
	}
	m := p.Mitt()
	seen, faults := t.check(tryon.Places(m), w.place(side, m).Nth, w.doc.Sheet.Unit())
	if len(faults) > 0 {
		return 0, faults
	}
	t.Section, t.Round = string(seen.Place.Part), strconv.Itoa(seen.Place.Round)
	raw, err := json.Marshal(t.Try)
	if err != nil {
		return 0, err
	}
	return a.store.NoteTry(ctx, id, t.Key, raw, t.Photo)
}

// check reads a try of a mitt whose work stands near a place, and returns the
// faults of what can't be used.
func (t NewTry) check(places []tryon.Place, near int, u units.Unit) (tryon.Reading, fault.Fields) {
	faults := t.Faults
	seen, err := t.Read(places, near, u)
	var more fault.Fields
	if errors.As(err, &more) {
		faults = append(faults, more...)
	} else if errors.As(seen.CheckZones(places), &more) {
		faults = append(faults, more...)
	} else if len(faults) == 0 && seen.IsEmpty() && t.Photo == nil {
		faults.Add("feel", "says nothing yet; tap how a zone feels, measure something, add a photograph, or write a note")
	}
	if day, err := time.Parse(time.DateOnly, t.Date); err == nil && day.After(time.Now().AddDate(0, 0, 1)) {
		faults.Add("date", "lies in the future; write the day of the try")
	}
	return seen, faults
}

// Photo returns the photograph of a try as a JPEG.
func (a *App) Photo(ctx context.Context, id, try int64) ([]byte, error) {
	return a.store.Photo(ctx, id, try)
}

// try returns a try of the mitt, and turns w.doc to the hand that was tried.
func (w triedWork) try(id int64) (TryEntry, error) {
	at := slices.IndexFunc(w.Tries, func(t store.Try) bool { return t.ID == id })
	if at < 0 {
		return TryEntry{}, fault.New(fault.NotFound, "This mitt has no such try.")
	}
	t, err := entryOf(w.doc, w.Tries[at])
	w.doc.Side = project.Side(t.Try.Side)
	return t, err
}
