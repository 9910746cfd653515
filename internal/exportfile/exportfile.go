// Package exportfile is how mitts and classes move house: one JSON file with all
// that was decided, drawn, tried and counted, to be read by another Thenar or
// by a person. testdata/export.schema.json describes every key.
//
// Revisions are numbered from 1. A decision holds the document as it was
// stored, a stroke its edits and what they replaced. Numbers of mitts, classes
// and tries are those of the database that wrote the file; the one that takes it
// in gives new ones. Photographs are JPEG in base64.
package exportfile

import (
	"bytes"
	"fmt"
	"io"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/roster"
)

// Format is the name and version of the file's form.
const Format = "thenar/export@1"

// Largest is the most bytes that a file may have.
const Largest = 256 << 20

// File is one file. Times are in UTC with nine decimals; documents are kept as
// the program stores them.
type File struct {
	Format    string      `json:"format"`
	Made      string      `json:"made"` // when, for people
	Mitts     []Mitt      `json:"mitts"`
	Classes   []Class     `json:"classes"`
	Motifs    []Motif     `json:"motifs"`
	Unlearned []Unlearned `json:"unlearned"`
	Mended    []string    `json:"mended,omitzero"` // what had to be changed to be written, for people
}

// Mitt is a mitt with its whole history. ID is its number where it came from,
// which only this file speaks of.
type Mitt struct {
	ID        int64      `json:"id"`
	Created   string     `json:"created"`
	Revisions []Revision `json:"revisions"`
	Moments   []Moment   `json:"moments"`
	Tries     []Try      `json:"tries"`
	Counts    []Count    `json:"counts"`
}

// Decision is the kind of a revision that is no stroke; those are "do", "undo"
// and "redo".
const Decision = "decision"

// Revision is one entry of a mitt's history: a document, or a stroke with what
// it set, what that took the place of, and, of an undo or redo, the stroke that
// it speaks of.
type Revision struct {
	Revision int64          `json:"revision"` // from 1
	At       string         `json:"at"`
	Kind     string         `json:"kind"`
	Document jsontext.Value `json:"document,omitzero"`
	Target   int64          `json:"target,omitzero"`
	Key      string         `json:"key,omitzero"`
	Edits    []chart.Edit   `json:"edits,omitzero"`
	Inverse  []chart.Edit   `json:"inverse,omitzero"`
}

// Moment is the name that a revision was given; an empty one takes it away.
type Moment struct {
	Revision int64  `json:"revision"`
	At       string `json:"at"`
	Name     string `json:"name"`
}

// Try is what was noted with a mitt on the hand. ID is its number where it
// came from, by which sheets name the tries that are in them.
type Try struct {
	ID       int64          `json:"id"`
	Key      string         `json:"key"`
	At       string         `json:"at"`
	Revision int64          `json:"revision"` // of the mitt that was tried on
	Record   jsontext.Value `json:"record"`
	Photo    []byte         `json:"photo,omitzero"` // JPEG
	Verdicts []Verdict      `json:"verdicts"`
}

// Verdict is what was made of a try.
type Verdict struct {
	At       string         `json:"at"`
	Before   int64          `json:"before"`
	Revision int64          `json:"revision"`
	Answer   jsontext.Value `json:"answer"`
}

// Count is a round that was counted at the needles.
type Count struct {
	Key     string `json:"key"`
	At      string `json:"at"`
	Side    string `json:"side"`
	Section string `json:"section"`
	Round   int    `json:"round"`
}

// Class is a class with its whole history.
type Class struct {
	ID        int64           `json:"id"`
	Created   string          `json:"created"`
	Revisions []ClassRevision `json:"revisions"`
	Patterns  []Pattern       `json:"patterns"`
}

// ClassRevision is one document of a class.
type ClassRevision struct {
	Revision int64          `json:"revision"`
	At       string         `json:"at"`
	Document jsontext.Value `json:"document"`
}

// Pattern tells which mitt the documents of a class mean by a number.
type Pattern struct {
	Mitt    int64  `json:"mitt"`
	Created string `json:"created"`
}

// Motif is a motif that a person keeps; Removed is when it was taken off the
// list.
type Motif struct {
	At      string            `json:"at"`
	Name    string            `json:"name"`
	Cells   []chart.MotifCell `json:"cells"`
	Removed string            `json:"removed,omitzero"`
}

// Unlearned is a habit that was taken off: nothing up to the verdict of that
// time tells of the zone any more.
type Unlearned struct {
	At      string `json:"at"`
	Zone    string `json:"zone"`
	Verdict string `json:"verdict"`
}

// Write writes a file, indented for people. Lists are never null.
func Write(w io.Writer, f File) error {
	raw, err := json.Marshal(f, json.FormatNilSliceAsNull(false), jsontext.WithIndent(" "), jsontext.PreserveRawStrings(true))
	if err != nil {
		return fmt.Errorf("exportfile.Write: %w", err)
	}
	_, err = w.Write(append(raw, '\n'))
	return err
}

// Is tells whether text looks like a file of this form rather than a measure
// sheet: its first key that counts is the format.
func Is(raw []byte) bool {
	dec := jsontext.NewDecoder(bytes.NewReader(raw))
	if token, err := dec.ReadToken(); err != nil || token.Kind() != '{' {
		return false
	}
	for dec.PeekKind() == '"' {
		key, err := dec.ReadToken()
		if err != nil {
			return false
		}
		name := key.String() // before the next read, which may take its place
		value, err := dec.ReadValue()
		if err != nil {
			return false
		}
		if name == "format" {
			return string(value) == `"`+Format+`"`
		}
	}
	return false
}

// Only is the one mitt of a file; fault.Invalid where there are none or more.
func (f File) Only() (Mitt, error) {
	if len(f.Mitts) != 1 {
		return Mitt{}, fault.Fields{{Path: "mitts", Message: fmt.Sprintf("are %d; name a file that one mitt was exported to", len(f.Mitts))}}
	}
	return f.Mitts[0], nil
}

// Newest is a mitt's newest document, and what all its strokes come to.
func (m Mitt) Newest() (document []byte, marks chart.Marks) {
	marks = chart.Marks{}
	for _, r := range m.Revisions {
		if r.Kind == Decision {
			document = r.Document
			continue
		}
		marks.Apply(r.Edits)
	}
	return document, marks
}

// Newest is a class's newest document.
func (c Class) Newest() (document []byte) {
	for _, r := range c.Revisions {
		document = r.Document
	}
	return document
}

// Name is what a mitt is called now.
func (m Mitt) Name() string {
	document, _ := m.Newest()
	doc, _ := project.Decode(document) // it was read before
	return doc.Name
}

// Name is what a class is called now.
func (c Class) Name() string {
	doc, _ := roster.Decode(c.Newest()) // it was read before
	return doc.Name
}
