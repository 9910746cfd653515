package web

import (
	"net/http"
	"net/url"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// saveRemarks saves what was typed beside the students of a class and moves one
// of them, if that was pressed. What can't be kept comes back at its student.
func (s *Server) saveRemarks(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	typed, err := typedRemarks(r.PostForm)
	if err != nil {
		return err
	}
	move, err := typedMove(r.PostForm)
	if err != nil {
		return err
	}
	unsaved, err := s.app.SaveRemarks(r.Context(), id, typed, move)
	switch {
	case err != nil:
		return err
	case unsaved != nil && wantsJSON(r):
		return unsaved.Err()
	case wantsJSON(r):
		writeJSON(w, http.StatusOK, map[string]bool{"saved": true})
		return nil
	case unsaved == nil:
		return toClass(w, r, "#table")
	}
	status := http.StatusBadRequest
	if len(unsaved.Others) > 0 {
		status = http.StatusConflict
	}
	return page(w, r, status, view.ClassPage(view.NewUnsavedRemarks(*unsaved)))
}

// typedRemarks returns what a form has beside each of its students.
func typedRemarks(form url.Values) (list []app.TypedRemark, err error) {
	for _, text := range form["student"] {
		id, err := listed("student", text)
		if err != nil {
			return nil, err
		}
		remark := func(was string) app.Remark {
			return app.Remark{FromLeft: form.Get(view.KnitsField(was, id)) == "left", Note: form.Get(view.NoteField(was, id))}
		}
		list = append(list, app.TypedRemark{Student: id, Was: remark("was-"), Now: remark("")})
	}
	return list, nil
}

// typedMove returns the move that a form asks for, or nil if another button was
// pressed.
func typedMove(form url.Values) (*app.Move, error) {
	if form.Get("do") != "move" {
		return nil, nil
	}
	id, err := listed("move", form.Get("move"))
	if err != nil {
		return nil, err
	}
	m := &app.Move{Student: id}
	if form.Get("before") != "" {
		m.Before, err = listed("before", form.Get("before"))
	}
	return m, err
}

// listed reads the number of a student from a field.
func listed(field, text string) (int, error) {
	id, err := strconv.Atoi(text)
	if err != nil || id < 1 {
		return 0, fault.New(fault.Invalid, "%s: is %.20q; choose a student of the list", field, text)
	}
	return id, nil
}

// countSheets counts what printing a class takes. A script is told in words;
// otherwise the page of the class shows it.
func (s *Server) countSheets(w http.ResponseWriter, r *http.Request) error {
	id, err := classID(r)
	if err != nil {
		return err
	}
	cost, counted, err := s.app.CountSheets(r.Context(), id)
	switch {
	case err != nil:
		return err
	case !counted:
		return fault.New(fault.Invalid, "The sheets of this class are counted as they are printed: open the print page.")
	case wantsJSON(r):
		writeJSON(w, http.StatusOK, map[string]string{"cost": view.CostWords(cost)})
		return nil
	}
	return toClass(w, r, "#print")
}
