package roster

import (
	"strings"

	"thenar/internal/sheet"
)

// Asks returns the open questions about a student's hand, in the class's unit and
// with the decimal sign that its students' values are written with.
func (c *Class) Asks(s Student) []sheet.Question {
	hand := s.hand(c)
	if len(hand.Questions(s.Sure, false)) == 0 {
		return nil // the usual case: spares looking through the class for the sign
	}
	return hand.Questions(s.Sure, c.usesComma())
}

// hand returns a student's own values with the class's unit.
func (s *Student) hand(c *Class) sheet.Sheet {
	own := s.Sheet.Clone()
	own[sheet.PathUnit] = string(c.Unit)
	return own
}

// isSureOf reports whether a warning is about a value that somebody confirmed.
func (s *Student) isSureOf(warning string) bool {
	path, says, _ := strings.Cut(warning, ": ")
	text, ok := s.Sure[path]
	return ok && text == s.Sheet.Given(path) && strings.Contains(says, "outside the usual")
}

// usesComma reports whether any student's value is written with a decimal comma.
func (c *Class) usesComma() bool {
	for i := range c.Students {
		if c.Students[i].Sheet.Comma() {
			return true
		}
	}
	return false
}

// Answer answers the question about a student's value: yes confirms it, no replaces
// it by what the question offers instead, if anything. A question that is no
// longer open changes nothing. Answer reports whether there is such a student.
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

// LeftOut returns a sentence for each student with open questions, for whom
// nothing is printed.
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
