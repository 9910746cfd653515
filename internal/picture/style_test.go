package picture

import (
	"os"
	"regexp"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// What is drawn for paper and files has the colours of the page in light.
func TestDrawingsHaveTheColoursOfThePage(t *testing.T) {
	css, err := os.ReadFile("../../static/css/base.css")
	require.NoError(t, err)
	for token, colour := range map[string]string{
		"ink": inkColour, "pencil": pencilColour, "grid": gridColour, "fifth": fifthColour, "chalk": chalkColour,
		"pin": pinColour, "basting": bastingColour, "fits": fitsColour, "card": cardColour,
	} {
		light := regexp.MustCompile(`--` + token + `:\s*(#[0-9A-F]{6})`).FindSubmatch(css)
		require.NotNil(t, light, token)
		assert.Equal(t, string(light[1]), colour, token)
	}
}

// Lines that carry meaning have 3 to 1 on paper (WCAG 2.2, 1.4.11); the edge of a mark
// has so much against the mark.
func TestLinesStandOutFromTheGround(t *testing.T) {
	for _, colour := range []string{inkColour, pencilColour, fifthColour, chalkColour, pinColour, bastingColour, fitsColour} {
		assert.GreaterOrEqual(t, contrast(t, colour, groundColour), 3.0, colour)
		assert.GreaterOrEqual(t, contrast(t, colour, edgeColour), 3.0, colour)
	}
}
