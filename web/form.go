package web

import (
	"errors"
	"mime/multipart"
	"net/http"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/store"
)

// form is the measure form as it was sent.
type form struct {
	doc   project.Document
	after int64
}

// readForm puts the texts of the form of a mitt over a document: what the form
// does not show stays as it was. Texts are kept as typed; only what can't be
// kept at all is refused. Of a file into which a backup was put since, the form
// knows no revision.
func readForm(r *http.Request, m store.Mitt, base project.Document) (form, error) {
	if err := r.ParseForm(); err != nil {
		return form{}, bodyFault(err)
	}
	f := form{doc: base}
	f.doc.Sheet = base.Sheet.Clone()
	var faults fault.Fields
	press, restored := "", m.Restored
	for name, values := range r.PostForm {
		text := values[0]
		switch {
		case len(values) > 1:
			faults.Add("form", "sends %.60q twice", name)
		case name == "name":
			f.doc.Name = strings.TrimSpace(text)
		case name == "side":
			f.doc.Side = project.Side(text)
		case name == "after":
			f.after = revisionIn(&faults, name, text)
		case name == "restored":
			restored = revisionIn(&faults, name, text)
		case name == "set":
			press = text
		case !sheet.Known(name):
			faults.Add("form", "has no field of the name %.60q", name)
		case strings.TrimSpace(text) == "":
			delete(f.doc.Sheet, name)
		default:
			f.doc.Sheet[name] = text
		}
	}
	if restored != m.Restored {
		f.after = 0
	}
	if press != "" {
		f.press(press, &faults)
	}
	f.doc.Sheet.Compact()
	if err := faults.Err(); err != nil {
		return f, err
	}
	return f, f.doc.Check()
}

// revisionIn reads what a page says of the file that it was made from.
func revisionIn(faults *fault.Fields, name, text string) int64 {
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		faults.Add(name, "is no revision; open the mitt again")
	}
	return n
}

// press is a button that writes "path=text" into the sheet: it comes after the
// fields, since it was pressed last.
func (f *form) press(set string, faults *fault.Fields) {
	path, text, ok := strings.Cut(set, "=")
	switch {
	case !ok || !sheet.Known(path):
		faults.Add("form", "has a button for %.60q, which no sheet has", set)
	default:
		f.doc.Sheet.Put(path, text)
	}
}

// inMemory are the bytes of the files of a form that are kept in memory; what
// is more waits on the disk, since a slow link may send for minutes.
const inMemory = 1 << 20

// readParts reads a form with files. The caller removes them.
func readParts(r *http.Request) error {
	if err := r.ParseForm(); err != nil { // by itself, or the next would keep its error
		return bodyFault(err)
	}
	if err := r.ParseMultipartForm(inMemory); err != nil && !errors.Is(err, http.ErrNotMultipart) {
		return bodyFault(err)
	}
	return nil
}

// bodyFault is a body that is no form, or larger than allowed.
func bodyFault(err error) error {
	var tooLarge *http.MaxBytesError
	if errors.As(err, &tooLarge) {
		return err
	}
	if errors.Is(err, multipart.ErrMessageTooLarge) {
		return fault.New(fault.Invalid, "This form has more parts and headers than any of ours.")
	}
	return fault.New(fault.Invalid, "This is no form that can be read: %v.", err)
}
