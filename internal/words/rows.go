package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// noun returns what rounds are called, which may be rows.
func noun(rows bool) string {
	if rows {
		return "row"
	}
	return "round"
}

// toAndFro returns what is said where a piece goes over from rounds to rows, or back.
func toAndFro(below, s *stitch.Section) []Step {
	if len(s.From) > 0 || s.CastOn > 0 {
		return nil // it has a beginning of its own
	}
	switch was, is := below.Noun(), s.Noun(); {
	case below.SeamOpen():
		return []Step{{Text: seamCloses}}
	case was == is:
		return nil
	case is == "row":
		return []Step{{Text: "Take the marker off. From here on work to and fro: turn at the end of every row."}}
	}
	return []Step{{Text: "Join in the round again: turn, put the marker here, and pull the first stitch of the next round snug."}}
}

// rows returns how the rows of an opening at the thumb's side lie on the hand.
func (h Hands) rows(s *stitch.Section) string {
	begin := ""
	if s.Seam > 0 {
		begin = "A row begins at the seam, on the thumb’s side. "
	}
	first, then := "palm", "back"
	if h.Left != h.FromLeft {
		first, then = then, first
	}
	return begin + fmt.Sprintf("Right-side rows cross the %s, then the %s. %s", first, then, h.pair())
}

// seenFrom follows an operation that has no name of its own on the wrong side.
const seenFrom = " as seen from the right side"

// turned says how an operation of a wrong-side row is worked, after its name. Where
// knits and purls have changed places there is nothing to say.
func turned(side stitch.Side, op stitch.Op) string {
	switch {
	case side != stitch.WrongSide:
		return ""
	case op == stitch.Slip:
		return " with the yarn in front"
	case written[op] == nil || op.Turned() != op || op == stitch.YarnOver || op == stitch.M1:
		return ""
	}
	return seenFrom
}

// Told returns instructions as a page lists them: rows that come again in the same order
// are told by their numbers, since right and wrong side take turns. Rounds are told one
// by one, except many in garter stitch and those of a motif.
func Told(passages []Passage) []Passage {
	list := make([]Passage, len(passages))
	for i, p := range passages {
		list[i] = p
		if slices.ContainsFunc(p.Steps, func(s Step) bool { return s.Rows || s.Dyed }) || inGarter(p.Steps) {
			list[i].Steps = again(p.Steps)
		}
	}
	return list
}

// inGarter reports whether rounds that are knitted and purled take turns for long.
func inGarter(steps []Step) bool {
	const long = 8
	turns, last := 0, ""
	for _, s := range steps {
		word, _, _ := strings.Cut(s.Text, " (")
		switch {
		case s.From == 0 || word != "Knit" && word != "Purl":
			last = ""
		case word != last:
			turns, last = turns+1, word
		}
	}
	return turns >= long
}

// sided returns the text of a step with the side that faces, for where its label is only
// a number.
func sided(s Step, text string) string {
	if s.Side == stitch.AllRound {
		return text
	}
	if !abbreviated.MatchString(text) {
		text = small(text)
	}
	return fmt.Sprintf("%s: %s", capital(s.Side.Words()), text)
}
