package roster

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/plain"
)

// unused is what is kept for a column of which somebody said that it means
// nothing.
const unused = "-"

// Readable are the fields that a column can be read as, in the order in which
// they are offered: names, the values of a student, the rest.
func Readable() []string {
	list := []string{fieldName, fieldFirst, fieldLast}
	for _, path := range paths {
		if path != widthPath && path != heightPath { // these come with the counts
			list = append(list, path)
		}
	}
	return append(list, fieldFrom, fieldKnits, fieldNote)
}

// Key is by what the choice of a column is remembered: its heading whatever the
// capitals and accents, or its place where it has none.
func (c *Column) Key() string { return c.key }

// keyOf is the key of the heading at a place.
func keyOf(heading string, at int) string {
	if len(heading) > longestHeading { // it means nothing, and its words may be a million
		return clip(heading)
	}
	if words := wordsOf(heading); len(words) > 0 {
		return clip(strings.Join(words, " "))
	}
	return fmt.Sprintf("#%d", at+1)
}

// column reads the heading at a place, as it was chosen if it was.
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

// The most columns of which a class remembers how they are read.
const maxChosen = 200

// Choose remembers how columns are read: a field of Readable by a column's key,
// or nothing for one that is not used. What is read so anyway need not be
// remembered, and is forgotten.
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

// checkColumns refuses choices that can't be kept.
func (c *Class) checkColumns(faults *fault.Fields) {
	if len(c.Columns) > maxChosen {
		faults.Add("columns", "are %d; %d are the most that are remembered", len(c.Columns), maxChosen)
	}
	for _, key := range slices.Sorted(maps.Keys(c.Columns)) {
		switch field := c.Columns[key]; {
		case key == "" || plain.Line(key, longestWord) != "":
			faults.Add("columns", "has a heading that can't be kept: %.40q", key)
		case field != unused && !slices.Contains(Readable(), field):
			faults.Add("columns", "reads “%.40s” as %.40q, which is no field of a student", key, field)
		}
	}
}

// The most values of a column that are shown, and the rows that are looked at
// for them.
const (
	maxSamples = 3
	sampled    = 40
)

// sample takes the first values of every column.
func (t *Table) sample(text string, delimiter byte, heads record) {
	t.Samples = make([][]string, len(t.Columns))
	rows := 0
	records(text, delimiter, len(t.Columns), func(r record) bool {
		if r.line <= heads.line || r.empty() {
			return true
		}
		for i, cell := range r.cells[:min(len(r.cells), len(t.Columns))] {
			cell = clip(strings.ToValidUTF8(tidy(cell), "?"))
			if cell != "" && len(t.Samples[i]) < maxSamples && !slices.Contains(t.Samples[i], cell) {
				t.Samples[i] = append(t.Samples[i], cell)
			}
		}
		rows++
		return rows < sampled
	})
}
