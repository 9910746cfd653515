package view

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
	"thenar/internal/words"
)

// TryAnswer is the page on which a try is answered.
type TryAnswer struct {
	app.Weighed
	Entry TryEntry
}

// NewTryAnswer returns the page of a try that was weighed or answered.
func NewTryAnswer(w app.Weighed) TryAnswer {
	return TryAnswer{w, newTryEntry(w.Entry, w.Doc.Sheet.Names())}
}

// ChangedWords says which rounds are worked otherwise.
func (v TryAnswer) ChangedWords() string {
	var parts []string
	for _, part := range stitch.Parts() {
		var rounds []int
		for r := range v.Onward.Changed[part] {
			rounds = append(rounds, r)
		}
		if len(rounds) > 0 {
			slices.Sort(rounds)
			parts = append(parts, fmt.Sprintf("%s, %s", part.Words(), words.Ranges(rounds)))
		}
	}
	if len(parts) == 0 {
		return "No round changes."
	}
	return "Knitted differently: " + strings.Join(parts, "; ") + "."
}

// Idle reports whether the accepted corrections change no round.
func (v TryAnswer) Idle() bool { return len(v.Accepted()) > 0 && v.Onward.Changed.Count() == 0 }

// StaysOff says what a person found too tight, too loose, too long or too short of what is
// knitted already, and accepts to put right: going on can't.
func (v TryAnswer) StaysOff() []string {
	var list []string
	for _, c := range v.Accepted() {
		if !c.Later {
			continue
		}
		for _, zone := range tryon.Zones() {
			length, _ := zone.EndField()
			off, way := v.Seen.Ends[zone], ""
			switch step := v.Seen.Steps[zone]; {
			case c.Key == string(zone) && step > 0:
				way = "too tight"
			case c.Key == string(zone) && step < 0:
				way = "too loose"
			case c.Key == length && off > 0:
				way = "too long"
			case c.Key == length && off < 0:
				way = "too short"
			}
			if way != "" {
				list = append(list, fmt.Sprintf("The %s is %s. It is knitted: going on leaves it so.", zone.Words(), way))
			}
			if _, finger := mitt.FingerOf(stitch.Part(zone)); finger && way == "too tight" && v.Seen.Place.Part != stitch.Part(zone) {
				list = append(list, fmt.Sprintf("The %s’s root is joined to what came after it: to widen it, that goes, too.", zone.Words()))
			}
		}
	}
	return list
}

// Ripping says how what stays off could be put right.
func (v TryAnswer) Ripping() string {
	if v.Onward.Rip == nil && len(v.Onward.Fingers) == 0 {
		return "Ripping back would gain too little here: wear it so. The next one gets it right."
	}
	return "Rip it back, or wear it so."
}

// goOnClass is how the button looks that goes on: not like what one usually does, if that
// leaves something off.
func (v TryAnswer) goOnClass() string {
	if len(v.StaysOff()) > 0 {
		return "wide"
	}
	return "main-action wide"
}

// SinceWords says where the work stands now.
func (v TryAnswer) SinceWords() string {
	if v.Seen.Place.Nth == 0 {
		return "Since the try you ripped back to the cast-on; the plan begins there."
	}
	return fmt.Sprintf("Since the try you have knitted to %s %d of the %s; the plan goes on from there.",
		v.Seen.Place.Side.Noun(), v.Seen.Place.Round, v.Seen.Place.Part.Words())
}

// CountWords says where the count at the needles stands after going on.
func (v TryAnswer) CountWords() string {
	at := v.Seen.Place
	if !at.Begun() {
		return "The count at the needles starts at the cast-on."
	}
	return fmt.Sprintf("You said that %s %d of the %s is knitted: the count at the needles goes there, too.", at.Side.Noun(), at.Round, at.Part.Words())
}

// BackTo says how far the work is ripped back.
func (v TryAnswer) BackTo() string {
	if to := v.Onward.Rip.To; to.Nth > 0 {
		return fmt.Sprintf("to %s %d of the %s", to.Side.Noun(), to.Round, to.Part.Words())
	}
	return "to the cast-on"
}

// ripFinger is how a form asks for a finger that is ripped back by itself: with its part
// behind it.
const ripFinger = "rip "

