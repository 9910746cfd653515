package roster

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/fault"
)

// Part is a range of a class's list, from place From to place To, counted from 1.
type Part struct{ From, To int }

// Whole returns the part that holds all students.
func (c *Class) Whole() Part { return Part{1, len(c.Students)} }

// Len returns the number of students in the part.
func (p Part) Len() int { return p.To - p.From + 1 }

// String returns the part as Class.Part reads it: 101-200.
func (p Part) String() string { return fmt.Sprintf("%d-%d", p.From, p.To) }

// Words returns the part's name as it is shown: students 101–200.
func (p Part) Words() string { return fmt.Sprintf("students %d–%d", p.From, p.To) }

// Parts divides the list into parts of at most size students.
func (c *Class) Parts(size int) []Part {
	var list []Part
	for from := 1; from <= len(c.Students); from += size {
		list = append(list, Part{from, min(from+size-1, len(c.Students))})
	}
	return list
}

// Part parses a part: 101-200, or 7 for one place; "" is the whole class. A part
// that reaches beyond the list ends with it, since the list may have grown
// shorter. It fails with a fault of the field students.
func (c *Class) Part(text string) (Part, error) {
	text = strings.TrimSpace(text)
	if text == "" {
		return c.Whole(), nil
	}
	first, last, run := strings.Cut(strings.ReplaceAll(text, "–", "-"), "-")
	if !run {
		last = first
	}
	from, err := strconv.Atoi(strings.TrimSpace(first))
	to, err2 := strconv.Atoi(strings.TrimSpace(last))
	if err != nil || err2 != nil || from < 1 || to < from {
		return Part{}, fault.Fields{{Path: "students", Message: fmt.Sprintf("is %.20q; write the first and the last place on the list, such as 1-100", text)}}
	}
	if from > len(c.Students) {
		return Part{}, fault.Fields{{Path: "students", Message: fmt.Sprintf("is %.20q, and the list ends with %d; write places on it, such as 1-%[2]d", text, len(c.Students))}}
	}
	return Part{from, min(to, len(c.Students))}, nil
}
