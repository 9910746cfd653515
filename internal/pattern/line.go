package pattern

import (
	"fmt"
	"slices"
	"strconv"

	"thenar/internal/stitch"
)

// lines returns the lines of one place of the text: one, if all that have it differ in
// numbers only, else one for each group of sizes.
func lines(c column[step], all []int, key string, how Wording) []Line {
	if c.cells[0].table != nil {
		rhythms := make([]*rhythm, len(c.cells))
		for i, s := range c.cells {
			rhythms[i] = s.table
		}
		return []Line{{Key: key, For: c.sizes, Table: tableOf(rhythms, c.sizes)}}
	}
	groups := groups(c.cells)
	if how == Full {
		for i := range c.cells {
			c.cells[i].tokens = tokens(inFull(c.cells[i].body))
		}
	}
	only := len(c.sizes) < len(all)
	var list []Line
	head := len(groups) > 1 && alikeBesides(c.cells)
	if head {
		list = append(list, Line{
			Key: key + ways, For: c.sizes, Only: only, Label: label(c.cells), Count: count(c.cells),
			numbers: numbered(c.cells, nil), says: []string{fmt.Sprint("ways|", c.cells[0].Side, "|", c.cells[0].Rows, "|", count(c.cells) != nil)},
		})
	}
	for _, g := range groups {
		cells := make([]step, len(g))
		sentences := make([][]token, len(g))
		l := Line{Key: key, Only: only && !head, Under: head}
		for k, at := range g {
			l.For = append(l.For, c.sizes[at])
			cells[k], sentences[k] = c.cells[at], c.cells[at].tokens
		}
		if len(groups) > 1 {
			l.Key = ofWay(key, cells[0])
		}
		if l.Body = merged(sentences); !head {
			l.Label, l.Count = label(cells), count(cells)
		}
		l.numbers, l.says = numbered(cells, l.Body), []string{fmt.Sprint(cells[0].says(), "|", l.Count != nil, "|", head)}
		list = append(list, l)
	}
	return list
}

// groups returns which steps of a place differ in numbers only. Rounds that do once a few
// stitches are put in as none are one group.
func groups(cells []step) (groups [][]int) {
	at := map[string]int{}
	for i, s := range cells {
		name := fmt.Sprint(s.bones, s.Side, s.inside > 0)
		g, known := at[name]
		if !known {
			g = len(groups)
			at[name], groups = g, append(groups, nil)
		}
		groups[g] = append(groups[g], i)
	}
	if len(groups) < 2 || !alikeBesides(cells) {
		return groups
	}
	bodies := make([]string, len(cells))
	all := make([]int, len(cells))
	for i, s := range cells {
		bodies[i], all[i] = s.body, i
	}
	bodies, ok := padded(bodies)
	if !ok {
		return groups
	}
	for i, body := range bodies {
		cells[i].body, cells[i].tokens = body, tokens(body)
		cells[i].bones = bones(cells[i].tokens)
	}
	return [][]int{all}
}

// alikeBesides reports whether steps are single rounds that are alike in all but what is
// worked in them.
func alikeBesides(cells []step) bool {
	return cells[0].round() && !slices.ContainsFunc(cells, func(s step) bool {
		return s.From != s.To || s.Side != cells[0].Side || (s.inside > 0) != (cells[0].inside > 0)
	})
}

// label names the rounds of steps, and the side that faces; it is nil for steps that are none.
func label(steps []step) []Piece {
	if !steps[0].round() {
		return nil
	}
	pieces := rounds(steps)
	if side := steps[0].Side; side != stitch.AllRound {
		pieces = append(pieces, Piece{Text: " (" + side.Words() + ")"})
	}
	return pieces
}

// rounds names the rounds of steps: a noun, then their numbers.
func rounds(steps []step) []Piece {
	noun, values := "Round", make([]string, len(steps))
	if steps[0].Rows {
		noun = "Row"
	}
	for i, s := range steps {
		values[i] = s.Numbers()
	}
	if slices.ContainsFunc(steps, func(s step) bool { return s.From != s.To }) {
		noun += "s"
	}
	return append([]Piece{{Text: noun + " "}}, spans(steps, values)...)
}

// spans returns the numbers of rounds: "1–8 (9, 10)" where all begin with one round and go
// on to another, else each in full.
func spans(steps []step, values []string) []Piece {
	spans, from := 0, 0
	for _, s := range steps {
		if s.From != s.To {
			spans++
		}
		if s.From == steps[0].From {
			from++
		}
	}
	if n := len(steps); n > 1 && spans == n && from == n && !numeral(values)[0].Same {
		for i, s := range steps {
			values[i] = strconv.Itoa(s.To)
		}
		first := strconv.Itoa(steps[0].From)
		return []Piece{{Text: first, Values: slices.Repeat([]string{first}, n), Same: true}, {Text: "–"}, {Values: values}}
	}
	if spans == 1 && steps[0].From != steps[0].To { // or the others would be read as ends of spans
		for i, s := range steps {
			values[i] = fmt.Sprintf("%d–%d", s.From, s.To)
		}
	}
	return numeral(values)
}

// numeral returns a number with its values.
func numeral(values []string) []Piece {
	for _, v := range values {
		if v != values[0] {
			return []Piece{{Values: values}}
		}
	}
	return []Piece{{Text: values[0], Values: values, Same: true}}
}

// count returns what is told of the stitches after rounds; nil if none of them changes it.
func count(steps []step) []Piece {
	if !slices.ContainsFunc(steps, func(s step) bool { return s.told }) {
		return nil
	}
	all, inside := counts(steps)
	noun := " stitches"
	if !slices.ContainsFunc(all, func(n string) bool { return n != "1" }) {
		noun = " stitch"
	}
	pieces := append(numeral(all), Piece{Text: noun})
	if steps[0].inside > 0 {
		pieces = append(pieces, Piece{Text: ", "})
		pieces = append(pieces, numeral(inside)...)
		pieces = append(pieces, Piece{Text: " in the gusset"})
	}
	return pieces
}
