package exportfile

import (
	"fmt"
	"regexp"

	"thenar/internal/chart"
	"thenar/internal/project"
)

// The kinds of stroke.
const (
	do   = "do"
	undo = "undo"
	redo = "redo"
)

func (c *checker) mitt(path string, m *Mitt) {
	c.time(path+".created", m.Created)
	c.revisions(path+".revisions", m.Revisions)
	if c.full() {
		return
	}
	newest := int64(len(m.Revisions))
	for i, n := range m.Moments {
		at := fmt.Sprintf("%s.moments[%d]", path, i)
		c.revision(at+".revision", n.Revision, newest)
		c.time(at+".at", n.At)
		c.text(at+".name", n.Name, 0, maxName)
	}
	for i, v := range m.Versions {
		at := fmt.Sprintf("%s.versions[%d]", path, i)
		c.revision(at+".revision", v.Revision, newest)
		c.time(at+".at", v.At)
		c.text(at+".name", v.Name, 0, maxName)
		c.record(at+".record", v.Record, &project.Printed{})
	}
	c.tries(path+".tries", m)
	c.counts(path+".counts", m.Counts)
	for i, p := range m.Pictures {
		at := fmt.Sprintf("%s.pictures[%d]", path, i)
		c.time(at+".at", p.At)
		if !pictureName.MatchString(p.Name) {
			c.faults.Add(at+".name", "is %.40q; write the name that it has in the pattern", p.Name)
		}
	}
}

// pictureName matches the names that the store gives.
var pictureName = regexp.MustCompile(`^[0-9a-f]{16}$`)

func (c *checker) revisions(path string, list []Revision) {
	if len(list) == 0 || list[0].Kind != Decision {
		c.faults.Add(path, "don't begin with a decision; the first revision holds a document")
	}
	keys, marks := map[string]bool{}, chart.Marks{}
	for i, r := range list {
		at := fmt.Sprintf("%s[%d]", path, i)
		if r.Revision != int64(i)+1 {
			c.faults.Add(at+".revision", "is %d; write %d, one after the other", r.Revision, i+1)
		}
		c.time(at+".at", r.At)
		switch r.Kind {
		case Decision:
			c.decision(at, r)
		case do, undo, redo:
			c.stroke(at, r, list[:i])
			if marks.Apply(r.Edits); len(marks) > chart.MaxMarks {
				c.faults.Add(at+".edits", "mark more cells than the %d of a mitt", chart.MaxMarks)
			}
		default:
			c.faults.Add(at+".kind", "is %.20q; write decision, do, undo or redo", r.Kind)
		}
		if r.Key != "" && keys[r.Key] {
			c.faults.Add(at+".key", "is %.40q, as of another stroke of this mitt", r.Key)
		}
		keys[r.Key] = true
		if c.full() {
			return
		}
	}
}

func (c *checker) decision(at string, r Revision) {
	if r.Target != 0 || r.Key != "" || len(r.Edits)+len(r.Inverse) > 0 {
		c.faults.Add(at, "is a decision with parts of a stroke; it has only a document")
	}
	if r.Document == nil {
		c.faults.Add(at+".document", "is missing; a decision holds one")
		return
	}
	doc, err := project.Decode(r.Document)
	if err == nil {
		err = doc.Check()
	}
	c.nested(at+".document", err)
}

func (c *checker) stroke(at string, r Revision, before []Revision) {
	if r.Document != nil {
		c.faults.Add(at+".document", "stands in a stroke; only a decision holds one")
	}
	if r.Key != "" {
		c.text(at+".key", r.Key, 1, maxKey)
	}
	switch speaks := r.Kind != do; {
	case !speaks && r.Target != 0:
		c.faults.Add(at+".target", "is %d; only an undo or redo speaks of a stroke", r.Target)
	case speaks && (r.Target < 1 || r.Target > int64(len(before)) || before[r.Target-1].Kind != do):
		c.faults.Add(at+".target", "is %d; write the revision of a stroke of the kind do that stands before it", r.Target)
	}
	c.edits(at+".edits", r.Edits, true)
	c.edits(at+".inverse", r.Inverse, true)
}
