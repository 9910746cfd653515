package roster

import (
	"encoding/json"
	"fmt"
	"slices"
	"strings"
	"time"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Class is what a teacher decided about one class: the only thing of it that
// is saved. What each student knits follows from it.
type Class struct {
	Name   string `json:"name"`
	Date   string `json:"date,omitempty"` // 2025-03-09
	Place  string `json:"place,omitempty"`
	Yarn   string `json:"yarn,omitempty"`   // in the teacher's words
	Needle string `json:"needle,omitempty"` // the same
	Note   string `json:"note,omitempty"`   // on every handout

	Unit     units.Unit        `json:"unit"` // of all lengths of the students
	Pattern  *Pattern          `json:"pattern,omitempty"`
	Fixed    map[string]string `json:"fixed,omitempty"` // numbers for all, by the name of their pin
	Students []Student         `json:"students,omitempty"`
	Columns  map[string]string `json:"columns,omitempty"` // how columns of its tables are read, where somebody chose
	Next     int               `json:"next"`              // the number of the student who comes next, less one
	Print    string            `json:"print,omitempty"`   // how handouts are printed, as in an address
	Archived bool              `json:"archived,omitempty"`
}

// Pattern is the mitt with which the class began, as it stood at a revision: a
// later change of the mitt leaves the class alone until it is taken anew.
type Pattern struct {
	Mitt     int64        `json:"mitt"`
	Revision int64        `json:"revision"`
	Name     string       `json:"name"`
	Side     project.Side `json:"side"`
	Sheet    sheet.Sheet  `json:"sheet"`
	Marks    []chart.Edit `json:"marks,omitempty"`
}

// Fixable are the names of the numbers that a class can fix for all, in the
// order knitted.
func Fixable() []string {
	return []string{"cast_on", "cuff_rounds", "cuff_plain_rounds", "hand_stitches", "gusset_base", "increases", "first_increase", "rhythm", "increase_rounds", "gusset_rounds", "kept_on_hand", "held", "bridge", "picked_up", "rounds_above_gusset"}
}

// New is a class of which nothing is known yet.
func New(name string) Class { return Class{Name: name, Unit: sheet.DefaultUnit} }

// Begin takes a mitt as the pattern. The first pattern brings its unit and the
// fixed numbers that suit every hand; a later one leaves both as they are.
func (c *Class) Begin(p Pattern) {
	p.Sheet = p.Sheet.Clone()
	p.Sheet.Unknit()
	first := c.Pattern == nil
	if first && len(c.Students) == 0 {
		c.Unit = p.Sheet.Unit()
	}
	if first && len(c.Fixed) == 0 {
		for _, name := range sheet.ForEveryHand() {
			was := c.Fixed
			c.Fix(name, p.Sheet.Given("pins."+name))
			if len(c.checkFixed()) > 0 { // a text that no number can be read from
				c.Fixed = was
			}
		}
	}
	c.Pattern = &p
}

// Fix fixes a number for all; an empty text sets it free.
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

// Add puts students at the end, each with a number of its own, and gives the
// numbers. It refuses more than MaxStudents.
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

// At is the place of the student with a number; −1 if there is none.
func (c *Class) At(id int) int {
	return slices.IndexFunc(c.Students, func(s Student) bool { return s.ID == id })
}

// Move moves a student by so many places, as far as the ends.
func (c *Class) Move(id, by int) {
	from := c.At(id)
	if from < 0 {
		return
	}
	to := min(max(from+by, 0), len(c.Students)-1)
	c.Students = slices.Clone(c.Students)
	s := c.Students[from]
	c.Students = slices.Insert(slices.Delete(c.Students, from, from+1), to, s)
}

// The most characters of a class's texts.
const (
	longestLine = 120
	longestNote = 1000
)

// Check refuses what can't be kept: a name, texts, a date, fixed numbers,
// students.
func (c *Class) Check() error {
	var faults fault.Fields
	if strings.TrimSpace(c.Name) == "" {
		faults.Add("name", "is empty; give the class a name")
	}
	for _, t := range []struct {
		field, text string
		most        int
	}{{"name", c.Name, longestLine}, {"place", c.Place, longestLine}, {"yarn", c.Yarn, longestLine}, {"needle", c.Needle, longestLine}, {"note", c.Note, longestNote}} {
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
		if !slices.Contains(Fixable(), name) {
			faults.Add("fixed", "has no number %.40q that a class can fix", name)
		}
	}
	c.checkColumns(&faults)
	faults = append(faults, c.checkFixed()...)
	return faults.Err()
}

// checkFixed reads the fixed numbers as a measure sheet does.
func (c *Class) checkFixed() fault.Fields {
	s := sheet.Sheet{"hand.hand_circumference": "200", "unit": "mm", "gauge.swatches[0].stitches": "20", "gauge.swatches[0].width": "100"}
	for name, text := range c.Fixed {
		s["pins."+name] = text
	}
	var faults fault.Fields
	if _, err := s.Request(); err != nil {
		fields, _ := err.(fault.Fields)
		for _, f := range fields {
			if strings.HasPrefix(f.Path, "pins.") {
				faults = append(faults, f)
			}
		}
	}
	return faults
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

// About is the class in a line: name, date, place.
func (c *Class) About() string {
	if when := c.When(); when != "" {
		return c.Name + " · " + when
	}
	return c.Name
}

// When is the date and the place; empty where neither is known.
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
