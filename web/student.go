package web

import (
	"fmt"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/web/view"
)

// studentID returns the number of the student in the address, or 0, which no
// student has.
func studentID(r *http.Request) int {
	id, _ := strconv.Atoi(chi.URLParam(r, "student"))
	return id
}

// addStudent adds a student who was typed by hand.
func (s *Server) addStudent(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	c, unsaved, err := s.app.AddStudent(r.Context(), id, texts(r.PostForm))
	switch {
	case err != nil:
		return err
	case unsaved == nil:
		return toClass(w, r, "#table")
	}
	return page(w, r, http.StatusBadRequest, view.ClassPage(view.NewUnaddedStudent(*c, *unsaved)))
}

func (s *Server) showStudent(w http.ResponseWriter, r *http.Request) error {
	id, err := classID(r)
	if err != nil {
		return err
	}
	student, err := s.app.Student(r.Context(), id, studentID(r))
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.StudentPage(view.NewStudent(student)))
}

// saveStudent saves one student. What can't be kept comes back at its field;
// what another window changed in between is asked about.
func (s *Server) saveStudent(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	unsaved, err := s.app.SaveStudent(r.Context(), id, studentID(r), r.PostForm.Get("stamp"), texts(r.PostForm))
	switch {
	case err != nil:
		return err
	case unsaved == nil:
		return toClass(w, r, "#table")
	}
	status := http.StatusBadRequest
	if unsaved.Saved != nil {
		status = http.StatusConflict
	}
	return page(w, r, status, view.StudentPage(view.NewUnsavedStudent(*unsaved)))
}

func (s *Server) removeStudent(r *http.Request, class int64) error {
	return s.app.RemoveStudent(r.Context(), class, studentID(r))
}

// answerStudent takes the answer to a question about a measurement of a
// student.
func (s *Server) answerStudent(w http.ResponseWriter, r *http.Request) error {
	answer := func(r *http.Request, class int64) error {
		f := r.PostForm
		return s.app.AnswerStudent(r.Context(), class, studentID(r), f.Get("path"), f.Get("text"), f.Get("answer") == "yes")
	}
	return changed(fmt.Sprintf("#student-%d", studentID(r)), answer)(w, r)
}
