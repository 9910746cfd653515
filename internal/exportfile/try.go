package exportfile

import (
	"fmt"
	"slices"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
)

func (c *checker) tries(path string, m *Mitt) {
	newest, ids, keys := int64(len(m.Revisions)), map[int64]bool{}, map[string]bool{}
	for i := range m.Tries {
		t, at := &m.Tries[i], fmt.Sprintf("%s[%d]", path, i)
		if ids[t.ID] || t.ID < 1 {
			c.faults.Add(at+".id", "is %d; give every try of a mitt a number of its own, from 1 on", t.ID)
		}
		if keys[t.Key] {
			c.faults.Add(at+".key", "is %.40q, as of another try of this mitt", t.Key)
		}
		ids[t.ID], keys[t.Key] = true, true
		c.text(at+".key", t.Key, 1, maxKey)
		c.time(at+".at", t.At)
		c.revision(at+".revision", t.Revision, newest)
		c.record(at+".record", t.Record, &tryon.Try{})
		for j, v := range t.Answers {
			on := fmt.Sprintf("%s.verdicts[%d]", at, j)
			c.time(on+".at", v.At)
			c.revision(on+".before", v.Before, newest)
			c.revision(on+".revision", v.Revision, newest)
			if v.Revision < v.Before {
				c.faults.Add(on+".revision", "is %d, before the revision %d that was corrected", v.Revision, v.Before)
			}
			c.record(on+".answer", v.Record, &tryon.Answer{})
		}
		if c.full() {
			return
		}
	}
}

func (c *checker) counts(path string, counts []Count) {
	keys := map[string]bool{}
	for i, n := range counts {
		at := fmt.Sprintf("%s[%d]", path, i)
		if keys[n.Key] {
			c.faults.Add(at+".key", "is %.40q, as of another count of this mitt", n.Key)
		}
		keys[n.Key] = true
		c.text(at+".key", n.Key, 1, maxKey)
		c.time(at+".at", n.At)
		if n.Side != string(project.Right) && n.Side != string(project.Left) {
			c.faults.Add(at+".side", "is %.20q; write right or left", n.Side)
		}
		if n.Section != "" && !slices.Contains(stitch.Worked(), stitch.Part(n.Section)) {
			c.faults.Add(at+".section", "is %.20q; write a section, or nothing for the cast-on", n.Section)
		}
		if n.Round < 0 || n.Round > maxRounds {
			c.faults.Add(at+".round", "is %d; write a round from 0 to %d", n.Round, maxRounds)
		}
		if c.full() {
			return
		}
	}
}

// maxRounds is the highest number of a round in a count, that of what follows a finish.
const maxRounds = tryon.Woven
