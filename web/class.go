package web

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"fmt"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/store"
	"thenar/internal/units"
	"thenar/web/view"
)

// classID is the number of the class of the address.
func classID(r *http.Request) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, "class"), 10, 64)
	if err != nil || id < 1 {
		return 0, fault.New(fault.NotFound, "There is no class at this address.")
	}
	return id, nil
}

// loadClass finds the class of the address.
func (s *Server) loadClass(r *http.Request) (store.Class, roster.Class, error) {
	id, err := classID(r)
	if err != nil {
		return store.Class{}, roster.Class{}, err
	}
	return s.class(r.Context(), id)
}

// class reads a class with its document.
func (s *Server) class(ctx context.Context, id int64) (store.Class, roster.Class, error) {
	c, err := s.store.LoadClass(ctx, id)
	if err != nil {
		return store.Class{}, roster.Class{}, err
	}
	doc, err := roster.Decode(c.Document)
	return c, doc, err
}

// changeClass applies a change to the newest state of a class and saves it;
// where another window saved in between, it is applied to that state.
func (s *Server) changeClass(r *http.Request, change func(*roster.Class) error) error {
	for {
		c, doc, err := s.loadClass(r)
		if err != nil {
			return err
		}
		if err := change(&doc); err != nil {
			return err
		}
		if err := doc.Check(); err != nil {
			return err
		}
		raw, err := doc.Encode()
		if err != nil {
			return err
		}
		_, err = s.store.SaveClass(r.Context(), c.ID, c.Revision, raw)
		if fault.KindOf(err) != fault.Conflict || r.Context().Err() != nil {
			return err
		}
	}
}

// toClass leads back to the class of the address, at a place on its page.
func toClass(w http.ResponseWriter, r *http.Request, place string) error {
	http.Redirect(w, r, "/classes/"+chi.URLParam(r, "class")+place, http.StatusSeeOther)
	return nil
}

// stamp tells two states of the same thing apart: a form carries that of what
// it shows.
func stamp(v any) string {
	raw, _ := json.Marshal(v) // of plain structures, which can always be written
	sum := sha256.Sum256(raw)
	return hex.EncodeToString(sum[:8])
}

// aboutClass is what the form of a class shows of it.
func aboutClass(c roster.Class) roster.Class {
	c.Students, c.Next, c.Pattern, c.Print, c.Archived = nil, 0, nil, "", false
	return c
}

func (s *Server) showClasses(w http.ResponseWriter, r *http.Request) error {
	classes, err := s.store.Classes(r.Context())
	if err != nil {
		return err
	}
	var out view.Classes
	for _, c := range classes {
		doc, err := roster.Decode(c.Document)
		if err != nil {
			return err
		}
		about := []string{fmt.Sprintf("%d on the list", len(doc.Students))}
		if doc.Date != "" {
			about = append([]string{doc.Date}, about...)
		}
		out.Items = append(out.Items, view.ClassItem{ID: c.ID, Name: doc.Name, About: strings.Join(about, ", "), Archived: doc.Archived})
	}
	if out.Mitts, _, err = s.choices(r.Context(), 0); err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.ClassesPage(out))
}

// choices are the mitts of the shelf, and the newest revision of one of them.
func (s *Server) choices(ctx context.Context, one int64) (list []view.Choice, newest int64, err error) {
	mitts, err := s.store.List(ctx)
	if err != nil {
		return nil, 0, err
	}
	for _, m := range mitts {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return nil, 0, err
		}
		if m.ID == one {
			newest = m.Revision
		}
		if !doc.Archived || m.ID == one {
			list = append(list, view.Choice{Value: strconv.FormatInt(m.ID, 10), Words: doc.Name})
		}
	}
	return list, newest, nil
}

// newClass begins a class.
func (s *Server) newClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	doc := roster.New(strings.TrimSpace(r.PostForm.Get("name")))
	if doc.Name == "" {
		doc.Name = "My class"
	}
	if id := r.PostForm.Get("mitt"); id != "" {
		if err := s.beginWith(r.Context(), &doc, id); err != nil {
			return err
		}
	}
	if err := doc.Check(); err != nil {
		return err
	}
	raw, err := doc.Encode()
	if err != nil {
		return err
	}
	id, err := s.store.CreateClass(r.Context(), raw)
	if err != nil {
		return err
	}
	http.Redirect(w, r, fmt.Sprintf("/classes/%d", id), http.StatusSeeOther)
	return nil
}

