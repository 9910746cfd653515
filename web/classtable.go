package web

import (
	"errors"
	"fmt"
	"io"
	"mime"
	"net/http"
	"net/url"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/roster"
	"thenar/web/view"
)

// readTable reads a table that was pasted or uploaded into a class: right rows
// go in, wrong ones are named, and every column is told with how it was read.
// Who is in the class already gets what is empty; what differs is asked about.
func (s *Server) readTable(w http.ResponseWriter, r *http.Request) error {
	raw, pasted, err := tableOf(r)
	if err != nil {
		return err
	}
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	doc.Choose(chosenColumns(r.PostForm))
	if err := doc.Check(); err != nil {
		return err
	}
	whole := ""
	if len(raw) <= maxEcho {
		whole = roster.Text(raw)
	}
	table, err := roster.ReadAs(raw, doc.Unit, doc.Columns)
	if err != nil {
		if fault.KindOf(err) != fault.Invalid {
			return err
		}
		if len(r.PostForm["column"]) > 0 { // the choice is kept all the same
			if err := s.changeClass(r, func(now *roster.Class) error {
				now.Choose(chosenColumns(r.PostForm))
				return nil
			}); err != nil {
				return err
			}
		}
		return s.classPage(w, r, http.StatusBadRequest, c.ID, doc, func(p *view.Class) {
			p.Pasted, p.Whole, p.Message = pasted, whole, "The table can’t be read; the reason stands at its field."
			p.Faults["table"] = fault.Message(err)
			if len(table.Columns) > 0 {
				p.Columns = &table
				p.Message = "The table can’t be read like this: choose what its columns mean, or mend it."
			}
		})
	}
	var merged roster.Merged
	err = s.changeClass(r, func(now *roster.Class) error {
		now.Choose(chosenColumns(r.PostForm))
		merged, err = now.Merge(table.Students)
		return err
	})
	if err != nil {
		return err
	}
	if _, doc, err = s.loadClass(r); err != nil {
		return err
	}
	return s.classPage(w, r, http.StatusOK, c.ID, doc, func(p *view.Class) {
		p.Pasted, p.Whole, p.Read, p.Columns, p.Merged = again(table), whole, &table, &table, merged
	})
}

// maxEcho is the most bytes of a table that go back with the page, to be read
// again as somebody chooses.
const maxEcho = 1 << 20

// chosenColumns are the choices of a form: a field by the key of each column.
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

// takeNew puts new values of a table in the place of those that differ, where
// somebody chose them; a value that was changed in between stays.
func (s *Server) takeNew(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	var left []string
	err := s.changeClass(r, func(doc *roster.Class) error {
		left = nil
		for i := range len(r.PostForm["student"]) {
			at := func(name string) string {
				if list := r.PostForm[name]; i < len(list) {
					return list[i]
				}
				return ""
			}
			if r.PostForm.Get(fmt.Sprintf("take-%d", i)) != "new" {
				continue
			}
			id, _ := strconv.Atoi(at("student")) // what is no number is nobody's
			d := roster.Difference{ID: id, Name: at("name"), Field: at("path"), Kept: at("kept"), New: at("new")}
			if !doc.Accept(d) {
				left = append(left, d.Name+": "+view.ColumnWords(d.Field))
			}
		}
		return nil
	})
	if err != nil {
		return err
	}
	if len(left) == 0 {
		return toClass(w, r, "#table")
	}
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	return s.classPage(w, r, http.StatusConflict, c.ID, doc, func(p *view.Class) {
		p.Message = "Not taken, since it was changed in between or doesn’t go with the rest: " + strings.Join(left, ", ") + "."
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

// tableOf is the table of a form: the file, if there is one, else the text.
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
