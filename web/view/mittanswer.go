package view

import (
	"fmt"
	"sort"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Answer is what the server answers to the numbers of a mitt: a plan with all
// that follows from it, or the faults that are in its way.
type Answer struct {
	Out     *project.Outputs // nil if there is no plan
	Faults  map[string]string
	Filled  map[string]Filled
	Unit    units.Unit
	Names   mitt.Names             // what its numbers are called
	Side    project.Side           // the hand that is shown
	Knitted [2]string              // the path and the text that let go of the work on the needles; empty if there is none
	Other   string                 // a note about the other hand, if it has a plan of its own
	Pins    map[mitt.Number]string // fixed numbers as they were typed
	Lambda  string                 // the price of a changed rhythm as it was typed
	Works   map[string]string      // a value that would work, by the path of a fault
	Drawing string                 // SVG of a hand that has no plan yet
	Bench   *Bench                 // of the Fit desk; nil without a plan
	Chart   Chart
	Check   []string      // plain sentences about faults that belong to no field
	Fit     templ.SafeURL // the desk where the mitt is measured
}

// Filled is the value that stands in for a measurement that was not taken.
type Filled struct {
	Value  string `json:"value"`
	From   string `json:"from"`
	Source string `json:"source"`
	Told   string `json:"told"` // both in words
}

func (f Filled) words() string {
	if f.Value == "" {
		return ""
	}
	return "filled in: " + f.Value + ", " + f.told()
}

// filledIn returns a value with where it comes from.
func filledIn(value, from, source string) Filled {
	f := Filled{Value: value, From: from, Source: source}
	f.Told = f.told()
	return f
}

// told says where the value comes from: "0.34 of the hand circumference, from
// measured hands (Greiner 1991)".
func (f Filled) told() string {
	from := strings.Replace(f.From, " × ", " of the ", 1)
	if who, _, of := strings.Cut(f.Source, ", ratio of means"); of {
		return from + ", from measured hands (" + who + ")"
	}
	return from + " (" + f.Source + ")"
}

// drawn reports whether there is a hand to show.
func (a Answer) drawn() bool { return a.Bench != nil || a.Drawing != "" }

// Faulty lists the paths with a fault, sorted.
func (a Answer) Faulty() []string {
	paths := make([]string, 0, len(a.Faults))
	for path := range a.Faults {
		paths = append(paths, path)
	}
	sort.Strings(paths)
	return paths
}

// missing reports whether a message only says that something is still to be
// given, rather than that something is wrong.
func missing(message string) bool { return strings.HasPrefix(message, "is missing") }

// inForm reports whether the form has a field for a path.
func inForm(path string) bool {
	_, _, _, ok := find(path)
	return ok
}

// anyGiven reports whether something in a group was typed or is wrong, so that
// the group is shown unfolded.
func (m Mitt) anyGiven(g Group) bool {
	rows := 1
	if g.Rows != "" {
		rows = m.shown(g)
	}
	for i := range rows {
		for _, path := range g.paths(i) {
			given := m.Doc.Sheet.Given(path)
			if m.Answer.Faults[path] != "" || given != "" && given != defaults[path] {
				return true
			}
		}
	}
	return false
}

// state is what the script needs of an answer besides the fragments.
type state struct {
	Faults  map[string]string `json:"faults"`
	Filled  map[string]Filled `json:"filled"`
	Planned map[string]string `json:"planned"` // numbers that can be fixed
	Called  map[string]calls  `json:"called"`  // how fields are called
	Unit    string            `json:"unit"`
}

func (a Answer) state() state {
	return state{Faults: a.Faults, Filled: a.Filled, Planned: a.planned(), Called: a.allCalled(), Unit: string(a.Unit)}
}

// fromWords says from where on the rest of a mitt on the needles is planned.
func fromWords(k *mitt.Progress) string {
	switch {
	case k.Round > 0:
		return fmt.Sprintf("%s %d of the %s", k.Noun(), k.Round, k.Part.Words())
	case k.Part.OnThumb():
		return "the finished hand"
	case k.Part.Over() == stitch.OverDigit:
		return "where the " + k.Part.Words() + " begins"
	}
	return "its cast-on"
}
