package view

import (
	"fmt"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// Progress is the strip of stitches, one for each round of a part, that fills
// up while the part is knitted.
type Progress struct {
	Section   stitch.Part
	Noun      string // what its rounds are called
	Rounds    []ProgressRound
	Increases []int
}

// ProgressRound is one stitch of the strip.
type ProgressRound struct {
	Fill      string // the colour of the yarn that the round has most of; empty for the ground
	Increases bool
}

// The size of a stitch on the strip of progress in its own units, and the
// height above it for the dots; and how wide it is shown where there is room,
// in px.
const (
	progressWide  = 16
	progressHigh  = 18
	progressDots  = 9
	progressShown = 22
)

// progressOf returns the strip of a part.
func (n *Needles) progressOf(out *project.Outputs, s *stitch.Section) Progress {
	p := Progress{Section: s.Part, Noun: s.Noun()}
	for i, r := range s.Rounds {
		one := ProgressRound{Fill: n.mostOf(out, s.Part, i+1), Increases: increases(r)}
		if one.Increases {
			p.Increases = append(p.Increases, i+1)
		}
		p.Rounds = append(p.Rounds, one)
	}
	return p
}

// mostOf returns the colour of the yarn that most of a round is worked in; of
// several, the one that comes first.
func (n *Needles) mostOf(out *project.Outputs, part stitch.Part, round int) string {
	fill, most, times := out.Charts.Palette.Or("a").Fill, 0, map[string]int{}
	for _, y := range n.yarnsIn(out, part, round) {
		if times[y.ID]++; times[y.ID] > most {
			fill, most = y.Fill, times[y.ID]
		}
	}
	return fill
}

// progressStitch draws one stitch of the strip: two leaning halves that meet at
// the foot.
func progressStitch(at int) string {
	x := float64(at * progressWide)
	const half = progressWide / 2.0
	leaf := func(side float64) string {
		return fmt.Sprintf("M%g %dC%g %d %g %d %g %dC%g %d %g %d %g %dZ",
			x+half+side*0.3, progressDots+progressHigh,
			x+half+side*0.5, progressDots+11, x+half+side*2, progressDots+4, x+half+side*6.2, progressDots,
			x+half+side*8, progressDots+7, x+half+side*5.5, progressDots+14, x+half+side*0.3, progressDots+progressHigh)
	}
	return leaf(-1) + leaf(1)
}

// Label says in words what the strip shows.
func (p Progress) Label() string {
	text := fmt.Sprintf("The %s, %s", p.Section.Words(), words.Plural(len(p.Rounds), p.Noun))
	if len(p.Increases) > 0 {
		text += "; increases in " + words.Ranges(p.Increases)
	}
	return text
}

// progressClass returns how the stitch of a round is shown: as knitted, as the present
// one, or as one to come.
func progressClass(round, done, present int) string {
	switch {
	case round <= done:
		return "knitted"
	case round == present:
		return "present"
	}
	return "to-come"
}

// doneIn returns how many rounds of a part are knitted, and which one is next;
// 0 if none is.
func (n Needles) doneIn(part stitch.Part) (done, present int) {
	for i, t := range n.Tasks {
		switch {
		case t.Section != string(part) || !t.IsRound:
		case i < n.Nth:
			done = t.Round
		case i == n.Nth:
			present = t.Round
		}
	}
	return done, present
}
