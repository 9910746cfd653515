package units

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// What is read in whole numbers is what exact fractions give, to the micrometre and to
// the word of what is refused.
func TestShortTextsAreExact(t *testing.T) {
	rng := rand.New(rand.NewPCG(10, 18))
	const marks = "0123456789012345678901234567890123456789.,.,/ "
	read := 0
	for range 10_000 {
		text := make([]byte, 1+rng.IntN(11))
		for i := range text {
			text[i] = marks[rng.IntN(len(marks))]
		}
		if text[0] == ' ' || text[len(text)-1] == ' ' {
			continue
		}
		for _, unit := range []Unit{MM, CM, IN} {
			got, gotErr := Parse(string(text), unit)
			want, wantErr := parseExact(string(text), unit)
			require.Equal(t, want, got, "%q %s", text, unit)
			require.Equal(t, wantErr, gotErr, "%q %s", text, unit)
		}
		if _, _, ok := short(string(text)); ok {
			read++
		}
	}
	require.Greater(t, read, 1_000)
}
