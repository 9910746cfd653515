package view

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// documents returns what changed of a document beside its sheet.
func (m *changes) documents() (list []told) {
	add := func(r rank, changed bool, text string) {
		if changed {
			list = append(list, told{r, text})
		}
	}
	was, now := m.was, m.now
	add(rankName, was.Name != now.Name, "renamed: "+clipped(now.Name))
	add(rankMitt, was.Side != now.Side, "for the "+string(now.Side)+" hand")
	add(rankRest, !was.Archived && now.Archived, "put away")
	add(rankRest, was.Archived && !now.Archived, "back on the shelf")
	add(rankRest, was.Print != now.Print, "other choices for print")
	switch second := now.WhatIf; {
	case was.WhatIf == nil && second != nil:
		add(rankSetting, true, "second thoughts begun")
	case was.WhatIf != nil && second == nil:
		add(rankSetting, true, "second thoughts ended")
	default:
		add(rankSetting, !maps.Equal(was.WhatIf, second), "second thoughts changed")
	}
	add(rankSetting, !maps.Equal(was.Design, now.Design), sizesTold(was.Design.Sizes(), now.Design.Sizes()))
	for _, text := range patternTold(was.Pattern, now.Pattern) {
		add(rankSetting, true, text)
	}
	for _, path := range slices.Sorted(maps.Keys(now.Sure)) {
		before, already := was.Sure[path]
		add(rankRest, !already || before != now.Sure[path], "sure of "+fieldName(path)+" "+clipped(now.Sure[path]))
	}
	for _, path := range slices.Sorted(maps.Keys(was.Sure)) {
		_, still := now.Sure[path]
		add(rankRest, !still, "no longer sure of "+fieldName(path))
	}
	return append(list, m.tried()...)
}

// sizesTold says what became of the sizes.
func sizesTold(was, now int) string {
	if was == now {
		return "sizes changed"
	}
	return fmt.Sprintf("sizes: %d instead of %d", now, was)
}

// tried returns the tries whose corrections came into the sheet or went out.
func (m *changes) tried() (list []told) {
	was, now := m.was.Sheet.Tried(), m.now.Sheet.Tried()
	for _, id := range now {
		if !slices.Contains(was, id) {
			list = append(list, told{rankTry, "after " + m.try(id)})
		}
	}
	for _, id := range was {
		if !slices.Contains(now, id) {
			list = append(list, told{rankTry, "without " + m.try(id)})
		}
	}
	return list
}

func (m *changes) try(id int64) string {
	if date := m.tries[id]; date != "" {
		return "the try of " + date
	}
	return "a try"
}

// fields returns what changed of the sheet, in the order of the form.
func (m *changes) fields() (list []told) {
	was, now := m.was.Sheet, m.now.Sheet
	paths := changedPaths(was, now)
	rows := map[string]bool{}
	knitted, coloured, laid, spaces := false, false, false, false
	for _, path := range paths {
		before, after := was.Given(path), now.Given(path)
		n, isNumber := mitt.NumberAt(path)
		switch {
		case path == sheet.PathTried:
			if slices.Equal(was.Tried(), now.Tried()) {
				spaces = true
			}
		case before == after:
			spaces = true
		case strings.HasPrefix(path, "worked"):
			knitted = true
		case strings.HasPrefix(path, sheet.PathKnitted+"."):
			coloured = true
		case strings.HasPrefix(path, sheet.PathRepeats+"["):
			laid = true
		case isNumber:
			list = append(list, told{rankNumber, m.number(n, before, after)})
		default:
			if one, ok := rowTold(was, now, path, rows); ok {
				list = append(list, one...)
				continue
			}
			list = append(list, told{rankOf(path), fieldTold(path, before, after)})
		}
	}
	if laid {
		list = append(list, repeatsTold(was, now)...)
	}
	if knitted {
		list = append(list, told{rankRest, onNeedles(now)})
	}
	if coloured {
		list = append(list, told{rankRest, "what is knitted keeps its colours"})
	}
	if spaces && len(list) == 0 && len(m.tried()) == 0 {
		list = append(list, told{rankRest, "spaces only"})
	}
	return list
}

// changedPaths returns the paths at which two sheets differ, in the order of
// the form.
func changedPaths(was, now sheet.Sheet) (paths []string) {
	for path, text := range now {
		if before, given := was[path]; !given || before != text {
			paths = append(paths, path)
		}
	}
	for path := range was {
		if _, given := now[path]; !given {
			paths = append(paths, path)
		}
	}
	slices.SortFunc(paths, func(a, b string) int {
		if x, y := placeOf(a), placeOf(b); x != y {
			return x - y
		}
		return strings.Compare(a, b)
	})
	return paths
}

// placeOf returns where a path stands in the form.
func placeOf(path string) int {
	g, f, row, ok := find(path)
	if !ok {
		return 1 << 30
	}
	i := slices.IndexFunc(groups, func(o Group) bool { return o.Title == g.Title })
	k := slices.IndexFunc(g.Fields, func(o Field) bool { return o.Path == f.Path })
	return i<<20 + row<<10 + k
}