// beginWith takes a mitt of the shelf as a class's pattern.
func (s *Server) beginWith(ctx context.Context, doc *roster.Class, text string) error {
	id, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		return fault.New(fault.Invalid, "mitt: is %.20q; choose one of the shelf", text)
	}
	m, mitt, err := s.mitt(ctx, id)
	if err != nil {
		return err
	}
	doc.SetPattern(roster.Pattern{Mitt: m.ID, Revision: m.Revision, Name: mitt.Name, Side: mitt.Side, Sheet: mitt.Sheet, Marks: m.Marks.Edits()})
	return nil
}

func (s *Server) choosePattern(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	err := s.changeClass(r, func(doc *roster.Class) error {
		return s.beginWith(r.Context(), doc, r.PostForm.Get("mitt"))
	})
	if err != nil {
		return err
	}
	return toClass(w, r, "#table")
}

func (s *Server) archiveClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	if err := s.changeClass(r, func(doc *roster.Class) error {
		doc.Archived = r.PostForm.Get("archived") != "false"
		return nil
	}); err != nil {
		return err
	}
	http.Redirect(w, r, "/classes", http.StatusSeeOther)
	return nil
}

func (s *Server) showClass(w http.ResponseWriter, r *http.Request) error {
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	return s.classPage(w, r, http.StatusOK, c.ID, doc, nil)
}

// classPage shows a class; more puts what a form came to on it.
func (s *Server) classPage(w http.ResponseWriter, r *http.Request, status int, id int64, doc roster.Class, more func(*view.Class)) error {
	p := view.Class{
		ID: id, Doc: doc, Stamp: stamp(aboutClass(doc)), Faults: map[string]string{},
		Student: view.Student{Class: id, Name: doc.Name, Unit: doc.Unit, Faults: map[string]string{}},
	}
	pl, done := s.planner()
	var err error
	p.Lines, err = doc.Review(r.Context(), pl, doc.Whole())
	done()
	if err != nil {
		return err
	}
	pattern := int64(0)
	if doc.Pattern != nil {
		pattern = doc.Pattern.Mitt
	}
	var newest int64
	if p.Mitts, newest, err = s.choices(r.Context(), pattern); err != nil {
		return err
	}
	p.Newer = doc.Pattern != nil && newest > doc.Pattern.Revision
	if more != nil {
		more(&p)
	}
	return page(w, r, status, view.ClassPage(p))
}

// saveClass saves what holds for a whole class. What can't be kept is shown
// again at its field; where another window changed it in between, it is asked
// about.
func (s *Server) saveClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	c, was, err := s.loadClass(r)
	if err != nil {
		return err
	}
	typed := putClass(was, r.PostForm)
	now := stamp(aboutClass(was))
	changed := r.PostForm.Get("stamp") != now && stamp(aboutClass(typed)) != now
	err = typed.Check()
	if err == nil && !changed {
		err = s.changeClass(r, func(doc *roster.Class) error {
			*doc = putClass(*doc, r.PostForm)
			return nil
		})
		if err == nil {
			return toClass(w, r, "#about")
		}
	}
	if err != nil && fault.KindOf(err) != fault.Invalid {
		return err
	}
	status, message := http.StatusBadRequest, "Not saved yet: look at the marked fields under About the class."
	if changed {
		status, message = http.StatusConflict, "Another window changed this class in between. What you typed stands under About the class, not saved; save it again to put it over the other version, or open the class anew."
	}
	return s.classPage(w, r, status, c.ID, typed, func(p *view.Class) {
		p.Message, p.Stamp, p.Faults = message, now, view.Faults(err)
		if changed {
			p.Between = view.ClassBetweens(typed, was)
		}
	})
}

// putClass puts the texts of a form into a class.
func putClass(doc roster.Class, form url.Values) roster.Class {
	for name, text := range map[string]*string{"name": &doc.Name, "date": &doc.Date, "place": &doc.Place, "yarn": &doc.Yarn, "needle": &doc.Needle, "note": &doc.Note} {
		if form.Has(name) {
			*text = strings.TrimSpace(form.Get(name))
		}
	}
	for _, name := range roster.Fixable() {
		if form.Has("pins." + name) {
			doc.Fix(name, form.Get("pins."+name))
		}
	}
	if u := units.Unit(form.Get("unit")); u.Size() != 0 && len(doc.Students) == 0 {
		doc.Unit = u
	}
	return doc
}
