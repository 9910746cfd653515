package chart

import (
	"bytes"
	"fmt"
	"maps"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
)

// gusset is a small gusset: base of 3, increases in rounds 1 and 3 of 4, with
// 8 stitches of the hand beside it.
func gusset(t *testing.T) stitch.Section {
	t.Helper()
	return typed(t, "k m1l k m1r k | k k k k k k k k", "k k k k k | k k k k k k k k",
		"k m1l k k k m1r k | k k k k k k k k", "k k k k k k k | k k k k k k k k")
}

func typed(t *testing.T, rounds ...string) stitch.Section {
	t.Helper()
	s := stitch.Section{Part: stitch.Gusset}
	for _, text := range rounds {
		var r stitch.Round
		for _, word := range strings.Fields(text) {
			if word == "|" {
				r.Lead = len(r.Ops)
				continue
			}
			op, ok := stitch.ByCode(word)
			require.True(t, ok, word)
			r.Ops = append(r.Ops, op)
		}
		s.Rounds = append(s.Rounds, r)
	}
	return s
}

// source is a gusset of a base before a hand that eats end stitches.
func source(s stitch.Section, base, end int, marks Marks, mirrored bool) Source {
	hand := stitch.Section{Part: stitch.Hand, Rounds: []stitch.Round{{Ops: make([]stitch.Op, end)}}}
	for i := range hand.Rounds[0].Ops {
		hand.Rounds[0].Ops[i] = stitch.Knit
	}
	return Source{Mitt: stitch.Mitt{Sections: []stitch.Section{s, hand}}, Base: base, Marks: marks, Mirrored: mirrored}.Prepare()
}

func wedge(s stitch.Section, base, end int, marks Marks, mirrored bool) Grid {
	return source(s, base, end, marks, mirrored).Grid(Options{Layout: Wedge})
}

func paint(round int, column string, layer Layer, value string) Edit {
	return Edit{stitch.Gusset, round, column, layer, value}
}

// The wedge: read from right to left, the gusset in the middle, the hand's
// first stitches at its left, the round's last at its right.
func TestWedge(t *testing.T) {
	g := wedge(gusset(t), 3, 15, nil, false)
	assert.Equal(t, 13, g.Width)
	assert.Equal(t, 11, g.Start)
	row := g.Rows[0]
	byX := map[int]string{}
	for _, c := range row.Cells {
		if c.Shown() {
			byX[c.X] = c.Column
		}
	}
	assert.Equal(t, map[int]string{1: "H3", 2: "H2", 3: "H1", 4: "B3", 5: "Z1", 6: "B2", 7: "A1", 8: "B1", 9: "H8", 10: "H7", 11: "H6"}, byX)
	assert.Equal(t, 11, row.In)
	assert.Equal(t, 13, row.Out)
	for _, r := range g.Rows {
		assert.Empty(t, r.Fault)
		for i := 1; i < len(r.Cells); i++ {
			assert.Less(t, r.Cells[i].X, g.Width)
		}
	}
	assert.Empty(t, g.EndFault)
	assert.Equal(t, []stitch.Op{stitch.Knit, stitch.M1L, stitch.M1R}, g.Used())
	assert.Empty(t, g.YarnsUsed())
}

// A left hand shows the mirrored section with the right hand's names.
func TestMirrored(t *testing.T) {
	s := gusset(t)
	left := wedge(s, 3, 15, Marks{{stitch.Gusset, 1, "A1"}: {Stitch: "lli"}}, true)
	mirrored := stitch.Mirror(stitch.Mitt{Sections: []stitch.Section{s}}).Sections[0]
	for i, row := range left.Rows {
		lead := mirrored.Rounds[i].Ops[:mirrored.Rounds[i].Lead]
		for j, op := range lead {
			assert.Equal(t, op, row.Cells[j].Planned, "round %d, operation %d", i+1, j)
		}
	}
	assert.Equal(t, "B3", left.Rows[0].Cells[0].Column)
	assert.Equal(t, "A1", left.Rows[0].Cells[3].Column)
	assert.Equal(t, stitch.RLI, left.Rows[0].Cells[3].Op, "a mark speaks of the right hand")
}

