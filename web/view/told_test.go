package view

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/testenv"
)

func saysOf(was, now project.Document) string {
	m := changes{was: was, now: now, tries: map[int64]string{3: "2026-03-01"}}
	return sentence(m.list())
}

// sampleWith returns the sample with some fields typed anew.
func sampleWith(pairs ...string) project.Document {
	d := project.Samples()[0]
	d.Sheet = d.Sheet.Clone()
	for i := 0; i < len(pairs); i += 2 {
		d.Sheet.Put(pairs[i], pairs[i+1])
	}
	return d
}

// What changed in a document is said by the labels of the form.
func TestAChangeOfADocumentInWords(t *testing.T) {
	t.Parallel()
	renamed, left, away, second, print, sure := sampleWith(), sampleWith(), sampleWith(), sampleWith(), sampleWith(), sampleWith()
	renamed.Name, left.Side, away.Archived, second.WhatIf, print.Print = "Moss", project.Left, true, sheet.Sheet{"unit": "cm"}, "paper=a4"
	sure.Sure = map[string]string{"hand.hand_circumference": "18.6"}
	for _, c := range []struct {
		was, now project.Document
		says     string
	}{
		{sampleWith(), sampleWith("hand.hand_circumference", "18.9"), "hand 18.6 → 18.9"},
		{sampleWith(), sampleWith("hand.palm_and_thumb_circumference", "21"), "palm with thumb 21"},
		{sampleWith(), sampleWith("hand.thumb_circumference", ""), "thumb left out"},
		{sampleWith(), sampleWith("ease.hand", "-4"), "ease, hand -4"},
		{sampleWith(), sampleWith("length.thumb", "4"), "lengths, thumb 4"},
		{sampleWith(), sampleWith("kind", "mitten"), "kind fingerless mitt → mitten"},
		{sampleWith(), sampleWith("unit", "in"), "lengths in centimetres → inches"},
		{sampleWith(), sampleWith("stitch.rib", "4"), "rib k1, p1 → k2, p2"},
		{sampleWith(), sampleWith("gauge.swatches[0].width", "10.5"), "swatch 1, stitches counted, over a width of 10 → 10.5"},
		{sampleWith(), sampleWith("gauge.swatches[1].stitches", "23", "gauge.swatches[1].width", "10", "gauge.swatches[1].worked", "flat"), "swatch 2: stitches counted 23"},
		{sampleWith("hand.profile[0].height", "0", "hand.profile[0].girth", "16"), sampleWith(), "girth 1 taken out"},
		{sampleWith(), sampleWith("pins.cast_on", "36"), "fixed: cast on 36"},
		{sampleWith("pins.cast_on", "36"), sampleWith("pins.cast_on", "38"), "fixed: cast on 36 → 38"},
		{sampleWith("pins.thumb_stitches", "14"), sampleWith(), "let go: thumb, stitches"},
		{sampleWith(), sampleWith("pins.gusset_rounds", "21"), "fixed: gusset 21 rounds"},
		{sampleWith(), sampleWith("chart.yarns[1].name", "moss"), "yarn B moss"},
		{sampleWith("chart.yarns[1].colour", "#123456"), sampleWith("chart.yarns[1].colour", "#654321"), "yarn B in another colour"},
		{sampleWith(), sampleWith("worked.section", "gusset", "worked.round", "12", "worked.cast_on", "36"), "kept as knitted: to gusset, round 12"},
		{sampleWith(), sampleWith("tried", "3", "hand.hand_circumference", "18.9"), "after the try of 2026-03-01; hand 18.6 → 18.9"},
		{sampleWith("tried", "3"), sampleWith(), "without the try of 2026-03-01"},
		{sampleWith(), sampleWith("hand.hand_circumference", "18.6 "), "spaces only"},
		{sampleWith(), renamed, "renamed: Moss"},
		{sampleWith(), left, "for the left hand"},
		{sampleWith(), away, "put away"},
		{away, sampleWith(), "back on the shelf"},
		{sampleWith(), second, "second thoughts begun"},
		{sampleWith(), print, "other choices for print"},
		{sampleWith(), sure, "sure of hand 18.6"},
		{
			sampleWith(), sampleWith("pins.cast_on", "36", "hand.thumb_circumference", "6.5", "hand.hand_circumference", "18.9", "yarn.ball_mass", "50", "chart.float", "4"),
			"hand 18.6 → 18.9; thumb 6.3 → 6.5; and 3 more",
		},
		{sampleWith(), sampleWith(), ""},
	} {
		assert.Equal(t, c.says, saysOf(c.was, c.now))
	}
}

