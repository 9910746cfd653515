package view

import (
	"fmt"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/repeat"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// LaidBelow leads to the motifs that are laid, below the address of their mitt.
const LaidBelow = "/desk/chart#chart-laid"

// laidMotif is a motif that is laid by rule, with what its part of the margin shows.
type laidMotif struct {
	project.Laid
	Given       map[string]string
	Over, Under bool // whether another lies over it, or under it
	Sections    []Choice
	Multiple    bool   // the hand can be kept to its multiple
	First, Last string // where its rounds from and to stand on the chart, if they are counted over several parts
	noun        string
}

// laidMotifs returns the motifs of a mitt that are laid by rule, the uppermost first.
func laidMotifs(doc project.Document, out *project.Outputs, noun string) []laidMotif {
	var list []laidMotif
	for i, one := range out.Repeats {
		m := laidMotif{Laid: one, Given: doc.Sheet.GivenOfRepeat(one.At), Over: i < len(out.Repeats)-1, Under: i > 0, Sections: layable(out), noun: noun}
		if one.Section == repeat.Whole {
			m.First, m.Last = onChart(out.Charts.Mitt, one.From, noun), onChart(out.Charts.Mitt, one.To, noun)
		}
		if one.ByHand() || one.Set == repeat.KeptMultiple {
			s := doc.Sheet.Clone()
			s.Put(sheet.RepeatPath(one.At, "set"), string(repeat.KeptMultiple))
			m.Multiple = s.RepeatFaults(one.At) == nil
		}
		list = append(list, m)
	}
	slices.Reverse(list)
	return list
}

// onChart says which round of its part is round n of the whole hand, as the chart numbers it:
// "round 3 of the hand". It is empty if there is none.
func onChart(m stitch.Mitt, n int, noun string) string {
	part, round := repeat.RoundAt(m, n)
	if round == 0 {
		return ""
	}
	return fmt.Sprintf("%s %d of the %s", noun, round, part.Words())
}

// counted says over what its rounds are counted.
func (m laidMotif) counted() string {
	if m.Section == repeat.Whole {
		return "the whole hand"
	}
	return "the " + m.Section.Words()
}

// layable are the parts of a mitt over which a motif can be laid.
func layable(out *project.Outputs) []Choice {
	list := []Choice{{string(repeat.Whole), "the whole hand"}}
	for _, s := range out.Charts.Mitt.Sections {
		if len(s.Rounds) > 0 {
			list = append(list, Choice{string(s.Part), s.Part.Words()})
		}
	}
	return list
}

// title is what the motif is called.
func (m laidMotif) title() string {
	return m.Called(m.Place)
}

// came says what became of a motif on this plan, as a sentence.
func came(l project.Laid, noun string) string {
	if l.Off {
		return "Turned off."
	}
	return capital(l.Words(noun)) + "."
}

// size says how wide and high it is.
func (m laidMotif) size() string {
	return fmt.Sprintf("%s × %s", words.Plural(m.Motif.Wide, "stitch"), words.Plural(m.Motif.High, m.noun))
}

// to is the last round of it as it is typed; empty stands for the last of all.
func (m laidMotif) to() string {
	if m.Given["to"] == "-1" {
		return ""
	}
	return m.Given["to"]
}

// offset is by how many stitches it is moved, as it is typed.
func (m laidMotif) offset() string { return strconv.Itoa(m.Offset) }

// The words for the choices of a laid motif.
var (
	laidOvers = []Choice{
		{string(repeat.Round), "round the hand"},
		{string(repeat.Palm), "over the palm"},
		{string(repeat.Back), "over the back"},
		{string(repeat.Gusset), "in the gusset alone"},
		{string(repeat.Columns), "between two columns"},
	}
	laidSets = []Choice{
		{string(repeat.Begin), "from the beginning"},
		{string(repeat.Centred), "the rest at both ends"},
		{string(repeat.CentredBack), "centred on the back"},
		{string(repeat.CentredPalm), "centred on the palm"},
		{string(repeat.KeptMultiple), "kept to a multiple"},
	}
	laidGussets = []Choice{
		{string(repeat.StaysOut), "stays plain"},
		{string(repeat.Grows), "grows from its middle"},
		{string(repeat.Mirrored), "grows, mirrored"},
		{string(repeat.Follows), "follows its edges"},
	}
	laidLefts = []Choice{
		{string(repeat.LeftMirrored), "mirrored"},
		{string(repeat.AsDrawn), "as drawn"},
	}
)

// laidField is a choice among the fields of a laid motif: its key, its words, what is chosen, and
// from what.
type laidField struct {
	Key, Words, Now string
	List            []Choice
}

// choices are the choices that are of use to it as it is laid.
func (m laidMotif) choices() []laidField {
	without := func(list []Choice, value string, without bool) []Choice {
		if !without {
			return list
		}
		return slices.DeleteFunc(slices.Clone(list), func(c Choice) bool { return c.Value == value })
	}
	list := []laidField{
		{"section", "Part", string(m.Section), m.Sections},
		{"over", "Across", string(m.Repeat.Over), without(laidOvers, string(repeat.Columns), m.Repeat.Over != repeat.Columns)},
	}
	if m.Repeat.Over != repeat.Gusset {
		list = append(list, laidField{"set", "Set", string(m.Set), without(laidSets, string(repeat.KeptMultiple), !m.Multiple)})
	}
	if m.MeetsGusset() {
		list = append(list, laidField{"gusset", "Gusset", string(m.Gusset), without(laidGussets, string(repeat.StaysOut), m.Repeat.Over == repeat.Gusset)})
	}
	return append(list, laidField{"left", "Left hand", string(m.OnLeft), laidLefts})
}

// putLaid tells a page of the motifs that are laid, and where.
func putLaid(p *chart.Page, doc project.Document, out *project.Outputs, g chart.Grid) {
	for _, r := range out.Repeats {
		one := chart.NewPageRepeat(r.Repeat, r.At)
		one.Given = doc.Sheet.GivenOfRepeat(r.At)
		delete(one.Given, "motif")
		delete(one.Given, "stitches")
		one.Title = repeatName(r)
		one.Words, one.Across, one.Up = came(r, g.Noun()), r.Came.Across, r.Came.Up
		if r.Cut {
			one.Part = r.Came.Left
		}
		p.Repeats = append(p.Repeats, one)
	}
	out.Charts.Cover(p, g)
}

// keep names a part of its form for the script, which goes back to it.
func (m laidMotif) keep(part string) string { return fmt.Sprintf("laid-%d-%s", m.At, part) }

// drawn draws the motif in small.
func (m laidMotif) drawn(c Chart) *draw.Scene {
	return picture.SmallMotif(m.Repeat.Motif, picture.Look{Cell: smallCell, Symbols: c.Symbols}, c.Yarns)
}

// smallCell is the width of a stitch of a motif that is drawn in small, in mm of the drawing.
const smallCell = 2.5
