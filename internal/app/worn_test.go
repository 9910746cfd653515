package app

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/picture"
)

// The shelf shows a stroke as soon as it is drawn, and reads the strokes of a mitt only
// once while nothing changes.
func TestTheShelfWearsWhatIsPainted(t *testing.T) {
	a := fresh(t)
	id, err := a.NewMitt(t.Context(), "", true)
	require.NoError(t, err)
	worn := func() *picture.Worn {
		list, err := a.Shelf(t.Context())
		require.NoError(t, err)
		return list[0].Worn
	}
	assert.Nil(t, worn())
	drawn, err := a.Chart(t.Context(), id)
	require.NoError(t, err)
	_, err = a.Draw(t.Context(), id, fmt.Appendf(nil, `{"after":%d,"edits":[{"section":"gusset","round":3,"column":"H2","layer":"colour","value":"b"}]}`, drawn.Revision))
	require.NoError(t, err)
	first := worn()
	assert.NotNil(t, first, "rust")
	assert.Same(t, first, worn())
}
