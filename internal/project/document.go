// Package project holds what a person decided about one mitt, and derives
// from it all that follows.
//
// A Document is the sheet with its name, side and marks, and is all that is
// saved. Planner.Derive turns it into a plan, its rounds, chart, words, fit and
// yarn.
//
// A try goes this way: tryon.Correct turns what was seen and felt into
// corrections, each with the edits of the sheet that it means. Planner.Onward
// puts those that the person accepts into a copy of the sheet, beside what is
// knitted of each hand (the sheet's keys worked and worked_other), and plans the
// rest. No knitted round changes, because mitt fixes the numbers of what is
// knitted and checks that the plan keeps them. Every other change of the sheet
// goes through Planner.Keep, which does the same. Where going on leaves the mitt
// off by more than a new one, the rip-back is found by planning from one round
// fewer after another.
package project

import (
	"encoding/json"
	"fmt"
	"strings"

	"thenar/internal/fault"
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

// LongestName is the most characters that the name of a mitt may have.
const LongestName = 120

// Document is what the person decided about one mitt: the only thing that is
// saved beside the strokes of the chart. The sheet holds texts as typed, so a
// number that can't be used yet is kept all the same.
type Document struct {
	Name     string      `json:"name"`
	Side     Side        `json:"side"`
	Archived bool        `json:"archived,omitempty"`
	Sheet    sheet.Sheet `json:"sheet"`

	// FromLeft says that its knitter works from left to right: the chart is
	// read from there, and the make ones are exchanged. It belongs to a handout,
	// so it is not saved with the mitt.
	FromLeft bool `json:"-"`

	// Print is how its handout is laid out, as in an address; empty: as usual.
	Print string `json:"print,omitempty"`

	// Sure are the unusual measurements that somebody said are right, by their
	// path in the sheet; another value is asked about again.
	Sure map[string]string `json:"sure,omitempty"`

	// WhatIf is a second variant, to compare with; nil if there is none.
	WhatIf sheet.Sheet `json:"what_if,omitempty"`
}

// Variant is the document with its second variant in the place of the first;
// as long as there is none, it is the first.
func (d Document) Variant() Document {
	if d.WhatIf != nil {
		d.Sheet = d.WhatIf
	}
	d.Sheet, d.WhatIf = d.Sheet.Clone(), nil
	return d
}

// New is the document of a mitt of which nothing is known yet.
func New(name string) Document {
	return Document{Name: name, Side: Right, Sheet: sheet.Sheet{
		sheet.PathKind: string(sheet.DefaultKind), sheet.PathUnit: string(sheet.DefaultUnit),
		"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
	}}
}

// Encode writes the document as it is stored.
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

// LongestText is the most characters that one field keeps.
const LongestText = 200

// Check refuses what can't be kept at all: a name or a text that is too long
// or holds control characters, a side that is neither, a path that no sheet
// has. Numbers are not looked at here.
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
	return faults.Err()
}

// Questions are about measurements that no hand is likely to have, as long as
// nobody has answered; until then nothing is printed.
func (d Document) Questions() []sheet.Question { return d.Sheet.Questions(d.Sure, d.Sheet.Comma()) }

func checkTexts(s sheet.Sheet, faults *fault.Fields) {
	for path, text := range s {
		if !sheet.Known(path) {
			faults.Add("sheet", "has no field of this name: %.60q", path)
		} else if why := plain.Line(text, LongestText); why != "" {
			faults.Add(path, "%s", why)
		}
	}
}
