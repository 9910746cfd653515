// Package project holds what a person decided about one mitt, and derives
// from it all that follows.
//
// A Document is the sheet with its name, side and marks, and is all that is
// saved. Planner.Derive turns it into a plan, its rounds, chart, words, fit and
// yarn.
//
// A try goes this way: tryon.Correct turns what was seen and felt into
// corrections, each with its edits of the sheet. Planner.Onward puts those that
// the person accepts into a copy of the sheet, beside what is knitted of each
// hand (the sheet's keys worked and worked_other), and plans the rest. No knitted
// round changes, because mitt fixes the numbers of what is knitted and checks
// that the plan keeps them. Every other change of the sheet goes through
// Planner.Keep, which does the same. If going on would fit worse than a mitt
// begun anew, the rip-back is found by planning with one knitted round fewer at
// a time.
package project

import (
	"encoding/json"
	"fmt"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/plain"
	"thenar/internal/sheet"
)

// Side is the hand that a mitt is for.
type Side string

// The two hands.
const (
	Right Side = "right"
	Left  Side = "left"
)

// LongestName is the greatest number of characters in the name of a mitt.
const LongestName = 120

// Document is what the person decided about one mitt. Together with the strokes
// of the chart it is all that is saved. The sheet holds texts as typed, so even a
// number that can't be used yet is kept.
type Document struct {
	Name     string      `json:"name"`
	Side     Side        `json:"side"`
	Archived bool        `json:"archived,omitempty"`
	Sheet    sheet.Sheet `json:"sheet"`

	// FromLeft says whether the knitter works from left to right: the chart is
	// then read that way, and left and right increases change places. It belongs
	// to a handout, so it is not saved with the mitt.
	FromLeft bool `json:"-"`

	// Print is how the handout is laid out, written as in an address; empty: as
	// usual.
	Print string `json:"print,omitempty"`

	// Sure holds the unusual measurements that somebody confirmed, by their path
	// in the sheet. If the text there changes, it is asked about again.
	Sure map[string]string `json:"sure,omitempty"`

	// Design is what was typed of the sizes in which the mitt is a pattern; nil if it is
	// one mitt.
	Design grade.Texts `json:"design,omitempty"`

	// Pattern is what the designer wrote for the pattern; nil if nothing.
	Pattern PatternTexts `json:"pattern,omitempty"`

	// WhatIf is a second variant, to compare with; nil if there is none.
	WhatIf sheet.Sheet `json:"what_if,omitempty"`
}

// Variant returns the document with its second variant as its sheet, or with a
// copy of its own sheet if there is no second variant.
func (d Document) Variant() Document {
	if d.WhatIf != nil {
		d.Sheet = d.WhatIf
	}
	d.Sheet, d.WhatIf = d.Sheet.Clone(), nil
	return d
}

// New returns the document of a mitt of which nothing is known yet.
func New(name string) Document {
	return Document{Name: name, Side: Right, Sheet: sheet.Sheet{
		sheet.PathKind: string(sheet.DefaultKind), sheet.PathUnit: string(sheet.DefaultUnit),
		"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
	}}
}

// Encode returns the document as it is stored.
func (d Document) Encode() ([]byte, error) {
	raw, err := json.Marshal(d)
	if err != nil {
		return nil, fmt.Errorf("project.Encode: %w", err)
	}
	return raw, nil
}

// Decode reads a stored document.
func Decode(raw []byte) (Document, error) {
	var d Document
	if err := json.Unmarshal(raw, &d); err != nil {
		return Document{}, fmt.Errorf("project.Decode: %w", err)
	}
	if d.Sheet == nil {
		d.Sheet = sheet.Sheet{}
	}
	return d, nil
}

// Check refuses what can't be saved: a name or a text that is too long or holds
// control characters, a side that is neither right nor left, a path that no sheet
// has. It does not check numbers.
func (d Document) Check() error {
	var faults fault.Fields
	if name := strings.TrimSpace(d.Name); name == "" {
		faults.Add("name", "is empty; give the mitt a name")
	} else if why := plain.Line(name, LongestName); why != "" {
		faults.Add("name", "%s", why)
	}
	if d.Side != Right && d.Side != Left {
		faults.Add("side", "is neither right nor left; choose one")
	}
	for _, s := range []sheet.Sheet{d.Sheet, d.WhatIf, d.Sure} {
		checkTexts(s, &faults)
	}
	d.Design.Check(&faults)
	d.Pattern.Check(&faults)
	return faults.Err()
}

// Questions returns the open questions about unusual measurements. Nothing is
// printed until they are answered.
func (d Document) Questions() []sheet.Question { return d.Sheet.Questions(d.Sure, d.Sheet.Comma()) }

func checkTexts(s sheet.Sheet, faults *fault.Fields) {
	for path, text := range s {
		if !sheet.Known(path) {
			faults.Add("sheet", "has no field of this name: %.60q", path)
		} else if why := plain.Line(text, sheet.Longest(path)); why != "" {
			faults.Add(path, "%s", why)
		}
	}
}
