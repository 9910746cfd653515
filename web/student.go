package web

import (
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/roster"
	"thenar/internal/units"
	"thenar/web/view"
)

// studentID is the number of the student of the address.
func studentID(r *http.Request) int {
	id, _ := strconv.Atoi(chi.URLParam(r, "student")) // what is no number is nobody's
	return id
}

var errNoStudent = fault.New(fault.NotFound, "There is no student at this address; somebody may have taken them off the list.")

// readStudent puts the texts of a form over a student.
func readStudent(s roster.Student, form url.Values, unit units.Unit) roster.Student {
	s.Name, s.Note = strings.TrimSpace(form.Get("name")), strings.TrimSpace(form.Get("note"))
	s.FromLeft, s.Gauge = form.Get("knits") == "left", roster.GaugeFrom(form.Get("gauge_from"))
	s.Sheet = s.Sheet.Clone()
	for _, path := range roster.Paths() {
		if form.Has(path) {
			s.Sheet.Put(path, strings.TrimSpace(form.Get(path)))
		}
	}
	s.OverGauge(unit)
	return s
}

// addStudent adds one who was typed by hand.
func (s *Server) addStudent(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	student := readStudent(roster.Student{}, r.PostForm, doc.Unit)
	faults := student.Check(doc.Unit)
	if len(faults) == 0 {
		err := s.changeClass(r, func(doc *roster.Class) error {
			_, err := doc.Add(student)
			return err
		})
		if err != nil {
			return err
		}
		return toClass(w, r, "#table")
	}
	return s.classPage(w, r, http.StatusBadRequest, c.ID, doc, func(p *view.Class) {
		p.Student.Student, p.Student.Faults = student, view.Faults(faults)
		p.Message = "Not added yet: look at the marked fields under Add students."
	})
}

func (s *Server) showStudent(w http.ResponseWriter, r *http.Request) error {
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	at := doc.At(studentID(r))
	if at < 0 {
		return errNoStudent
	}
	return s.studentPage(w, r, http.StatusOK, c.ID, doc, doc.Students[at], nil, "")
}

func (s *Server) studentPage(w http.ResponseWriter, r *http.Request, status int, id int64, doc roster.Class, student roster.Student, faults fault.Fields, message string) error {
	p := view.Student{Class: id, Name: doc.Name, Unit: doc.Unit, Student: student, Faults: view.Faults(faults), Message: message}
	if at := doc.At(student.ID); at >= 0 {
		p.Stamp = stamp(doc.Students[at])
	}
	if len(faults) == 0 {
		pl, done := s.planner()
		p.Line = doc.Line(pl, student)
		done()
	}
	if message == changedBetween {
		p.Between = view.StudentBetweens(p, doc.Students[doc.At(student.ID)])
	}
	return page(w, r, status, view.StudentPage(p))
}

const changedBetween = "Another window changed this line in between. What you typed stands below, not saved; save it again to put it over the other version, or open the line anew."

var errBetween = errors.New("the student was changed in between")

// saveStudent saves one student's line and leaves those of the others as they
// are by now.
func (s *Server) saveStudent(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	at := doc.At(studentID(r))
	if at < 0 {
		return errNoStudent
	}
	student := readStudent(doc.Students[at], r.PostForm, doc.Unit)
	if faults := student.Check(doc.Unit); len(faults) > 0 {
		return s.studentPage(w, r, http.StatusBadRequest, c.ID, doc, student, faults, "Not saved yet: look at the marked fields.")
	}
	err = s.changeClass(r, func(doc *roster.Class) error {
		at := doc.At(student.ID)
		if at < 0 {
			return errNoStudent
		}
		if now := stamp(doc.Students[at]); now != r.PostForm.Get("stamp") && now != stamp(student) {
			return errBetween
		}
		doc.Students = append([]roster.Student{}, doc.Students...)
		doc.Students[at] = student
		return nil
	})
	if errors.Is(err, errBetween) {
		if _, doc, err = s.loadClass(r); err != nil || doc.At(student.ID) < 0 { // as it stands by now
			return errors.Join(err, errNoStudent)
		}
		return s.studentPage(w, r, http.StatusConflict, c.ID, doc, student, nil, changedBetween)
	}
	if err != nil {
		return err
	}
	return toClass(w, r, "#table")
}

func (s *Server) moveStudent(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	by, err := strconv.Atoi(r.PostForm.Get("by"))
	if err != nil || by < -roster.MaxStudents || by > roster.MaxStudents {
		return fault.New(fault.Invalid, "by: is %.20q; write a number of places", r.PostForm.Get("by"))
	}
	if err := s.changeClass(r, func(doc *roster.Class) error {
		doc.Move(studentID(r), by)
		return nil
	}); err != nil {
		return err
	}
	return toClass(w, r, "#table")
}

func (s *Server) removeStudent(w http.ResponseWriter, r *http.Request) error {
	if err := s.changeClass(r, func(doc *roster.Class) error {
		at := doc.At(studentID(r))
		if at < 0 {
			return errNoStudent
		}
		doc.Students = append(append([]roster.Student{}, doc.Students[:at]...), doc.Students[at+1:]...)
		return nil
	}); err != nil {
		return err
	}
	return toClass(w, r, "#table")
}
