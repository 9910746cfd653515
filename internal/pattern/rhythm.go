package pattern

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// A gusset is told by rhythm where every round of it is plain or grows in the same way: what
// is done in a round that grows, in which rounds, and a table of their counts.

// rhythm is how a gusset grows in one size, or narrows.
type rhythm struct {
	what, noun string // "increase", "round"
	how        string // what is worked in a round that changes the count
	rounds     []int  // that do
	inside     []int  // stitches of the gusset after each of them
	all        []int  // and all
	last       int    // the last round of the section
}

// toMarker returns how the knit stitches before those that end a gusset are told.
func toMarker(left int) string {
	if left == 0 {
		return "knit to the next marker"
	}
	return fmt.Sprintf("knit to %d before the next marker", left)
}

// byRhythm lets a part be told by rhythm if that can be done in all sizes that have it.
func byRhythm(own [][]section, sizes []Size) {
	for _, part := range stitch.Parts() {
		if !part.Marked() {
			continue
		}
		told := map[*section]*rhythm{}
		can := true
		for i := range own {
			for k := range own[i] {
				if s := &own[i][k]; s.part == part {
					told[s] = s.rhythm(sizes[i].Out)
					can = can && told[s] != nil
				}
			}
		}
		for s, r := range told {
			if can {
				s.tell(r)
			}
		}
	}
}

// rhythm returns that of a section; nil if it has none.
func (s *section) rhythm(out *project.Outputs) *rhythm {
	from, to := s.span()
	of := out.Mitt.Section(s.part)
	if of == nil || to-from < 1 || slices.ContainsFunc(s.steps[from:to], func(s step) bool { return !s.round() }) {
		return nil
	}
	r := &rhythm{what: "increase", noun: of.Noun(), last: len(of.Rounds)}
	var bodies []string
	var leads [][]stitch.Op
	for _, one := range s.steps[from:to] {
		round := of.Rounds[one.From-1]
		switch {
		case round.In() == round.Out():
			if !one.plain() && !strings.HasPrefix(one.bones, "Work ") { // rounds that are worked again are told before
				return nil
			}
			continue
		case one.From != one.To:
			return nil
		case round.Out() < round.In():
			r.what = "decrease"
		}
		r.rounds, r.inside, r.all = append(r.rounds, one.From), append(r.inside, one.inside), append(r.all, one.all)
		bodies, leads = append(bodies, one.body), append(leads, round.Ops[round.Before:round.Before+round.Lead])
	}
	for _, round := range of.Rounds {
		if round.In() == round.Out() && slices.ContainsFunc(round.Ops, notKnit) {
			return nil
		}
	}
	if len(bodies) < 2 {
		return nil
	}
	r.how = template(bodies, leads)
	if r.how == "" {
		return nil
	}
	return r
}

// span returns the first of a section's steps that is one of rounds, and the one after the last.
func (s *section) span() (from, to int) {
	from = slices.IndexFunc(s.steps, step.round)
	if from < 0 {
		return 0, 0
	}
	to = len(s.steps)
	for !s.steps[to-1].round() {
		to--
	}
	return from, to
}

// template returns what rounds that change a gusset have in common, in words: all that
// differs is how many are knitted between the stitches at its edges. It is empty if more does.
func template(bodies []string, leads [][]stitch.Op) string {
	widest := 0
	for i := range leads {
		if len(leads[i]) > len(leads[widest]) {
			widest = i
		}
	}
	a, b := knits(leads[widest])
	before, after := leads[widest][:a], leads[widest][b:]
	list := items(inside(bodies[widest]))
	at := slices.IndexFunc(list, func(t item) bool { return t.text == fmt.Sprintf("k%d", b-a) })
	if b == a || at < 0 {
		return ""
	}
	for i, lead := range leads {
		n := len(lead) - len(before) - len(after)
		if n < 0 || !slices.Equal(lead[:len(before)], before) || !slices.Equal(lead[len(lead)-len(after):], after) || slices.ContainsFunc(lead[len(before):len(before)+n], notKnit) {
			return ""
		}
		its := slices.Clone(list[:at])
		if n > 0 {
			its = append(its, item{text: fmt.Sprintf("k%d", n)})
		}
		its = append(its, list[at+1:]...)
		if strings.Replace(bodies[i], inside(bodies[i]), "", 1) != strings.Replace(bodies[widest], inside(bodies[widest]), "", 1) || joinItems(its) != inside(bodies[i]) {
			return ""
		}
	}
	list[at] = item{text: toMarker(stitch.Round{Ops: after}.In())}
	return strings.Replace(bodies[widest], inside(bodies[widest]), joinItems(list), 1)
}

func notKnit(op stitch.Op) bool { return op != stitch.Knit }

// knits returns the longest run of knit stitches.
func knits(ops []stitch.Op) (from, to int) {
	for i := 0; i < len(ops); i++ {
		n := 0
		for i+n < len(ops) && ops[i+n] == stitch.Knit {
			n++
		}
		if n > to-from {
			from, to = i, i+n
		}
		i += n
	}
	return from, to
}

// inside returns the part of a round that is worked between a gusset's markers.
func inside(body string) string {
	parts := strings.Split(body, " | ")
	if len(parts) < 2 {
		return body
	}
	return parts[len(parts)-2]
}

// tell puts what is told of a rhythm in place of the section's rounds.
func (s *section) tell(r *rhythm) {
	from, to := s.span()
	how := fmt.Sprintf("%s%s %s: %s.", strings.ToUpper(r.what[:1]), r.what[1:], r.noun, r.how)
	told := []step{stepOf(words.Step{Text: how}), stepOf(words.Step{Text: r.when()}), {Step: words.Step{}, bones: "table", body: "table", table: r}}
	s.steps = slices.Concat(s.steps[:from], told, s.steps[to:])
}

// when returns in which rounds the count changes, and how the others are worked.
func (r *rhythm) when() string {
	text := fmt.Sprintf("Work it in %s %d", r.noun, r.rounds[0])
	for i := 1; i < len(r.rounds); {
		n, every := 0, r.rounds[i]-r.rounds[i-1]
		for i+n < len(r.rounds) && r.rounds[i+n]-r.rounds[i+n-1] == every {
			n++
		}
		nth := words.Ordinal(every) + " "
		if every == 1 {
			nth = ""
		}
		text += fmt.Sprintf(", then in every %s%s, %s", nth, r.noun, words.Times(n))
		i += n
	}
	others := ". Knit all other rounds, to the end of round %d."
	if r.noun == "row" {
		others = ". Knit the other right-side rows, purl the wrong-side ones, to the end of row %d."
	}
	return text + fmt.Sprintf(others, r.last)
}
