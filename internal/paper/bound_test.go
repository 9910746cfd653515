package paper

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/draw"
)

// A number stays with what it counts or measures, and a length in cm with the same in
// inches; all other spaces may break. Large print spells its fractions.
func TestNumbersStayWithTheirUnits(t *testing.T) {
	for text, want := range map[string]string{
		"leave 125 cm / 50 in of yarn.":         "leave 125_cm_/_50_in of yarn.",
		"hold 9 stitches, then round 13":        "hold 9_stitches, then round_13",
		"rounds 1, 4, 7 of the gusset":          "rounds_1, 4, 7 of the gusset",
		"about 85 m / 93 yd for the pair":       "about 85_m_/_93_yd for the pair",
		"(24.4 and 32.5 over 4 in), in the air": "(24.4 and 32.5 over_4_in), in the air",
		"3.25–3.75 mm (US 3–5)":                 "3.25–3.75_mm (US_3–5)",
		"no number / no unit":                   "no number / no unit",
		"15 held, 1 decreased; to 14 stitches":  "15_held, 1_decreased; to_14_stitches",
		"a dot. ≈ estimated (+ looser)":         "a dot. ≈_estimated (+_looser)",
		"about ⅞ in":                            "about ⅞_in",
		"every 2nd round 3 times, then every":   "every_2nd_round 3_times, then every",
		"a decrease round 3 times":              "a decrease round 3_times",
		"3 times. 4 decrease rows, 10 rows":     "3_times. 4_decrease rows, 10_rows",
		"rounds 3 times in all. Rounds 1, 3":    "rounds 3_times in all. Rounds_1, 3",
	} {
		assert.Equal(t, want, strings.ReplaceAll(bound(text), draw.Hard, "_"))
	}
	assert.Equal(t, "2_5/8 in, 1/2 in", strings.ReplaceAll(spelt("2⅝ in, ½ in"), draw.Hard, "_"))
}
