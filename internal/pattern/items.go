package pattern

import (
	"regexp"
	"strings"
)

// Rounds of two sizes may differ in a few stitches between the shaping that one of them
// hasn't, or in what is repeated once there. The trade writes "k1 (0, 1)" then: nothing is
// done where a size has 0.

// mostZeros is the greatest number of zeros that one size has in a round; mostItems the
// greatest number of things in a round that is looked at.
const mostZeros, mostItems = 2, 30

// item is a thing in the list of a round: stitches, or a group in brackets that is repeated.
type item struct {
	text  string // of stitches
	bones string
	inner []item // of a group
	times string
}

var (
	groupAt = regexp.MustCompile(`^\((.*)\) (once|twice|\d+ times)$`)
	run     = regexp.MustCompile(`^[kp]#$`)
)

// items cuts a list at its commas outside brackets.
func items(text string) (list []item) {
	depth, from := 0, 0
	add := func(text string) {
		if found := groupAt.FindStringSubmatch(text); found != nil && closes(found[1]) {
			list = append(list, item{inner: items(found[1]), times: found[2]})
			return
		}
		list = append(list, item{text: text, bones: bones(tokens(text))})
	}
	for i := range len(text) {
		switch {
		case text[i] == '(':
			depth++
		case text[i] == ')':
			depth--
		case depth == 0 && strings.HasPrefix(text[i:], ", "):
			add(text[from:i])
			from = i + 2
		}
	}
	add(text[from:])
	return list
}

// closes reports whether brackets close in a text only after they open.
func closes(text string) bool {
	depth := 0
	for i := range len(text) {
		switch text[i] {
		case '(':
			depth++
		case ')':
			if depth--; depth < 0 {
				return false
			}
		}
	}
	return depth == 0
}

// nothing returns an item with 0, if it may be left out. One that names a yarn may not: what
// comes after it would be read as in that yarn.
func (t item) nothing() (item, bool) {
	switch {
	case t.inner != nil && !strings.Contains(bones(tokens(strings.ReplaceAll(joinItems(t.inner), ", ", ","))), " "):
		return item{inner: t.inner, times: "0 times"}, true
	case run.MatchString(t.bones):
		at := numbers.FindStringIndex(t.text)
		return item{text: t.text[:1] + "0" + t.text[at[1]:], bones: t.bones}, true
	}
	return item{}, false
}

// String returns an item as it is read.
func (t item) String() string {
	if t.inner == nil {
		return t.text
	}
	return "(" + joinItems(t.inner) + ") " + t.times
}

func joinItems(list []item) string {
	texts := make([]string, len(list))
	for i, t := range list {
		texts[i] = t.String()
	}
	return strings.Join(texts, ", ")
}

// laying is how two lists lie beside each other: what each of them is with the other's
// things put in as nothing, and how many those are.
type laying struct {
	a, b  []item
	zeros int
	ok    bool
}

// laid lays two lists beside each other with the fewest zeros, so that both then have the
// same bones.
func laid(a, b []item) laying {
	if len(a) > mostItems || len(b) > mostItems {
		return laying{}
	}
	known := map[[2]int]laying{}
	var from func(i, j int) laying
	from = func(i, j int) laying {
		if i == len(a) && j == len(b) {
			return laying{ok: true}
		}
		if l, ok := known[[2]int{i, j}]; ok {
			return l
		}
		var best laying
		try := func(x, y item, zeros, i, j int) {
			if rest := from(i, j); rest.ok && (!best.ok || rest.zeros+zeros < best.zeros) && rest.zeros+zeros <= 2*mostZeros {
				best = laying{append([]item{x}, rest.a...), append([]item{y}, rest.b...), rest.zeros + zeros, true}
			}
		}
		if i < len(a) && j < len(b) {
			if x, y, zeros, ok := paired(a[i], b[j]); ok {
				try(x, y, zeros, i+1, j+1)
			}
		}
		if i < len(a) && a[i].inner != nil {
			if n := len(a[i].inner); j+n <= len(b) && sameBones(a[i].inner, b[j:j+n]) {
				try(a[i], item{inner: b[j : j+n], times: "once"}, 0, i+1, j+n)
			}
		}
		if j < len(b) && b[j].inner != nil {
			if n := len(b[j].inner); i+n <= len(a) && sameBones(b[j].inner, a[i:i+n]) {
				try(item{inner: a[i : i+n], times: "once"}, b[j], 0, i+n, j+1)
			}
		}
		if i < len(a) {
			if none, ok := a[i].nothing(); ok {
				try(a[i], none, 1, i+1, j)
			}
		}
		if j < len(b) {
			if none, ok := b[j].nothing(); ok {
				try(none, b[j], 1, i, j+1)
			}
		}
		known[[2]int{i, j}] = best
		return best
	}
	return from(0, 0)
}

// paired lays two things beside each other, if they are alike but for numbers.
func paired(a, b item) (x, y item, zeros int, ok bool) {
	if (a.inner == nil) != (b.inner == nil) {
		return x, y, 0, false
	}
	if a.inner == nil {
		return a, b, 0, a.bones == b.bones
	}
	l := laid(a.inner, b.inner)
	return item{inner: l.a, times: a.times}, item{inner: l.b, times: b.times}, l.zeros, l.ok
}

func sameBones(a, b []item) bool {
	return len(a) == len(b) && bones(tokens(joinItems(a))) == bones(tokens(joinItems(b)))
}

// padded returns rounds with nothings put in so that all have the same bones; ok is false if
// that takes too many.
func padded(rounds []string) (out []string, ok bool) {
	whole := make([][][]item, len(rounds)) // by round and by part of it
	for i, text := range rounds {
		for _, part := range strings.Split(text, " | ") {
			whole[i] = append(whole[i], items(part))
		}
		if len(whole[i]) != len(whole[0]) {
			return nil, false
		}
	}
	zeros := make([]int, len(rounds))
	for part := range whole[0] {
		template := whole[0][part]
		for i := 1; i < len(rounds); i++ {
			l := laid(template, whole[i][part])
			if !l.ok {
				return nil, false
			}
			template = l.a
		}
		for i := range rounds {
			l := laid(template, whole[i][part])
			if zeros[i] += l.zeros; !l.ok || zeros[i] > mostZeros || !sameBones(l.a, l.b) || !sameBones(template, l.a) {
				return nil, false
			}
			whole[i][part] = l.b
		}
	}
	for i := range rounds {
		texts := make([]string, len(whole[i]))
		for k, list := range whole[i] {
			texts[k] = joinItems(list)
		}
		out = append(out, strings.Join(texts, " | "))
	}
	return out, true
}
