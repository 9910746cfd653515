package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Dyed says in what a mitt of several colours is worked. Round has the colours of a round
// of a part, from 1; nil if it is all in the main colour, which is the first yarn.
type Dyed struct {
	Yarns  []string // what they are called in the rounds
	Motifs []MotifRows
	Every  int // a strand is caught at least at every so many stitches
	Round  func(part stitch.Part, round int) *RoundDyed
}

// MotifRows is a motif that is laid again and again: its rows from the lowest up, each as
// this hand works it.
type MotifRows struct {
	Name string
	Rows [][]Worked
}

// Worked is one stitch in its yarn.
type Worked struct {
	Op   stitch.Op
	Yarn string
}

// RoundDyed has an entry for each operation of a round, as it stands there: its yarn; the
// motif that laid it, from 1, and the motif's row, from 1 (0: none). Nil lists say nothing.
// Catch has the yarns whose strands are too long in the round.
type RoundDyed struct {
	Yarns []string
	Motif []int
	Row   []int
	Catch []string
}

// turned returns the round as the hands work it on the wrong side. Motifs are told as they
// are worked on the right one.
func (of RoundDyed) turned() RoundDyed {
	back := RoundDyed{Yarns: slices.Clone(of.Yarns), Catch: of.Catch}
	slices.Reverse(back.Yarns)
	return back
}

// cut returns the operations from one up to another.
func (of RoundDyed) cut(from, to int) RoundDyed {
	of.Yarns = of.Yarns[from:to]
	if of.Motif != nil {
		of.Motif, of.Row = of.Motif[from:to], of.Row[from:to]
	}
	return of
}

// Rows of motifs stand only for what takes long to tell: a part of a round with more than
// longText bytes, and of it rows with more than longRow, if they save a third.
const (
	longText = 160
	longRow  = 48
)

// dyer writes the rounds of one mitt in their colours, and remembers what it has told.
type dyer struct {
	*Dyed
	met    bool            // a round of several colours was met in the section
	caught bool            // a strand to catch was met
	taught bool            // and how to catch was told
	refers map[[2]int]bool // rows of motifs that rounds referred to, by motif and row from 1
	told   map[[2]int]bool // those that were told
	below  []Worked        // the round below in the section
	bumps  bool            // a purl in another yarn than the stitch below was met
	bumped bool            // and that was told
	wide   map[[2]int]bool // whether a row of a motif takes long to tell, as far as that was asked
	going  string          // the yarn that a reader goes on with; empty: none is known
}

// round returns a round of a section in words, in its colours if it has any. A round in one
// yarn names it where a reader would go on with another, and again after a round that reads
// the same; else in is the yarn that is not named. dyed reports whether it has several.
func (d *dyer) round(part stitch.Part, n int, r stitch.Round, last string) (text string, dyed bool, in string) {
	if d == nil {
		return Round(part, r), false, ""
	}
	of, yarn := d.Round(part, n), d.Yarns[0]
	d.above(r, of)
	if of != nil {
		d.met = true
		used := inYarns(r.Ops, of.Yarns)
		if len(used) > 1 {
			d.going = ""
			return d.coloured(part, r, *of), true, ""
		}
		if len(used) == 1 {
			yarn = used[0]
		}
	}
	text = Round(part, r)
	named := inOneYarn(yarn, text)
	if d.going == yarn && named != last {
		return text, false, yarn
	}
	d.going = yarn
	return named, false, ""
}

// above looks at how a round lies on the one below: a purl in another yarn than the stitch
// under it shows a bump of both (common practice, no source).
func (d *dyer) above(r stitch.Round, of *RoundDyed) {
	list := make([]Worked, len(r.Ops))
	for i, op := range r.Ops {
		if list[i] = (Worked{op, d.Yarns[0]}); of != nil {
			list[i].Yarn = of.Yarns[i]
		}
	}
	for i := range min(len(list), len(d.below)) {
		if list[i].Op.In() != 1 || d.below[i].Op.Out() != 1 { // it stands on another one
			break
		}
		d.bumps = d.bumps || list[i].Op == stitch.Purl && list[i].Yarn != d.below[i].Yarn
	}
	d.below = list
}

// inOneYarn names the yarn of a whole round.
func inOneYarn(yarn, text string) string { return fmt.Sprintf("In %s: %s", yarn, small(text)) }

