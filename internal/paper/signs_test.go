package paper

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// A handout explains each sign of its words once, beside the first chart or without
// any; a handout without words explains the charts’ stitches alone.
func TestSignsStandOnceOnAHandout(t *testing.T) {
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{{Section: stitch.Hand, Round: 4, Column: "H12", Layer: chart.Stitches, Value: "ssk"}})
	thumbless := project.Samples()[1]
	thumbless.Sheet["kind"] = "mitten_without_thumb"
	for _, c := range []struct {
		doc    project.Document
		marks  chart.Marks
		pieces []Piece
		want   map[string]int
	}{
		{project.Samples()[0], nil, Usual().Pieces, map[string]int{"k": 1, "M1L": 1, "p": 1, "ssk": 1, "|": 1, "yo": 0, "kfb": 0}},
		{project.Samples()[0], nil, []Piece{Chart, Key}, map[string]int{"k": 1, "M1L": 1, "p": 0, "ssk": 0, "|": 0}},
		{project.Samples()[0], nil, []Piece{Chart, Words}, map[string]int{"k": 0, "ssk": 0}},
		{project.Samples()[0], nil, []Piece{Key, Words}, map[string]int{"k": 1, "ssk": 1}},
		{project.Samples()[0], marks, []Piece{Chart, Key, Words}, map[string]int{"k2tog": 1, "|": 1, "M1": 1}},
		{thumbless, nil, Usual().Pieces, map[string]int{"k": 1, "ssk": 1, "|": 0, "M1L": 0}},
	} {
		o := Usual()
		o.Pieces = c.pieces
		var all []string
		for _, p := range Handout(derived(t, c.doc, c.marks), o) {
			all = append(all, textsOf(p)...)
		}
		for sign, n := range c.want {
			assert.Equal(t, n, len(all)-len(slices.DeleteFunc(slices.Clone(all), func(s string) bool { return s == sign })), "%s with %v", sign, c.pieces)
		}
	}
}

// The key explains the lines of a chart that is divided or laid as on the screen, and names
// none that no chart has.
func TestKeyExplainsTheLinesOfADividedChart(t *testing.T) {
	lines := []string{"the round begins", "the second marker", "every fifth round", "edge of the gusset", "lay the next part here"}
	for cell, want := range map[float64][]string{0: lines[:3], 12: lines[2:]} {
		o := Usual()
		o.Pieces, o.Cell = []Piece{Chart, Key}, cell
		var all []string
		for _, p := range Handout(derived(t, project.Samples()[0], nil), o) {
			all = append(all, textsOf(p)...)
		}
		for _, line := range lines {
			assert.Equal(t, slices.Contains(want, line), slices.Contains(all, line), "cells of %v mm: %s", cell, line)
		}
	}
}
