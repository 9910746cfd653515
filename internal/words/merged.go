package words

import (
	"regexp"
)

// Merged returns instructions as they are printed, with rounds that read alike told
// once. Rounds that come again in the same order are told by their numbers, "Work
// rounds 1–4 twice more (44)". All rounds keep their order and are named, and a round
// that changes the count keeps its own line, so that no increase is lost.
func Merged(passages []Passage) []Passage {
	list := make([]Passage, len(passages))
	for i, p := range passages {
		list[i] = p
		list[i].Steps = again(p.Steps)
	}
	return list
}

// countAtEnd finds the count at the end of a round.
var countAtEnd = regexp.MustCompile(`\([^()]*\)\.$`)

// sameRound reports whether two steps are as many rounds that read alike.
func sameRound(a, b Step) bool {
	return a.From > 0 && b.From > 0 && a.Text == b.Text && a.Side == b.Side && a.To-a.From == b.To-b.From
}

// again merges the blocks of rounds that come again at once and keep the count.
func again(steps []Step) []Step {
	var list []Step
	for i := 0; i < len(steps); {
		size, covers := block(steps[i:])
		if size == 0 {
			list = append(list, steps[i])
			i++
			continue
		}
		first, last, end := steps[i], steps[i+size-1], steps[i+covers-1]
		named := func(to int) string { return Step{From: first.From, To: to, Rows: first.Rows}.named() }
		text, more := "Work "+named(last.To), covers/size-1
		if more > 2 { // or two numbers would stand side by side
			text += ","
		}
		text += " " + Times(more) + " more"
		if part := covers % size; part > 0 {
			text += ", then " + named(steps[i+part-1].To)
		}
		list = append(list, steps[i:i+size]...)
		list = append(list, Step{From: last.To + 1, To: end.To, Text: text + " " + countAtEnd.FindString(end.Text), Rows: first.Rows})
		i += covers
	}
	return list
}

// block returns the number of steps at the head that come again at once, and how many
// steps they cover with all their repeats, the last of which may break off; of several
// blocks the one that saves the most lines, the shortest of equals. It returns 0 if
// none saves a line.
func block(steps []Step) (size, covers int) {
	best := 0
	count := countAtEnd.FindString(steps[0].Text)
	for n := 2; 2*n <= len(steps) && count != ""; n++ {
		if countAtEnd.FindString(steps[n-1].Text) != count {
			break
		}
		end := n
		for end < len(steps) && sameRound(steps[end], steps[end-n]) {
			end++
		}
		if saved := end - n - 1; end >= 2*n && saved > best {
			best, size, covers = saved, n, end
		}
	}
	return size, covers
}
