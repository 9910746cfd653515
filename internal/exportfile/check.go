package exportfile

import (
	"errors"
	"fmt"
	"regexp"
	"time"
	"unicode/utf8"

	"github.com/go-json-experiment/json"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/sheet"
)

// maxFaults is the number of faults after which checking stops.
const maxFaults = 20

// Bounds of texts, in characters unless said otherwise.
const (
	maxKey    = plain.MaxKeptKey
	maxName   = 200
	maxText   = 1 << 20 // bytes of a record or an answer
	maxMended = 10_000  // entries of File.Mended
)

// timeFormat matches times as the store writes them.
var timeFormat = regexp.MustCompile(`^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{9}Z$`)

// checker collects the faults of a file.
type checker struct{ faults fault.Fields }

// full reports whether there are so many faults that checking should stop.
func (c *checker) full() bool { return len(c.faults) >= maxFaults }

// nested adds the faults that another package found in the part of the file at
// path.
func (c *checker) nested(path string, err error) {
	var fields fault.Fields
	switch {
	case err == nil:
	case errors.As(err, &fields):
		for _, f := range fields[:min(len(fields), maxFaults)] {
			c.faults.Add(path+"."+f.Path, "%s", f.Message)
		}
	default:
		c.faults.Add(path, "can't be used: %.200s", err.Error())
	}
}

func (c *checker) time(path, text string) {
	if _, err := time.Parse(time.RFC3339, text); err != nil || !timeFormat.MatchString(text) {
		c.faults.Add(path, "is %.40q; write a time such as 2025-03-09T14:03:00.000000000Z", text)
	}
}

func (c *checker) text(path, text string, least, most int) {
	if utf8.RuneCountInString(text) < least || plain.Line(text, most) != "" {
		c.faults.Add(path, "is %.40q; write one line of %d to %d characters", text, least, most)
	}
}

func (c *checker) lines(path, text string, most int) {
	if why := plain.Lines(text, most); why != "" {
		c.faults.Add(path, "%s", why)
	}
}

// revision checks the number of a revision.
func (c *checker) revision(path string, revision, newest int64) {
	if revision < 1 || revision > newest {
		c.faults.Add(path, "is %d; write one of the revisions 1 to %d", revision, newest)
	}
}

func (c *checker) file(f *File) {
	ids := map[int64]bool{}
	for i := range f.Mitts {
		path := fmt.Sprintf("mitts[%d]", i)
		if m := &f.Mitts[i]; ids[m.ID] || m.ID < 1 {
			c.faults.Add(path+".id", "is %d; give every mitt a number of its own, from 1 on", m.ID)
		}
		ids[f.Mitts[i].ID] = true
		c.mitt(path, &f.Mitts[i])
		if c.full() {
			return
		}
	}
	for i := range f.Classes {
		c.class(fmt.Sprintf("classes[%d]", i), f.Classes[i])
		if c.full() {
			return
		}
	}
	for i, m := range f.Motifs {
		path := fmt.Sprintf("motifs[%d]", i)
		c.time(path+".at", m.At)
		if m.Removed != "" {
			c.time(path+".removed", m.Removed)
		}
		c.nested(path, chart.Motif{Name: m.Name, Cells: m.Cells}.Check())
		if c.full() {
			return
		}
	}
	if len(f.Mended) > maxMended {
		c.faults.Add("mended", "are %d; %d are the most", len(f.Mended), maxMended)
	}
	for i, u := range f.Unlearned {
		path := fmt.Sprintf("unlearned[%d]", i)
		c.time(path+".at", u.At)
		c.time(path+".verdict", u.Answer)
		c.text(path+".zone", u.Zone, 1, maxKey)
	}
}

func (c *checker) class(path string, class Class) {
	c.time(path+".created", class.Created)
	if len(class.Revisions) == 0 {
		c.faults.Add(path+".revisions", "are missing; a class has at least one")
	}
	for i, r := range class.Revisions {
		at := fmt.Sprintf("%s.revisions[%d]", path, i)
		if r.Revision != int64(i)+1 {
			c.faults.Add(at+".revision", "is %d; write %d, one after the other", r.Revision, i+1)
		}
		c.time(at+".at", r.At)
		doc, err := roster.Decode(r.Document)
		if err == nil {
			err = doc.Check()
		}
		c.nested(at+".document", err)
		if err == nil && doc.Pattern != nil {
			c.pattern(at+".document.pattern", *doc.Pattern)
		}
		if c.full() {
			return
		}
	}
	for i, p := range class.Patterns {
		c.time(fmt.Sprintf("%s.patterns[%d].created", path, i), p.Created)
	}
}

// pattern checks a class's pattern by the rules for a mitt.
func (c *checker) pattern(path string, p roster.Pattern) {
	c.nested(path, project.Document{Name: p.Name, Side: p.Side, Sheet: p.Sheet}.Check())
	c.edits(path+".marks", p.Marks, false)
}

// record checks that raw decodes into a type of the program.
func (c *checker) record(path string, raw []byte, into any) {
	if len(raw) > maxText {
		c.faults.Add(path, "has %d bytes; %d are the most", len(raw), maxText)
		return
	}
	if err := json.Unmarshal(raw, into); err != nil {
		c.faults.Add(path, "can't be used: %s", unreadable(raw, err))
	}
}

// edits checks edits: those of cells by the rules for edits that a page sends,
// those of the sheet, allowed in strokes only, by their path.
func (c *checker) edits(path string, edits []chart.Edit, stroke bool) {
	for i, e := range edits {
		at := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case e.Layer == chart.Sheet && !stroke:
			c.faults.Add(at+".layer", "is sheet; only a stroke changes the sheet")
		case e.Layer == chart.Sheet:
			if _, longest, ok := project.PatternEdit(e.Column); ok {
				c.lines(at+".value", e.Value, longest)
				break
			}
			if e.Column != "side" && !sheet.Known(e.Column) {
				c.faults.Add(at+".column", "is %.60q, which no sheet has", e.Column)
			}
			c.text(at+".value", e.Value, 0, sheet.Longest(e.Column))
		default:
			c.nested(at, checkEdit(e))
		}
		if c.full() {
			return
		}
	}
}

// checkEdit checks one edit. Its faults name fields without "edits[0].".
func checkEdit(e chart.Edit) error {
	err := chart.Check([]chart.Edit{e})
	var fields fault.Fields
	if errors.As(err, &fields) {
		for i := range fields {
			fields[i].Path = fields[i].Path[len("edits[0]."):]
		}
		return fields
	}
	return err
}
