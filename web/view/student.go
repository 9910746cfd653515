package view

import (
	"fmt"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/roster"
	"thenar/internal/units"
)

// Student is the form for one student.
type Student struct {
	Class   int64
	Name    string // of the class
	Unit    units.Unit
	Names   mitt.Names // what the pattern calls its numbers
	Student roster.Student
	Stamp   string // of what the form was opened with
	Line    roster.Line
	Faults  map[string]string
	Message string
	Between []Between // what another window saved differently
}

// NewStudent returns the page of a student.
func NewStudent(s app.Student) Student {
	return Student{Class: s.Class, Name: s.ClassName, Unit: s.Unit, Names: s.Names, Student: s.Student, Stamp: s.Stamp, Line: s.Line, Faults: map[string]string{}}
}

// NewUnsavedStudent returns the page of a student whose form could not be
// saved.
func NewUnsavedStudent(s app.UnsavedStudent) Student {
	p := NewStudent(s.Student)
	p.Faults, p.Message = Faults(s.Faults), "Not saved yet: look at the marked fields."
	if s.Saved != nil {
		p.Message = "Another window changed this line. What you typed is kept below: save again to let it win."
		p.Between = StudentBetweens(p, *s.Saved)
	}
	return p
}

func (s Student) href(rest string) templ.SafeURL {
	if s.Student.ID == 0 {
		return templ.SafeURL(fmt.Sprintf("/classes/%d/students%s", s.Class, rest))
	}
	return templ.SafeURL(fmt.Sprintf("/classes/%d/students/%d%s", s.Class, s.Student.ID, rest))
}

// studentGroup is the fields of a student's form under one heading.
type studentGroup struct {
	Title, Note string
	Paths       []string
	Folded      bool
}

// studentGroups are the fields of a student's form; those that are always asked
// for come first.
var studentGroups = []studentGroup{
	{"Hand", "The tape over the knuckles without the thumb; without a tape, a glove size.", []string{"hand.hand_circumference", "hand.size"}, false},
	{"Swatch", "Left empty, it is the pattern’s, with a mark to look at it.", []string{"gauge.swatches[0].stitches", "gauge.swatches[0].rounds"}, false},
	{"More of the hand", "", []string{"hand.wrist_circumference", "hand.thumb_circumference", "hand.hand_length", "hand.gusset_length", "hand.thumb_length", "hand.wrist_to_crotch", "hand.palm_and_thumb_circumference", "hand.hand_breadth"}, true},
	{"Fingers", "For gloves.", hand.FieldsOfFingers(), true},
	{"Numbers of their own", "Such as a cuff that is on the needles already. They go before what is fixed for all.", ownNumbers(), true},
}

// ownLabels are the label and help of fields that the measure form names
// otherwise.
var ownLabels = map[string][2]string{
	"hand.size":                  {"Glove size", "4 to 13"},
	"gauge.swatches[0].stitches": {"Stitches over 10 cm", ""},
	"gauge.swatches[0].rounds":   {"Rounds over 10 cm", ""},
}

// ownNumbers returns the paths of the numbers that one student may have
// otherwise than the class.
func ownNumbers() []string {
	var list []string
	for _, n := range mitt.OfStudent() {
		list = append(list, n.Path())
	}
	return list
}

// label returns a field's name, its help and its unit.
func (s Student) label(path string) (name, help, unit string) {
	if own, ok := ownLabels[path]; ok {
		name, help = own[0], own[1]
		if s.Unit == units.IN && (path == "gauge.swatches[0].stitches" || path == "gauge.swatches[0].rounds") {
			name = name[:len(name)-len("10 cm")] + "4 in"
		}
		return name, help, ""
	}
	g, f, _, _ := find(path)
	f = g.named(s.Names, f)
	if f.Unit != "" {
		unit = string(s.Unit)
	}
	return f.Label, f.Help, unit
}

func (s Student) given(g studentGroup) bool {
	for _, path := range g.Paths {
		if s.Student.Sheet.Given(path) != "" || s.Faults[path] != "" {
			return true
		}
	}
	return false
}

func (s Student) classHref() templ.SafeURL {
	return templ.SafeURL(fmt.Sprintf("/classes/%d", s.Class))
}

func (s Student) printHref() templ.SafeURL {
	return templ.SafeURL(fmt.Sprintf("/classes/%d/print?student=%d", s.Class, s.Student.ID))
}
