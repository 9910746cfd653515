package tally

import (
	"fmt"
	"strings"
)

// Line is a finding in one line: "12:3: size 48: Thumb gusset, round 4: There are 46 stitches,
// not 45."
func (f *Finding) Line() string {
	size := "all sizes"
	switch len(f.Sizes) {
	case 0:
		size = "one size"
	case 1:
		size = "size " + f.Sizes[0]
	default:
		size = "sizes " + strings.Join(f.Sizes, ", ")
	}
	return fmt.Sprintf("%d:%d: %s: %s: %s", f.At.Line, f.At.Column, size, f.Where(), f.Told())
}

// Where says in which section and round it is.
func (f *Finding) Where() string {
	switch {
	case f.Section != "" && f.Round != "":
		return f.Section + ", " + f.Round
	case f.Round != "":
		return f.Round
	case f.Section != "":
		return f.Section
	}
	return "text"
}

// Told is what was found, with what it follows from and what would cure it.
func (f *Finding) Told() string {
	text := f.Message
	if f.Look.Line > 0 && f.Look.Line != f.At.Line {
		text += fmt.Sprintf(" See also line %d.", f.Look.Line)
	}
	if f.Cure != "" {
		text += " " + f.Cure
	}
	return text
}
