package web

import (
	"net/http"
	"strconv"

	"thenar/internal/app"
	"thenar/web/view"
)

// printClass shows the class set, or the handout of one student.
func (s *Server) printClass(w http.ResponseWriter, r *http.Request) error {
	id, err := classID(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	ask := app.ClassAsk{Layout: app.Layout{Asked: q}, Part: q.Get("students"), PDF: asPDF(r)}
	if text := q.Get("student"); text != "" {
		if ask.Student, err = strconv.Atoi(text); err != nil || ask.Student == 0 {
			ask.Student = -1 // no student has it
		}
	}
	set, err := s.app.ClassSet(r.Context(), id, ask)
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewClassPrint(id, set, ask.PDF), set.Sheets)
}

// keepClassPrint saves how the handouts of a class are laid out.
func (s *Server) keepClassPrint(r *http.Request, class int64) error {
	return s.app.KeepClassPrint(r.Context(), class, r.PostForm.Get("print"))
}
