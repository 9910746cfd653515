package view

import (
	"fmt"

	"thenar/internal/app"
	"thenar/internal/roster"
	"thenar/internal/words"
)

// was returns what is saved beside a student, as far as the page knows.
func (c Class) was(s roster.Student) roster.Remark {
	if saved, typed := c.Remarks[s.ID]; typed {
		return saved
	}
	return s.Remark()
}

// handouts says for how many students the class set has a handout.
func (c Class) handouts() string {
	left := 0
	for i := range c.Lines {
		if len(c.Lines[i].Asks) > 0 {
			left++
		}
	}
	if left > 0 {
		return fmt.Sprintf("%d of %s", len(c.Lines)-left, words.Plural(len(c.Lines), "student"))
	}
	return words.Plural(len(c.Lines), "student")
}

// CostWords says what printing a class set takes: 29 sheets, both sides.
func CostWords(c app.Cost) string {
	sides := "one side"
	if c.BothSides {
		sides = "both sides"
	}
	return words.Plural(c.Sheets, "sheet") + ", " + sides
}

// NoteField returns the name of the note on the student with an ID, or, with "was-",
// of the note that is saved.
func NoteField(was string, id int) string { return fmt.Sprintf("note-%s%d", was, id) }

// KnitsField returns the name of the field that says in which direction the student
// with an ID knits, or, with "was-", of the direction that is saved.
func KnitsField(was string, id int) string { return fmt.Sprintf("knits-%s%d", was, id) }
