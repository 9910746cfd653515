package project

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// ordered is a repeat as it is written in a sheet.
type ordered struct {
	yarns, stitches []string // rows from the lowest up, from the left
	wide, high      int
	of              func(key, usual string) string
}

func readOrdered(s sheet.Sheet, i int) ordered {
	a := ordered{of: func(key, usual string) string {
		if text := s[sheet.RepeatPath(i, key)]; text != "" {
			return text
		}
		return usual
	}}
	rows := func(key string) (list []string) {
		if text := a.of(key, ""); text != "" {
			list = strings.Split(text, "/")
			slices.Reverse(list)
			a.wide, a.high = len(list[0]), len(list)
		}
		return list
	}
	a.stitches, a.yarns = rows("stitches"), rows("motif")
	return a
}

func (a ordered) number(key, usual string) int {
	n, _ := strconv.Atoi(a.of(key, usual))
	return n
}

// letters returns what a cell of the motif sets; a point is nothing.
func (a ordered) letters(right, up int) (yarn, op byte) {
	yarn, op = '.', '.'
	if a.yarns != nil {
		yarn = a.yarns[up][a.wide-1-right]
	}
	if a.stitches != nil {
		op = a.stitches[up][a.wide-1-right]
	}
	return yarn, op
}

// even reports whether every row reads the same from either end.
func (a ordered) even() bool {
	for _, row := range slices.Concat(a.yarns, a.stitches) {
		back := []byte(row)
		if slices.Reverse(back); string(back) != row {
			return false
		}
	}
	return true
}

// cellAt names an operation of a round.
type cellAt struct {
	part      stitch.Part
	round, op int // from 0
}

// looks is what repeats make of an operation.
type looks struct {
	yarn             string
	op               stitch.Op
	which, right, up int // the repeat from 1
}

// rule is the rule of repeats, worked out loop by loop.
type rule struct {
	m       stitch.Mitt
	of      map[stitch.Part][]loops
	cells   map[cellAt]looks
	came    []repeat.Came // of Nowhere only whether it is empty
	left    bool          // of the left hand; only its cuff is followed
	unknown bool          // of the left hand: what its plain cuff lies under
}

// ruled lays the repeats of a sheet on a mitt worked as the right hand. s is its chart
// without them, of which it asks what lies on the palm and what on the back, and the names of
// columns that a repeat lies between. Of a left hand, whose rows are given, only the cuff is
// ruled: of the others each column is as the right hand's.
func ruled(m stitch.Mitt, sh sheet.Sheet, n int, s chart.Source, left map[stitch.Part][]chart.Row) *rule {
	r := &rule{m: m, of: follow(m), cells: map[cellAt]looks{}, left: left != nil}
	hand := roundHand(m, r.of, s)
	if left != nil {
		r.m, r.of = stitch.Mirror(m), map[stitch.Part][]loops{}
		for i := range r.m.Sections {
			if one := &r.m.Sections[i]; len(one.Rounds) > 0 {
				r.of[one.Part] = named(one, left[one.Part])
			}
		}
		if one := r.m.Section(stitch.CuffPlain); one != nil && len(one.Rounds) > 0 && hand != nil {
			r.unknown = !hand.onLeft(one, r.of[one.Part], hand.edge, s.Base)
		}
	}
	for i := range n {
		a := readOrdered(sh, i)
		c := repeat.Came{Nowhere: "off"}
		if a.of("off", "false") == "false" {
			c = r.lay(i, a, hand, s)
		}
		r.came = append(r.came, c)
	}
	return r
}

// lay lays one repeat.
func (r *rule) lay(i int, a ordered, hand *counted, s chart.Source) repeat.Came {
	part := stitch.Part(a.of("section", "whole"))
	ring, parts := hand, []stitch.Part{part}
	switch {
	case part == "whole" && hand == nil:
		return repeat.Came{Nowhere: "no hand"}
	case part == "whole":
		parts = hand.parts
	case hand == nil || !slices.Contains(hand.parts, part):
		if ring = byItself(r.m, r.of, s, part, r.left); ring == nil {
			return repeat.Came{Nowhere: "no such part"}
		}
	}
	var all []cellAt // the rounds in which it lies, from the motif's lowest up
	n := 0
	for _, p := range parts {
		n += len(r.m.Section(p).Rounds)
	}
	to := a.number("to", "-1")
	if to < 0 {
		to += n + 1
	}
	n, over := 0, a.of("over", "round")
	for _, p := range parts {
		for k := range r.m.Section(p).Rounds {
			// "in the gusset": none of its rounds lie elsewhere, so the motif begins there.
			if n++; n >= a.number("from", "1") && n <= to && (over != "gusset" || p == stitch.Gusset) {
				all = append(all, cellAt{p, k, 0})
			}
		}
	}
	c := repeat.Came{Rounds: len(all), Up: len(all) / a.high, Left: len(all) % a.high}
	if a.of("cut", "false") == "false" {
		all = all[:c.Up*a.high]
	}
	if len(all) == 0 {
		return repeat.Came{Nowhere: "no rounds"}
	}
	in := a.of("gusset", "out")
	has := map[int]int{} // which stitch of the motif the columns of the hand have
	if over != "gusset" {
		line, why := ring.line(a, over)
		if why != "" {
			return repeat.Came{Nowhere: why}
		}
		c.Stitches = len(line)
		if c.Across = len(line) / a.wide; c.Across == 0 {
			return repeat.Came{Nowhere: "too wide"}
		}
		at, ok := ring.begins(a, line)
		if !ok {
			return repeat.Came{Nowhere: "no room"}
		}
		c.Before, c.Fewer = at, c.Across
		c.Across = (len(line) - at) / a.wide
		c.After = len(line) - at - c.Across*a.wide
		if ring.exact(a, line) { // "round the hand none is lost: one goes on over the beginning"
			c.Across, c.Before, c.After = len(line)/a.wide, 0, 0
		}
		c.Fewer -= c.Across
		for k := range c.Across * a.wide {
			has[line[(at+k)%len(line)]] = ((k-a.number("offset", "0"))%a.wide + a.wide) % a.wide
		}
	}
	inGusset := over == "gusset" || over == "round" && in != "out"
	for up, at := range all {
		for j, right := range r.round(a, at, has, ring, inGusset, over != "gusset") {
			if right >= 0 && r.left && a.of("left", "mirror") == "as_drawn" {
				right = a.wide - 1 - right
			}
			if right >= 0 {
				r.set(i, a, cellAt{at.part, at.round, j}, right, up%a.high)
			}
		}
	}
	if over == "gusset" {
		c.Stitches, c.Across = r.widest(), 1
	}
	if inGusset && slices.ContainsFunc(all, func(at cellAt) bool { return at.part == stitch.Gusset }) {
		c.Beside = in != "mirror" && in != "edge" && a.number("offset", "0") == 0 && (r.widest()-a.wide)%2 != 0 && a.even()
	}
	return c
}

