package roster

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/plain"
)

// unused is kept as the field of a column that a person chose not to use.
const unused = "-"

// Readable returns the fields that a column can be read as, in the order in which
// they are offered: names, values of a measure sheet, the rest.
func Readable() []string {
	list := []string{fieldName, fieldFirst, fieldLast}
	for _, path := range paths {
		if path != widthPath && path != heightPath { // these come with the counts
			list = append(list, path)
		}
	}
	return append(list, fieldFrom, fieldKnits, fieldNote)
}

// Key returns the key by which the choice for a column is remembered: its heading
// without capitals and accents, or "#" and its place if it has no heading.
func (c *Column) Key() string { return c.key }

// keyOf returns the key of the heading at a place, which counts from 0.
func keyOf(heading string, at int) string {
	if len(heading) > maxHeading { // means nothing, and splitting it may be slow
		return clip(heading)
	}
	if words := wordsOf(heading); len(words) > 0 {
		return clip(strings.Join(words, " "))
	}
	return fmt.Sprintf("#%d", at+1)
}

// column reads the heading at a place; a choice goes before what the heading says.
func column(heading string, at int, chosen map[string]string) Column {
	c := columnOf(heading)
	c.key = keyOf(heading, at)
	field, ok := chosen[c.key]
	if !ok {
		return c
	}
	c.Chosen, c.Field = true, field
	if field == unused {
		c.Field = ""
	}
	if c.isLength() {
		c.Over = "" // "hand 10 cm": the unit is what is left of it
	} else if c.Field != stitchesPath && c.Field != roundsPath {
		c.Unit, c.Over = "", ""
	}
	return c
}

// maxChosen is the most columns whose choices a class remembers.
const maxChosen = 200

// Choose remembers how columns are read: by a column's key a field of Readable,
// or "" for a column that is not used. A choice that agrees with the heading is
// not kept.
func (c *Class) Choose(columns map[string]string) {
	chosen := maps.Clone(c.Columns)
	if chosen == nil {
		chosen = map[string]string{}
	}
	for key, field := range columns {
		if field == "" {
			field = unused
		}
		if usual := columnOf(key).Field; usual == field || usual == "" && field == unused {
			delete(chosen, key)
		} else {
			chosen[key] = field
		}
	}
	c.Columns = chosen
	if len(chosen) == 0 {
		c.Columns = nil
	}
}

// checkColumns checks the remembered choices.
func (c *Class) checkColumns(faults *fault.Fields) {
	if len(c.Columns) > maxChosen {
		faults.Add("columns", "are %d; %d are the most that are remembered", len(c.Columns), maxChosen)
	}
	for _, key := range slices.Sorted(maps.Keys(c.Columns)) {
		switch field := c.Columns[key]; {
		case key == "" || plain.Line(key, maxText) != "":
			faults.Add("columns", "has a heading that can't be kept: %.40q", key)
		case field != unused && !slices.Contains(Readable(), field):
			faults.Add("columns", "reads “%.40s” as %.40q, which is no field of a student", key, field)
		}
	}
}

// Bounds of the samples: values for each column, and rows that are searched.
const (
	maxSamples    = 3
	maxSampleRows = 40
)

// sample collects the first different values of each column.
func (t *Table) sample(text string, delimiter byte, heads record) {
	t.Samples = make([][]string, len(t.Columns))
	rows := 0
	records(text, delimiter, len(t.Columns), func(r record) bool {
		if r.line <= heads.line || r.empty() {
			return true
		}
		for i, cell := range r.cells[:min(len(r.cells), len(t.Columns))] {
			cell = clip(strings.ToValidUTF8(trimInvisible(cell), "?"))
			if cell != "" && len(t.Samples[i]) < maxSamples && !slices.Contains(t.Samples[i], cell) {
				t.Samples[i] = append(t.Samples[i], cell)
			}
		}
		rows++
		return rows < maxSampleRows
	})
}