// RippedFinger returns the finger that a form asks to rip back by itself, or "".
func RippedFinger(how string) stitch.Part {
	part, asked := strings.CutPrefix(how, ripFinger)
	if !asked {
		return ""
	}
	return stitch.Part(part)
}

// StaysWords says what is lost of a finger that is ripped back by itself, and what stays.
func StaysWords(r *project.FingerRip) string {
	if r.Here {
		return fmt.Sprintf("It comes back onto the needles at round %d, and is knitted on from there. All else stays.", r.To)
	}
	return fmt.Sprintf("It comes back onto the needles at round %d. The other fingers, and what is between them, stay as they are. Then go on where you were.", r.To)
}

// PaceWords says by which pace the minutes are counted.
func (v TryAnswer) PaceWords() string {
	if v.OwnPace {
		return "The time is by how fast you knit."
	}
	return "The time is for a usual pace; yours is learned as you count rounds."
}

// roughly returns minutes to five of them, if there are more than ten.
func roughly(minutes int) int {
	if minutes <= 10 {
		return minutes
	}
	return (minutes + 2) / 5 * 5
}

// fixedWords lists fixed numbers: “gusset rounds” and “held”.
func fixedWords(w mitt.Names, list []mitt.Number) string {
	var names []string
	for _, n := range list {
		names = append(names, "“"+w.Words(n)+"”")
	}
	return words.Listed(names)
}

// keysOf joins the keys of numbers, as a form sends them.
func keysOf(list []mitt.Number) string {
	var keys []string
	for _, n := range list {
		keys = append(keys, n.Key())
	}
	return strings.Join(keys, " ")
}

func isAre(list []mitt.Number) string {
	if len(list) == 1 {
		return "is"
	}
	return "are"
}

func itThem(list []mitt.Number) string {
	if len(list) == 1 {
		return "it"
	}
	return "them"
}

// Drawing draws how the mitt goes on from what is knitted, or returns "" if
// nothing changes.
func (v TryAnswer) Drawing() string {
	if v.Onward.Was == nil || v.Onward.Is == nil || v.Onward.Changed.Count() == 0 {
		return ""
	}
	at := picture.Progress{Part: v.Seen.Place.Part, Round: v.Seen.Place.Round}
	o := picture.HandOptions{Left: v.Entry.Try.Side == string(project.Left), Unit: v.Doc.Sheet.Unit(), Worn: v.Worn}
	return SVG(picture.Onward(v.Onward.Was.Plan, v.Onward.Is.Plan, at, o), false)
}

// LeavesWords lists how far off the mitt stays if it goes on in this way, in
// lengths and rounds.
func (v TryAnswer) LeavesWords(l project.Leaves) []string {
	size := func(mm float64) string {
		return units.FromMM(math.Abs(mm)).With(tryon.OffsetUnit(v.Doc.Sheet.Unit()))
	}
	way := func(mm float64, less, more string) string {
		if mm < 0 {
			return less
		}
		return more
	}
	list := []string{}
	for _, g := range l.Girths {
		list = append(list, fmt.Sprintf("%s: up to %s %s in %d of %s", g.Section.Words(), size(g.MM), way(g.MM, "narrower", "wider"), g.Rounds, words.Plural(g.Of, v.Entry.names.NounOf(g.Section))))
	}
	for _, g := range l.Lengths {
		list = append(list, fmt.Sprintf("length of the %s: %s %s, %s", g.Section.Words(), size(g.MM), way(g.MM, "shorter", "longer"), words.Plural(g.Rounds, v.Entry.names.NounOf(g.Section))))
	}
	switch {
	case len(list) > 0 && l.AsPlanned > 0:
		list = append(list, "the rest as it was planned")
	case l.AsPlanned > 0:
		list = append(list, "nothing new: it is as it was planned")
	case len(list) == 0:
		list = append(list, "nothing by more than "+size(l.Tolerance))
	}
	return list
}

// SpoiltWords says which places would stay too wide or too narrow if the person
// went on from here.
func (v TryAnswer) SpoiltWords() string {
	return "It won’t fit as well as if you started again: " + strings.Join(v.Onward.Rip.Zones, ", ") + "."
}

// noun is what the rounds that are ripped back are called.
func (v TryAnswer) noun() string { return v.Entry.names.NounOf(v.Seen.Place.Part) }
