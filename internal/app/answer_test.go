package app

import (
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
	w, err := decoded(a.store.ReadWork(t.Context(), id, wantsTry()))
	require.NoError(t, err)
	pl, done := a.plannerOf(&w)
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
