package pattern

import (
	"regexp"
	"slices"
	"strings"
)

const aNumber = `(?:\d+(?:\s?[–-]\s?\d+|\.\d+)?(?:st|nd|rd|th)?[⅛¼⅜½⅝¾⅞]?|[⅛¼⅜½⅝¾⅞])`

var (
	typedNumber = regexp.MustCompile(`\b(?:[A-Za-z]+\d+[A-Za-z]\w*|M1[LR]?)\b|\b(?:once|twice)\b|` + aNumber + `(?:\s?\(\s?` + aNumber + `(?:\s?[,;]\s?` + aNumber + `)*\s?\))?(?: times)?`)
	spacing     = strings.NewReplacer(" ", "", ";", ",", "-", "–")
)

// alike returns a number as it can be compared with another one, however it is spaced.
func alike(text string) string { return spacing.Replace(text) }

// choice is a way to bind a typed number.
type choice struct {
	at   int // of the line's number
	mark string
	from int // where it begins in the sentence
	to   int
}

// bound returns a typed sentence with marks for its numbers that are those of the line, in
// order: of equal ones first those with the same words beside them, then those that the
// sentence had before, and those not yet taken. It returns the numbers that are the
// designer's own, too.
func (l *Line) bound(typed, before string) (stored string, stay []string) {
	var had []string
	for _, p := range parted(before) {
		if p.name != "" {
			had = append(had, p.name)
		}
		if p.name == labelNumber {
			had = append(had, roundsNumber)
		}
	}
	var b strings.Builder
	copied, last := 0, -1
	taken := map[int]bool{}
	write := func(to int) { b.WriteString(strings.ReplaceAll(typed[copied:to], "{", "{{")) }
	for _, at := range typedNumber.FindAllStringIndex(typed, -1) {
		if !isNumber(typed[at[0]:at[1]]) {
			continue
		}
		choices := l.choices(typed, at[0], at[1])
		if len(choices) == 0 {
			stay = append(stay, toldOwn(typed, at[0], at[1]))
			continue
		}
		chosen := slices.MinFunc(choices, func(a, b choice) int {
			return l.rank(typed, a, had, taken, last) - l.rank(typed, b, had, taken, last)
		})
		if k := slices.Index(had, l.numbers[chosen.at].name); k >= 0 {
			had = slices.Delete(slices.Clone(had), k, k+1)
		}
		write(chosen.from)
		b.WriteString("{" + chosen.mark + "=" + typed[chosen.from:chosen.to] + "}")
		copied, last, taken[chosen.at] = chosen.to, chosen.at, true
	}
	write(len(typed))
	return b.String(), stay
}

// rank says how well a choice goes with the words beside it and with those before it; less is
// better.
func (l *Line) rank(typed string, c choice, had []string, taken map[int]bool, last int) int {
	rank, n := c.at, l.numbers[c.at] // of equal ones the first
	if n.before == "" || strings.TrimSuffix(wordBefore(typed[:c.from]), "s") != strings.TrimSuffix(n.before, "s") {
		rank += 1 << 13
		if n.name == roundsNumber {
			rank += 1 << 10
		}
	}
	if n.after == "" || wordAfter(typed[c.to:]) != n.after {
		rank += 1 << 13
	}
	if !slices.Contains(had, l.numbers[c.at].name) {
		rank += 1 << 12
	}
	if taken[c.at] {
		rank += 1 << 11
	}
	if c.at < last {
		rank += 1 << 10
	}
	return rank
}

// choices returns the numbers of a line that read as the sentence does from one place to
// another; with the word before it for that of a round, without " times" if need be.
func (l *Line) choices(typed string, from, to int) (list []choice) {
	ends := []int{to}
	if short, ok := strings.CutSuffix(typed[from:to], " times"); ok {
		ends = append(ends, from+len(short))
	}
	for _, end := range ends {
		is := alike(typed[from:end])
		for i, n := range l.numbers {
			own := Plain(n.pieces)
			switch {
			case n.name == labelNumber:
				noun, _, _ := strings.Cut(own, " ")
				if begin := from - len(noun) - 1; begin >= 0 && typed[begin:from] == noun+" " && alike(typed[begin:end]) == alike(own) {
					return []choice{{i, n.name, begin, end}}
				}
			case alike(own) == is && own != "":
				list = append(list, choice{i, n.name, from, end})
			case len(n.pieces) == 1 && alike(Plain([]Piece{bareOf(n.pieces[0])})) == is:
				list = append(list, choice{i, n.name + "#", from, end})
			}
		}
		if len(list) > 0 {
			break
		}
	}
	return list
}

// toldOwn returns a number of the designer's own with the word after it.
func toldOwn(typed string, from, to int) string {
	word, _, _ := strings.Cut(strings.TrimLeft(typed[to:], " "), " ")
	word = strings.TrimRight(word, ".,;:!?)")
	if word == "" || !strings.HasPrefix(typed[to:], " ") || strings.ContainsAny(word, "0123456789(") {
		return typed[from:to]
	}
	return typed[from:to] + " " + word
}

// isNumber tells a typed number from a stitch's name with a figure in it.
func isNumber(text string) bool {
	return text[0] <= '9' || text[0] >= 0x80 || text == "once" || text == "twice"
}