func TestFaultsInWords(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{paint(2, "B2", Stitches, "k2tog"), paint(4, "B2", Stitches, "yo")})
	g := wedge(gusset(t), 3, 15, marks, false)
	assert.Equal(t, "round 2: one stitch short (round 1 leaves 13; it takes 14)", g.Rows[1].Fault)
	assert.Empty(t, g.Rows[2].Fault)
	assert.Equal(t, "round 4: one stitch left over (round 3 leaves 15; it takes 14)", g.Rows[3].Fault)
	marks.Apply([]Edit{paint(1, "B1", Stitches, "kfb"), paint(4, "B2", Stitches, "")})
	g = wedge(gusset(t), 3, 14, marks, false)
	assert.Empty(t, g.Rows[1].Fault)
	assert.Equal(t, "round 1 of the hand: one stitch left over (round 4 leaves 15; it takes 14)", g.EndFault)
}

// What is painted lands in the section that the words and the ledger read.
func TestPut(t *testing.T) {
	s := gusset(t)
	marks := Marks{}
	marks.Apply([]Edit{paint(2, "A1", Stitches, "p"), paint(2, "Z9", Stitches, "p"), paint(3, "H2", Colours, "b")})
	put := source(s, 3, 15, marks, false).Put().Section(stitch.Gusset)
	assert.Equal(t, stitch.Purl, put.Rounds[1].Ops[1])
	assert.Equal(t, s.Rounds[2], put.Rounds[2])
	assert.Equal(t, stitch.Knit, s.Rounds[1].Ops[1], "the plan is not touched")
}

// Marks outlive a smaller plan: what has no place is listed, and comes back.
func TestLostAndFoundAgain(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{paint(4, "A2", Stitches, "p"), paint(4, "B1", Colours, "c")})
	small := typed(t, "k m1l k m1r k | k k k k k k k k", "k k k k k | k k k k k k k k")
	assert.Equal(t, []Edit{paint(4, "A2", Stitches, "p"), paint(4, "B1", Colours, "c")}, source(small, 3, 13, marks, false).Lost())
	assert.Empty(t, source(gusset(t), 3, 15, marks, false).Lost())
}

// Any edits, taken back, leave exactly what was there, and a chart is rebuilt
// from its list of edits.
func TestInverseAndEdits(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 7))
	values := map[Layer][]string{Stitches: {"", "p", "yo", "k2tog"}, Colours: {"", "b", "c", "d"}}
	draw := func(n int) []Edit {
		edits := make([]Edit, n)
		for i := range edits {
			layer := []Layer{Stitches, Colours}[rng.IntN(2)]
			edits[i] = paint(1+rng.IntN(4), fmt.Sprintf("%c%d", "ABZH"[rng.IntN(4)], 1+rng.IntN(4)), layer, values[layer][rng.IntN(4)])
		}
		return edits
	}
	marks := Marks{}
	for range 500 {
		before := maps.Clone(marks)
		edits := draw(1 + rng.IntN(12))
		inverse := marks.Apply(edits)
		after := maps.Clone(marks)
		again := marks.Apply(inverse)
		require.Equal(t, before, marks)
		marks.Apply(again)
		require.Equal(t, after, marks, "and the inverse of the inverse does it again")
		rebuilt := Marks{}
		rebuilt.Apply(marks.Edits())
		require.Equal(t, marks, rebuilt)
	}
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(`{"after":12,"edits":[{"section":"gusset","round":3,"column":"B2","layer":"stitch","value":"p"}]}`))
	f.Add([]byte(`{"after":12,"undo":true}`))
	f.Add([]byte(`{"after":0,"redo":true}{}`))
	f.Add([]byte(`{"after":3,"key":"a1","change":{"kind":"move","section":"gusset","round":4,"to":5}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Parse(data)
		if err != nil {
			return
		}
		if s.After < 0 || (len(s.Edits) == 0) == (!s.Undo && !s.Redo && s.Change == nil) {
			t.Fatalf("%q became %+v", data, s)
		}
		marks := Marks{}
		inverse := marks.Apply(s.Edits)
		marks.Apply(inverse)
		if len(marks) != 0 {
			t.Fatalf("taking back leaves %v", marks)
		}
	})
}

func FuzzParseMotif(f *testing.F) {
	f.Add([]byte(`{"name":"star","cells":[{"left":0,"up":1,"stitch":"p","colour":"b"}]}`))
	f.Add([]byte(`{"name":"star","cells":[{"left":-1}]}{}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		m, err := ParseMotif(bytes.NewReader(data))
		if err == nil && (m.Name == "" || len(m.Cells) == 0) {
			t.Fatalf("%q became %+v", data, m)
		}
	})
}
