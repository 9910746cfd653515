package web

import (
	"errors"
	"io"
	"mime"
	"net/http"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/roster"
	"thenar/web/view"
)

// readTable reads a table that was pasted or uploaded into a class: right rows
// go in, wrong ones are named. Who is in the class already stays as they are.
func (s *Server) readTable(w http.ResponseWriter, r *http.Request) error {
	raw, pasted, err := tableOf(r)
	if err != nil {
		return err
	}
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	table, err := roster.Read(raw, doc.Unit)
	if err != nil {
		if fault.KindOf(err) != fault.Invalid {
			return err
		}
		return s.classPage(w, r, http.StatusBadRequest, c.ID, doc, func(p *view.Class) {
			p.Pasted, p.Message = pasted, "The table can’t be read; the reason stands at its field."
			p.Faults["table"] = fault.Message(err)
		})
	}
	var twice []string
	var ids []int
	err = s.changeClass(r, func(doc *roster.Class) error {
		var fresh []roster.Student
		fresh, twice = newcomers(*doc, table.Students)
		ids, err = doc.Add(fresh...)
		return err
	})
	if err != nil {
		return err
	}
	if len(table.Wrong)+table.More+len(twice) == 0 {
		return toClass(w, r, "#table")
	}
	if _, doc, err = s.loadClass(r); err != nil {
		return err
	}
	return s.classPage(w, r, http.StatusOK, c.ID, doc, func(p *view.Class) {
		p.Pasted, p.Read, p.Added, p.Twice = again(table), &table, len(ids), twice
	})
}

// again is what of a table is to be mended and sent again: its headings and the
// rows that are wrong.
func again(t roster.Table) string {
	if len(t.Wrong) == 0 {
		return ""
	}
	rows := []string{t.Heading}
	for _, w := range t.Wrong {
		rows = append(rows, w.Raw)
	}
	return strings.Join(rows, "\n")
}

// newcomers are those of a table whose names are not in the class yet: a table
// that is sent again does not double it.
func newcomers(doc roster.Class, list []roster.Student) (fresh []roster.Student, twice []string) {
	there := map[string]bool{}
	for _, s := range doc.Students {
		there[strings.ToLower(s.Name)] = true
	}
	for _, s := range list {
		if there[strings.ToLower(s.Name)] {
			twice = append(twice, s.Name)
		} else {
			fresh = append(fresh, s)
		}
	}
	return fresh, twice
}

// tableOf is the table of a form: the file, if there is one, else the text.
func tableOf(r *http.Request) (raw []byte, pasted string, err error) {
	if kind, _, _ := mime.ParseMediaType(r.Header.Get("Content-Type")); kind != "multipart/form-data" {
		if err := r.ParseForm(); err != nil {
			return nil, "", bodyFault(err)
		}
		pasted = r.PostForm.Get("table")
		return []byte(pasted), pasted, nil
	}
	if err := r.ParseMultipartForm(mostForm); err != nil {
		return nil, "", bodyFault(err)
	}
	defer r.MultipartForm.RemoveAll()
	pasted = r.PostFormValue("table")
	file, _, err := r.FormFile("file")
	if errors.Is(err, http.ErrMissingFile) {
		return []byte(pasted), pasted, nil
	}
	if err != nil {
		return nil, "", bodyFault(err)
	}
	defer file.Close()
	raw, err = io.ReadAll(file)
	if err == nil && len(raw) == 0 {
		return []byte(pasted), pasted, nil
	}
	return raw, pasted, err
}
