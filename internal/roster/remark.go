package roster

import (
	"slices"

	"thenar/internal/fault"
)

// Remark is what a teacher notes beside a student's numbers.
type Remark struct {
	FromLeft bool // knits from left to right
	Note     string
}

// Remark returns what is noted beside the student's numbers.
func (s *Student) Remark() Remark { return Remark{s.FromLeft, s.Note} }

// SetRemark replaces what is noted beside the student's numbers.
func (s *Student) SetRemark(r Remark) { s.FromLeft, s.Note = r.FromLeft, r.Note }

// MoveBefore moves a student before another, or to the end of the list if before
// is 0. Moved before itself, a student stays. It fails with a fault of the field
// move or before if there is no such student.
func (c *Class) MoveBefore(id, before int) error {
	from, to := c.At(id), len(c.Students)
	if from < 0 {
		return gone("move")
	}
	if before != 0 {
		to = c.At(before)
	}
	if to < 0 {
		return gone("before")
	}
	if from < to {
		to-- // the place once the student is lifted out
	}
	if id == before {
		to = from
	}
	s := c.Students[from]
	c.Students = slices.Insert(slices.Delete(slices.Clone(c.Students), from, from+1), to, s)
	return nil
}

// gone returns the fault of a field that names a student who is not on the list.
func gone(field string) error {
	var faults fault.Fields
	faults.Add(field, "names nobody on the list; somebody may have taken them off: choose another student")
	return faults.Err()
}
