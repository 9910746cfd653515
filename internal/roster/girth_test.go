package roster

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/sheet"
	"thenar/internal/units"
)

// The girths of a class are told alike, however they were typed.
func TestGirthsOfAClassAreToldAlike(t *testing.T) {
	for _, c := range []struct {
		typed string
		unit  units.Unit
		want  string
	}{
		{"19", units.CM, "19.0 cm"},
		{"18,6", units.CM, "18.6 cm"},
		{"18.64", units.CM, "18.6 cm"},
		{"7 1/2", units.IN, "7½ in"},
		{"7.5", units.IN, "7½ in"},
		{"186", units.MM, "186 mm"},
		{"wide", units.CM, "wide cm"},
	} {
		s := Student{Sheet: sheet.Sheet{"hand.hand_circumference": c.typed}}
		assert.Equal(t, c.want, s.HandText(c.unit))
	}
	assert.Equal(t, "size 8", (&Student{Sheet: sheet.Sheet{"hand.size": "8"}}).HandText(units.CM))
	assert.Equal(t, "–", (&Student{}).HandText(units.CM))
}
