package roster

import (
	"errors"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Every path of a student is one of a measure sheet.
func TestPathsAreThoseOfASheet(t *testing.T) {
	assert.Len(t, Paths(), 29)
	for _, path := range Paths() {
		assert.True(t, sheet.Known(path), path)
	}
	Paths()[0] = "mended"
	assert.Equal(t, "hand.size", Paths()[0], "the list is the caller's own")
}

// A student may be kept before anything is measured, or with a thumb and no hand.
func TestUnmeasuredStudentsAreKept(t *testing.T) {
	for name, s := range map[string]Student{
		"a name":             {Name: "Ada"},
		"sixty letters":      {Name: strings.Repeat("Å", maxName)},
		"only a thumb":       {Name: "Ada", Sheet: sheet.Sheet{"hand.thumb_circumference": "21"}},
		"only a length":      {Name: "Ada", Sheet: sheet.Sheet{"hand.hand_length": "18"}},
		"only a gauge":       {Name: "Ada", Gauge: FromBand, Sheet: sheet.Sheet{stitchesPath: "22 1/2", widthPath: "10"}},
		"only a cuff":        {Name: "Ada", Gauge: FromCuff, Sheet: sheet.Sheet{"pins.cast_on": "40"}},
		"a hand by its size": {Name: "Ada", Sheet: sheet.Sheet{"hand.size": "7½", "hand.thumb_circumference": "6,5"}},
	} {
		assert.Empty(t, s.Check(units.CM), name)
	}
}

// All faults are found at once, always in the same order.
func TestCheckFindsEveryFault(t *testing.T) {
	s := Student{
		Name: strings.Repeat("x", 61), Note: "a\x00b", Gauge: "guess",
		Sheet: sheet.Sheet{
			"hand.size": "99", "hand.wrist_circumference": "wide", "hand.hand_length": strings.Repeat("1", 201), "hand.gusset_length": "7\x01",
			stitchesPath: "9000", widthPath: "10", "pins.cast_on": "4.5", "ease.hand": "0", "unit": "mm",
		},
	}
	faults := s.Check(units.CM)
	for path, says := range map[string]string{
		"name": "61 characters; 60 are the most", "note": "can't be shown", "gauge_from": "choose a swatch, the cuff or the band",
		"hand.size": "from 4 to 13", "hand.wrist_circumference": "is not a number", "hand.hand_length": "has 201 characters; 200 are the most",
		"hand.gusset_length": "can't be shown", stitchesPath: "between 2 and 500", "pins.cast_on": "write a whole number from",
	} {
		i := slices.IndexFunc(faults, func(f fault.Field) bool { return f.Path == path })
		require.GreaterOrEqual(t, i, 0, "%s in %v", path, faults)
		assert.Contains(t, faults[i].Message, says, path)
	}
	assert.Equal(t, []string{`student: can't hold "ease.hand"`, `student: can't hold "unit"`}, slices.DeleteFunc(faults.Lines(), func(l string) bool { return !strings.HasPrefix(l, "student") }))
	assert.Len(t, faults, 11)
	for range 20 {
		assert.Equal(t, faults, s.Check(units.CM))
	}
}

// A count without its length, or rounds without stitches, are faults in any unit.
func TestIncompleteGauge(t *testing.T) {
	for _, u := range []units.Unit{units.MM, units.CM, units.IN} {
		for says, own := range map[string]sheet.Sheet{
			"stitches: is missing beside the rounds": {roundsPath: "32", heightPath: GaugeOver(u)},
			"stitches: is missing beside the length": {widthPath: "wide"},
			"width: is missing":                      {stitchesPath: "24"},
			"height: is missing":                     {stitchesPath: "24", widthPath: GaugeOver(u), roundsPath: "32"},
		} {
			s := Student{Name: "Ada", Sheet: own}
			assert.Contains(t, s.Check(u).Error(), says)
		}
		s := Student{Name: "Ada", Sheet: sheet.Sheet{stitchesPath: "24", roundsPath: "32"}}
		s.OverGauge(u)
		assert.Empty(t, s.Check(u), u)
		delete(s.Sheet, stitchesPath)
		delete(s.Sheet, roundsPath)
		s.OverGauge(u)
		assert.Empty(t, s.Sheet, "no count, no length")
	}
}

// The messages are those of the measure sheet, word for word.
func TestMessagesAreThoseOfTheSheet(t *testing.T) {
	for path, text := range map[string]string{
		"hand.hand_circumference": "500", "hand.thumb_length": "six", "hand.size": "x", "pins.bridge": "-1", "pins.cuff_rounds": "2.5", "pins.cast_on": "3",
	} {
		whole := sheet.Sheet{"unit": "cm", "hand.hand_circumference": "20", stitchesPath: "20", widthPath: "10"}
		whole[path] = text
		_, err := whole.Request()
		var want fault.Fields
		require.True(t, errors.As(err, &want), path)
		s := Student{Name: "Ada", Sheet: sheet.Sheet{path: text}}
		assert.Equal(t, want, s.Check(units.CM), path)
	}
}

func TestEveryGaugeSourceIsKept(t *testing.T) {
	seen := map[string]bool{}
	for _, g := range GaugeSources() {
		s := Student{Name: "Ada", Gauge: g}
		assert.Empty(t, s.Check(units.MM))
		seen[g.Words()] = true
	}
	assert.Len(t, seen, 3)
	assert.Contains(t, FromBand.Words(), "a guess")
}
