package web

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"
	"time"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

func (s *Server) shelf(w http.ResponseWriter, r *http.Request) error {
	mitts, err := s.store.List(r.Context())
	if err != nil {
		return err
	}
	var out view.Shelf
	pl, done := s.planner()
	defer done()
	for _, m := range mitts {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return err
		}
		item := shelfItem(pl, m, doc)
		if item.Next, err = s.next(r, pl, m, doc); err != nil {
			return err
		}
		if doc.Archived {
			out.Archived = append(out.Archived, item)
		} else {
			out.Items = append(out.Items, item)
		}
	}
	return page(w, r, http.StatusOK, view.ShelfPage(out))
}

// shelfItem is one line of the shelf; without a plan it says so.
func shelfItem(pl *project.Planner, m store.Mitt, doc project.Document) view.Item {
	item := view.Item{
		ID: m.ID, Name: doc.Name, Archived: doc.Archived,
		Changed: clock(m.Changed, time.Now()), Stamp: m.Changed.UTC().Format(time.RFC3339),
		About: fmt.Sprintf("%s, %s hand", doc.Sheet.Kind().Words(), doc.Side),
	}
	p, err := pl.Plan(doc.Effective())
	if err != nil {
		item.About += ", not measured yet"
		return item
	}
	item.About += fmt.Sprintf(", cast on %d", p.Cuff.CastOn.N)
	item.Picture = view.Small(p.Plan, doc.Side == project.Left)
	return item
}

// newMitt begins a mitt: blank, or the sample.
func (s *Server) newMitt(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	doc := project.New("My mitt")
	if r.PostForm.Get("sample") == "1" {
		doc = project.Samples()[0]
	}
	if name := strings.TrimSpace(r.PostForm.Get("name")); name != "" {
		doc.Name = name
	}
	return s.create(w, r, doc, nil)
}

// create saves a new mitt, with the strokes of its chart if it has any, and
// leads to it.
func (s *Server) create(w http.ResponseWriter, r *http.Request, doc project.Document, strokes []chart.Edit) error {
	if err := doc.Check(); err != nil {
		return err
	}
	raw, err := doc.Encode()
	if err != nil {
		return err
	}
	id, err := s.store.Create(r.Context(), raw)
	if err != nil {
		return err
	}
	if len(strokes) > 0 {
		if _, err := s.store.Append(r.Context(), id, 1, strokes); err != nil {
			return err
		}
	}
	http.Redirect(w, r, "/mitts/"+strconv.FormatInt(id, 10), http.StatusSeeOther)
	return nil
}

// copyMitt begins a mitt with another's decisions and the strokes of its
// chart.
func (s *Server) copyMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	doc.Name = suffixed(doc.Name, " (copy)")
	doc.Archived = false
	doc.Sheet = doc.Sheet.Clone()
	doc.Sheet.Unknit() // nothing of the copy is knitted yet
	return s.create(w, r, doc, m.Marks.Edits())
}

func (s *Server) renameMitt(w http.ResponseWriter, r *http.Request) error {
	return s.change(w, r, func(doc *project.Document) {
		doc.Name = strings.TrimSpace(r.PostForm.Get("name"))
	})
}

func (s *Server) archiveMitt(w http.ResponseWriter, r *http.Request) error {
	return s.change(w, r, func(doc *project.Document) {
		doc.Archived = r.PostForm.Get("archived") != "false"
	})
}

// change saves a change that the shelf makes to one mitt.
func (s *Server) change(w http.ResponseWriter, r *http.Request, edit func(*project.Document)) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	m, doc, err := s.head(r)
	if err != nil {
		return err
	}
	edit(&doc)
	if err := doc.Check(); err != nil {
		return err
	}
	if _, err := s.saveDoc(r.Context(), m.ID, m.Decided, doc); err != nil {
		return err
	}
	http.Redirect(w, r, "/", http.StatusSeeOther)
	return nil
}
