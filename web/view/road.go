package view

import (
	"fmt"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// Road is one way on from a try: the rounds of the parts that are worked on.
type Road struct {
	Rounds                  []RoadRound
	Knitted, Ripped, ToCome int
}

// RoadRound is a round of a ladder: "knitted", "ripped" or "to-come".
type RoadRound struct {
	State     string
	Increases bool
}

// RoadOn returns the ladder of going on from what is knitted.
func (v TryAnswer) RoadOn() Road {
	at := v.Seen.Place.Nth
	return v.road(v.Onward.Is, at, at)
}

// RoadBack returns the ladder of ripping back first.
func (v TryAnswer) RoadBack() Road {
	to := v.Onward.Rip.To.Nth
	return v.road(v.Onward.Rip.Is, to, to+v.Onward.Rip.Rounds)
}

// road returns the rounds of a plan of which so many stay knitted, and those
// up to another number are ripped. Both ways begin with the part in which the
// farther one goes on, so that they can be compared.
func (v TryAnswer) road(p *project.Planned, stay, ripped int) Road {
	m := p.Mitt()
	order := func(part stitch.Part) int { return stitch.Order(part, m.Down()) }
	seen := order(v.Seen.Place.Part)
	first := seen
	if rip := v.Onward.Rip; rip != nil && (rip.To.Nth == 0 || order(rip.To.Part) < first) {
		first = order(rip.To.Part)
	}
	var l Road
	nth := 0
	for _, s := range m.Sections {
		for _, r := range s.Rounds {
			if nth++; order(s.Part) < first || order(s.Part) > max(seen, first) {
				continue
			}
			one := RoadRound{State: "to-come", Increases: increases(r)}
			switch {
			case nth <= stay:
				one.State = "knitted"
				l.Knitted++
			case nth <= ripped:
				one.State = "ripped"
				l.Ripped++
			default:
				l.ToCome++
			}
			l.Rounds = append(l.Rounds, one)
		}
	}
	for ; l.Ripped < ripped-stay; l.Ripped++ { // the new plan may have fewer rounds
		l.Rounds = append(l.Rounds, RoadRound{State: "ripped"})
	}
	return l
}

// increases reports whether a round makes stitches.
func increases(r stitch.Round) bool {
	for _, op := range r.Ops {
		if op.Paintable() && op.Out() > op.In() {
			return true
		}
	}
	return false
}

// Label says in words what the ladder shows.
func (l Road) Label() string {
	text := words.Plural(l.Knitted, "round") + " stay"
	if l.Knitted == 1 {
		text += "s"
	}
	if l.Ripped > 0 {
		text += fmt.Sprintf(", %d ripped", l.Ripped)
	}
	return text + fmt.Sprintf(", %d to come", l.ToCome)
}

// rippedYarn draws the yarn of a ripped round, which keeps the bends of its
// stitches.
func rippedYarn(at int) string {
	x := at * progressWide
	return fmt.Sprintf("M%d %dq%d -12 %d 0t%d 0", x, progressDots+progressHigh/2, progressWide/4, progressWide/2, progressWide/2)
}
