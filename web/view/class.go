package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/roster"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// Classes is the list of classes, and the mitts that a class can begin with.
type Classes struct {
	Items []ClassItem
	Mitts []Choice
}

// ClassItem is one class in the list of classes.
type ClassItem struct {
	ID       int64
	Name     string
	About    string
	Archived bool
}

// NewClasses returns the page of all classes.
func NewClasses(list []app.ClassEntry, mitts []app.Choice) Classes {
	p := Classes{Mitts: mittChoices(mitts)}
	for _, c := range list {
		text := words.Plural(c.Students, "student")
		if c.Date != "" {
			text = c.Date + ", " + text
		}
		p.Items = append(p.Items, ClassItem{ID: c.ID, Name: c.Name, About: text, Archived: c.Archived})
	}
	return p
}

// mittChoices returns the mitts that a class can begin with, as options of a
// select.
func mittChoices(mitts []app.Choice) (list []Choice) {
	for _, m := range mitts {
		list = append(list, Choice{Value: strconv.FormatInt(m.ID, 10), Words: m.Name})
	}
	return list
}

// Class is the page of one class.
type Class struct {
	ID      int64
	Doc     roster.Class
	Stamp   string // of what the form was opened with
	Lines   []roster.Line
	Mitts   []Choice
	Newer   bool      // the pattern's mitt was changed since it was taken
	Cost    *app.Cost // of printing it; nil if it was not counted yet
	Faults  map[string]string
	Message string
	Between []Between // what another window saved differently

	Student Student // in the form for adding one
	Pasted  string  // the table that was pasted, or what is left of it to mend
	Whole   string  // the table that was read, to be read again; empty if it is too long
	Read    *roster.Table
	Columns *roster.Table // whose columns are listed, to be chosen anew
	Merged  roster.Merged

	NoteFaults map[int]string     // why a note can't be kept, by its student
	Remarks    map[int]app.Remark // as saved, where others were typed
}

// NewClass returns the page of a class.
func NewClass(c app.Class) Class {
	return Class{
		ID: c.ID, Doc: c.Doc, Stamp: c.Stamp, Lines: c.Lines, Mitts: mittChoices(c.Mitts), Newer: c.Newer, Cost: c.Cost, Faults: map[string]string{},
		Student: Student{Class: c.ID, Name: c.Doc.Name, Unit: c.Doc.Unit, Faults: map[string]string{}},
	}
}

// NewUnsavedClass returns the page of a class whose form could not be saved.
func NewUnsavedClass(c app.UnsavedClass) Class {
	p := NewClass(c.Class)
	p.Message, p.Faults = "Not saved yet: look at the marked fields under About the class.", Faults(c.Faults)
	if c.Saved != nil {
		p.Message = "Another window changed this class. What you typed is kept under About the class: save again to let it win."
		p.Between = ClassBetweens(c.Doc, *c.Saved)
	}
	return p
}

// NewUnaddedStudent returns the page of a class to which a student could not be
// added.
func NewUnaddedStudent(c app.Class, s app.UnsavedStudent) Class {
	p := NewClass(c)
	p.Student.Student, p.Student.Faults = s.Student.Student, Faults(s.Faults)
	p.Message = "Not added yet: look at the marked fields under Add students."
	return p
}

// NewTableRead returns the page of a class with what came of reading a table.
func NewTableRead(t app.TableRead, pasted string) Class {
	p := NewClass(t.Class)
	p.Whole = t.Whole
	if t.Fault == nil {
		p.Pasted, p.Read, p.Columns, p.Merged = t.Mend, &t.Table, &t.Table, t.Merged
		return p
	}
	p.Pasted, p.Message = pasted, "The table can’t be read; the reason stands at its field."
	p.Faults["table"] = fault.Message(t.Fault)
	if len(t.Table.Columns) > 0 {
		p.Columns = &t.Table
		p.Message = "The table can’t be read like this: choose what its columns mean, or mend it."
	}
	return p
}

// NewLeftValues returns the page of a class with the values of a table that
// could not be taken.
func NewLeftValues(c app.Class, left []app.Difference) Class {
	p := NewClass(c)
	var list []string
	for _, d := range left {
		list = append(list, d.Name+": "+columnWords(d.Field))
	}
	p.Message = "Not taken, since it was changed in between or doesn’t go with the rest: " + strings.Join(list, ", ") + "."
	return p
}

