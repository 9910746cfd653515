package project

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// Laid is a repeat with what became of it on the plan, and its place among those that are
// laid, from 0, the lowest first.
type Laid struct {
	sheet.Numbered
	Place int
	Came  repeat.Came
	Along *repeat.Stands // across what it is laid along; nil: along nothing
	Above *repeat.Stands // above the thumb, where the hand has another count; nil: it has not
}

// laidOn returns the repeats with what became of them on a chart.
func laidOn(list []sheet.Numbered, s chart.Source) []Laid {
	laid := make([]Laid, len(list))
	for i, came := range s.Came() {
		laid[i] = Laid{Numbered: list[i], Place: i, Came: came}
		laid[i].Along, laid[i].Above = s.Stands(i)
	}
	return laid
}

// Words says what became of the repeat: "6 times, 4 times up; 5 plain stitches, 3 before and
// 2 after". noun is what its rounds are called.
func (l *Laid) Words(noun string) string {
	c := l.Came
	if c.Nowhere != "" {
		return "laid nowhere: " + c.Nowhere
	}
	list := []string{l.across() + ", " + words.Times(c.Up) + " up"}
	if l.Over == repeat.Gusset {
		list[0] = "in the gusset, " + words.Times(c.Up) + " up"
	}
	if c.Beside {
		list = append(list, "half a stitch off the gusset’s middle")
	}
	if c.Plain() > 0 {
		list = append(list, plainBeside(c))
	}
	if c.Fewer > 0 {
		list = append(list, fmt.Sprintf("so set, %d fewer than have room", c.Fewer))
	}
	switch {
	case c.Left > 0 && l.Cut:
		list = append(list, "the uppermost is cut after "+words.Plural(c.Left, noun))
	case c.Left > 0:
		list = append(list, words.Plural(c.Left, noun)+" left over")
	}
	if l.Above != nil {
		list = append(list, fmt.Sprintf("after the bridge, on %s, %s", words.Plural(l.Above.Stitches, "stitch"), stood(*l.Above)))
	}
	return strings.Join(list, "; ")
}

// across says how often it stands across: moved on beside plain stitches, its first and its
// last are pieces.
func (l *Laid) across() string {
	if l.Along == nil || l.Along.Cut == 0 {
		return words.Times(l.Came.Across)
	}
	if l.Along.Whole == 0 {
		return "in two pieces"
	}
	return words.Times(l.Along.Whole) + " and cut at both ends"
}

// stood says how the motifs stand where not all of them are whole: "7 times and 1 cut, 2 plain".
func stood(s repeat.Stands) string {
	text := words.Times(s.Whole)
	if s.Cut > 0 {
		text += fmt.Sprintf(" and %d cut", s.Cut)
	}
	if s.Plain > 0 {
		text += fmt.Sprintf(", %d plain", s.Plain)
	}
	return text
}

// plainBeside says how many stitches stay plain beside a repeat, and where.
func plainBeside(c repeat.Came) string {
	text := words.Plural(c.Plain(), "plain stitch")
	switch {
	case c.Before == 0:
		return text + " at the end"
	case c.After == 0:
		return text + " at the beginning"
	}
	return fmt.Sprintf("%s, %d before and %d after", text, c.Before, c.After)
}

// Since says how the repeat came out otherwise than when somebody last looked; empty: alike.
func (l *Laid) Since() string { return l.Came.Since(l.Was) }

// Noted returns a document in which every repeat that differs from the one before says what
// became of it. Another gauge changes none, so what it comes to can be told.
func (pl *Planner) Noted(before, after Document) Document {
	var touched []int
	for i := range after.Sheet.Rows(sheet.PathRepeats) {
		for _, key := range sheet.RepeatKeys() {
			if path := sheet.RepeatPath(i, key); before.Sheet[path] != after.Sheet[path] {
				touched = append(touched, i)
				break
			}
		}
	}
	if len(touched) == 0 {
		return after
	}
	planned, err := pl.Plan(after.Effective())
	if err != nil {
		return after
	}
	after.Sheet = after.Sheet.Clone()
	for _, l := range laidOn(planned.extra.repeats, planned.Charts(after, nil)) {
		if slices.Contains(touched, l.At) {
			after.Sheet[sheet.RepeatPath(l.At, "was")] = l.Came.Note()
		}
	}
	return after
}
