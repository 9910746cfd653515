package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// Dyed says in what a mitt of several colours is worked. Round has the colours of a round
// of a part, from 1; nil if it is all in the main colour.
type Dyed struct {
	Yarns  []Yarn
	Motifs []MotifRows
	Round  func(part stitch.Part, round int) *RoundDyed
}

// Yarn is a yarn of the palette: its letter, and what it is called in the rounds.
type Yarn struct{ Letter, Name string }

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
// motif that laid it, from 1, and the motif's row, from 1 (0: none); and the yarn whose
// strand is to be caught from there on, every so many stitches ("rust and blue" if two are). Nil lists say nothing.
type RoundDyed struct {
	Yarns []string
	Motif []int
	Row   []int
	Catch []string
	Every int
}

// turned returns the round as the hands work it on the wrong side. Motifs are told as they
// are worked on the right one.
func (of RoundDyed) turned() RoundDyed {
	back := RoundDyed{Yarns: slices.Clone(of.Yarns), Catch: slices.Clone(of.Catch), Every: of.Every}
	slices.Reverse(back.Yarns)
	slices.Reverse(back.Catch)
	return back
}

// cut returns the operations from one up to another.
func (of RoundDyed) cut(from, to int) RoundDyed {
	of.Yarns = of.Yarns[from:to]
	if of.Motif != nil {
		of.Motif, of.Row = of.Motif[from:to], of.Row[from:to]
	}
	if of.Catch != nil {
		of.Catch = of.Catch[from:to]
	}
	return of
}

// catches returns the yarn whose strand is to be caught from operation i on; "" for none.
func (of RoundDyed) catches(i int) string {
	if i >= len(of.Catch) {
		return ""
	}
	return of.Catch[i]
}

// fewRuns is the greatest number of runs that are written out although the rows of a motif
// could stand for them.
const fewRuns = 10

// dyer writes the rounds of one mitt in their colours, and remembers what it has told.
type dyer struct {
	*Dyed
	met    bool         // a round of several colours was met
	yarns  bool         // the yarns were told
	refers map[int]bool // motifs that rounds referred to, from 1
	told   map[int]bool // those whose rows were told
}

// round returns a round of a section in words, in its colours if it has any.
func (d *dyer) round(part stitch.Part, n int, r stitch.Round) string {
	if d == nil {
		return Round(part, r)
	}
	of := d.Round(part, n)
	if of == nil {
		return Round(part, r)
	}
	d.met = true
	return d.coloured(part, r, *of)
}

// before returns what is told before the rounds of a section, which are written already: the
// yarns, if it is the first with more than one, and the motifs that it is the first to refer to.
func (d *dyer) before() []Step {
	if d == nil {
		return nil
	}
	var steps []Step
	if d.met && !d.yarns {
		d.yarns = true
		steps = append(steps, Step{Text: told(d.Yarns)})
	}
	for m := range d.Motifs {
		if !d.refers[m+1] || d.told[m+1] {
			continue
		}
		d.told[m+1] = true
		for row, list := range d.Motifs[m].Rows {
			r, of := stitch.Round{}, RoundDyed{}
			for _, w := range list {
				r.Ops, of.Yarns = append(r.Ops, w.Op), append(of.Yarns, w.Yarn)
			}
			steps = append(steps, Step{Text: fmt.Sprintf("%s: %s.", d.motifRow(m+1, row+1), joinRepeats(colouredRuns(r, of, 0, len(r.Ops))))})
		}
	}
	return steps
}

// motifRow names a row of a motif where it is told: "Motif 1 (birds), row 3".
func (d *dyer) motifRow(motif, row int) string {
	name := d.Motifs[motif-1].Name
	if name != "" {
		name = " (" + name + ")"
	}
	return fmt.Sprintf("Motif %d%s, row %d", motif, name, row)
}

// told names the yarns by their letters.
func told(yarns []Yarn) string {
	list := make([]string, len(yarns))
	for i, y := range yarns {
		list[i] = y.Letter + " " + y.Name
	}
	return "Yarns: " + strings.Join(list, ", ") + "."
}

// coloured returns a round in its colours.
func (d *dyer) coloured(part stitch.Part, r stitch.Round, of RoundDyed) string {
	used := inYarns(r.Ops, of.Yarns)
	if len(used) == 0 {
		return Round(part, r)
	}
	if len(used) == 1 {
		return fmt.Sprintf("In %s: %s", used[0], small(Round(part, r)))
	}
	if r.Side == stitch.WrongSide {
		r, of = r.AsWorked(), of.turned()
	}
	if !part.Marked() || r.Lead == 0 || r.Lead == len(r.Ops) {
		return fmt.Sprintf("%s (%d).", opening(d.phrase(r, of)), r.Out())
	}
	to := r.Before + r.Lead
	lead := d.phrase(cut(r, r.Before, to), of.cut(r.Before, to))
	if r.Before > 0 {
		lead = d.phrase(cut(r, 0, r.Before), of.cut(0, r.Before)) + " | " + lead
	}
	rest := of.cut(to, len(r.Ops))
	hand := d.phrase(cut(r, to, len(r.Ops)), rest)
	if in := inYarns(r.Ops[to:], rest.Yarns); len(in) == 1 && plain(r.Ops[to:]) && rest.catches(0) == "" {
		hand = "knit " + in[0] + " to the end"
	}
	return fmt.Sprintf("%s | %s %s.", opening(lead), hand, counted(part, r))
}

// phrase returns a part of a round in words. A long one refers to the rows of motifs.
func (d *dyer) phrase(r stitch.Round, of RoundDyed) string {
	parts := repeats(colouredRuns(r, of, 0, len(r.Ops)))
	if d != nil && of.Motif != nil && len(parts) > fewRuns {
		var tokens []string
		motifs := map[int]bool{}
		for i := 0; i < len(r.Ops); {
			if n := d.motifAt(r, of, i); n > 0 {
				motif, row, times := of.Motif[i], of.Row[i], 0
				for ; i < len(r.Ops) && of.Motif[i] == motif && of.Row[i] == row && d.motifAt(r, of, i) == n; i += n {
					times++
				}
				token := fmt.Sprintf("row %d of motif %d", row, motif)
				if times > 1 {
					token = fmt.Sprintf("(%s) %s", token, Times(times))
				}
				tokens, motifs[motif] = append(tokens, token), true
				continue
			}
			from := i
			for i < len(r.Ops) && d.motifAt(r, of, i) == 0 {
				i++
			}
			tokens = append(tokens, colouredRuns(r, of, from, i)...)
		}
		if short := repeats(tokens); len(short) < len(parts) {
			parts = short
			for m := range motifs {
				d.refers[m] = true
			}
		}
	}
	return strings.Join(parts, ", ")
}

// motifAt returns how many operations from the ith on are a whole row of their motif; 0 if
// they are none.
func (d *dyer) motifAt(r stitch.Round, of RoundDyed, i int) int {
	m, row := of.Motif[i], of.Row[i]
	if m == 0 {
		return 0
	}
	list := d.Motifs[m-1].Rows[row-1]
	if i+len(list) > len(r.Ops) {
		return 0
	}
	for k, w := range list {
		j := i + k
		if of.Motif[j] != m || of.Row[j] != row || r.Ops[j] != w.Op || of.Yarns[j] != w.Yarn || of.catches(j) != "" || r.SetAt(j) != "" {
			return 0
		}
	}
	return len(list)
}
