package chart

import (
	"bytes"
	"encoding/csv"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A grid as a spreadsheet shows it, written out by hand: the widest round at
// the top, the first stitch of a round at the right, its number beside it.
func TestCSV(t *testing.T) {
	marks := Marks{}
	marks.Apply([]Edit{paint(2, "B2", Stitches, "p"), paint(2, "B1", Colours, "b")})
	var b bytes.Buffer
	require.NoError(t, CSV(&b, wedge(gusset(t), 3, 15, marks, false)))
	r := csv.NewReader(&b)
	lines, err := r.ReadAll()
	require.NoError(t, err)
	assert.Equal(t, [][]string{
		{"k", "k", "k", "k", "k", "k", "k", "k", "k", "k", "k", "k", "k", "4"},
		{"k", "k", "k", "k", "M1R", "k", "k", "k", "M1L", "k", "k", "k", "k", "3"},
		{"", "k", "k", "k", "k", "k", "p", "k", "k/rust", "k", "k", "k", "", "2"}, // B3, made, B2, made, B1
		{"", "k", "k", "k", "k", "M1R", "k", "M1L", "k", "k", "k", "k", "", "1"},
	}, lines)
}