// What became of the motifs that are laid is told by their names, whatever else was kept of
// them; with several at once, each is named once.
func TestAChangeOfMotifsInWords(t *testing.T) {
	t.Parallel()
	rings := []string{"repeats[0].motif", "..bb../.bb.bb", "repeats[0].name", "Rings", "repeats[0].was", "6 across, 4 up, 0 plain, 0 left"}
	flag := []string{"repeats[1].motif", "bb/b.", "repeats[1].section", "cuff"}
	both := append(append([]string{}, rings...), flag...)
	with := func(list []string, pairs ...string) project.Document {
		return sampleWith(append(append([]string{}, list...), pairs...)...)
	}
	for _, c := range []struct {
		was, now project.Document
		says     string
	}{
		{sampleWith(), sampleWith(rings...), "“Rings” laid"},
		{sampleWith(), sampleWith(both...), "“Rings” and motif 2 laid"},
		{sampleWith(both...), sampleWith(rings...), "motif 2 taken away"},
		{sampleWith(both...), sampleWith("repeats[0].motif", "bb/b.", "repeats[0].section", "cuff"), "“Rings” taken away"},
		{sampleWith(both...), sampleWith("repeats[0].motif", "bb/b.", "repeats[0].section", "cuff", "repeats[1].motif", "..bb../.bb.bb", "repeats[1].name", "Rings"), "“Rings” laid over motif 1"},
		{sampleWith(rings...), with(rings, "repeats[0].off", "true"), "“Rings” turned off"},
		{with(rings, "repeats[0].off", "true"), sampleWith(rings...), "“Rings” laid again"},
		{sampleWith(rings...), with(rings, "repeats[0].set", "multiple", "repeats[0].was", "7 across, 4 up, 0 plain, 0 left"), "“Rings” kept to a multiple"},
		{sampleWith(rings...), with(rings, "repeats[0].left", "as_drawn", "repeats[0].over", "palm"), "“Rings” over the palm and as drawn on the left hand"},
		{sampleWith(rings...), with(rings, "repeats[0].from", "3", "repeats[0].to", "9", "repeats[0].offset", "2"), "“Rings” laid otherwise"},
		{sampleWith(rings...), with(rings, "repeats[0].was", "7 across, 4 up, 0 plain, 0 left"), "looked at “Rings”"},
		{sampleWith(both...), with(both, "repeats[1].name", "Flag"), "motif 2 named “Flag”"},
		{sampleWith(rings...), with(rings, "repeats[0].motif", "b."), "“Rings” drawn anew"},
		{sampleWith(both...), with(both, "repeats[1].section", ""), "motif 2 over the whole hand"},
	} {
		assert.Equal(t, c.says, saysOf(c.was, c.now))
	}
}

// pastOf returns the lines of a mitt's history whose revisions follow each
// other after an hour, unless one has an offset.
func pastOf(revisions ...app.Revision) (says []string) {
	at := time.Date(2026, 3, 1, 9, 0, 0, 0, time.UTC)
	for i := range revisions {
		r := &revisions[i]
		r.Revision.Revision = int64(i + 1)
		if r.At.IsZero() {
			at = at.Add(time.Hour)
		}
		r.At = at
	}
	doc := sampleWith()
	h := NewHistory(app.History{ID: 1, Doc: doc, Newest: int64(len(revisions)), Revisions: revisions})
	for _, s := range h.Sittings {
		for _, m := range s.Moments {
			says = append(says, m.What)
		}
	}
	return says
}

func decided(pairs ...string) app.Revision {
	doc := sampleWith(pairs...)
	return app.Revision{Revision: store.Revision{Kind: "decision"}, Doc: &doc}
}

func stroke(kind string, edits, inverse []chart.Edit) app.Revision {
	return app.Revision{Revision: store.Revision{Kind: kind, Edits: edits, Inverse: inverse}}
}

// closely returns a revision that follows the one before it at once.
func closely(r app.Revision) app.Revision { r.At = time.Unix(1, 0); return r }

func row(n int, layer chart.Layer, value string) (edits []chart.Edit) {
	for i := range n {
		edits = append(edits, chart.Edit{Section: stitch.Hand, Round: 2, Column: fmt.Sprint("H", i+1), Layer: layer, Value: value})
	}
	return edits
}

func onSheet(path, value string) chart.Edit {
	return chart.Edit{Layer: chart.Sheet, Column: path, Value: value}
}

