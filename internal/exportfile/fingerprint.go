package exportfile

import (
	"strconv"
	"strings"

	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/sheet"
)

// Fingerprints returns a text for each revision that is the same in whatever
// database the mitt is kept: its content and time as canonical JSON, with keys of
// tries in place of their numbers. If the fingerprints of one mitt begin with
// those of another, the two are one mitt, which was continued.
func (m Mitt) Fingerprints() ([]string, error) {
	keys := map[int64]string{}
	for _, t := range m.Tries {
		keys[t.ID] = "try " + t.Key
	}
	neutral, err := m.renumbered(func(id int64) string { return keys[id] })
	if err != nil {
		return nil, err
	}
	return fingerprints(neutral.Revisions)
}

// fingerprints encodes values as canonical JSON (RFC 8785).
func fingerprints[T any](list []T) ([]string, error) {
	texts := make([]string, len(list))
	for i, v := range list {
		raw, err := json.Marshal(v, json.FormatNilSliceAsNull(false))
		if err != nil {
			return nil, err
		}
		value := jsontext.Value(raw)
		if err := value.Canonicalize(); err != nil {
			return nil, err
		}
		texts[i] = string(value)
	}
	return texts, nil
}

// Renumbered returns the mitt with other numbers of tries in its sheets. Tries
// that have no number there are left out of them.
func (m Mitt) Renumbered(numbers map[int64]int64) (Mitt, error) {
	return m.renumbered(func(id int64) string {
		if n, ok := numbers[id]; ok {
			return strconv.FormatInt(n, 10)
		}
		return ""
	})
}

func (m Mitt) renumbered(named func(id int64) string) (Mitt, error) {
	list := make([]Revision, len(m.Revisions))
	for i, r := range m.Revisions {
		r.Edits, r.Inverse = renamedEdits(r.Edits, named), renamedEdits(r.Inverse, named)
		if r.Document != nil {
			doc, err := project.Decode(r.Document)
			if err != nil {
				return Mitt{}, err
			}
			if renameTried(doc.Sheet, named) || renameTried(doc.WhatIf, named) {
				if r.Document, err = doc.Encode(); err != nil {
					return Mitt{}, err
				}
			}
		}
		list[i] = r
	}
	m.Revisions = list
	return m, nil
}

func renameTried(s sheet.Sheet, named func(int64) string) bool {
	text, ok := s[sheet.PathTried]
	if ok {
		s[sheet.PathTried] = renamed(text, named)
	}
	return ok
}

func renamedEdits(edits []chart.Edit, named func(int64) string) []chart.Edit {
	if edits == nil {
		return nil
	}
	list := make([]chart.Edit, len(edits))
	for i, e := range edits {
		if e.Layer == chart.Sheet && e.Column == sheet.PathTried {
			e.Value = renamed(e.Value, named)
		}
		list[i] = e
	}
	return list
}

// renamed renames the tries in a sheet's list of them.
func renamed(text string, named func(int64) string) string {
	var list []string
	for _, id := range sheet.TriedOf(text) {
		if name := named(id); name != "" {
			list = append(list, name)
		}
	}
	return strings.Join(list, ", ")
}

// Fingerprints returns a text for each revision that is the same in whatever
// database the class is kept: its content and time as canonical JSON, without
// the numbers of mitts.
func (c Class) Fingerprints() ([]string, error) {
	neutral, err := c.Renumbered(nil)
	if err != nil {
		return nil, err
	}
	return fingerprints(neutral.Revisions)
}

// Renumbered returns the class with other numbers of the mitts that are its
// patterns; a mitt without a new number gets 0.
func (c Class) Renumbered(numbers map[int64]int64) (Class, error) {
	list := make([]ClassRevision, len(c.Revisions))
	for i, r := range c.Revisions {
		doc, err := roster.Decode(r.Document)
		if err != nil {
			return Class{}, err
		}
		if doc.Pattern != nil {
			doc.Pattern.Mitt = numbers[doc.Pattern.Mitt]
			if r.Document, err = doc.Encode(); err != nil {
				return Class{}, err
			}
		}
		list[i] = r
	}
	c.Revisions = list
	return c, nil
}

// Mitts returns the numbers of the mitts that are patterns in any document of a
// class, each once.
func (c Class) Mitts() ([]int64, error) {
	var list []int64
	seen := map[int64]bool{0: true}
	for _, r := range c.Revisions {
		doc, err := roster.Decode(r.Document)
		if err != nil {
			return nil, err
		}
		if doc.Pattern != nil && !seen[doc.Pattern.Mitt] {
			seen[doc.Pattern.Mitt] = true
			list = append(list, doc.Pattern.Mitt)
		}
	}
	return list, nil
}
