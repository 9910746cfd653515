package chart

import (
	"encoding/json"
	"fmt"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// shared is a case that Go and the browser run alike.
type shared struct {
	Page    Page     `json:"page"`
	Edits   []Edit   `json:"edits"`
	Inverse []Edit   `json:"inverse"`
	Marks   []Edit   `json:"after"`
	Faults  []string `json:"faults"`
	Floats  []string `json:"floats"`
	Shown   []string `json:"shown"` // operations of row 3 as this hand shows them
}

func sharedFile(name string) string {
	return filepath.Join("..", "..", "testdata", "chart", strings.ReplaceAll(name, " ", "-")+".json")
}

func write(t *testing.T, name string, v any) {
	t.Helper()
	raw, err := json.MarshalIndent(v, "", " ")
	require.NoError(t, err)
	testenv.Golden(t, sharedFile(name), append(raw, '\n'))
}

func TestSharedCases(t *testing.T) {
	ribbed := gusset(t)
	ribbed.Rounds[2] = typed(t, "k p k p k | p k p k p k p k").Rounds[0]
	ribbed.Rounds[2].Even = true
	ribbed.Rounds[3] = ribbed.Rounds[1]
	start := []Edit{paint(2, "B2", Stitches, "p"), paint(2, "A1", Colours, "b")}
	whole := func(left bool) func(Marks) Source {
		return func(m Marks) Source { return of(t, m, left) }
	}
	gusset := func(left bool) func(Marks) Source {
		return func(m Marks) Source { return source(gusset(t), 3, 15, m, left) }
	}
	for name, c := range map[string]struct {
		of      func(Marks) Source
		options Options
		edits   []Edit
	}{
		"nothing":   {gusset(false), Options{Layout: Wedge}, []Edit{paint(2, "B2", Stitches, "p")}},
		"colours":   {gusset(false), Options{Layout: Wedge}, []Edit{paint(3, "A1", Colours, ""), paint(3, "A2", Colours, "c"), paint(3, "A2", Colours, "d")}},
		"unsound":   {gusset(false), Options{Layout: Wedge}, []Edit{paint(3, "B2", Stitches, "k2tog"), paint(4, "B1", Stitches, "yo"), paint(4, "H1", Stitches, "kfb")}},
		"back":      {gusset(false), Options{Layout: Wedge}, []Edit{paint(2, "B2", Stitches, ""), paint(2, "B2", Stitches, "k"), paint(2, "B2", Stitches, "")}},
		"left hand": {gusset(true), Options{Layout: Wedge}, []Edit{paint(3, "B2", Stitches, "ssk"), paint(3, "A1", Stitches, "lli")}},
		"ribbing of a left hand": {
			func(m Marks) Source { return source(ribbed, 3, 13, m, true) },
			Options{Layout: Columns},
			[]Edit{paint(3, "B2", Stitches, "k2tog"), paint(3, "H2", Stitches, "m1l"), paint(3, "A1", Colours, "b"), paint(3, "H1", Colours, "b")},
		},
		"tube": {whole(false), Options{View: TubeView, Layout: Wedge}, []Edit{
			paint(1, "B1", Colours, "b"), paint(1, "H8", Colours, "b"), paint(2, "H1", Colours, "c"),
			{stitch.Hand, 2, "C2", Colours, "b"},
			{stitch.Hand, 2, "H4", Stitches, "k2tog"},
			{stitch.Hand, 2, "", Notes, "thumb here"},
			{stitch.Hand, 2, "", Needles, "here"},
		}},
		"meant": {whole(false), Options{View: TubeView, Layout: Wedge}, []Edit{
			paint(1, "B1", Colours, "b"), paint(1, "H8", Colours, "b"), paint(2, "H1", Colours, "b"), paint(2, "H8", Colours, "b"),
			paint(1, "B1", Strands, "b12"), paint(2, "H1", Strands, "b5"), paint(2, "H8", Strands, "b3"),
		}},
		"meant on a left tube": {whole(true), Options{View: TubeView, Layout: Wedge}, []Edit{
			paint(1, "B1", Colours, "b"), paint(1, "H8", Colours, "b"), paint(2, "H1", Colours, "b"), paint(2, "H8", Colours, "b"),
			paint(1, "B1", Strands, "b12"), paint(2, "H1", Strands, "b6"), paint(2, "H8", Strands, "b3"),
		}},
		"columns of a left tube": {whole(true), Options{View: TubeView, Layout: Columns, Middle: "H4"}, []Edit{
			paint(2, "H3", Stitches, "k2tog"), {stitch.Hand, 1, "H2", Stitches, "yo"}, {stitch.Hand, 1, "C1", Colours, "b"}, {stitch.Hand, 2, "H7", Colours, "b"},
		}},
	} {
		t.Run(name, func(t *testing.T) {
			marks := Marks{}
			marks.Apply(start)
			page := c.of(marks).Grid(c.options).Page()
			page.Marks = marks.Edits()
			s := shared{Page: page, Edits: c.edits, Inverse: marks.Apply(c.edits), Marks: marks.Edits()}
			g := c.of(marks).Grid(c.options)
			s.Faults, s.Floats = g.Faults(), g.FloatWords()
			for _, cell := range g.Rows[2].Cells {
				s.Shown = append(s.Shown, cell.Op.Code())
			}
			write(t, name, s)
		})
	}
}

// dice is the minimal standard generator (Park and Miller 1988, with the
// multiplier 48271 of 1993): the browser has the same, so both throw alike.
type dice int64

func (d *dice) throw(n int64) int64 {
	*d = *d * 48271 % 2147483647
	return int64(*d) % n
}

// random is one edit of a small chart.
func (d *dice) random() Edit {
	part := []stitch.Part{stitch.Gusset, stitch.Hand}[d.throw(2)]
	e := Edit{Section: part, Round: 1 + int(d.throw(6)), Column: fmt.Sprintf("%c%d", "ABZH"[d.throw(4)], 1+d.throw(5))}
	switch d.throw(3) {
	case 0:
		e.Layer, e.Value = Stitches, []string{"", "p", "yo", "k2tog", "m1l"}[d.throw(5)]
	case 1:
		e.Layer, e.Value = Colours, []string{"", "b", "c", "h"}[d.throw(4)]
	default:
		e.Layer, e.Value = Notes, []string{"", "look", "ü ½ “x”"}[d.throw(3)]
	}
	return e
}

// longRun is what both languages come to from one seed.
type longRun struct {
	Seed    int64  `json:"seed"`
	Strokes int    `json:"strokes"`
	Start   []Edit `json:"start"`
	End     []Edit `json:"end"`
}

// Ten thousand random edits, in strokes of one to nine, come to the same in Go
// and in the browser; undone in the opposite order, they leave the start byte
// for byte.
func TestTenThousandEditsUndone(t *testing.T) {
	for seed := dice(1); seed <= 3; seed++ {
		d := seed
		marks := Marks{}
		for range 40 {
			marks.Apply([]Edit{d.random()})
		}
		start := marks.Edits()
		before, err := json.Marshal(start)
		require.NoError(t, err)
		var back [][]Edit
		for edits := 0; edits < 10_000; {
			stroke := make([]Edit, 1+d.throw(9))
			for i := range stroke {
				stroke[i] = d.random()
			}
			edits += len(stroke)
			back = append(back, marks.Apply(stroke))
		}
		write(t, fmt.Sprintf("run-%d", seed), longRun{int64(seed), len(back), start, marks.Edits()})
		for i := len(back) - 1; i >= 0; i-- {
			marks.Apply(back[i])
		}
		after, err := json.Marshal(marks.Edits())
		require.NoError(t, err)
		require.Equal(t, string(before), string(after))
	}
}
