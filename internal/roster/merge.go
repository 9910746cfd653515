package roster

import (
	"maps"
	"slices"
	"strings"

	"thenar/internal/units"
)

// Difference is a value in a later table that differs from the kept one. The kept
// one stays until somebody accepts the difference.
type Difference struct {
	ID        int // of the student
	Name      string
	Field     string // a path of Paths, or note, knits, gauge_from
	Kept, New string
}

// Merged is the result of merging a table into a class.
type Merged struct {
	Added   int // new students
	Filled  int // students who got further values
	Same    int // students of whom the table says nothing new
	Differ  []Difference
	Refused []Wrong // students whose new values don't go with the kept ones
}

// lengthOf maps the path of a count to that of the length it was counted over,
// which is kept or changed with it.
var lengthOf = map[string]string{stitchesPath: widthPath, roundsPath: heightPath}

// Merge puts a table's students into the class. For a student who is in it
// already, by name without regard to capitals, it fills only what is empty, and
// returns what differs.
func (c *Class) Merge(list []Student) (Merged, error) {
	var m Merged
	places := map[string][]int{}
	for i, s := range c.Students {
		places[nameKey(s.Name)] = append(places[nameKey(s.Name)], i)
	}
	students := slices.Clone(c.Students)
	var fresh []Student
	for _, s := range list {
		key := nameKey(s.Name)
		if len(places[key]) == 0 {
			fresh = append(fresh, s)
			continue
		}
		at := places[key][0] // students of the same name are matched in order
		places[key] = places[key][1:]
		m.student(&students[at], s, c.Unit)
	}
	c.Students = students
	added, err := c.Add(fresh...)
	m.Added = len(added)
	return m, err
}

func nameKey(name string) string { return strings.ToLower(oneLine(name)) }

// student fills the kept student's empty values from s and notes what differs.
func (m *Merged) student(kept *Student, s Student, u units.Unit) {
	full, differ := *kept, len(m.Differ)
	full.Sheet = kept.Sheet.Clone()
	for _, path := range paths {
		now, is := s.Sheet.Given(path), kept.Sheet.Given(path)
		switch {
		case now == "" || path == widthPath || path == heightPath:
		case is == "":
			full.put(path, now, s.Sheet.Given(lengthOf[path]))
		case !sameValue(is, now, path, u) || !sameValue(kept.Sheet.Given(lengthOf[path]), s.Sheet.Given(lengthOf[path]), lengthOf[path], u):
			m.differs(kept, path, withLength(kept, path), withLength(&s, path))
		}
	}
	for _, t := range []struct {
		field   string
		is, now string
		fill    *string
	}{{fieldNote, kept.Note, s.Note, &full.Note}, {fieldFrom, string(kept.Gauge), string(s.Gauge), (*string)(&full.Gauge)}} {
		switch {
		case t.now == "" || t.now == t.is:
		case t.is == "":
			*t.fill = t.now
		default:
			m.differs(kept, t.field, t.is, t.now)
		}
	}
	full.FromLeft = kept.FromLeft || s.FromLeft
	if faults := full.Check(u); len(faults) > 0 {
		w := Wrong{Name: kept.Name}
		for _, f := range faults {
			w.Reasons = append(w.Reasons, f.String())
		}
		m.Refused = append(m.Refused, w)
		return
	}
	switch {
	case !maps.Equal(full.Sheet, kept.Sheet) || full.Note != kept.Note || full.Gauge != kept.Gauge || full.FromLeft != kept.FromLeft:
		m.Filled++
	case differ == len(m.Differ):
		m.Same++
	}
	*kept = full
}

func (m *Merged) differs(s *Student, field, kept, now string) {
	m.Differ = append(m.Differ, Difference{s.ID, s.Name, field, kept, now})
}

// put sets a value and, for a count, the length over which it was counted.
func (s *Student) put(path, text, over string) {
	s.Sheet.Put(path, text)
	if with := lengthOf[path]; with != "" {
		s.Sheet.Put(with, over)
	}
}

// withLength returns a value as a Difference holds it: a count with its length,
// "24 / 10".
func withLength(s *Student, path string) string {
	text := s.Sheet.Given(path)
	if with := s.Sheet.Given(lengthOf[path]); with != "" {
		text += " / " + with
	}
	return text
}

// sameValue reports whether two texts mean the same value, as 7,5 and 7½ do.
func sameValue(a, b, path string, u units.Unit) bool {
	if a == b {
		return true
	}
	c := Column{Field: path}
	if c.isLength() || path == widthPath || path == heightPath {
		x, err := units.Parse(a, u)
		y, err2 := units.Parse(b, u)
		return err == nil && err2 == nil && x == y
	}
	x, err := units.Parse(a, units.MM) // numbers are written as in lengths
	y, err2 := units.Parse(b, units.MM)
	return err == nil && err2 == nil && x == y
}

// Accept replaces the kept value of a difference by the new one. It changes
// nothing and returns false if another value is kept by now, or if the new one
// does not go with the student's other values.
func (c *Class) Accept(d Difference) bool {
	at := c.At(d.ID)
	if at < 0 {
		return false
	}
	s := c.Students[at]
	s.Sheet = s.Sheet.Clone()
	switch d.Field {
	case fieldNote:
		if s.Note != d.Kept {
			return false
		}
		s.Note = d.New
	case fieldFrom:
		if string(s.Gauge) != d.Kept {
			return false
		}
		s.Gauge = GaugeFrom(d.New)
	default:
		if !slices.Contains(paths, d.Field) || withLength(&s, d.Field) != d.Kept {
			return false
		}
		text, over, _ := strings.Cut(d.New, " / ")
		s.put(d.Field, text, over)
	}
	if len(s.Check(c.Unit)) > 0 {
		return false
	}
	c.Students = slices.Clone(c.Students)
	c.Students[at] = s
	return true
}
