package tryon

import "thenar/internal/stitch"

// A count names a round of a part, from 1. What is done before the first round
// of a part is its round Opening; what ends the part is its round Ending, above
// any that a part may have. So a count keeps its meaning when the part is
// planned with more rounds or fewer.
const (
	Opening = 0
	Ending  = 2000
)

// Task is what is done at the needles in one go: a round, or casting on, taking
// up held stitches, moving the beginning of the round, or what ends a part.
type Task struct {
	Part    stitch.Part
	Round   int // or Opening, or Ending
	Knitted int // rounds of the mitt that are knitted once it is done
}

// IsRound reports whether the task is a round.
func (s Task) IsRound() bool { return s.Round > Opening && s.Round < Ending }

// Tasks are all that is done for a mitt, in order.
func Tasks(m stitch.Mitt) []Task {
	var list []Task
	knitted := 0
	for _, s := range m.Sections {
		if s.CastOn > 0 || s.FromHeld || s.Shift != 0 {
			list = append(list, Task{s.Part, Opening, knitted})
		}
		for r := range s.Rounds {
			knitted++
			list = append(list, Task{s.Part, r + 1, knitted})
		}
		if len(s.Finish.Ops) > 0 {
			list = append(list, Task{s.Part, Ending, knitted})
		}
	}
	return list
}

// Reached is how many tasks are done where the last one that was counted is a
// round of a part. A task that the mitt doesn't have is taken as those before
// it; no part is nothing.
func Reached(list []Task, part stitch.Part, round int) (done int) {
	for i, s := range list {
		if s.Part.Order() < part.Order() || s.Part == part && s.Round <= round {
			done = i + 1
		}
	}
	return done
}

// Stands is where the work on a mitt stands with so many of its tasks done: the
// last round that is knitted, and whether its part is ended as well. With
// nothing but the cast-on it is round 0 of the first part, with nothing at all
// no part.
func Stands(m stitch.Mitt, done int) Place {
	tasks := Tasks(m)
	if done = min(done, len(tasks)); done <= 0 {
		return Place{}
	}
	n := tasks[done-1].Knitted
	if n == 0 {
		return Place{Part: m.Sections[0].Part, After: m.Sections[0].CastOn}
	}
	at := Places(m)[n-1]
	for _, s := range tasks[:done] {
		at.Ended = at.Ended || s.Part == at.Part && s.Round == Ending
	}
	return at
}
