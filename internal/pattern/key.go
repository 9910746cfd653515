package pattern

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// A line is named by what it is for in its own section: the nth round that grows or narrows
// there, what comes after it, or the first words of a sentence. Its numbers, the lines before
// it and how many sizes it is for have no part in its name.

// placed names the steps of a section as one size has them.
func (s *section) placed(of *stitch.Section) {
	counted := map[string]int{}
	nth := func(name string) string {
		counted[name]++
		return fmt.Sprintf("%s/%d", name, counted[name])
	}
	last := "start"
	for i := range s.steps {
		own := &s.steps[i]
		switch {
		case own.table != nil:
			own.place = "table"
		case own.round() && own.shapes(of) != "":
			own.place = nth(own.shapes(of))
			last = strings.ReplaceAll(own.place, "/", "-")
		case own.round():
			own.place = nth("after-" + last + "/" + firstWords(own.bones))
		default:
			own.place = nth(firstWords(own.bones))
		}
	}
}

// shapes names what a round does that changes the count; it is empty for another one.
func (s step) shapes(of *stitch.Section) string {
	if of == nil || s.From > len(of.Rounds) {
		return ""
	}
	round := of.Rounds[s.From-1]
	switch first, _, _ := strings.Cut(firstWords(s.bones), "-"); {
	case round.In() == round.Out():
		return ""
	case s.body[0] >= 'A' && s.body[0] <= 'Z' && first != "m" && first != "knit" && first != "purl": // "Slip", "Pick up"
		return first
	case round.In() < round.Out():
		return "increase"
	}
	return "decrease"
}

// mostNaming is how many of its first words name a sentence; one that begins with a heading,
// "Yarn: ", is named by it.
const mostNaming = 5

// firstWords names a step by its first words.
func firstWords(bones string) string {
	if head, _, ok := strings.Cut(bones, ": "); ok && strings.Count(head, " ") < 3 {
		bones = head
	}
	list := strings.FieldsFunc(strings.ToLower(bones), func(r rune) bool { return r < 'a' || r > 'z' })
	if len(list) == 0 {
		return "line"
	}
	return strings.Join(list[:min(len(list), mostNaming)], "-")
}

// keys names the places of a section. A place is called what most of its sizes call it;
// where two are called alike, it is the one that more sizes call so.
func keys(part stitch.Part, rows []column[step]) []string {
	type vote struct {
		row, votes int
		place      string
	}
	var votes []vote
	for i, row := range rows {
		for k, s := range row.cells {
			n := 0
			for _, o := range row.cells {
				if o.place == s.place {
					n++
				}
			}
			if !slices.ContainsFunc(row.cells[:k], func(o step) bool { return o.place == s.place }) {
				votes = append(votes, vote{i, n, s.place})
			}
		}
	}
	slices.SortStableFunc(votes, func(a, b vote) int { return b.votes - a.votes })
	list, taken := make([]string, len(rows)), map[string]bool{}
	take := func(row int, place string) {
		if list[row] == "" && !taken[place] {
			list[row], taken[place] = string(part)+"/"+place, true
		}
	}
	for _, v := range votes {
		take(v.row, v.place)
	}
	for i, row := range rows {
		for n := 2; list[i] == ""; n++ {
			take(i, fmt.Sprintf("%s.%d", row.cells[0].place, n))
		}
	}
	return list
}

// wayMark begins the name of a way in a place by which some of its sizes are told.
const wayMark = "~"

// ways ends the key of a line that names a round whose ways stand below it.
const ways = "/ways"

// ofWay names one of the ways in which a place is told, by what it says.
func ofWay(key string, s step) string { return key + wayMark + mark(s.says()) }

// placeOf returns the name of a place without that of a way.
func placeOf(key string) string {
	place, _, _ := strings.Cut(key, wayMark)
	return place
}

// says is all that a step says but for its numbers.
func (s step) says() string { return fmt.Sprint(s.bones, "|", s.Side, "|", s.Rows, "|", s.inside > 0) }

// mark returns a short mark of a text, which is the same wherever the text is.
func mark(text string) string {
	h := uint32(2166136261) // FNV-1a, 32 bits
	for i := range len(text) {
		h = (h ^ uint32(text[i])) * 16777619
	}
	return fmt.Sprintf("%08x", h)
}
