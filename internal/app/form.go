package app

import (
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// Typed is the measure form as it was sent: texts by the names of their fields.
// A field's name is its path in the sheet; beside those it has name and side of
// the mitt, the revision after which it was opened, what of the file had that
// revision (restored), and the button that was pressed (set).
type Typed map[string][]string

// form is the measure form as it was read.
type form struct {
	doc   project.Document
	after int64
}

// over puts the texts of the form over a document: what the form does not show
// stays as it was. Texts are kept as typed; only what can't be kept at all is
// refused. Of a file into which a backup was put since, the form knows no
// revision.
func (t Typed) over(base project.Document, restored int64) (form, error) {
	f := form{doc: base}
	f.doc.Sheet = base.Sheet.Clone()
	var faults fault.Fields
	press, from := "", restored
	for name, values := range t {
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
			from = revisionIn(&faults, name, text)
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
	if from != restored {
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
