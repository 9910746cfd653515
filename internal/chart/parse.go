package chart

import (
	"bytes"
	"errors"
	"fmt"
	"io"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/stitch"
)

// Stroke is what a page sends: edits that belong together, an undo or redo, or
// a change of the rounds. After is the revision that the page saw, Restored the
// file that had it (nil: not given), and Key identifies the stroke if it is
// sent again (may be empty).
type Stroke struct {
	After      int64
	Restored   *int64
	Key        string
	Edits      []Edit
	Undo, Redo bool
	Change     *Change
}

// ChangeKind is a kind of change of the rounds.
type ChangeKind string

// The changes of the rounds: insert a plain round above one, remove a round, move
// the increases of one round to another.
const (
	Insert ChangeKind = "insert"
	Remove ChangeKind = "remove"
	Move   ChangeKind = "move"
)

// Change is a change of the rounds of a section; To is the round that increases
// move to.
type Change struct {
	Kind    ChangeKind  `json:"kind"`
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	To      int         `json:"to"`
}

// wire is the JSON of a stroke, with pointers to show what was left out.
type wire struct {
	After *int64      `json:"after"`
	Edits *[]wireEdit `json:"edits"`
	Undo  *bool       `json:"undo"`
	Redo  *bool       `json:"redo"`

	Key      *string `json:"key"`
	Restored *int64  `json:"restored"`
	Change   *Change `json:"change"`
}

type wireEdit struct {
	Section *string `json:"section"`
	Round   *int    `json:"round"`
	Column  *string `json:"column"`
	Layer   *string `json:"layer"`
	Value   *string `json:"value"`
}

// Parse reads {"after": 12, "edits": […]}, {"after": 12, "undo": true},
// {"after": 12, "redo": true} or {"after": 12, "change": {"kind": "insert",
// "section": "gusset", "round": 7}}, each with a "key" and with the number of
// the file as "restored" if wanted. Keys that are unknown or stand twice, values
// of another type and anything after the document are faults.
func Parse(data []byte) (Stroke, error) {
	var faults fault.Fields
	var w wire
	dec := jsontext.NewDecoder(bytes.NewReader(data))
	if err := json.UnmarshalDecode(dec, &w, json.RejectUnknownMembers(true)); err != nil {
		faults.Add("stroke", `can't be read: %v; write {"after": 12, "edits": […]}`, short(err))
		return Stroke{}, faults
	}
	if _, err := dec.ReadToken(); !errors.Is(err, io.EOF) {
		faults.Add("stroke", "goes on after the document; one JSON object is all")
	}
	if w.After == nil || *w.After < 0 {
		faults.Add("after", "is missing or negative; write the revision that the chart had")
		return Stroke{}, faults
	}
	s := Stroke{After: *w.After, Restored: w.Restored, Undo: w.Undo != nil && *w.Undo, Redo: w.Redo != nil && *w.Redo, Change: w.Change}
	if w.Key != nil {
		s.Key = *w.Key
	}
	if why := plain.Key(s.Key); s.Key != "" && why != "" {
		faults.Add("key", "%s", why)
	}
	given := 0
	for _, b := range []bool{w.Edits != nil, s.Undo, s.Redo, s.Change != nil} {
		if b {
			given++
		}
	}
	if given != 1 {
		faults.Add("stroke", "holds exactly one of edits, undo, redo and change")
		return Stroke{}, faults
	}
	if w.Edits != nil {
		s.Edits = edits(*w.Edits, &faults)
		if len(faults) == 0 {
			return s, Check(s.Edits)
		}
	}
	if s.Change != nil {
		s.Change.check(&faults)
	}
	return s, faults.Err()
}

func (c *Change) check(faults *fault.Fields) {
	if c.Kind != Insert && c.Kind != Remove && c.Kind != Move {
		faults.Add("change.kind", "is %.20q; write insert, remove or move", c.Kind)
	}
	if c.Section.Order() == 0 {
		faults.Add("change.section", "is %.20q; write %s", c.Section, listed(stitch.Parts()))
	}
	if c.Round < 1 || c.Round > maxRound || (c.Kind == Move && (c.To < 1 || c.To > maxRound)) {
		faults.Add("change.round", "is %d, to %d; write rounds from 1 to %d", c.Round, c.To, maxRound)
	}
}

// short returns the reason of a JSON error without the names of Go types.
func short(err error) string {
	var syntax *jsontext.SyntacticError
	var meaning *json.SemanticError
	switch {
	case errors.As(err, &syntax):
		return fmt.Sprintf("%v (byte %d)", syntax.Err, syntax.ByteOffset)
	case errors.As(err, &meaning) && meaning.JSONPointer != "":
		return fmt.Sprintf("%s is not what belongs there", meaning.JSONPointer)
	case errors.As(err, &meaning):
		return "it is no object"
	}
	return "it ends too early"
}

// edits converts edits, each of which must have every key.
func edits(list []wireEdit, faults *fault.Fields) []Edit {
	out := make([]Edit, 0, min(len(list), maxEdits+1))
	for i, e := range list {
		if e.Section == nil || e.Round == nil || e.Column == nil || e.Layer == nil || e.Value == nil {
			faults.Add(fmt.Sprintf("edits[%d]", i), "lacks one of section, round, column, layer and value")
			return nil
		}
		out = append(out, Edit{stitch.Part(*e.Section), *e.Round, *e.Column, Layer(*e.Layer), *e.Value})
	}
	return out
}
