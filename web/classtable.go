package web

import (
	"fmt"
	"mime"
	"net/http"
	"net/url"
	"strconv"

	"thenar/internal/app"
	"thenar/web/view"
)

// readTable reads a pasted or uploaded table into a class.
func (s *Server) readTable(w http.ResponseWriter, r *http.Request) error {
	raw, pasted, err := tableOf(r)
	if err != nil {
		return err
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	read, err := s.app.ReadTable(r.Context(), id, raw, chosenColumns(r.PostForm))
	if err != nil {
		return err
	}
	status := http.StatusOK
	if read.Fault != nil {
		status = http.StatusBadRequest
	}
	return page(w, r, status, view.ClassPage(view.NewTableRead(read, pasted)))
}

// chosenColumns returns the field that a form chose for each column, by the key
// of the column.
func chosenColumns(form url.Values) map[string]string {
	chosen := map[string]string{}
	fields := form["field"]
	for i, key := range form["column"] {
		if i < len(fields) {
			chosen[key] = fields[i]
		}
	}
	return chosen
}

// takeNew replaces values of a class with those of a table, where the person
// chose the new ones. A value that was changed in between stays.
func (s *Server) takeNew(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	id, err := classID(r)
	if err != nil {
		return err
	}
	left, c, err := s.app.TakeValues(r.Context(), id, chosenValues(r.PostForm))
	switch {
	case err != nil:
		return err
	case len(left) == 0:
		return toClass(w, r, "#table")
	}
	return page(w, r, http.StatusConflict, view.ClassPage(view.NewLeftValues(c, left)))
}

// chosenValues returns the new values that a form chose.
func chosenValues(form url.Values) (list []app.Difference) {
	for i := range form["student"] {
		if form.Get(fmt.Sprintf("take-%d", i)) != "new" {
			continue
		}
		at := func(name string) string {
			if list := form[name]; i < len(list) {
				return list[i]
			}
			return ""
		}
		id, _ := strconv.Atoi(at("student")) // 0, which no student has, if it is no number
		list = append(list, app.Difference{ID: id, Name: at("name"), Field: at("path"), Kept: at("kept"), New: at("new")})
	}
	return list
}

// tableOf returns the table that a form sent: its file if there is one,
// otherwise the pasted text.
func tableOf(r *http.Request) (raw []byte, pasted string, err error) {
	if kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); kind != "multipart/form-data" {
		if err := r.ParseForm(); err != nil {
			return nil, "", bodyFault(err)
		}
		pasted = r.PostForm.Get("table")
		return []byte(pasted), pasted, nil
	}
	if err := readParts(r); err != nil {
		return nil, "", err
	}
	defer r.MultipartForm.RemoveAll()
	pasted = r.PostFormValue("table")
	if raw, err = sentFile(r); err == nil && len(raw) == 0 {
		raw = []byte(pasted)
	}
	return raw, pasted, err
}
