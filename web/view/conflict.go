package view

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/roster"
)

// Between is a field that differs between two versions: what this page has, and
// what was saved in between.
type Between struct {
	Path, Name  string
	Here, There string
	Left        bool // nothing was typed here: the value is as it was when the form was opened
}

// Betweens lists the fields in which a typed version differs from the saved
// one. was is the version that the form was opened with, or nil if that is not
// known.
func Betweens(here, there project.Document, was *project.Document) (list []Between) {
	if here.Name != there.Name {
		list = append(list, Between{Path: "name", Name: "Name", Here: here.Name, There: there.Name})
	}
	// A difference has the values of one side only: take it both ways.
	to := map[string]string{}
	for _, e := range there.Difference(here) {
		to[e.Column] = e.Value
	}
	for _, e := range here.Difference(there) {
		list = append(list, between(here.Sheet.Names(), e, to[e.Column]))
	}
	if was == nil {
		return list
	}
	typed := map[string]bool{"name": here.Name != was.Name}
	for _, e := range was.Difference(here) {
		typed[e.Column] = true
	}
	for i := range list {
		list[i].Left = !typed[list[i].Path]
	}
	return list
}

func between(w mitt.Names, e chart.Edit, here string) Between {
	b := Between{Path: e.Column, Name: strings.NewReplacer("_", " ", ".", ", ").Replace(e.Column), Here: here, There: e.Value}
	g, f, row, ok := find(e.Column)
	if !ok {
		return b
	}
	f = g.named(w, f)
	b.Name = g.Title + ": " + f.Label
	if g.Rows != "" {
		b.Name = fmt.Sprintf("%s %d: %s", g.Row, row+1, f.Label)
	}
	return b
}

// text adds a field if its texts differ.
func (l *betweens) text(path, name, here, there string) {
	if here != there {
		*l = append(*l, Between{Path: path, Name: name, Here: here, There: there})
	}
}

type betweens []Between

// ClassBetweens lists the fields in which a typed version of a class differs
// from the saved one. Its students are not part of that form.
func ClassBetweens(here, there roster.Class) []Between {
	var l betweens
	l.text("name", "Name", here.Name, there.Name)
	l.text("date", "Date", here.Date, there.Date)
	l.text("place", "Place", here.Place, there.Place)
	l.text("yarn", "Yarn", here.Yarn, there.Yarn)
	l.text("needle", "Needle", here.Needle, there.Needle)
	l.text("note", "Note", here.Note, there.Note)
	for _, n := range mitt.ForClass() {
		l.text(n.Path(), there.Names().Label(n), here.Fixed[n.Key()], there.Fixed[n.Key()])
	}
	return l
}

// knits says in which direction a student knits, by whether it is from the left.
var knits = map[bool]string{true: "from left to right", false: "from right to left"}

// RemarkBetweens lists the remarks that differ from those that another window
// saved.
func RemarkBetweens(u app.UnsavedRemarks) []Between {
	var l betweens
	for _, s := range u.Doc.Students {
		if there, here := u.Saved[s.ID], s.Remark(); slices.Contains(u.Others, s.ID) {
			l.text("knits", s.Name+": Knits", knits[here.FromLeft], knits[there.FromLeft])
			l.text("note", s.Name+": Note", here.Note, there.Note)
		}
	}
	return l
}

// StudentBetweens lists the fields in which a typed student differs from the
// saved one.
func StudentBetweens(s Student, there roster.Student) []Between {
	var l betweens
	here := s.Student
	l.text("name", "Name or initials", here.Name, there.Name)
	l.text("knits", "Knits", knits[here.FromLeft], knits[there.FromLeft])
	l.text("gauge_from", "Stitches counted on", here.Gauge.Words(), there.Gauge.Words())
	l.text("note", "Note", here.Note, there.Note)
	for _, path := range roster.Paths() {
		name, _, _ := s.label(path)
		l.text(path, name, here.Sheet.Given(path), there.Sheet.Given(path))
	}
	return l
}

// said returns a value as the table of two versions shows it.
func said(path, value string) string {
	if value == "" {
		return "nothing"
	}
	if _, f, _, ok := find(path); ok {
		for _, c := range f.Choices {
			if c.Value == value {
				return c.Words
			}
		}
	}
	return value
}
