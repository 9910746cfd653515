package web

import (
	"fmt"
	"net/http"
	"net/url"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// classID returns the number of the class in the address.
func classID(r *http.Request) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, "class"), 10, 64)
	if err != nil || id < 1 {
		return 0, fault.New(fault.NotFound, "There is no class at this address.")
	}
	return id, nil
}

// toClass redirects to the class in the address, at a place on its page.
func toClass(w http.ResponseWriter, r *http.Request, place string) error {
	http.Redirect(w, r, "/classes/"+chi.URLParam(r, "class")+place, http.StatusSeeOther)
	return nil
}

// texts returns the texts that a form sent, the first of each name.
func texts(form url.Values) app.Texts {
	t := app.Texts{}
	for name := range form {
		t[name] = form.Get(name)
	}
	return t
}

func (s *Server) showClasses(w http.ResponseWriter, r *http.Request) error {
	list, mitts, err := s.app.Classes(r.Context())
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.ClassesPage(view.NewClasses(list, mitts)))
}

// postedMitt returns the mitt that a form chose, or 0 for none.
func postedMitt(r *http.Request) (int64, error) {
	text := r.PostForm.Get("mitt")
	if text == "" {
		return 0, nil
	}
	id, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		return 0, fault.New(fault.Invalid, "mitt: is %.20q; choose one of the shelf", text)
	}
	return id, nil
}

func (s *Server) newClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	mitt, err := postedMitt(r)
	if err != nil {
		return err
	}
	id, err := s.app.NewClass(r.Context(), r.PostForm.Get("name"), mitt)
	if err != nil {
		return err
	}
	http.Redirect(w, r, fmt.Sprintf("/classes/%d", id), http.StatusSeeOther)
	return nil
}

// changed returns a handler that reads a form, changes the class in the
// address, and redirects to a place on its page.
func changed(place string, change func(r *http.Request, class int64) error) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		if err := r.ParseForm(); err != nil {
			return bodyFault(err)
		}
		id, err := classID(r)
		if err == nil {
			err = change(r, id)
		}
		if err != nil {
			return err
		}
		return toClass(w, r, place)
	}
}

func (s *Server) choosePattern(r *http.Request, class int64) error {
	mitt, err := postedMitt(r)
	if err == nil && mitt == 0 {
		err = fault.New(fault.Invalid, "mitt: is \"\"; choose one of the shelf")
	}
	if err != nil {
		return err
	}
	return s.app.ChoosePattern(r.Context(), class, mitt)
}

func (s *Server) archiveClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	if err := s.app.ArchiveClass(r.Context(), id, r.PostForm.Get("archived") != "false"); err != nil {
		return err
	}
	http.Redirect(w, r, "/classes", http.StatusSeeOther)
	return nil
}

func (s *Server) showClass(w http.ResponseWriter, r *http.Request) error {
	id, err := classID(r)
	if err != nil {
		return err
	}
	c, err := s.app.Class(r.Context(), id)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.ClassPage(view.NewClass(c)))
}

// saveClass saves what holds for a whole class. What can't be kept comes back
// at its field; what another window changed in between is asked about.
func (s *Server) saveClass(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	unsaved, err := s.app.SaveClass(r.Context(), id, r.PostForm.Get("stamp"), texts(r.PostForm))
	switch {
	case err != nil:
		return err
	case unsaved == nil:
		return toClass(w, r, "#about")
	}
	status := http.StatusBadRequest
	if unsaved.Saved != nil {
		status = http.StatusConflict
	}
	return page(w, r, status, view.ClassPage(view.NewUnsavedClass(*unsaved)))
}
