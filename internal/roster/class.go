package roster

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Class is what a teacher decided about one class. Only this is saved; what each
// student knits follows from it.
type Class struct {
	Name   string `json:"name"`
	Date   string `json:"date,omitempty"` // 2025-03-09
	Place  string `json:"place,omitempty"`
	Yarn   string `json:"yarn,omitempty"`   // in the teacher's words
	Needle string `json:"needle,omitempty"` // in the teacher's words
	Note   string `json:"note,omitempty"`   // printed on every handout

	Unit     units.Unit        `json:"unit"` // of all lengths of the students
	Pattern  *Pattern          `json:"pattern,omitempty"`
	Fixed    map[string]string `json:"fixed,omitempty"` // numbers fixed for all, by the name of their pin
	Students []Student         `json:"students,omitempty"`
	Columns  map[string]string `json:"columns,omitempty"` // chosen fields of table columns, by Column.Key
	Next     int               `json:"next"`              // the highest ID given to a student so far
	Print    string            `json:"print,omitempty"`   // print options, as the query of an address
	Archived bool              `json:"archived,omitempty"`
}

// Pattern is the mitt that the class knits, as it was at a revision. Later changes
// of the mitt don't reach the class until it is taken anew.
type Pattern struct {
	Mitt     int64        `json:"mitt"`
	Revision int64        `json:"revision"`
	Name     string       `json:"name"`
	Side     project.Side `json:"side"`
	Sheet    sheet.Sheet  `json:"sheet"`
	Marks    []chart.Edit `json:"marks,omitempty"`
}

// Names says what the numbers of the pattern are called.
func (c *Class) Names() mitt.Names {
	if c.Pattern == nil {
		return mitt.Names{Kind: sheet.DefaultKind}
	}
	return c.Pattern.Sheet.Names()
}

// New returns an empty class.
func New(name string) Class { return Class{Name: name, Unit: sheet.DefaultUnit} }

// SetPattern takes a mitt as the pattern. The first pattern brings its unit and
// those fixed numbers that suit every hand; a later one changes neither.
func (c *Class) SetPattern(p Pattern) {
	p.Sheet = p.Sheet.Clone()
	p.Sheet.ForgetProgress()
	first := c.Pattern == nil
	if first && len(c.Students) == 0 {
		c.Unit = p.Sheet.Unit()
	}
	if first && len(c.Fixed) == 0 {
		for _, n := range mitt.ForEveryHand() {
			was := c.Fixed
			c.Fix(n.Key(), p.Sheet.Given(n.Path()))
			if len(c.checkFixed()) > 0 { // not a valid number
				c.Fixed = was
			}
		}
	}
	c.Pattern = &p
}

// Fix fixes a number for all; an empty text frees it.
func (c *Class) Fix(name, text string) {
	fixed := map[string]string{}
	for n, t := range c.Fixed {
		fixed[n] = t
	}
	if text = strings.TrimSpace(text); text == "" {
		delete(fixed, name)
	} else {
		fixed[name] = text
	}
	c.Fixed = fixed
}

// FixTyped fixes the numbers that a form has, as fields called by their paths in
// a sheet.
func (c *Class) FixTyped(typed map[string]string) {
	for _, n := range mitt.ForClass() {
		if text, ok := typed[n.Path()]; ok {
			c.Fix(n.Key(), text)
		}
	}
}

// Add appends students and returns the IDs it gave them. It refuses more than
// MaxStudents.
func (c *Class) Add(list ...Student) ([]int, error) {
	if n := len(c.Students) + len(list); n > MaxStudents {
		return nil, fault.New(fault.Invalid, "students: would be %d; a class has at most %d. Begin a second class for the rest", n, MaxStudents)
	}
	c.Students = slices.Clone(c.Students)
	ids := make([]int, 0, len(list))
	for _, s := range list {
		c.Next++
		s.ID = c.Next
		ids = append(ids, s.ID)
		c.Students = append(c.Students, s)
	}
	return ids, nil
}

// At returns the index of the student with an ID; −1 if there is none.
func (c *Class) At(id int) int {
	return slices.IndexFunc(c.Students, func(s Student) bool { return s.ID == id })
}

// The most characters of the note, and of any other text of a class.
const (
	maxLine = 120
	maxNote = 1000
)

// Check returns fault.Fields for what can't be kept of name, texts, date, unit,
// fixed numbers and columns. Students have a Check of their own.
func (c *Class) Check() error {
	var faults fault.Fields
	if strings.TrimSpace(c.Name) == "" {
		faults.Add("name", "is empty; give the class a name")
	}
	for _, t := range []struct {
		field, text string
		most        int
	}{{"name", c.Name, maxLine}, {"place", c.Place, maxLine}, {"yarn", c.Yarn, maxLine}, {"needle", c.Needle, maxLine}, {"note", c.Note, maxNote}} {
		if why := plain.Line(t.text, t.most); why != "" {
			faults.Add(t.field, "%s", why)
		}
	}
	if c.Date != "" {
		if _, err := time.Parse(time.DateOnly, c.Date); err != nil {
			faults.Add("date", "is %.20q; write year, month and day: 2025-03-09", c.Date)
		}
	}
	if c.Unit.Size() == 0 {
		faults.Add("unit", "is %.20q; choose mm, cm or in", c.Unit)
	}
	for name := range c.Fixed {
		if n, ok := mitt.NumberOf(name); !ok || !slices.Contains(mitt.ForClass(), n) {
			faults.Add("fixed", "has no number %.40q that a class can fix", name)
		}
	}
	c.checkColumns(&faults)
	faults = append(faults, c.checkFixed()...)
	return faults.Err()
}

// checkFixed returns the faults of the fixed numbers, read as in a measure sheet.
func (c *Class) checkFixed() fault.Fields {
	_, err := c.fixedSheet().Pins()
	fields, _ := err.(fault.Fields)
	return fields
}

// fixedSheet is the section of a sheet that the fixed numbers are.
func (c *Class) fixedSheet() sheet.Sheet {
	s := sheet.Sheet{}
	for key, text := range c.Fixed {
		if n, ok := mitt.NumberOf(key); ok {
			s.Put(n.Path(), text)
		}
	}
	return s
}

// Encode writes the class as it is stored.
func (c *Class) Encode() ([]byte, error) {
	raw, err := json.Marshal(c)
	if err != nil {
		return nil, fmt.Errorf("roster.Encode: %w", err)
	}
	return raw, nil
}

// Decode reads a stored class.
func Decode(raw []byte) (Class, error) {
	var c Class
	if err := json.Unmarshal(raw, &c); err != nil {
		return Class{}, fmt.Errorf("roster.Decode: %w", err)
	}
	return c, nil
}

// About returns name, date and place in one line.
func (c *Class) About() string {
	if when := c.When(); when != "" {
		return c.Name + " · " + when
	}
	return c.Name
}

// When returns date and place; "" if neither is known.
func (c *Class) When() string {
	var parts []string
	if t, err := time.Parse(time.DateOnly, c.Date); err == nil {
		parts = append(parts, t.Format("Monday, 2 January 2006"))
	}
	if c.Place != "" {
		parts = append(parts, c.Place)
	}
	return strings.Join(parts, " · ")
}