// before returns what is told before the rounds of a section, which are written already: how
// strands are caught and the rows of motifs, if it is the first with any; and that plain
// rounds have colours.
func (d *dyer) before(s *stitch.Section, first bool) []Step {
	if d == nil {
		return nil
	}
	var steps []Step
	say := func(text string) { steps = append(steps, Step{Text: text}) }
	if first {
		say("Yarns: " + strings.Join(d.Yarns, ", ") + ". Where no yarn is named, go on in the one before.")
	}
	if by := s.About.Shaping; by != nil && d.met && strings.Contains(scheduleOf(s), "plain round") {
		what := "increase"
		if by.Step < 0 {
			what = "decrease"
		}
		say(inRows(fmt.Sprintf("Here a plain round is one without %s: it may have colours.", article(what)+" "+what), s))
	}
	if d.bumps && !d.bumped {
		d.bumped = true
		say("A purl in another yarn than the stitch below shows a bump of both. If you mind that, knit it instead.")
	}
	if d.caught && !d.taught {
		d.taught = true
		say(catchTold(d.Every))
	}
	for m := range d.Motifs {
		for row, list := range d.Motifs[m].Rows {
			key := [2]int{m + 1, row + 1}
			if !d.refers[key] || d.told[key] {
				continue
			}
			d.told[key] = true
			say(fmt.Sprintf("%s: %s.", d.motifRow(m+1, row+1), rowWords(list)))
		}
	}
	return steps
}

// catchSaid begins the sentence that explains how strands are caught.
const catchSaid = "“Catching” a yarn:"

// catchTold explains the sign of a round in which strands are caught (common practice, no
// source).
func catchTold(every int) string {
	return fmt.Sprintf(catchSaid+" wherever it isn’t used for more than %s, catch it at least every %s. Cross it there with the working yarn, behind a stitch.", Plural(every, "stitch"), Ordinal(every))
}

// coloured returns a round in its colours.
func (d *dyer) coloured(part stitch.Part, r stitch.Round, of RoundDyed) string {
	used := inYarns(r.Ops, of.Yarns)
	switch len(used) {
	case 0:
		return Round(part, r)
	case 1:
		return inOneYarn(used[0], Round(part, r))
	}
	catch := ""
	if len(of.Catch) > 0 {
		last := len(of.Catch) - 1
		catch = of.Catch[last]
		if last > 0 {
			catch = strings.Join(of.Catch[:last], ", ") + " and " + catch
		}
		catch = "Catching " + catch + ": "
		if d != nil {
			d.caught = true
		}
	}
	if r.Side == stitch.WrongSide {
		r, of = r.AsWorked(), of.turned()
	}
	begun := func(text string) string {
		if catch == "" {
			return opening(text)
		}
		return catch + text
	}
	if !part.Marked() || r.Lead == 0 || r.Lead == len(r.Ops) {
		return fmt.Sprintf("%s (%d).", begun(d.phrase(r, of)), r.Out())
	}
	to := r.Before + r.Lead
	lead := d.phrase(cut(r, r.Before, to), of.cut(r.Before, to))
	if r.Before > 0 {
		lead = d.phrase(cut(r, 0, r.Before), of.cut(0, r.Before)) + " | " + lead
	}
	rest := of.cut(to, len(r.Ops))
	hand := d.phrase(cut(r, to, len(r.Ops)), rest)
	if in := inYarns(r.Ops[to:], rest.Yarns); len(in) == 1 && plain(r.Ops[to:]) {
		hand = "knit " + in[0] + " to the end"
	}
	return fmt.Sprintf("%s | %s %s.", begun(lead), hand, counted(part, r))
}

// phrase returns a part of a round in words. A long one refers to the rows of motifs.
func (d *dyer) phrase(r stitch.Round, of RoundDyed) string {
	text := strings.Join(inColours(colouredRuns(r, of, 0, len(r.Ops))), ", ")
	if again := wholly(r, of); again != "" && len(again) < len(text) {
		text = again
	}
	if d == nil || of.Motif == nil || len(text) <= longText {
		return text
	}
	tokens, rows := d.byRows(r, of)
	if short := strings.Join(inColours(tokens), ", "); 3*len(short) < 2*len(text) {
		text = short
		for _, row := range rows {
			d.refers[row] = true
		}
	}
	return text
}
