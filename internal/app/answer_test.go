package app

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// A mitt that is ripped back altogether is cast on anew, also where nothing but
// its cast-on had been counted: the new plan may cast on another number.
func TestRippedBackToNothingIsCastOnAnew(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	count(t, a, id, "cuff", 0)
	w, err := a.readTried(t.Context(), id, wantsTry())
	require.NoError(t, err)
	pl, done := a.plannerOf(w.work)
	defer done()
	p, err := pl.Plan(w.doc.Effective())
	require.NoError(t, err)
	castOnAlone := w.place(w.doc.Side, p.Mitt())
	require.Zero(t, castOnAlone.Nth)
	require.True(t, castOnAlone.Begun())

	got, err := w.countTo(pl, w.doc, tryon.Place{})
	require.NoError(t, err)
	require.Len(t, got, 1)
	assert.Equal(t, store.Count{Key: got[0].Key, Side: string(project.Right)}, got[0])

	got, err = w.countTo(pl, w.doc, castOnAlone)
	require.NoError(t, err)
	assert.Empty(t, got, "the count stands there already")
}

// Where a mitt is tried on, and where the try is answered, it wears what is painted on its
// chart; a mitt without colours wears none.
func TestATriedMittWearsItsColours(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	for _, painted := range []bool{false, true} {
		if painted {
			stroke(t, a, id, rustAndNote)
		}
		list, err := a.Tries(t.Context(), id, "", "gusset", "8")
		require.NoError(t, err)
		assert.Equal(t, painted, list.Worn != nil)
		tried := tryon.Try{Key: fmt.Sprint("k", painted), Date: "2026-03-01", Side: "right", Section: "gusset", Round: "8", Top: "-6"}
		try, err := a.AddTry(t.Context(), id, NewTry{Try: tried})
		require.NoError(t, err)
		weighed, err := a.WeighTry(t.Context(), id, try, Ticks{})
		require.NoError(t, err)
		assert.Equal(t, painted, weighed.Worn != nil)
	}
}
