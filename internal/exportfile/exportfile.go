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

// Format is the name and version of the file format.
const Format = "thenar/export@1"

// MaxBytes is the largest size of a file that is read.
const MaxBytes = 256 << 20

// File is the content of one file. Times are in UTC with nine decimals; documents
// are as the program stores them.
type File struct {
	Format    string      `json:"format"`
	Made      string      `json:"made"` // time of the export, for people
	Mitts     []Mitt      `json:"mitts"`
	Classes   []Class     `json:"classes"`
	Motifs    []Motif     `json:"motifs"`
	Unlearned []Unlearned `json:"unlearned"`
	Mended    []string    `json:"mended,omitzero"` // what had to be changed to write the file, for people
}

// Mitt is a mitt with its whole history. ID is its number in the database that
// was exported; only this file refers to it.
type Mitt struct {
	ID        int64      `json:"id"`
	Created   string     `json:"created"`
	Revisions []Revision `json:"revisions"`
	Moments   []Moment   `json:"moments"`
	Tries     []Try      `json:"tries"`
	Counts    []Count    `json:"counts"`
	Pictures  []Picture  `json:"pictures,omitempty"` // those that its pattern names
	Versions  []Version  `json:"versions,omitzero"`
}

// Picture is a photograph for a pattern. Its name is made of its contents.
type Picture struct {
	At    string `json:"at"`
	Name  string `json:"name"`
	Photo []byte `json:"photo"` // JPEG
}

// Version is a pattern that went out, the oldest first: what it printed, and the revision of
// which it was made.
type Version struct {
	At       string         `json:"at"`
	Revision int64          `json:"revision"`
	Name     string         `json:"name"`
	Record   jsontext.Value `json:"record"` // a project.Printed
}

// Decision is the kind of a revision that holds a document. The kinds of strokes
// are "do", "undo" and "redo".
const Decision = "decision"

// Revision is one entry of a mitt's history: a document or a stroke.
type Revision struct {
	Revision int64          `json:"revision"` // from 1
	At       string         `json:"at"`
	Kind     string         `json:"kind"`
	Document jsontext.Value `json:"document,omitzero"` // of a decision
	Target   int64          `json:"target,omitzero"`   // of an undo or redo: the revision of the stroke concerned
	Key      string         `json:"key,omitzero"`
	Edits    []chart.Edit   `json:"edits,omitzero"`   // of a stroke: what it set
	Inverse  []chart.Edit   `json:"inverse,omitzero"` // of a stroke: what stood there before
}

// Moment is a name given to a revision; an empty name takes the earlier one away.
type Moment struct {
	Revision int64  `json:"revision"`
	At       string `json:"at"`
	Name     string `json:"name"`
}

// Try is one trying-on of a mitt. ID is its number in the database that was
// exported; the mitt's sheets name by it the tries they have taken in.
type Try struct {
	ID       int64          `json:"id"`
	Key      string         `json:"key"`
	At       string         `json:"at"`
	Revision int64          `json:"revision"`       // of the mitt that was tried on
	Record   jsontext.Value `json:"record"`         // a tryon.Try
	Photo    []byte         `json:"photo,omitzero"` // JPEG
	Answers  []Answer       `json:"verdicts"`       // oldest first; the newest holds
}

// Answer is an answer to a try, with the mitt's revisions before it and after it.
type Answer struct {
	At       string         `json:"at"`
	Before   int64          `json:"before"`
	Revision int64          `json:"revision"`
	Record   jsontext.Value `json:"answer"` // a tryon.Answer
}

// Count is a task that was counted as done at the needles (tryon.Task).
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

// Pattern identifies a mitt that documents of a class refer to by its number. The
// time of its creation finds it again where numbers differ.
type Pattern struct {
	Mitt    int64  `json:"mitt"`
	Created string `json:"created"`
}

// Motif is a motif that a person keeps. Removed is the time when it was taken off
// the list, or empty.
type Motif struct {
	At      string            `json:"at"`
	Name    string            `json:"name"`
	Cells   []chart.MotifCell `json:"cells"`
	Removed string            `json:"removed,omitzero"`
}

// Unlearned is a habit that a person took off: for its zone, answers up to the
// time Answer no longer count.
type Unlearned struct {
	At     string `json:"at"`
	Zone   string `json:"zone"`
	Answer string `json:"verdict"`
}

// Write writes a file as indented JSON. Empty lists are written as [], not null.
func Write(w io.Writer, f File) error {
	raw, err := json.Marshal(f, json.FormatNilSliceAsNull(false), jsontext.WithIndent(" "), jsontext.PreserveRawStrings(true))
	if err != nil {
		return fmt.Errorf("exportfile.Write: %w", err)
	}
	_, err = w.Write(append(raw, '\n'))
	return err
}

// Is reports whether a JSON text is in this format, by its "format" member alone.
// It tells an export from a measure sheet without reading either.
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

// OnlyMitt returns the mitt of a file with one mitt; otherwise it fails with
// fault.Fields.
func (f File) OnlyMitt() (Mitt, error) {
	if len(f.Mitts) != 1 {
		return Mitt{}, fault.Fields{{Path: "mitts", Message: fmt.Sprintf("are %d; name a file that one mitt was exported to", len(f.Mitts))}}
	}
	return f.Mitts[0], nil
}

// Newest returns a mitt's newest document, and the marks that all its strokes
// together make.
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

// Newest returns a class's newest document.
func (c Class) Newest() (document []byte) {
	for _, r := range c.Revisions {
		document = r.Document
	}
	return document
}

// Name returns a mitt's present name.
func (m Mitt) Name() string {
	document, _ := m.Newest()
	doc, _ := project.Decode(document) // Read has decoded it without error
	return doc.Name
}

// Name returns a class's present name.
func (c Class) Name() string {
	doc, _ := roster.Decode(c.Newest()) // Read has decoded it without error
	return doc.Name
}
