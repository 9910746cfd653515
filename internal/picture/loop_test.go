package picture

import (
	"encoding/json"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// loopCase is a loop that Go and the script of the chart draw alike.
type loopCase struct {
	X    float64 `json:"x"`
	Half float64 `json:"half"`
	Top  float64 `json:"top"`
	Foot float64 `json:"foot"`
	Path string  `json:"path"`
}

func TestLoopsAreDrawnAlikeByGoAndTheScript(t *testing.T) {
	var cases []loopCase
	for _, c := range []loopCase{{X: 12, Half: 7.2, Top: 8, Foot: 29}, {X: 431.5, Half: 2.16, Top: 18, Foot: 33}, {X: 3, Half: 1.8, Top: 1.6, Foot: 8.6}} {
		c.Path = Loop(c.X, c.Half, c.Top, c.Foot)
		cases = append(cases, c)
	}
	raw, err := json.MarshalIndent(cases, "", " ")
	require.NoError(t, err)
	testenv.Golden(t, "../../testdata/chart/loops.json", append(raw, '\n'))
}
