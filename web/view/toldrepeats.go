package view

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// keyWas is what is kept of a laid motif when somebody looked: it is no change of it.
const keyWas = "was"

// repeatsTold says what became of the motifs that are laid: which came and went, which lies
// over which now, and what of one is laid otherwise.
func repeatsTold(was, now sheet.Sheet) (list []told) {
	add := func(text string) { list = append(list, told{rankNumber, text}) }
	before, after := laidIn(was), laidIn(now)
	if slices.EqualFunc(before, after, maps.Equal) {
		return nil
	}
	if laid := without(after, before); len(after) > len(before) && len(laid) > 0 {
		add(motifsCalled(laid) + " laid")
		return list
	}
	if gone := without(before, after); len(after) < len(before) && len(gone) > 0 {
		add(motifsCalled(gone) + " taken away")
		return list
	}
	if at := firstMoved(before, after); at >= 0 {
		add(calledIn(after[at+1]) + " laid over " + calledIn(after[at]))
		return list
	}
	looked := ""
	for i := range min(len(before), len(after)) {
		text := oneTold(before[i], after[i])
		switch {
		case text != "":
			add(calledIn(before[i]) + " " + text)
		case !maps.Equal(before[i], after[i]):
			looked = cmp.Or(looked, "looked at "+calledIn(after[i]))
		}
	}
	if len(list) == 0 && looked != "" {
		list = append(list, told{rankRest, looked})
	}
	return list
}

// firstMoved returns the lowest place at which another motif lies now, where the same ones lie
// over each other otherwise; −1 elsewhere.
func firstMoved(before, after []map[string]string) int {
	if len(without(before, after)) > 0 {
		return -1
	}
	for i := range len(after) - 1 {
		if !sameMotif(before[i], after[i]) {
			return i
		}
	}
	return -1
}

// keyCalled is what a motif is called in a sentence, among what is given of it.
const keyCalled = "called"

// laidIn returns what is given of each motif that is laid, by its keys.
func laidIn(s sheet.Sheet) (list []map[string]string) {
	for i := range s.Rows(sheet.PathRepeats) {
		given := s.GivenOfRepeat(i)
		if len(given) == 0 {
			continue
		}
		given[keyCalled] = fmt.Sprintf("motif %d", len(list)+1)
		if name := clipped(given["name"]); name != "" {
			given[keyCalled] = "“" + name + "”"
		}
		list = append(list, given)
	}
	return list
}

func calledIn(given map[string]string) string { return given[keyCalled] }

// motifsCalled names motifs: all of a few, or else how many.
func motifsCalled(list []map[string]string) string {
	const few = 4
	if len(list) > few {
		return words.Plural(len(list), "motif")
	}
	names := make([]string, len(list))
	for i, m := range list {
		names[i] = calledIn(m)
	}
	return words.Listed(names)
}

// without returns those of a list that another has not, whatever their place.
func without(list, other []map[string]string) (rest []map[string]string) {
	other = slices.Clone(other)
	for _, m := range list {
		at := slices.IndexFunc(other, func(o map[string]string) bool { return sameMotif(m, o) })
		if at < 0 {
			rest = append(rest, m)
			continue
		}
		other = slices.Delete(other, at, at+1)
	}
	return rest
}

// sameMotif reports whether two are laid alike, wherever they stand in the list.
func sameMotif(a, b map[string]string) bool {
	for _, key := range sheet.RepeatKeys() {
		if key != keyWas && a[key] != b[key] {
			return false
		}
	}
	return true
}

// oneTold says what of a motif is laid otherwise; empty: nothing.
func oneTold(was, now map[string]string) string {
	var list []string
	for _, key := range sheet.RepeatKeys() {
		if key != keyWas && was[key] != now[key] {
			list = append(list, keyTold(key, now[key]))
		}
	}
	const few = 2
	if len(list) > few {
		return "laid otherwise"
	}
	return strings.Join(slices.Compact(list), " and ")
}

// keyTold says in a few words what became of one thing about a motif. Where nothing is given,
// it is laid as motifs usually are.
func keyTold(key, now string) string {
	of := func(list []Choice, usual int) string {
		for _, c := range list {
			if c.Value == now {
				return c.Words
			}
		}
		return list[usual].Words
	}
	switch key {
	case "name":
		if now == "" {
			return "without its name"
		}
		return "named “" + clipped(now) + "”"
	case "motif", "stitches":
		return "drawn anew"
	case "section":
		if now == "" || now == string(repeat.Whole) {
			return "over the whole hand"
		}
		return "in the " + stitch.Part(now).Words()
	case "from":
		return "from round " + cmp.Or(now, "1")
	case "to":
		if now == "" || now == "-1" {
			return "up to the end"
		}
		return "up to round " + now
	case "over":
		return of(laidOvers, 0)
	case "set":
		return of(laidSets, 0)
	case "offset":
		return "moved on by " + cmp.Or(now, "0")
	case "gusset":
		return "in the gusset: " + of(laidGussets, 0)
	case "left":
		return of(laidLefts, 0) + " on the left hand"
	case "cut":
		if now != "true" {
			return "in whole ones only"
		}
		return "cut off at the top"
	case "off":
		if now != "true" {
			return "laid again"
		}
		return "turned off"
	}
	return "laid otherwise" // the columns that it lies between
}
