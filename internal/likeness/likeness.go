// Package likeness finds the mitt of ours that a worked text is like: kind, construction and
// numbers, put into a measure sheet as fixed numbers, planned, and compared with the text round
// by round.
package likeness

import (
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/tally"
)

// Gauge is stitches and rounds on 10 cm, as they are typed, and over a mm.
type Gauge struct {
	Stitches, Rounds           string
	StitchesPerMM, RoundsPerMM float64
}

// Likeness is the mitt that a text is like.
type Likeness struct {
	Why     string // why there is none; empty: there is one
	Kind    mitt.Kind
	Sheet   sheet.Sheet
	Numbers []Number // as recognised
	Hand    []Number // measures that follow from the fabric
	Rounds  int      // of the text
	Long    int      // those of them that are told by a length, and worked out at the gauge
	Off     int      // rounds in which the plan has another count than the text
	Notes   []string // what else is otherwise than in the text, each a sentence
	Differs []string // where that is, each a sentence; empty: all counts are the same
}

// Otherwise lists all that is otherwise in the plan than in the text.
func (l *Likeness) Otherwise() []string { return append(slices.Clone(l.Differs), l.Notes...) }

// Same reports whether every round of the plan has the count of the text.
func (l *Likeness) Same() bool { return l.Why == "" && l.Off == 0 }

// mostOff is the share of the text's rounds that may differ: beyond it, nobody would call the
// plan that of the text.
const mostOff = 0.2

// mostRows is how many rounds are looked at, far more than those of a long glove.
const mostRows = 1_500

// Of finds the mitt that one size of a text is like, as it was traced and counted.
func Of(text string, trace *tally.Trace, size *tally.Size, g Gauge) *Likeness {
	pieces, why := piecesOf(trace, size, LinesOf(text), g.RoundsPerMM)
	if why == "" && (len(pieces) == 0 || len(pieces[0].rows) < 2) {
		why = "too few rounds are worked"
	}
	if why != "" {
		return &Likeness{Why: why}
	}
	d := newDraft(g)
	for i := range pieces {
		d.worked, d.lengths = d.worked+len(pieces[i].rows), d.lengths+pieces[i].lengths
	}
	d.text = strings.ToLower(text)
	if d.worked > mostRows {
		return &Likeness{Why: "it has more rounds than a mitt"}
	}
	if why = d.read(pieces); why != "" {
		return &Likeness{Why: why}
	}
	return d.settled()
}

func newDraft(g Gauge) *draft {
	d := &draft{kind: mitt.Fingerless, stitchesPerMM: g.StitchesPerMM, roundsPerMM: g.RoundsPerMM, sheet: sheet.Sheet{
		sheet.PathUnit: "cm", "gauge.swatches[0].stitches": g.Stitches, "gauge.swatches[0].width": "10",
		"gauge.swatches[0].worked": "round", "gauge.swatches[0].washed": "true",
	}}
	if g.Rounds != "" {
		d.sheet["gauge.swatches[0].rounds"], d.sheet["gauge.swatches[0].height"] = g.Rounds, "10"
	}
	return d
}

// read reads the pieces, from whichever end they are worked.
func (d *draft) read(pieces []piece) (why string) {
	if flat(pieces[0].rows) {
		d.choose("Worked", "to and fro", mitt.PathFlat, "true", pieces[0].line)
		d.sheet["gauge.swatches[0].worked"] = sheet.Worked(true)
		for i := range pieces {
			pieces[i].seamed()
		}
	}
	if fromTips(pieces) {
		return d.fromTip(pieces)
	}
	return d.fromCuff(pieces)
}

// flat reports whether all rows are worked to and fro.
func flat(rows []row) bool {
	return !slices.ContainsFunc(rows, func(r row) bool { return !r.flat })
}

// seam is how many stitches of a flat piece go into its seam.
const seam = 2

// seamed takes the stitches of the seam out of a piece's counts.
func (p *piece) seamed() {
	if p.castOn > 0 {
		p.castOn -= seam
	}
	if p.ended > 0 {
		p.ended -= seam
	}
	for i := range p.rows {
		r := &p.rows[i]
		r.after, r.seam = r.after-seam, seam
		if i > 0 || p.castOn > 0 {
			r.before -= seam
		}
	}
}
