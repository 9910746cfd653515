package project

import (
	"errors"
	"maps"
	"reflect"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Reshape returns the edits that change the rounds of a mitt as asked: the
// numbers to be fixed, whichever way the increases were planned, and the marks
// that move with their rounds. It refuses the change with fault.Invalid, and says
// why, if anything else of the plan would change or if a round would no longer
// eat what the one below leaves.
func (pl *Planner) Reshape(d Document, marks chart.Marks, c chart.Change) ([]chart.Edit, error) {
	before, err := pl.Plan(d.Effective())
	if err != nil {
		return nil, fault.New(fault.Invalid, "There is no plan whose rounds could change: %s", fault.Message(err))
	}
	section := before.Mitt().Section(c.Section)
	if section == nil || c.Round < 1 || c.Round > len(section.Rounds) {
		return nil, fault.New(fault.Invalid, before.Make.InRows("The %s has no round %d."), c.Section.Words(), c.Round)
	}
	if knitted(before.Plan, c) {
		return nil, fault.New(fault.Invalid, "That is knitted already and stays: the work stands at %s %d of the %s.", before.Progress.Noun(), before.Progress.Round, before.Progress.Part.Words())
	}
	rounds, edits, err := changed(before.Plan, section.Rounds, c)
	if err != nil {
		return nil, err
	}
	edits = append(edits, d.letGo(edits, before.Plan.FromBase(len(rounds), changes(rounds)))...)
	want := before.Mitt()
	want.Section(c.Section).Rounds = rounds
	if err := pl.keepsStill(d, edits, want); err != nil {
		return nil, err
	}
	if c.Kind == chart.Move {
		return append(edits, carried(marks, before.Plan, c)...), nil
	}
	return append(edits, moved(marks, c, section.Noun() == "row")...), nil
}

// changed returns the section's rounds as asked, and the edits that fix them.
func changed(p *mitt.Plan, rounds []stitch.Round, c chart.Change) ([]stitch.Round, []chart.Edit, error) {
	out := append([]stitch.Round(nil), rounds...)
	r := rounds[c.Round-1]
	if r.Row() && c.Kind != chart.Move {
		return pairChanged(p, rounds, c)
	}
	switch c.Kind {
	case chart.Insert:
		out = append(out[:c.Round:c.Round], append([]stitch.Round{between(rounds, c.Round)}, rounds[c.Round:]...)...)
	case chart.Remove:
		if r.In() != r.Out() || r.Held() > 0 {
			return nil, nil, fault.New(fault.Invalid, "Round %d makes %d stitches of %d, which round %d needs. Move its change to another round first.", c.Round, r.Out(), r.In(), c.Round+1)
		}
		if len(rounds) == 1 {
			return nil, nil, fault.New(fault.Invalid, "The %s has only this round.", c.Section.Words())
		}
		out = append(out[:c.Round-1:c.Round-1], rounds[c.Round:]...)
	case chart.Move:
		return increaseMoved(p, rounds, c)
	}
	n, ok := mitt.RoundsOf(c.Section)
	if !ok {
		return nil, nil, fault.New(fault.Invalid, "The rounds of the %s are no number that can be fixed.", c.Section.Words())
	}
	edits := []chart.Edit{fix(n, strconv.Itoa(len(out)))}
	if c.Section.Marked() {
		list := p.FromBase(len(out), changes(out))
		out, edits = p.GussetWorked(len(out), list), append(edits, listed(list))
	}
	return out, edits, nil
}

// knitted reports whether a change touches what is on the needles already.
func knitted(p *mitt.Plan, c chart.Change) bool {
	k, first := p.Progress, c.Round
	switch {
	case k == nil:
		return false
	case c.Kind == chart.Move:
		first = min(c.Round, c.To)
	case c.Kind == chart.Insert:
		first++
	}
	return stitch.Order(k.Part, k.Down) > stitch.Order(c.Section, k.Down) || k.Part == c.Section && first <= k.Round
}

// letGo returns the edits that free a fixed rhythm, and a first increase that
// differs from list's, if edits fix a list of increase rounds.
func (d Document) letGo(edits []chart.Edit, list []int) []chart.Edit {
	fixed := func(e chart.Edit) bool { return e.Column == mitt.IncreaseRounds.Path() }
	if len(list) == 0 || !slices.ContainsFunc(edits, fixed) {
		return nil
	}
	var free []chart.Edit
	if d.Sheet.Given(mitt.Rhythm.Path()) != "" {
		free = append(free, fix(mitt.Rhythm, ""))
	}
	if was := d.Sheet.Given(mitt.FirstIncrease.Path()); was != "" && was != strconv.Itoa(list[0]) {
		free = append(free, fix(mitt.FirstIncrease, ""))
	}
	return free
}

// between returns a round to insert above round at. It is worked like the round
// above, or like round at itself, if that one keeps the count; else it is plain.
func between(rounds []stitch.Round, at int) stitch.Round {
	for _, i := range []int{at, at - 1} {
		if i < len(rounds) && rounds[i].In() == rounds[i].Out() && rounds[i].In() == rounds[at-1].Out() && rounds[i].Held() == 0 {
			return rounds[i]
		}
	}
	// Neither keeps the count, so a plain round goes between them.
	below := rounds[at-1]
	ops := make([]stitch.Op, below.Out())
	for i := range ops {
		ops[i] = stitch.Knit
	}
	return stitch.Round{Ops: ops, Lead: below.LeadOut(), Even: below.Even}
}

// increaseMoved moves the increases of one round to another, which must lie
// between the increase rounds before and after.
func increaseMoved(p *mitt.Plan, rounds []stitch.Round, c chart.Change) ([]stitch.Round, []chart.Edit, error) {
	list := changes(rounds)
	at := -1
	for i, r := range list {
		if r == c.Round {
			at = i
		}
	}
	word := "increase"
	if p.Down() {
		word = "decrease"
	}
	switch {
	case !c.Section.Marked() || at < 0:
		return nil, nil, fault.New(fault.Invalid, p.Make.InRows("Round %d of the %s has no "+word+" to move."), c.Round, c.Section.Words())
	case c.To < 1 || c.To > len(rounds):
		return nil, nil, fault.New(fault.Invalid, p.Make.InRows("The gusset has rounds 1 to %d: its "+word+"s stay there."), len(rounds))
	case at > 0 && c.To <= list[at-1] || at+1 < len(list) && c.To >= list[at+1]:
		return nil, nil, fault.New(fault.Invalid, p.Make.InRows("One %s round can't pass another: this one goes between its neighbours."), word)
	}
	list[at] = c.To
	list = p.FromBase(len(rounds), list)
	return p.GussetWorked(len(rounds), list), []chart.Edit{listed(list)}, nil
}

// changes returns the numbers of the rounds that gain stitches, or lose them.
func changes(rounds []stitch.Round) []int {
	var list []int
	for i, r := range rounds {
		if r.Out() != r.In() {
			list = append(list, i+1)
		}
	}
	return list
}

// fix returns the edit that fixes a number, or frees it if text is empty.
func fix(n mitt.Number, text string) chart.Edit {
	return chart.Edit{Layer: chart.Sheet, Column: n.Path(), Value: text}
}

// listed returns the edit that fixes a list of increase rounds.
func listed(rounds []int) chart.Edit {
	parts := make([]string, len(rounds))
	for i, r := range rounds {
		parts[i] = strconv.Itoa(r)
	}
	return fix(mitt.IncreaseRounds, strings.Join(parts, ", "))
}

// keepsStill plans again with the edits, and fails if the mitt would differ from
// the wanted one or would be unsound.
func (pl *Planner) keepsStill(d Document, edits []chart.Edit, want stitch.Mitt) error {
	d.Sheet = d.Sheet.Clone()
	for _, e := range edits {
		d.put(e.Column, e.Value)
	}
	after, err := pl.Plan(d.Effective())
	var fields fault.Fields
	if errors.As(err, &fields) {
		return fault.New(fault.Invalid, "No plan has these rounds: %s", fields[0].Message)
	}
	if err != nil {
		return err
	}
	got := after.Mitt()
	if faults := stitch.Ledger(want); len(faults) > 0 {
		return fault.New(fault.Invalid, "It would not add up: %s.", faults[0].Words)
	}
	for i, section := range want.Sections {
		if i >= len(got.Sections) || !same(section, got.Sections[i]) {
			return fault.New(fault.Invalid, "More than this would change: the %s would be worked otherwise. Fix its numbers in the plan first.", section.Part.Words())
		}
	}
	return nil
}

func same(a, b stitch.Section) bool {
	return a.Part == b.Part && reflect.DeepEqual(a.Rounds, b.Rounds) && reflect.DeepEqual(a.Finish, b.Finish)
}

// carried returns the edits that move what is painted on the increases of a round
// along with them.
func carried(marks chart.Marks, p *mitt.Plan, c chart.Change) []chart.Edit {
	m := p.Mitt()
	names := wale.Mitt(m, p.UnderThumb())[c.Section][c.Round-1]
	to := maps.Clone(marks)
	for i, op := range m.Section(c.Section).Rounds[c.Round-1].Ops {
		at := chart.Anchor{Section: c.Section, Round: c.Round, Column: names[i]}
		if mark, painted := marks[at]; painted && (op.Out() > op.In() || p.Down() && op.In() > op.Out()) {
			delete(to, at)
			at.Round = c.To
			to[at] = mark
		}
	}
	return marks.Difference(to)
}

// moved returns the edits that move the marks above an inserted or removed round, or
// two rows, along with their rounds. The marks of what is removed go with it.
func moved(marks chart.Marks, c chart.Change, rows bool) []chart.Edit {
	first, last := c.Round, c.Round
	if rows {
		first, last = pairOf(c.Round)
	}
	step := map[chart.ChangeKind]int{chart.Insert: 1, chart.Remove: -1}[c.Kind] * (last - first + 1)
	if step == 0 {
		return nil
	}
	to := chart.Marks{}
	for at, mark := range marks {
		switch {
		case at.Section != c.Section || at.Round < first || (c.Kind == chart.Insert && at.Round <= last):
			to[at] = mark
		case at.Round <= last:
		default:
			at.Round += step
			to[at] = mark
		}
	}
	return marks.Difference(to)
}
