package roster

import (
	"strings"

	"thenar/internal/sheet"
)

// Asks are the questions about a student's hand that nobody has answered yet,
// in the class's unit and with the decimal sign of its table.
func (c *Class) Asks(s Student) []sheet.Question {
	hand := s.hand(c)
	if len(hand.Questions(s.Sure, false)) == 0 {
		return nil // as most: the sign need not be looked for through the whole class
	}
	return hand.Questions(s.Sure, c.comma())
}

// hand is a student's own values with the class's unit.
func (s *Student) hand(c *Class) sheet.Sheet {
	own := s.Sheet.Clone()
	own[sheet.PathUnit] = string(c.Unit)
	return own
}

// sure reports whether a warning is about a value that somebody is sure of.
func (s *Student) sure(warning string) bool {
	path, says, _ := strings.Cut(warning, ": ")
	text, ok := s.Sure[path]
	return ok && text == s.Sheet.Given(path) && strings.Contains(says, "outside the usual")
}

// comma reports whether the students' values are written with a decimal comma.
func (c *Class) comma() bool {
	for i := range c.Students {
		if c.Students[i].Sheet.Comma() {
			return true
		}
	}
	return false
}

// Answer takes the answer to a question about the student with a number: yes,
// it is right, or it is what the question offers instead.
func (c *Class) Answer(id int, path, text string, yes bool) bool {
	at := c.At(id)
	if at < 0 {
		return false
	}
	students := append([]Student{}, c.Students...)
	s := &students[at]
	s.Sheet, s.Sure = sheet.Answer(s.Sheet, s.Sure, c.Asks(*s), path, text, yes)
	c.Students = students
	return true
}

// LeftOut tells of every student for whom nothing is printed yet, and why.
func (c *Class) LeftOut() []string {
	var list []string
	for _, s := range c.Students {
		if asks := c.Asks(s); len(asks) > 0 {
			text := s.Name + " is left out."
			for _, q := range asks {
				text += " " + q.Words
			}
			list = append(list, text)
		}
	}
	return list
}
