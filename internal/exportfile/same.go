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

// Traces are by what the revisions of a mitt are known again, wherever it is
// kept: what each of them holds and when it came to be, in one spelling, with
// the keys of tries in the place of their numbers. Two mitts that begin with
// the same traces are one mitt that was gone on with.
func (m Mitt) Traces() ([]string, error) {
	keys := map[int64]string{}
	for _, t := range m.Tries {
		keys[t.ID] = "try " + t.Key
	}
	neutral, err := m.renumbered(func(id int64) string { return keys[id] })
	if err != nil {
		return nil, err
	}
	return traces(neutral.Revisions)
}

// traces are values in the one spelling of RFC 8785.
func traces[T any](list []T) ([]string, error) {
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

// Renumbered is the mitt with other numbers for its tries, wherever a sheet
// names them; a try that has none is left out.
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

// renamed writes a list of tries with other names.
func renamed(text string, named func(int64) string) string {
	var list []string
	for _, id := range (sheet.Sheet{sheet.PathTried: text}).Tried() {
		if name := named(id); name != "" {
			list = append(list, name)
		}
	}
	return strings.Join(list, ", ")
}

// Traces are by what the revisions of a class are known again; the numbers of
// mitts, which differ from file to file, are left out.
func (c Class) Traces() ([]string, error) {
	neutral, err := c.WithMitts(nil)
	if err != nil {
		return nil, err
	}
	return traces(neutral.Revisions)
}

// WithMitts is the class with other numbers for the mitts that it was begun
// with; one that is not among them is 0.
func (c Class) WithMitts(numbers map[int64]int64) (Class, error) {
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

// Mitts are the numbers of the mitts that the documents of a class name.
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