// set sets what a cell of a motif says: its yarn on whatever is worked there, its stitch only
// in place of a plain one.
func (r *rule) set(i int, a ordered, at cellAt, right, up int) {
	planned := r.m.Section(at.part).Rounds[at.round].Ops[at.op]
	if planned == stitch.Hold || planned.In()+planned.Out() == 0 {
		return
	}
	cell, ok := r.cells[at]
	if !ok {
		cell = looks{yarn: "a", op: planned}
	}
	yarn, letter := a.letters(right, up)
	sets := yarn != '.'
	if sets {
		cell.yarn = string(rune(yarn))
	}
	if op := map[byte]stitch.Op{'k': stitch.Knit, 'p': stitch.Purl, 't': stitch.KnitTBL, 's': stitch.Slip}[letter]; op != stitch.NoStitch && (planned == stitch.Knit || planned == stitch.Purl) {
		cell.op, sets = op, true
	}
	if sets {
		cell.which, cell.right, cell.up = i+1, right, up
		r.cells[at] = cell
	}
}

// block returns the operations of a round that are the gusset's.
func block(m stitch.Mitt, at cellAt) (from, to int) {
	r := &m.Section(at.part).Rounds[at.round]
	return r.Before, r.Before + r.Lead
}

func (r *rule) widest() (n int) {
	if s := r.m.Section(stitch.Gusset); s != nil {
		for _, round := range s.Rounds {
			n = max(n, round.Lead)
		}
	}
	return n
}

// round returns which stitch of the motif each operation of a round has; −1: none.
func (r *rule) round(a ordered, at cellAt, has map[int]int, ring *counted, inGusset, inHand bool) []int {
	worked := r.of[at.part][at.round].worked
	list := make([]int, len(worked))
	from, to := 0, 0
	if at.part == stitch.Gusset {
		from, to = block(r.m, at)
	}
	for j, id := range worked {
		list[j] = -1
		if j >= from && j < to {
			if inGusset {
				list[j] = r.gusset(a, at, j-from, to-from)
			}
			continue
		}
		if place, ok := ring.place[at.part][id]; ok && inHand {
			if u, ok := has[place]; ok {
				list[j] = u
			}
		}
	}
	return list
}

// gusset returns which stitch of the motif operation k of n of a gusset's round has.
func (r *rule) gusset(a ordered, at cellAt, k, n int) int {
	off := a.number("offset", "0")
	turn := func(u int) int { return ((u-off)%a.wide + a.wide) % a.wide }
	if a.of("gusset", "out") == "edge" {
		return turn(min(k, n-1-k))
	}
	section := r.m.Section(stitch.Gusset)
	var widest []int
	for i := range section.Rounds {
		if from, to := block(r.m, cellAt{stitch.Gusset, i, 0}); to-from == r.widest() {
			widest = r.of[stitch.Gusset][i].worked[from:to]
		}
	}
	from, _ := block(r.m, at)
	column := slices.Index(widest, r.of[at.part][at.round].worked[from+k])
	if column < 0 {
		return -1
	}
	if a.of("gusset", "out") == "mirror" { // from the middle outwards on both sides
		right, left := (len(widest)-1)/2, len(widest)/2
		return turn(max(right-column, column-left))
	}
	return turn(column - floored(len(widest)-a.wide, 2))
}

// line returns the places that a repeat is laid across, in order.
func (c *counted) line(a ordered, over string) (line []int, why string) {
	n := len(c.order)
	on := make([]bool, n)
	for k := range on {
		switch over {
		case "round":
			line = append(line, k)
		case "palm", "back":
			on[k] = c.areas[k] == over || over == "palm" && c.thumbInPalm(k)
		}
	}
	switch over {
	case "round":
		return line, ""
	case "columns":
		names := strings.Split(a.of("columns", ""), "/")
		from, to := slices.Index(c.names, names[0]), slices.Index(c.names, names[1])
		if from < 0 || to < 0 {
			return nil, "no such columns"
		}
		for k := from; ; k = (k + 1) % n {
			if line = append(line, k); k == to {
				return line, ""
			}
		}
	}
	if line = run(on, true); len(line) == 0 {
		return nil, "no " + over
	}
	return line, ""
}
