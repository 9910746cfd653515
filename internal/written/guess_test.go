package written

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Slips of spelling are asked about with what was meant, and ordinary words are not.
func TestGuess(t *testing.T) {
	for low, meant := range map[string]string{
		"k2tgo": "k2tog", "ks2og": "k2tog", "k2tig": "k2tog", "rond": "rnd", "ronds": "rnds", "prul": "purl", "purk": "purl", "knti": "knit",
		"kint": "knit", "rpe": "rep", "repaet": "repeat", "reapet": "repeat", "hodler": "holder", "makrer": "marker", "stiches": "stitches",
		"stithces": "stitches", "togethr": "together", "arround": "around", "m1ll": "m1-l", "p2tgo": "p2tog", "psoo": "psso",
	} {
		assert.Equal(t, meant, Guess(low), low)
	}
	for _, low := range []string{
		"sound", "found", "ground", "behind", "chart", "count", "kind", "find", "how", "now", "stop", "step", "toe", "top", "waste", "yarn", "you",
		"would", "words", "knits", "purls", "makes", "market", "last", "cost", "garter", "folder", "golden", "older", "order", "larger", "needle", "being",
		"build", "class", "cross", "school", "window", "table", "rnds", "k2tog", "flurb", "it", "stitch", "thumb", "finger", "colour", "wrist",
	} {
		assert.Empty(t, Guess(low), low)
	}
}