// What strokes did to the chart is said by the names of yarns, stitches and
// parts; what an undo took back, by what it did.
func TestAStrokeInWords(t *testing.T) {
	t.Parallel()
	rust, none := row(14, chart.Colours, "b"), row(14, chart.Colours, "")
	note := chart.Edit{Section: stitch.Hand, Round: 2, Layer: chart.Notes, Value: "try it on"}
	noteOff := note
	noteOff.Value = ""
	moved := chart.Edit{Section: stitch.Gusset, Round: 9, Column: "H1", Layer: chart.Colours, Value: "b"}
	for _, c := range []struct {
		says string
		past []app.Revision
	}{
		{"begun", nil},
		{"14 stitches rust in the hand", []app.Revision{stroke("do", rust, none)}},
		{"1 stitch purl in the hand", []app.Revision{stroke("do", row(1, chart.Stitches, "p"), row(1, chart.Stitches, ""))}},
		{"14 stitches moss in the hand", []app.Revision{decided("chart.yarns[1].name", "moss"), stroke("do", rust, none)}},
		{"undone: 14 stitches back in the planned colour in the hand", []app.Revision{stroke("do", rust, none), stroke("undo", none, rust)}},
		{"done again: 14 stitches rust in the hand", []app.Revision{stroke("redo", rust, none)}},
		{"done and undone", []app.Revision{stroke("do", rust, none), closely(stroke("undo", none, rust))}},
		{"note on hand, round 2", []app.Revision{stroke("do", []chart.Edit{note}, []chart.Edit{noteOff})}},
		{"note taken off hand, round 2", []app.Revision{stroke("do", []chart.Edit{noteOff}, []chart.Edit{note})}},
		{"hand 18.6 → 18.9; thumb 6.3 → 6.5", []app.Revision{decided("hand.hand_circumference", "18.9"), closely(decided("hand.hand_circumference", "18.9", "hand.thumb_circumference", "6.5"))}},
		{"3 strands left long in the hand", []app.Revision{stroke("do", row(3, chart.Strands, "b7"), row(3, chart.Strands, ""))}},
		{"1 strand to look at again in the hand", []app.Revision{stroke("do", row(1, chart.Strands, ""), row(1, chart.Strands, "b7"))}},
		{"as it was before", []app.Revision{decided("hand.hand_circumference", "18.9"), closely(decided())}},
		{"fixed: cast on 36; 14 stitches rust in the hand", []app.Revision{decided("pins.cast_on", "36"), stroke("do", append(rust[:14:14], onSheet("pins.cast_on", "36")), none)}},
		{"rounds put in or taken out: gusset, now 21", []app.Revision{
			decided("pins.gusset_rounds", "21"), stroke("do", []chart.Edit{onSheet("pins.gusset_rounds", "21"), moved}, nil),
		}},
		{"1 round put in: gusset, now 21", []app.Revision{
			decided("pins.gusset_rounds", "20"), decided("pins.gusset_rounds", "21"), stroke("do", []chart.Edit{onSheet("pins.gusset_rounds", "21"), moved}, nil),
		}},
		{"1 round taken out: gusset, now 20", []app.Revision{
			decided("pins.gusset_rounds", "21"), decided("pins.gusset_rounds", "20"), stroke("do", []chart.Edit{onSheet("pins.gusset_rounds", "20"), moved}, nil),
		}},
	} {
		assert.Equal(t, c.says, pastOf(append([]app.Revision{decided()}, c.past...)...)[0])
	}
}

// anyDocument changes a document in a few places, or in none.
func anyDocument(r *rand.Rand, d project.Document) project.Document {
	d.Sheet = d.Sheet.Clone()
	values := []string{"", "12", "18.6", "36", "cm", "in", "mitten", "true", "gusset", "3", "wide "}
	for range r.IntN(4) {
		value := values[r.IntN(len(values))]
		switch r.IntN(6) {
		case 0:
			d.Sheet.Put(mitt.Fixable()[r.IntN(len(mitt.Fixable()))].Path(), value)
		case 1:
			d.Sheet.Put([]string{"worked.section", "worked.round", "worked_other.round", "tried", "format", "second"}[r.IntN(6)], value)
		case 2:
			d.Name = "Mitts " + value
		case 3:
			d.Side, d.Archived = d.Side.Other(), !d.Archived
		case 4:
			d.Sure = map[string]string{"hand.hand_circumference": value}
		default:
			g := groups[r.IntN(len(groups))]
			if path := g.path(g.Fields[r.IntN(len(g.Fields))], r.IntN(3)); path != "side" {
				d.Sheet.Put(path, value)
			}
		}
	}
	return d
}

// Whatever changes in a document is said in one short line; where nothing changes,
// nothing is said.
func TestEveryChangeIsSaid(t *testing.T) {
	t.Parallel()
	r := rand.New(rand.NewPCG(21, 6))
	longest := 0
	for range testenv.Cases(2_000, 50_000) {
		was := anyDocument(r, sampleWith())
		now := anyDocument(r, was)
		before, err := was.Encode()
		require.NoError(t, err)
		after, err := now.Encode()
		require.NoError(t, err)
		says := saysOf(was, now)
		require.Equal(t, string(before) == string(after), says == "", "%s\n%s\n%s", says, before, after)
		longest = max(longest, len(strings.Fields(says)))
	}
	assert.LessOrEqual(t, longest, 24, "words of the longest, arrows counted")
}
