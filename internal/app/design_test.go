package app

import (
	"encoding/json"
	"fmt"
	"maps"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/sheet"
	"thenar/internal/store"
	"thenar/internal/units"
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
	require.Nil(t, d.Graded, "what is saved is worked out when it is shown")
	_, err = a.SaveDesign(ctx, id, Typed{"stamp": {d.Stamp}, "sizes[0].hand.size": {"eight"}})
	require.NoError(t, err)
	d, err = a.OpenDesign(ctx, id)
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

// A class's measured hands become sizes in order of girth, in the mitt's unit, named as the
// knitters or by number, with their own gauges if asked; what else is typed stays.
func TestSizesOfAClass(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	class := roster.New("Tuesday")
	class.Unit = units.IN
	hands := []roster.Student{
		{Name: "Bea", Sheet: sheet.Sheet{"hand.hand_circumference": "8", "hand.hand_length": "7 1/2", "pins.held": "12"}},
		{Name: "Nobody"},
		{Name: "Ada", Sheet: sheet.Sheet{"hand.size": "6", "gauge.swatches[0].stitches": "28", "gauge.swatches[0].width": "4"}},
		{Name: "Ada", Sheet: sheet.Sheet{"hand.hand_circumference": "7 1/4"}},
		{Name: "Odd", Sheet: sheet.Sheet{"hand.hand_circumference": "wide"}},
	}
	_, err = class.Add(hands...)
	require.NoError(t, err)
	raw, err := class.Encode()
	require.NoError(t, err)
	number, err := a.store.CreateClass(ctx, raw)
	require.NoError(t, err)
	classes, err := a.ClassesOfSizes(ctx)
	require.NoError(t, err)
	require.Equal(t, []ClassOfSizes{{number, "Tuesday", 4}}, classes)
	require.Equal(t, "Tuesday, 4 hands", classes[0].Called())

	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	form := Typed{"stamp": {d.Stamp}, "rules.length": {"fixed"}, "fill.class": {"1"}}
	ask := SizesAsk{Class: fmt.Sprint(number), To: "3", Gauges: true}
	d, err = a.SizesOfClass(ctx, id, form, ask)
	require.NoError(t, err)
	require.Equal(t, grade.Texts{
		"rules.length": "fixed", "sizes[0].name": "Ada", "sizes[0].hand.size": "6", "sizes[0].gauge.swatches[0].stitches": "28", "sizes[0].gauge.swatches[0].width": "10.16",
		"sizes[1].name": "Ada 2", "sizes[1].hand.hand_circumference": "18.415", "sizes[2].name": "Bea", "sizes[2].hand.hand_circumference": "20.32", "sizes[2].hand.hand_length": "19.05",
	}, d.Texts)
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.NotNil(t, d.Graded, "%v", d.Fault)
	for _, s := range d.Graded.Sizes {
		require.NoError(t, s.Err)
	}

	// What can't be read is taken as it is written, last, and told at its field.
	ask = SizesAsk{Class: ask.Class, From: "2", Numbered: true}
	d, err = a.SizesOfClass(ctx, id, Typed{"stamp": {d.Stamp}}, ask)
	require.NoError(t, err)
	require.Equal(t, [...]string{"2", "4", "wide", ""}, [...]string{d.Texts["sizes[0].name"], d.Texts["sizes[2].name"], d.Texts["sizes[2].hand.hand_circumference"], d.Texts["sizes[3].name"]})
	require.Empty(t, d.Texts["sizes[0].gauge.swatches[0].stitches"])
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.True(t, d.Faults.Has("sizes[2].hand.hand_circumference"), "%v", d.Faults)

	for _, c := range []struct {
		ask SizesAsk
		why string
	}{
		{SizesAsk{Class: "99"}, "fill.class: is none that there is"},
		{SizesAsk{Class: ask.Class, From: "0"}, `fill.class.from: is "0"; write a number from 1 to 4`},
		{SizesAsk{Class: ask.Class, From: "3", To: "2"}, "fill.class.to: is 2, before 3"},
	} {
		_, err = a.SizesOfClass(ctx, id, Typed{"stamp": {d.Stamp}}, c.ask)
		require.ErrorContains(t, err, c.why)
	}
	for range 10 {
		_, err = class.Add(roster.Student{Name: "More", Sheet: sheet.Sheet{"hand.size": "9"}})
		require.NoError(t, err)
	}
	_, _, err = SizesAsk{}.part(len(handsOf(class)))
	require.ErrorContains(t, err, "fill.class.to: makes 14 sizes; 12 are the most: write 12 or less")
}

// A number is fixed for every size or for one, and freed by an empty text; without a name it
// is told, and nothing is lost.
func TestNumbersAreFixedForSizes(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	d, err = a.SaveDesign(ctx, id, typedSizes(d, map[string]string{"fix": "gusset_base", "fix_for": "", "fix_value": "4"}))
	require.NoError(t, err)
	d, err = a.SaveDesign(ctx, id, typedSizes(d, map[string]string{"fix": "bridge", "fix_for": "1", "fix_value": "5"}))
	require.NoError(t, err)
	require.Equal(t, [2]string{"4", "5"}, [2]string{d.Texts["pins.gusset_base"], d.Texts["sizes[1].pins.bridge"]})
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	for i, s := range d.Graded.Sizes {
		require.Equal(t, 4, s.Plan.Gusset.Base)
		require.Equal(t, i == 1, s.Plan.Bridge.CastOn == 5)
	}
	_, err = a.SaveDesign(ctx, id, typedSizes(d, map[string]string{"fix": "", "fix_value": "5"}))
	require.ErrorContains(t, err, `fix: is missing; choose the number that is to be "5"`)
	d, err = a.SaveDesign(ctx, id, typedSizes(d, map[string]string{"pins.gusset_base": " "}))
	require.NoError(t, err)
	require.NotContains(t, d.Texts, "pins.gusset_base")
}

// The sizes that a page shows are worked out once, for all who ask; a change of the sizes or
// of the mitt works them out anew.
//
//thenar:race
func TestSizesAreWorkedOutOnce(t *testing.T) {
	a, ctx := fresh(t), t.Context()
	id, err := a.NewMitt(ctx, "", true)
	require.NoError(t, err)
	d, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	_, err = a.SaveDesign(ctx, id, typedSizes(d, nil))
	require.NoError(t, err)
	first, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	want, err := json.Marshal(first.Graded.Notches)
	require.NoError(t, err)
	var all sync.WaitGroup
	for range 4 {
		all.Go(func() {
			again, err := a.OpenDesign(ctx, id)
			assert.NoError(t, err)
			assert.Same(t, first.Graded, again.Graded)
			_, err = a.PatternPages(ctx, id, PatternAsk{}, Layout{})
			assert.NoError(t, err)
		})
	}
	all.Wait()
	after, err := json.Marshal(first.Graded.Notches)
	require.NoError(t, err)
	require.Equal(t, string(want), string(after))

	_, err = a.SaveDesign(ctx, id, typedSizes(first, map[string]string{"sizes[1].pins.gusset_base": "4"}))
	require.NoError(t, err)
	d, err = a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.NotSame(t, first.Graded, d.Graded)
	require.Equal(t, 4, d.Graded.Sizes[1].Plan.Gusset.Base)
	_, err = a.SaveNumbers(ctx, id, Typed{"after": {fmt.Sprint(3)}, "gauge.swatches[0].stitches": {"30"}})
	require.NoError(t, err)
	other, err := a.OpenDesign(ctx, id)
	require.NoError(t, err)
	require.NotSame(t, d.Graded, other.Graded, "another gauge of the mitt")
}
