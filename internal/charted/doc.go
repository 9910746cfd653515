// Package charted draws up the chart of instructions that were read, in columns that last,
// and compares it with the table of another chart.
package charted

import (
	"strings"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// mostCells is how many stitches the charts of a size have at most: several times those of a
// glove in fine yarn.
const mostCells = 40_000

// Chart is the chart of a section, or of so much of it as goes on from round to round.
type Chart struct {
	Title string
	Grid  chart.Grid
	Lines []int // of the text, for each of its rows
}

// Charts are those of one size and hand, in the order worked.
type Charts struct {
	List []Chart
	Cut  bool // there was more than is drawn
}

// What stands where the number of a round would, of a row that has none.
const (
	notRead = "not read" // it was not understood
	open    = "open"     // it hangs on a count that nobody knows
	between = "between"  // it is done between two rounds
	asTold  = "as told"  // it is worked over and over, to a measure
	notTold = "not told" // where in it stitches are made isn't told
)

// elsewhere is the sign of a stitch that is worked in a pattern, and told elsewhere.
const elsewhere = "…"

// leftOver is the sign of a stitch of which the text doesn't say what becomes of it.
const leftOver = "?"

// sign is what stands in a cell: an operation, or the abbreviation of one that the table of
// operations doesn't have.
type sign struct {
	op   stitch.Op
	said string
}

// ofAbbr are the operations by their abbreviations.
var ofAbbr = func() map[string]stitch.Op {
	by := map[string]stitch.Op{}
	for _, op := range stitch.All() {
		if op.Abbr() != "" && op != stitch.Marker {
			by[op.Abbr()] = op
		}
	}
	return by
}()

func signOf(name string) sign {
	if op, ok := ofAbbr[name]; ok {
		return sign{op: op}
	}
	return sign{said: name}
}

// seen returns what a sign worked on the wrong side looks like on the right side.
func (s sign) seen() sign { return sign{s.op.Turned(), s.said} }

// purled reports whether a sign, as it looks, leaves its stitch with the purl side out.
func (s sign) purled() bool {
	return s.op.Purled() || s.said != "" && s.said[0] == 'p' && s.said != "psso" || s.said == "M1P"
}

// work is one stitch as it is worked: what it takes of the row below, and what it leaves.
type work struct {
	sign
	in, out int
	even    bool // not told one by one
	as      written.Fabric
	behind  bool // it is worked on the wrong side
	inRows  bool
	set     int  // that it goes into or comes from
	free    bool // it isn't worked: the stitch stays on the needles as it is
}

// worksOf returns the stitches of runs one by one, in the order of the runs.
func worksOf(list []tally.Run) (all []work) {
	for _, r := range list {
		if r.Name == "psso" || r.Name == "p2sso" {
			for range r.Times {
				all = passed(all, -r.Out, r.Name)
			}
			continue
		}
		one := workOf(r)
		for range r.Times {
			all = append(all, one)
		}
	}
	return all
}

func workOf(r tally.Run) work {
	w := work{in: r.In, out: r.Out, even: r.Even, as: r.As, set: r.Set}
	switch r.Does {
	case written.CastOn:
		w.op = stitch.CastOn
	case written.PickUp:
		w.op = stitch.PickUp
	case written.Hold:
		w.op = stitch.Hold
	case written.Waste:
		w.op = stitch.Waste
	case written.TakeIn:
		w.op = stitch.Take
	case written.BindOff:
		w.op = stitch.BindOff
	case written.Leave:
		w.op, w.free = stitch.Knit, true
	case written.Unread:
		w.said = leftOver
	default:
		w.sign = signOf(r.Name)
		switch { // the strand at a corner is worked together with its stitch
		case r.In == 1 && r.Out == 1 && w.op == stitch.K2tog:
			w.op = stitch.GapK2tog
		case r.In == 1 && r.Out == 1 && w.op == stitch.SSK:
			w.op = stitch.GapSSK
		}
	}
	return w
}

// passed joins a stitch over which others are passed with those: "sl1, k1, psso" is one
// stitch that takes two.
func passed(all []work, over int, name string) []work {
	from := len(all) - 1 - over
	if from < 0 {
		return all
	}
	w := work{out: 1}
	told := ""
	for _, one := range all[from:] {
		w.in += one.in
		if told += one.name() + ", "; one.out != 1 {
			return all
		}
	}
	switch told {
	case "sl, k, ":
		w.said = "skp"
	case "sl, k2tog, ":
		w.op = stitch.SK2P
	case "sl, sl, k, ":
		w.op = stitch.S2KP
	default:
		w.said = strings.ToLower(told) + name
	}
	return append(all[:from], w)
}

// name returns what a sign is called for short.
func (s sign) name() string {
	if s.said != "" {
		return s.said
	}
	return s.op.Abbr()
}
