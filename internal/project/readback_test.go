package project

import (
	"bytes"
	"encoding/csv"
	"fmt"
	"math/rand/v2"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/readback"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	"thenar/internal/words"
)

// spelled is how each operation is written in instructions and in the fields
// of a chart (the Craft Yarn Council's abbreviations, from memory).
var spelled = [...]string{
	stitch.Knit: "k", stitch.Purl: "p", stitch.KnitTBL: "k tbl", stitch.PurlTBL: "p tbl", stitch.Slip: "sl", stitch.M1L: "M1L", stitch.M1R: "M1R", stitch.M1: "M1",
	stitch.YarnOver: "yo", stitch.CastOn: "CO", stitch.LLI: "LLI", stitch.RLI: "RLI", stitch.KFB: "kfb", stitch.K2tog: "k2tog", stitch.SSK: "ssk",
	stitch.P2tog: "p2tog", stitch.SSP: "ssp", stitch.K3tog: "k3tog", stitch.SK2P: "sk2p", stitch.S2KP: "s2kp", stitch.BindOff: "BO",
	stitch.DrawUp: "draw up", stitch.Graft: "graft", stitch.JoinHem: "k with its cast-on loop", stitch.Hold: "hold", stitch.PickUp: "pick up", stitch.Take: "knit in",
	stitch.GapK2tog: "k2tog with the gap strand", stitch.GapSSK: "ssk with the gap strand",
	stitch.Waste: "k with waste yarn", stitch.CornerM1: "M1 at the corner",
}

var titles = map[stitch.Part]string{
	stitch.Cuff: "Cuff", stitch.CuffPlain: "Plain rounds", stitch.BelowThumb: "Hand, up to the thumb", stitch.Opening: "Opening for the thumb", stitch.Gusset: "Thumb gusset",
	stitch.Hand: "Hand", stitch.Top: "Top", stitch.Thumb: "Thumb", stitch.Gap: "Gap beside the thumb", "forefinger": "Forefinger",
	stitch.Little: "Little finger", stitch.UpperHand: "Upper hand", stitch.Ring: "Ring finger", stitch.Middle: "Middle finger", stitch.Index: "Index finger", stitch.Cap: "Cap", stitch.CapTop: "Top of the cap",
}

// rowTitles are the titles of parts whose rounds are rows.
var rowTitles = map[stitch.Part]string{}

func init() {
	for part, title := range titles {
		rowTitles[part] = stitch.InRows(title)
	}
}

// titled reports whether a title is that of a part, whose rounds may be rows.
func titled(title string, part stitch.Part) bool {
	return title == titles[part] || title == rowTitles[part]
}

// differs compares what was knitted from the words with the mitt.
func differs(read *readback.Mitt, m stitch.Mitt) error {
	if len(read.Parts) != len(m.Sections) {
		return fmt.Errorf("%d parts, of %d", len(read.Parts), len(m.Sections))
	}
	for i, s := range m.Sections {
		p := read.Parts[i]
		finish := ""
		if len(s.Finish.Ops) > 0 {
			finish = spelled[s.Finish.Ops[0]]
		}
		switch {
		case !titled(p.Title, s.Part), p.CastOn != s.CastOn, len(p.From) != len(s.From), p.Moved != s.Shift,
			len(p.Rounds) != len(s.Rounds), p.Finish != finish, p.Finished != s.Finish.In():
			return fmt.Errorf("%s: %+v", s.Part, p)
		}
		for r, round := range s.Rounds {
			same := slices.EqualFunc(p.Rounds[r].Ops, round.Ops, func(word string, op stitch.Op) bool { return word == spelled[op] })
			if !same || p.Rounds[r].After != round.Out() || s.Part == stitch.Gusset && p.Rounds[r].Gusset != round.LeadOut() {
				return fmt.Errorf("%s, round %d: %v was read, %v is worked", s.Part, r+1, p.Rounds[r], round)
			}
		}
	}
	return nil
}

// charted compares what was knitted from the words with a chart's table: every
// row, read from right to left and begun anywhere, is the round.
func charted(t *testing.T, read *readback.Mitt, g chart.Grid) error {
	var b bytes.Buffer
	require.NoError(t, chart.CSV(&b, g))
	lines := csv.NewReader(&b)
	lines.ReuseRecord = true
	var part *readback.Part
	var shown []string
	for i := range slices.Backward(g.Rows) {
		fields, err := lines.Read()
		if err != nil {
			return err
		}
		row := &g.Rows[i]
		if part == nil || i+1 < len(g.Rows) && g.Rows[i+1].Section != row.Section {
			for _, p := range read.Parts {
				if titled(p.Title, row.Section) {
					part = p
				}
			}
		}
		round := part.Rounds[row.Round-1].Ops
		if waits := waiting(row.Section); waits != stitch.NoStitch {
			round = slices.DeleteFunc(slices.Clone(round), func(op string) bool { return op == spelled[waits] })
		}
		shown = shown[:0]
		for _, field := range slices.Backward(fields[:len(fields)-1]) {
			if field != "" {
				op, _, _ := strings.Cut(field, "/")
				shown = append(shown, op)
			}
		}
		if fields[len(fields)-1] != strings.TrimSpace(strconv.Itoa(row.Round)+" "+row.Side.Words()) || len(shown) > len(round) || g.View != chart.GussetView && len(shown) != len(round) || !around(shown, round) {
			return fmt.Errorf("%s in %s, %s round %s: %v is read as %v", g.View, g.Layout, row.Section, fields[len(fields)-1], shown, round)
		}
	}
	return nil
}

