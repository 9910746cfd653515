package tryon

import "thenar/internal/stitch"

// A count names a round of a part, from 1. What comes before its first round is
// round Opening, and its finish is round Ending, a number above that of any
// round; what is done with a finger once it is finished is round Woven. So a count
// keeps its meaning when the part is planned anew with more rounds or fewer.
const (
	Opening = 0
	Ending  = 2000
	Woven   = 2001
)

// Task is one step at the needles: a round; an opening (casting on, taking up
// held stitches, moving the beginning of the round); the finish of a part; or
// weaving in the ends of a finger, before the next one is in the way.
type Task struct {
	Part    stitch.Part
	Round   int // or Opening, Ending, Woven
	Knitted int // the number of rounds of the mitt that are knitted after it
}

// IsRound reports whether the task is a round.
func (t Task) IsRound() bool { return t.Round > Opening && t.Round < Ending }

// Tasks returns all tasks of a mitt, in knitting order.
func Tasks(m stitch.Mitt) []Task {
	var list []Task
	knitted := 0
	for i := range m.Sections {
		s := &m.Sections[i]
		if s.Opens() {
			list = append(list, Task{s.Part, Opening, knitted})
		}
		for r := range s.Rounds {
			knitted++
			list = append(list, Task{s.Part, r + 1, knitted})
		}
		if len(s.Finish.Ops) > 0 {
			list = append(list, Task{s.Part, Ending, knitted})
			if s.OfFinger() {
				list = append(list, Task{s.Part, Woven, knitted})
			}
		}
	}
	return list
}

// TasksDone returns the number of tasks that are done when the last one counted
// is this round of this part. If the list has no such task, those before it are
// done; with no part, none are.
func TasksDone(list []Task, part stitch.Part, round int) (done int) {
	down := fromTip(list)
	for i, t := range list {
		if stitch.Order(t.Part, down) < stitch.Order(part, down) || t.Part == part && t.Round <= round {
			done = i + 1
		}
	}
	return done
}

// fromTip reports whether the tasks are of a mitt that is worked from the fingertips: what
// lies higher comes before what lies lower.
func fromTip(list []Task) bool {
	for i := 1; i < len(list); i++ {
		if stitch.Order(list[i].Part, false) < stitch.Order(list[i-1].Part, false) {
			return true
		}
	}
	return false
}

// PlaceAfter returns the place of the work after the first done tasks of a mitt:
// its last knitted round. After the cast-on alone that is round 0 of the first
// part; with nothing done it is the zero Place.
func PlaceAfter(m stitch.Mitt, done int) Place {
	tasks := Tasks(m)
	if done = min(done, len(tasks)); done <= 0 {
		return Place{}
	}
	n := tasks[done-1].Knitted
	if n == 0 {
		return Place{Part: m.Sections[0].Part, After: m.Sections[0].CastOn, Down: m.Down()}
	}
	at := Places(m)[n-1]
	for _, t := range tasks[:done] {
		at.Ended = at.Ended || t.Part == at.Part && t.Round == Ending
	}
	return at
}