// number says what became of a fixed number, and whether that put rounds in or
// took some out.
func (m *changes) number(n mitt.Number, was, now string) string {
	rounds := map[mitt.Number]bool{}
	for _, part := range m.reshaped {
		if k, ok := mitt.RoundsOf(part); ok {
			rounds[k] = true
		}
	}
	w := m.now.Sheet.Names()
	switch {
	case rounds[n] && now != "":
		name, _ := bareName(w, n)
		return reshapedTo(name, w.Noun(n), was, now)
	case now == "":
		return "let go: " + lower(w.Label(n))
	case was == "" || n.List():
		return "fixed: " + fixedAs(w, n, now)
	}
	return "fixed: " + fixedAs(w, n, was+" → "+now)
}

// reshapedTo says that the rounds or rows of a part are more or fewer than they were.
// How many there were is known if the number was fixed before.
func reshapedTo(part, noun, was, now string) string {
	before, err := strconv.Atoi(was)
	after, alsoErr := strconv.Atoi(now)
	switch {
	case err != nil || alsoErr != nil:
		return plural(noun) + " put in or taken out: " + part + ", now " + now
	case after > before:
		return words.Plural(after-before, noun) + " put in: " + part + ", now " + now
	}
	return words.Plural(before-after, noun) + " taken out: " + part + ", now " + now
}

// onNeedles says how far the knitting in a sheet has come.
func onNeedles(s sheet.Sheet) string {
	part := s.Given(sheet.PathSection)
	if part == "" {
		return "nothing kept as knitted"
	}
	return fmt.Sprintf("kept as knitted: to %s, round %s", stitch.Part(part).Words(), s.Given("worked.round"))
}

// rowTold tells of a row of a list that came or went as a whole, once.
func rowTold(was, now sheet.Sheet, path string, seen map[string]bool) (list []told, ok bool) {
	g, _, row, found := find(path)
	if !found || g.Rows == "" {
		return nil, false
	}
	before, after := typedIn(was, g, row), typedIn(now, g, row)
	if (before == "") == (after == "") {
		return nil, false
	}
	name := fmt.Sprintf("%s %d", lower(g.Row), row+1)
	if seen[name] {
		return nil, true
	}
	seen[name] = true
	if after == "" {
		return []told{{rankOf(path), name + " taken out"}}, true
	}
	return []told{{rankOf(path), name + ": " + after}}, true
}

// typedIn returns the first field of a row that was typed, with its name.
func typedIn(s sheet.Sheet, g Group, row int) string {
	for _, f := range g.Fields {
		if text := s.Given(g.path(f, row)); text != "" && len(f.Choices) == 0 {
			return lower(f.Label) + " " + clipped(text)
		}
	}
	return ""
}

// rankOf returns how telling a field of the form is.
func rankOf(path string) rank {
	switch {
	case path == sheet.PathKind || path == sheet.PathUnit || path == sheet.PathTerms:
		return rankMitt
	case strings.HasPrefix(path, "hand."):
		return rankHand
	case strings.HasPrefix(path, "gauge.swatches"):
		return rankSwatch
	}
	return rankSetting
}

// fieldTold says what became of a field.
func fieldTold(path, was, now string) string {
	name := fieldName(path)
	was, now = shownAs(path, was), shownAs(path, now)
	_, field, _, _ := find(path)
	switch {
	case field.Colour:
		return strings.TrimSuffix(name, ", colour") + " in another colour"
	case now == "":
		return name + " left out"
	case was == "" || was == now || len(was)+len(now) > longestTold:
		return name + " " + clipped(now)
	}
	return name + " " + clipped(was) + " → " + clipped(now)
}

// fieldName returns what a field is called in a sentence: its label in the
// form. A label that goes on from the field before it stands behind that one's,
// and one that an earlier group has too behind its heading.
func fieldName(path string) string {
	g, f, row, ok := find(path)
	if !ok {
		return strings.NewReplacer("_", " ", ".", ", ").Replace(path)
	}
	name := lower(f.Label)
	if first, _ := utf8.DecodeRuneInString(f.Label); unicode.IsLower(first) {
		if i := slices.IndexFunc(g.Fields, func(o Field) bool { return o.Path == f.Path }); i > 0 {
			name = lower(g.Fields[i-1].Label) + ", " + f.Label
		}
	}
	if g.Rows != "" {
		return fmt.Sprintf("%s %d, %s", lower(g.Row), row+1, name)
	}
	for _, earlier := range groups {
		if earlier.Title == g.Title {
			break
		}
		if earlier.Title != "Mitt" && earlier.Rows == "" && slices.ContainsFunc(earlier.Fields, func(o Field) bool { return o.Label == f.Label }) {
			return lower(g.Title) + ", " + name
		}
	}
	return name
}