// around reports whether some operations follow each other in a round, wherever
// it begins.
func around(some, round []string) bool {
	for from := range round {
		i := 0
		for i < len(some) && some[i] == round[(from+i)%len(round)] {
			i++
		}
		if i == len(some) {
			return true
		}
	}
	return false
}

func instructions(t *testing.T, out *Outputs) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, words.Write(&b, out.WithStops()))
	return b.String()
}

// The words of both hands, read back stitch by stitch by code that shares
// nothing with what writes them, are the plan's rounds and the rows of every
// chart, in both layouts, whatever is painted; what a painted stitch leaves
// unsound can't be knitted from the words either. Every column is there on both
// hands, every mark stands on its own stitch and adds up on the one as on the
// other, and “make two” is said where both are alike.
func TestWordsReadBack(t *testing.T) {
	const shards = 4
	for shard := range uint64(shards) {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			rng := rand.New(rand.NewPCG(3000, shard))
			pl := NewPlanner()
			for i := range testenv.Cases(300, 3000) / shards {
				d, p := anyMitt(rng, pl)
				var marks chart.Marks
				if rng.IntN(2) == 0 {
					m := p.Plan.Mitt()
					marks = anyMarks(rng, m, wale.Mitt(m, p.UnderThumb()))
				}
				if rng.IntN(8) == 0 {
					marks = chart.Marks{{Section: stitch.Hand, Round: 2, Column: "H4"}: {Stitch: "yo"}}
				}
				d.FromLeft = rng.IntN(6) == 0
				readBack(t, pl, d, marks, i)
			}
		})
	}
}

// miscounted finds a number before a noun of the other number.
var miscounted = regexp.MustCompile(`(?:^|[^\d.,–-])(?:1 (?:stitches|rounds|rows|loops|times)|(?:[2-9]|\d\d+) (?:stitch|time|loop))\b`)

func readBack(t *testing.T, pl *Planner, d Document, marks chart.Marks, i int) {
	t.Helper()
	var hands [2]*Outputs
	var rows [2][]chart.Row
	for h, side := range []Side{Right, Left} {
		d.Side = side
		out, err := pl.Derive(d, marks)
		require.NoError(t, err)
		hands[h] = out
		text := instructions(t, out)
		require.Empty(t, miscounted.FindAllString(text, -1), "%s\n%v\n%s", side, d.Sheet, text)
		read, err := readback.Read(text)
		if len(out.Unsound) > 0 {
			require.Error(t, err, "%s\n%v\n%s", side, d.Sheet, text)
			continue
		}
		require.NoError(t, err, "%s\n%v\n%s", side, d.Sheet, text)
		require.NoError(t, differs(read, out.Mitt), "%s\n%v\n%s", side, d.Sheet, text)
		if d.FromLeft {
			continue // its chart shows how the make ones lie in the fabric
		}
		rows[h] = chartsAgree(t, out, func(g chart.Grid) {
			if layouts := []chart.Layout{chart.Wedge, chart.Columns}; g.Layout == layouts[(i+h)%2] {
				require.NoError(t, charted(t, read, g), "%s\n%v\n%s", side, d.Sheet, text)
			}
		})
	}
	if rows[0] == nil || rows[1] == nil {
		return
	}
	alike := handsAgree(t, rows, hands[1].Charts.Mirrored, marks)
	for i, s := range hands[0].Mitt.Sections {
		other := &hands[1].Mitt.Sections[i]
		alike = alike && s.Shift == other.Shift && slices.Equal(s.Finish.Aside, other.Finish.Aside)
	}
	for _, out := range hands {
		require.Equal(t, alike, saysMakeTwo(out), "%v", d.Sheet)
	}
}

var number = regexp.MustCompile(`\d+`)

// A text in which one number is one more or one less is caught, by what it says
// itself or by what it makes; only a length that is measured isn't.
func TestDamagedWordsAreCaught(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2026))
	pl := NewPlanner()
	tried, alone, caught, lengths := 0, 0, 0, 0
	for range testenv.Cases(4, 40) {
		d, _ := anyMitt(rng, pl)
		out, err := pl.Derive(d, nil)
		require.NoError(t, err)
		text := instructions(t, out)
		for _, at := range number.FindAllStringIndex(text, -1) {
			if rng.IntN(4) > 0 {
				continue
			}
			n, err := strconv.Atoi(text[at[0]:at[1]])
			require.NoError(t, err)
			n += 2*rng.IntN(2) - 1
			damaged := text[:at[0]] + strconv.Itoa(n) + text[at[1]:]
			tried++
			read, err := readback.Read(damaged)
			if err != nil {
				alone++
			}
			if err != nil || differs(read, out.Mitt) != nil {
				caught++
				continue
			}
			line := damaged[strings.LastIndex(damaged[:at[0]], "\n")+1:]
			line, _, _ = strings.Cut(line, "\n")
			assert.Contains(t, line, " cm", "taken as it stands: %s", line)
			lengths++
		}
	}
	t.Logf("%d texts with one number changed: %d caught, %d of them by the text alone; %d in a length", tried, caught, alone, lengths)
	require.Greater(t, alone, caught*9/10)
	require.Less(t, lengths, tried/5, "few numbers are lengths, to which no stitch can be counted")
}
