package roster

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/fault"
)

// Part is a run of a class's list, from the place From to the place To, which
// count from 1.
type Part struct{ From, To int }

// Whole is the part that everybody belongs to.
func (c *Class) Whole() Part { return Part{1, len(c.Students)} }

// Len is how many a part has.
func (p Part) Len() int { return p.To - p.From + 1 }

// String is the part as it is asked for: 101-200.
func (p Part) String() string { return fmt.Sprintf("%d-%d", p.From, p.To) }

// Words is what the part is called.
func (p Part) Words() string { return fmt.Sprintf("students %d–%d", p.From, p.To) }

// Parts divides the class's list into parts of at most most.
func (c *Class) Parts(most int) []Part {
	var list []Part
	for from := 1; from <= len(c.Students); from += most {
		list = append(list, Part{from, min(from+most-1, len(c.Students))})
	}
	return list
}

// Part reads which part of the class is asked for: 101-200, or 7 for one place;
// nothing asks for everybody. A list that grew shorter ends the part earlier.
// It fails with a fault of the field students.
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
