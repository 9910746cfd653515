package app

import (
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
)

// Typed is the measure form as it was sent: texts by the names of their fields.
// A field is named after its path in the sheet. Besides those there are the
// name and side of the mitt, the revision after which the form was opened
// (after), the number of the restored file that revision belongs to (restored),
// and the button that was pressed (set).
type Typed map[string][]string

// form is the measure form once read: the document that it makes, and the
// revision after which it was opened.
type form struct {
	doc   project.Document
	after int64
}

// over lays the texts of the form over a document. What the form does not show
// stays as it was, and texts are kept as typed; only what can't be kept at all
// is refused. restored tells the file as it is now from the file before a
// backup was put back: a form from before then knows no revision of this file.
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
	f.doc.Sheet.OverGauge()
	f.doc.Sheet.Compact()
	if err := faults.Err(); err != nil {
		return f, err
	}
	return f, f.doc.Check()
}

// revisionIn reads a revision that a page sends back.
func revisionIn(faults *fault.Fields, name, text string) int64 {
	n, err := strconv.ParseInt(text, 10, 64)
	if err != nil {
		faults.Add(name, "is no moment of this mitt; open the mitt again")
	}
	return n
}

// press puts the "path=text" of a pressed button into the sheet. It runs after
// the fields are read, since the button was pressed last.
func (f *form) press(set string, faults *fault.Fields) {
	path, text, ok := strings.Cut(set, "=")
	switch {
	case !ok || !sheet.Known(path):
		faults.Add("form", "has a button for %.60q, which no sheet has", set)
	default:
		f.doc.Sheet.Put(path, text)
	}
}
