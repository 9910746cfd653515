package project

import (
	"fmt"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// The loops of a mitt, followed through its rounds as the right hand knits them: every loop
// has a number, and keeps it as long as its column goes on. This knows nothing of the names
// of columns.

// loops are the numbers of the loops that the operations of a round are worked with, and of
// those before and after it.
type loops struct {
	before, worked, after []int
	changes               bool // stitches are made or taken together
}

// follow returns the loops of all rounds.
func follow(m stitch.Mitt) map[stitch.Part][]loops {
	of, held, n := map[stitch.Part][]loops{}, map[stitch.Set][]int{}, 0
	cast := func() int { n++; return n - 1 }
	var live []int
	for i := range m.Sections {
		s := &m.Sections[i]
		rounds := s.Rounds
		if s.Down && len(s.Finish.Ops) > 0 {
			rounds = append(slices.Clone(rounds), s.Finish) // it puts aside what the hand takes in
		}
		if len(s.Rounds) == 0 {
			continue
		}
		if len(s.From) > 0 || s.CastOn > 0 {
			live = nil
			for _, set := range s.From {
				live, held[set] = append(live, held[set]...), nil
			}
			for len(live) < s.Rounds[0].In() {
				live = append(live, cast())
			}
		}
		if k := len(live); k > 0 {
			turn := (s.Shift%k + k) % k
			live = slices.Concat(live[turn:], live[:turn])
		}
		for i, r := range rounds {
			if r.In() != len(live) {
				panic(fmt.Sprintf("%s round %d takes %d loops of %d: %+v", s.Part, i+1, r.In(), len(live), *s))
			}
			one := loops{before: live}
			at := 0
			for j, op := range r.Ops {
				own := -1
				one.changes = one.changes || alters(op)
				switch {
				case op == stitch.Take && len(held[r.SetAt(j)]) > 0:
					own, held[r.SetAt(j)] = held[r.SetAt(j)][0], held[r.SetAt(j)][1:]
				case op.In() > 0:
					own = live[at+onTop(op)]
				case op.Out() > 0:
					own = cast()
				}
				at += op.In()
				one.worked = append(one.worked, own)
				for k := range op.Out() {
					if k > 0 {
						one.after = append(one.after, cast())
					} else {
						one.after = append(one.after, own)
					}
				}
				if op == stitch.Hold {
					held[r.SetAt(j)] = append(held[r.SetAt(j)], own)
				}
			}
			of[s.Part] = append(of[s.Part], one)
			live = one.after
		}
	}
	return of
}

func alters(op stitch.Op) bool { return op.In() != 1 || op.Out() != 1 }

// onTop returns which of the stitches that an operation takes together lies on top and goes
// on (common practice, no source).
func onTop(op stitch.Op) int {
	switch op {
	case stitch.K2tog, stitch.P2tog:
		return 1
	case stitch.K3tog:
		return 2
	case stitch.S2KP:
		return 1
	}
	return 0
}

// counted are the loops round a tube, in the order of its columns, and where each lies.
type counted struct {
	order []int
	areas []string
	names []string // of their columns, as the chart has them
	base  []int    // of the gusset
	palm  bool     // the thumb sits in the palm
	foot  *stitch.Section
	edge  []int // the loops there, with those of a seam
	place map[stitch.Part]map[int]int
	parts []stitch.Part // in which it is counted, in the order worked
}

// thumbInPalm reports whether a place is one of a thumb that sits in the palm.
func (c *counted) thumbInPalm(at int) bool { return c.palm && slices.Contains(c.base, c.order[at]) }

// add counts one more loop, which an operation of a row works.
func (c *counted) add(id int, row told, j int, onTop bool) {
	name, area := "", ""
	switch last := len(c.names) - 1; {
	case onTop:
		name = row.names[j]
	case last >= 0: // columns are numbered along
		n, _ := strconv.Atoi(c.names[last][1:])
		name = c.names[last][:1] + strconv.Itoa(n+1)
	}
	if row.areas != nil {
		area = row.areas[j]
	}
	c.order, c.names, c.areas = append(c.order, id), append(c.names, name), append(c.areas, area)
}

// told is what a chart tells of the cells of a round.
type told struct{ areas, names []string }

func toldOf(s chart.Source, part stitch.Part, round int) (of told) {
	g := s.Grid(chart.Options{View: chart.ViewOf(part)})
	for i := range g.Rows {
		if g.Rows[i].Section != part || g.Rows[i].Round != round {
			continue
		}
		for _, c := range g.Rows[i].Cells {
			of.names = append(of.names, c.Column)
		}
		for _, a := range g.Page().Rows[i].Areas {
			of.areas = append(of.areas, slices.Repeat([]string{a.Words}, a.Count)...)
		}
	}
	return of
}

// lowest returns the round at the lower edge of a section, from 0; of one without a gusset
// the lowest that has as many stitches as most have below the ribbing at its end, of two such
// numbers the lower one's: "numbered once over plain cuff, gusset, hand and top".
func lowest(s *stitch.Section, of []loops) int {
	up := make([]int, len(s.Rounds)) // as they lie
	for k := range up {
		if up[k] = k; s.Down {
			up[k] = len(s.Rounds) - 1 - k
		}
	}
	best, most := up[0], 0
	if s.Part == stitch.Gusset {
		return best
	}
	ribbed := func(k int) bool { return slices.Index(up, k) >= len(up)-s.About.Ribbed }
	if !slices.ContainsFunc(up, func(k int) bool { return !ribbed(k) && !of[k].changes }) {
		ribbed = func(int) bool { return false }
	}
	for _, k := range up {
		same := 0
		if ribbed(k) {
			break
		}
		for i := range of {
			if i < len(s.Rounds) && !ribbed(i) && !of[i].changes && len(of[i].worked) == len(of[k].worked) {
				same++
			}
		}
		if !of[k].changes && same > most {
			best, most = k, same
		}
	}
	return best
}

// roundHand counts the loops round the hand at the foot of its gusset, or of the lowest part
// that is the hand's.
func roundHand(m stitch.Mitt, of map[stitch.Part][]loops, s chart.Source) *counted {
	var run []*stitch.Section
	var foot *stitch.Section
	for _, one := range m.Upward() {
		if over := one.Part.Over(); over != stitch.OverWrist && over != stitch.OverDigit && over != stitch.OverCap {
			run = append(run, one)
			if foot == nil || one.Part == stitch.Gusset || foot.Part == stitch.CuffPlain {
				foot = one
			}
		}
	}
	if foot == nil {
		return nil
	}
	c := &counted{place: map[stitch.Part]map[int]int{}, palm: inPalm(m)}
	low := lowest(foot, of[foot.Part])
	r, at := &foot.Rounds[low], of[foot.Part][low]
	edge, cells := at.before, each(r, stitch.Op.In)
	before, lead := r.BeforeIn(), r.LeadIn()
	if foot.Down {
		edge = at.after
	}
	c.foot, c.edge = foot, edge
	// Where its one round brings the cuff's stitches to the hand's, these are counted.
	if foot.Down != (at.changes && foot.Part != stitch.Gusset) {
		edge, cells, before, lead = at.after, each(r, stitch.Op.Out), r.BeforeOut(), r.LeadOut()
	} else {
		edge = at.before
	}
	row := toldOf(s, foot.Part, low+1)
	own := map[int]int{}
	for k := foot.Seam; k < len(edge)-foot.Seam; k++ {
		own[edge[k]] = len(c.order)
		c.add(edge[k], row, cells[k], edge[k] == at.worked[cells[k]])
		if foot.Part == stitch.Gusset && k >= before && k < before+lead {
			c.base = append(c.base, edge[k])
		}
	}
	for _, one := range run {
		c.place[one.Part] = own
		c.bridge(one, of[one.Part], own)
	}
	for i := range m.Sections {
		if slices.Contains(run, &m.Sections[i]) {
			c.parts = append(c.parts, m.Sections[i].Part)
		}
	}
	return c
}

func inPalm(m stitch.Mitt) bool {
	return slices.ContainsFunc(m.Sections, func(s stitch.Section) bool { return s.About.Palm })
}

// onLeft gives the columns of a left hand's plain cuff the places of those that they lie
// under: at the foot of the hand it has the right hand's columns from the other end, and in
// rounds those under its thumb before the others. It doesn't know them where the uppermost
// round makes or takes stitches together, which both hands do alike from either end.
func (c *counted) onLeft(s *stitch.Section, of []loops, right []int, under int) (known bool) {
	near, own := of[len(of)-1], map[int]int{}
	edge := near.after
	if s.Down {
		near = of[0]
		edge = near.before
	}
	if near.changes {
		return false
	}
	for k, id := range edge {
		at := len(right) - 1 - k
		if s.Seam == 0 && k < under {
			at = under - 1 - k
		} else if s.Seam == 0 {
			at += under
		}
		if place, ok := c.place[c.foot.Part][right[at]]; ok {
			own[id] = place
		}
	}
	c.place[stitch.CuffPlain] = own
	return true
}

// named returns the loops of a section's rounds by the names of its columns: the left hand has
// the right hand's columns, also where both hands take other stitches together.
func named(s *stitch.Section, rows []chart.Row) []loops {
	number, list := map[string]int{}, make([]loops, len(s.Rounds))
	for i, r := range s.Rounds {
		for j, op := range r.Ops {
			name := rows[i].Cells[j].Column
			if _, known := number[name]; !known {
				number[name] = len(number)
			}
			id := number[name]
			list[i].changes = list[i].changes || alters(op)
			list[i].worked = append(list[i].worked, id)
			for k := range op.In() {
				if k == onTop(op) {
					list[i].before = append(list[i].before, id)
				} else {
					list[i].before = append(list[i].before, -1)
				}
			}
			for range op.Out() {
				list[i].after = append(list[i].after, id)
			}
		}
	}
	return list
}

// each returns the operation that each loop belongs to.
func each(r *stitch.Round, loops func(stitch.Op) int) (list []int) {
	for j, op := range r.Ops {
		list = append(list, slices.Repeat([]int{j}, loops(op))...)
	}
	return list
}

// bridge gives what is cast on over the thumb's gap, or from the tip ends there, the places
// of the gusset's base, middle on middle.
func (c *counted) bridge(s *stitch.Section, of []loops, own map[int]int) {
	var list []int
	for i, r := range s.Rounds {
		for j, op := range r.Ops {
			if !s.Down && op == stitch.CastOn || s.Down && op == stitch.Hold {
				list = append(list, of[i].worked[j])
			}
		}
	}
	for k, id := range list {
		// Of two rests the smaller one comes first.
		if at := k + floored(len(c.base)-len(list), 2); at >= 0 && at < len(c.base) {
			own[id] = own[c.base[at]]
		}
	}
}

func floored(a, n int) int { return (a - ((a%n)+n)%n) / n }

// byItself counts the loops of a section that is no part of the hand, after the first of its
// widest rounds; those of a left hand's cuff from the other end.
func byItself(m stitch.Mitt, of map[stitch.Part][]loops, s chart.Source, part stitch.Part, left bool) *counted {
	section := m.Section(part)
	if section == nil || len(section.Rounds) == 0 {
		return nil
	}
	widest := 0
	for i := range section.Rounds {
		if section.Rounds[i].Out() > section.Rounds[widest].Out() {
			widest = i
		}
	}
	c := &counted{parts: []stitch.Part{part}, place: map[stitch.Part]map[int]int{part: {}}}
	r, row := &section.Rounds[widest], toldOf(s, part, widest+1)
	worked := of[part][widest].worked
	for j, op := range r.Ops {
		if op.Out() == 0 || j < section.Seam || j >= len(r.Ops)-section.Seam {
			continue
		}
		c.place[part][worked[j]] = len(c.order)
		c.add(worked[j], row, j, true)
	}
	if left {
		for id, at := range c.place[part] {
			c.place[part][id] = len(c.order) - 1 - at
		}
	}
	return c
}
