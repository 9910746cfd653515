package app

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// typedSizes is a form with two sizes, made from what a design shows.
func typedSizes(d Design, more map[string]string) Typed {
	form := Typed{"stamp": {d.Stamp}, "sizes[0].name": {"7"}, "sizes[0].hand.size": {"7"}, "sizes[1].name": {"8"}, "sizes[1].hand.size": {"8"}}
	for name, text := range more {
		form[name] = []string{text}
	}
	return form
}

// Sizes are saved with their mitt and come back as typed; each opens as a mitt of its
// own with its hand, its fixed numbers and the drawing; undoing and moving house are
// those of the mitt.
func TestSizesOfAMitt(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.Nil(t, d.Graded)

	d, err = a.SaveDesign(ctx, id, typedSizes(d, map[string]string{"sizes[1].pins.gusset_base": "4", "set": "rules.price_mm2=0"}))
	require.NoError(t, err)
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.Len(t, d.Graded.Sizes, 2)
	require.Equal(t, 4, d.Graded.Sizes[1].Plan.Gusset.Base)
	require.Equal(t, "0", d.Texts["rules.price_mm2"])

	size, err := a.OpenSize(ctx, id, "8")
	require.NoError(t, err)
	m, err := a.OpenMitt(ctx, size)
	require.NoError(t, err)
	require.Contains(t, m.Doc.Name, ", size 8")
	require.Equal(t, d.Graded.Sizes[1].Plan.Body.Stitches.N, m.Out.Plan.Body.Stitches.N)
	require.Equal(t, 4, m.Out.Plan.Gusset.Base)
	require.Empty(t, m.Doc.Design)
	_, err = a.OpenSize(ctx, id, "9")
	require.Equal(t, fault.NotFound, fault.KindOf(err))

	// A size that is left out is gone; what is wrong is kept as typed, and told.
	d, err = a.SaveDesign(ctx, id, Typed{"stamp": {d.Stamp}, "drop": {"0"}, "sizes[0].hand.size": {"seven"}})
	require.NoError(t, err)
	require.Equal(t, "8", d.Texts["sizes[0].name"])
	d, err = a.SaveDesign(ctx, id, Typed{"stamp": {stamp(d.Texts)}, "sizes[0].hand.size": {"eight"}})
	require.NoError(t, err)
	require.Equal(t, "eight", d.Texts["sizes[0].hand.size"])
	require.True(t, d.Faults.Has("sizes[0].hand.size"), "%v", d.Faults)
	require.Nil(t, d.Graded)
}

// A window that was overtaken saves nothing and keeps what it typed.
func TestSizesInTwoWindows(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	first, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	second := first
	saved, err := a.SaveDesign(ctx, id, typedSizes(first, nil))
	require.NoError(t, err)
	got, err := a.SaveDesign(ctx, id, typedSizes(second, map[string]string{"sizes[0].name": "other"}))
	require.Equal(t, fault.Conflict, fault.KindOf(err))
	require.Equal(t, "other", got.Texts["sizes[0].name"])
	require.True(t, maps.Equal(saved.Texts, got.Beside))
	again, err := a.SaveDesign(ctx, id, typedSizes(got, map[string]string{"sizes[0].name": "other"}))
	require.NoError(t, err, "sent once more it goes over the other")
	require.Equal(t, "other", again.Texts["sizes[0].name"])

	_, err = a.SaveDesign(ctx, id, typedSizes(again, map[string]string{"sizes[0].colour": "red"}))
	require.ErrorContains(t, err, "design: has no field of this name")
}

// What is written for the pattern is saved with the mitt, told in its history, and comes
// back with an earlier moment as one stroke; a size that is opened is no pattern.
func TestPatternTextsComeBack(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	save := func(texts project.PatternTexts) {
		_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
			doc := w.doc
			doc.Pattern = texts
			return w.decision(doc)
		})
		require.NoError(t, err)
	}
	wrote := project.PatternTexts{project.PatternTitle: "Ear", "after cuff/cast-on/1": "Breathe.", project.PatternNotes: "one\ntwo"}
	save(wrote)
	w, err := a.store.ReadWork(ctx, id, store.Wants{})
	require.NoError(t, err)
	save(project.PatternTexts{project.PatternTitle: "Wheat"})
	require.NoError(t, a.BringBack(ctx, id, w.Revision))
	m, err := a.OpenMitt(ctx, id)
	require.NoError(t, err)
	require.Equal(t, wrote, m.Doc.Pattern)
	_, err = a.Draw(ctx, id, []byte(`{"after": 4, "key": "k1", "undo": true}`))
	require.NoError(t, err)
	m, err = a.OpenMitt(ctx, id)
	require.NoError(t, err)
	require.Equal(t, project.PatternTexts{project.PatternTitle: "Wheat"}, m.Doc.Pattern)

	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	_, err = a.SaveDesign(ctx, id, typedSizes(d, nil))
	require.NoError(t, err)
	size, err := a.OpenSize(ctx, id, "8")
	require.NoError(t, err)
	m, err = a.OpenMitt(ctx, size)
	require.NoError(t, err)
	require.Empty(t, m.Doc.Pattern)
}
