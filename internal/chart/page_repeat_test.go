package chart

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/repeat"
)

// A page's runs of laid cells say of every cell what was said of it by itself.
func TestRunsOfLaidCells(t *testing.T) {
	const width = 3
	for name, of := range map[string][]Cell{
		"on and on": {{}, {Laid: 1}, {Laid: 1, Right: 1}, {Laid: 1, Right: 2}, {Laid: 1}, {Laid: 1, Right: 1}, {}},
		"turned":    {{Laid: 1, Right: 1}, {Laid: 1}, {Laid: 1, Right: 2}, {Laid: 1, Right: 1}},
		"mirrored":  {{Laid: 1, Right: 1}, {Laid: 1, Right: 2}, {Laid: 1, Right: 2}, {Laid: 1, Right: 1}},
		"with gaps": {{Laid: 2, Right: 2, Up: 3}, {}, {Laid: 2, Right: 1, Up: 3}, {Laid: 1, Right: 2, Up: 1}},
	} {
		got := make([]Cell, len(of))
		for _, run := range laidRuns(of, func(int) int { return width }) {
			for k := range run.N {
				got[run.I+k] = Cell{Laid: uint8(run.Repeat + 1), Right: uint8(((run.Right+run.Step*k)%width + width) % width), Up: uint8(run.Up)}
			}
		}
		assert.Equal(t, of, got, name)
	}
	assert.Len(t, laidRuns([]Cell{{Laid: 1}, {Laid: 1, Right: 1}, {Laid: 1, Right: 2}, {Laid: 1}}, func(int) int { return width }), 1, "one run for all of a round")
}

// A chart's page sets the fields of its repeats and nothing else of the sheet.
func TestEditsOfRepeats(t *testing.T) {
	assert.NoError(t, Check([]Edit{{Layer: Sheet, Column: "repeats[0].motif", Value: "ab"}, {Layer: Sheet, Column: "repeats[19].from"}}))
	for _, e := range []Edit{
		{Layer: Sheet, Column: "pins.cast_on", Value: "3"},
		{Layer: Sheet, Column: "repeats"},
		{Layer: Sheet, Column: "repeats[0].from", Round: 3, Value: "3"},
		{Layer: Sheet, Column: "repeats[0].from", Section: "hand", Value: "3"},
	} {
		assert.ErrorContains(t, Check([]Edit{e}), "edits[0].column", "%v", e)
	}
}

// A repeat lays colour if it lies, and has a yarn with a colour of its own.
func TestWhatLaysColour(t *testing.T) {
	motif := func(rows ...string) repeat.Motif {
		m, why := repeat.Drawn(rows, nil)
		assert.Empty(t, why)
		return m
	}
	one := repeat.Usual(motif("..b"))
	s := Source{Palette: Palette{{ID: "a"}, {ID: "b", Fill: "#B9562F"}}, Repeats: []repeat.Repeat{one}}
	assert.True(t, s.LaysColour())
	s.Repeats[0].Off = true
	assert.False(t, s.LaysColour())
	s.Repeats[0] = repeat.Usual(motif("aa."))
	assert.False(t, s.LaysColour(), "the main yarn has none")
}
