package tryon

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// A length and the way it is off are one signed length, above its place being
// positive; what doesn't go together is refused and stays as it was typed. The
// signed lengths of earlier forms are read as ever.
func TestWaysInPlaceOfSigns(t *testing.T) {
	for _, c := range []struct {
		text  string
		way   Way
		asks  bool
		want  string
		fault string
	}{
		{"4", TooLow, true, "-4", ""},
		{"4", TooHigh, true, "4", ""},
		{"4,5", TooLow, true, "-4,5", ""},
		{"0", "", true, "0", ""},
		{"0", TooLow, true, "0", ""},
		{"", "", true, "", ""},
		{"-4", "", true, "-4", ""},
		{"−4", "", true, "−4", ""},
		{"4", "", false, "4", ""},
		{"-4", "", false, "-4", ""},
		{"4", "", true, "4", `is "4"; choose too high or too low, too`},
		{"-4", TooLow, true, "-4", `is "-4" and too low; leave the sign out`},
		{"", TooHigh, true, "", "is too high, but by how much? Write the length, or 0 if it sits right"},
		{"4", "up", true, "4", `is too "up"; choose too high or too low`},
		{"four", TooLow, true, "four", ""},
	} {
		got, faults := Try{Base: c.text, BaseWay: c.way}.Sided(c.asks)
		assert.Equal(t, c.want, got.Base, "%+v", c)
		said := ""
		for _, f := range faults {
			assert.Equal(t, "base", f.Path)
			said = f.Message
		}
		assert.Equal(t, c.fault, said, "%+v", c)
		if c.fault != "" {
			assert.Equal(t, c.way, got.BaseWay, "the choice stays")
		}
	}
	top, _ := Try{Top: "6", TopWay: TooLow}.Sided(true)
	assert.Equal(t, Try{Top: "-6"}, top)

	for _, c := range []struct {
		text string
		want string
		way  Way
	}{{"-4", "4", TooLow}, {"−4,5", "4,5", TooLow}, {"4", "4", TooHigh}, {"0", "0", ""}, {"", "", ""}, {"four", "four", ""}} {
		text, way := Unsided(c.text, "")
		assert.Equal(t, []any{c.want, c.way}, []any{text, way}, c.text)
	}
}