// NewUnsavedRemarks returns the page of a class with remarks that could not be
// saved.
func NewUnsavedRemarks(u app.UnsavedRemarks) Class {
	p := NewClass(u.Class)
	p.NoteFaults, p.Remarks = u.Faults, u.Saved
	p.Message = "Not saved yet: look at the marked notes."
	if len(u.Others) > 0 {
		p.Message = "Another window changed these lines. What you typed is kept below: save again to let it win."
		p.Between = RemarkBetweens(u)
	}
	return p
}

func (c Class) href(rest string) templ.SafeURL {
	return templ.SafeURL(fmt.Sprintf("/classes/%d%s", c.ID, rest))
}

// attention returns how many lines the teacher should look at.
func (c Class) attention() int {
	n := 0
	for i := range c.Lines {
		if c.Lines[i].NeedsAttention() {
			n++
		}
	}
	return n
}

// Glance says how many are on the list, and how many to look at.
func (c Class) Glance() string {
	text := words.Plural(len(c.Lines), "student")
	if n := c.attention(); n > 0 {
		return fmt.Sprintf("%s; check %d.", text, n)
	}
	return text + "; nothing to check."
}

// planned returns the numbers of a line, one for each cell; without a plan they
// are empty.
func (c Class) planned(l roster.Line) []string {
	if numbers := l.Numbers(); numbers != nil {
		return numbers
	}
	return make([]string, len(c.plannedHeads()))
}

// plannedHeads are the headings of a line’s numbers.
func (c Class) plannedHeads() []string {
	var list []string
	for _, column := range roster.NumberColumns(c.names()) {
		list = append(list, capital(column.Head))
	}
	return list
}

// columnLabels name the fields that a column can be read as and a student's
// form does not have, or calls otherwise.
var columnLabels = map[string]string{
	"name": "Name", "first_name": "First name", "last_name": "Surname", "note": "Note", "knits": "Knits from left to right", "gauge_from": "Stitches counted on",
	"gauge.swatches[0].stitches": "Stitches", "gauge.swatches[0].rounds": "Rounds", "hand.hand_circumference": "Hand, round the knuckles", "hand.wrist_circumference": "Wrist, round",
	"hand.thumb_circumference": "Thumb, round",
}

// columnWords returns what a field of a table is called.
func columnWords(field string) string {
	if label, ok := columnLabels[field]; ok {
		return label
	}
	name, _, _ := Student{}.label(field)
	return name
}

// columnChoices returns everything that a column can be read as.
func columnChoices() []Choice {
	list := []Choice{{Value: "", Words: "not used"}}
	for _, field := range roster.Readable() {
		list = append(list, Choice{Value: field, Words: columnWords(field)})
	}
	return list
}

// unread returns how many columns are not used.
func (c Class) unread() int {
	n := 0
	for _, col := range c.Columns.Columns {
		if col.Field == "" {
			n++
		}
	}
	return n
}

// heading returns what a column is called on the page.
func heading(c roster.Column, at int) string {
	if c.Heading == "" {
		return fmt.Sprintf("column %d, which has no heading", at+1)
	}
	return c.Heading
}

// difference returns a differing value in words.
func difference(field, text string) string {
	if field == "gauge_from" {
		return roster.GaugeFrom(text).Words()
	}
	return text
}

func (c Class) patternID() int64 {
	if c.Doc.Pattern == nil {
		return 0
	}
	return c.Doc.Pattern.Mitt
}

// names says what the numbers of the class's pattern are called.
func (c Class) names() mitt.Names { return c.Doc.Names() }

// fixable returns the numbers that can be fixed for all: those of the pattern, and those
// that are fixed or wrong.
func (c Class) fixable() []mitt.Number {
	return slices.DeleteFunc(mitt.ForClass(), func(n mitt.Number) bool {
		return !c.names().Has(n) && c.Doc.Fixed[n.Key()] == "" && c.Faults[n.Path()] == ""
	})
}

// terms returns the terms in which the class's pattern is written.
func (c Class) terms() words.Terms {
	if c.Doc.Pattern == nil {
		return words.US
	}
	return words.TermsOf(c.Doc.Pattern.Sheet.Given(sheet.PathTerms))
}
