package paper

import (
	"errors"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

func TestReadReturnsWhatQueryWrote(t *testing.T) {
	for _, o := range []Options{
		Usual(),
		{Paper: Letter, Sideways: true, Large: true, Grey: true, Double: true, FromLeft: true, Boxed: true, Cell: 4.25, Pieces: []Piece{Key, Chart, Notes}},
	} {
		back, err := Read(o.Query())
		require.NoError(t, err)
		assert.Equal(t, o, back)
	}
	o, err := Read(url.Values{})
	require.NoError(t, err)
	assert.Equal(t, Usual(), o)
}

// Pieces are printed in the order of their places; those without a place are left out.
func TestPiecesByPlace(t *testing.T) {
	o, err := Read(url.Values{"place-words": {"1"}, "place-chart": {"3"}, "place-key": {" 2 "}, "place-plan": {""}})
	require.NoError(t, err)
	assert.Equal(t, []Piece{Words, Key, Chart}, o.Pieces)
	assert.Equal(t, 3, o.Place(Chart))
	assert.Zero(t, o.Place(Plan))
	assert.False(t, o.Has(Plan))
}

// Faults name their fields, and the options hold what was valid.
func TestFaultsOfOptions(t *testing.T) {
	o, err := Read(url.Values{"paper": {"a5"}, "cell": {"0,5"}, "pieces": {"plan,poem"}, "large": {"1"}})
	var fields fault.Fields
	require.True(t, errors.As(err, &fields))
	for _, name := range []string{"paper", "cell", "pieces"} {
		assert.True(t, fields.Has(name), name)
	}
	assert.True(t, o.Large)
	assert.Equal(t, A4, o.Paper)
	assert.Equal(t, []Piece{Plan}, o.Pieces)
	for _, bad := range []string{"x", "NaN", "Inf", "-3", "1e9", "21"} {
		_, err := Read(url.Values{"cell": {bad}})
		require.Error(t, err, bad)
	}
	_, err = Read(url.Values{"pieces": {""}})
	require.Error(t, err, "nothing to print")
	o, err = Read(url.Values{"place-plan": {"first"}})
	require.Error(t, err)
	assert.NotEmpty(t, o.Pieces, "there is always something to print")
	o, err = Read(url.Values{"cell": {"6,5"}})
	require.NoError(t, err)
	assert.InDelta(t, 6.5, o.Cell, 0)
}
