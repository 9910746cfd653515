package app

import (
	"fmt"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// sampled is an App on a new file with the sample mitt.
func sampled(t *testing.T) (*App, int64) {
	t.Helper()
	a := fresh(t)
	id, err := a.NewMitt(t.Context(), "Moss", true)
	require.NoError(t, err)
	return a, id
}

// now is the document of a mitt as it stands.
func now(t *testing.T, a *App, id int64) project.Document {
	t.Helper()
	m, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	return m.Doc
}

// count notes that a round of the right hand is done.
func count(t *testing.T, a *App, id int64, section string, round int) {
	t.Helper()
	_, err := a.store.NoteCount(t.Context(), id, store.Count{Key: fmt.Sprint(section, round), Side: "right", Section: section, Round: round})
	require.NoError(t, err)
}

// A change whose base moved while it was worked out is worked out again, on
// what the other left: both are kept.
func TestAChangeIsWorkedOutOnTheNewest(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	seen := []string{}
	_, err := a.change(t.Context(), id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		if len(seen) == 0 {
			require.NoError(t, a.RenameMitt(t.Context(), id, "Renamed meanwhile"))
		}
		seen = append(seen, w.doc.Name)
		doc := w.doc
		doc.Archived = true
		return w.decision(doc)
	})
	require.NoError(t, err)
	assert.Equal(t, []string{"Moss", "Renamed meanwhile"}, seen)
	doc := now(t, a, id)
	assert.True(t, doc.Archived)
	assert.Equal(t, "Renamed meanwhile", doc.Name)
}

// A mitt that moves on each time is left alone after three attempts: nothing of
// the change is written, and the person is told.
func TestAChangeGivesUpAfterThreeAttempts(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	for what, between := range map[string]func(n int){
		"a document": func(n int) { require.NoError(t, a.RenameMitt(t.Context(), id, fmt.Sprint("Moss ", n))) },
		"a count":    func(n int) { count(t, a, id, "cuff", n) },
	} {
		attempts := 0
		_, err := a.change(t.Context(), id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
			attempts++
			between(attempts)
			c := w.stroke([]chart.Edit{{Layer: chart.Sheet, Column: sheet.PathSecond, Value: sheet.Anew}})
			c.Counts = []store.Count{castOn(project.Left)}
			c.Moment = "never"
			return c, nil
		})
		assert.Equal(t, maxAttempts, attempts, what)
		assert.Equal(t, fault.Conflict, fault.KindOf(err), what)
		assert.Contains(t, fault.Message(err), "Nothing of this is saved yet; try again.", what)
	}
	w, err := decoded(a.store.ReadWork(t.Context(), id, store.Wants{History: true, Marks: true}))
	require.NoError(t, err)
	assert.Empty(t, w.doc.Sheet.Given(sheet.PathSecond))
	assert.NotContains(t, w.Last, "left")
	assert.False(t, w.CanUndo)
	for _, r := range w.History {
		assert.Empty(t, r.Name)
	}
}

// A form that was opened before another version was saved is no matter of
// trying again: the person is shown both.
func TestAFormFromBeforeAnotherVersionIsAConflict(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	first := Typed{"after": {"1"}, "hand.hand_circumference": {"19.1"}}
	second := Typed{"after": {"1"}, "hand.hand_circumference": {"19.2"}}
	_, err := a.SaveNumbers(t.Context(), id, first)
	require.NoError(t, err)
	_, err = a.SaveNumbers(t.Context(), id, second)
	require.Equal(t, fault.Conflict, fault.KindOf(err))
	both, err := a.Unsaved(t.Context(), id, second)
	require.NoError(t, err)
	assert.Equal(t, "19.2", both.Doc.Sheet.Given("hand.hand_circumference"))
	assert.Equal(t, "19.1", both.Saved.Sheet.Given("hand.hand_circumference"))
	require.NotNil(t, both.Was)
	assert.Equal(t, project.Samples()[0].Sheet.Given("hand.hand_circumference"), both.Was.Sheet.Given("hand.hand_circumference"))
}

// A round that is counted while numbers are worked out is among those that
// stay: they are worked out once more.
func TestARoundCountedMeanwhileStays(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	count(t, a, id, "cuff", 3)
	typed := Typed{"after": {"1"}, "hand.hand_circumference": {"23"}}
	attempts := 0
	_, err := a.changeTried(t.Context(), id, store.Wants{}, func(w triedWork, pl *project.Planner) (store.Change, error) {
		f, faults, err := w.typed(pl, typed)
		require.NoError(t, err)
		require.Empty(t, faults)
		if attempts++; attempts == 1 {
			count(t, a, id, "gusset", 5)
		}
		return w.decision(f.doc)
	})
	require.NoError(t, err)
	assert.Equal(t, 2, attempts)
	sheet := now(t, a, id).Sheet
	assert.Equal(t, []string{"gusset", "5"}, []string{sheet.Given("worked.section"), sheet.Given("worked.round")})
}

// Two people at one mitt: one names it, one puts it away and takes it out, both
// as fast as they can. What each did last stands, and no revision is lost.
//
//thenar:race
func TestTwoAtOneMitt(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	const times = 25
	done := make([]int, 2)
	var both sync.WaitGroup
	for who, act := range []func(n int) error{
		func(n int) error { return a.RenameMitt(t.Context(), id, fmt.Sprint("Moss ", n)) },
		func(n int) error { return a.ArchiveMitt(t.Context(), id, n%2 == 1) },
	} {
		both.Go(func() {
			for n := range times + 1 {
				for {
					err := act(n)
					if err == nil {
						break
					}
					if !assert.Equal(t, fault.Conflict, fault.KindOf(err)) {
						return
					}
				}
				done[who]++
			}
		})
	}
	both.Wait()
	doc := now(t, a, id)
	assert.Equal(t, fmt.Sprint("Moss ", times), doc.Name)
	assert.Equal(t, times%2 == 1, doc.Archived)
	h, err := a.History(t.Context(), id, 0)
	require.NoError(t, err)
	assert.Len(t, h.Revisions, 1+done[0]+done[1]-1, "but the first taking out, which changed nothing")
}

// Two windows take back strokes of the sheet at the same time: each takes back
// another one, and what is knitted stays after all of them.
//
//thenar:race
func TestTwoWindowsUndo(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	const strokes = 8
	for n := range strokes {
		_, err := a.change(t.Context(), id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
			return w.stroke([]chart.Edit{{Layer: chart.Sheet, Column: "hand.hand_circumference", Value: fmt.Sprint(20 + n)}}), nil
		})
		require.NoError(t, err)
	}
	count(t, a, id, "cuff", 3)
	was := now(t, a, id).Sheet
	var both sync.WaitGroup
	for range 2 {
		both.Go(func() {
			for left := strokes / 4; left > 0; {
				_, err := a.Draw(t.Context(), id, []byte(`{"after":1,"undo":true}`))
				if err == nil {
					left--
				} else if !assert.Equal(t, fault.Conflict, fault.KindOf(err)) {
					return
				}
			}
		})
	}
	both.Wait()
	is := now(t, a, id).Sheet
	assert.Equal(t, fmt.Sprint(20+strokes-1), was.Given("hand.hand_circumference"))
	assert.Equal(t, "cuff", is.Given("worked.section"))
}

// What is sent again, since its answer was lost, is carried out once, with all
// that followed from it.
func TestSentAgainIsCarriedOutOnce(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	m, err := a.OpenMitt(t.Context(), id)
	require.NoError(t, err)
	rounds := m.Out.Plan.Gusset.IncreaseRounds
	last := rounds[len(rounds)-1]
	require.Less(t, rounds[len(rounds)-2], last-1)
	sent := fmt.Appendf(nil, `{"after":1,"key":"k1","change":{"kind":"move","section":"gusset","round":%d,"to":%d}}`, last, last-1)
	first, err := a.Draw(t.Context(), id, sent)
	require.NoError(t, err)
	again, err := a.Draw(t.Context(), id, sent)
	require.NoError(t, err, "by now round %d has no increase", last)
	assert.Equal(t, first.Revision, again.Revision)
	assert.Equal(t, first.Edits, again.Edits)
	marked := []byte(`{"after":1,"key":"k2","edits":[{"section":"gusset","round":4,"column":"","layer":"needles","value":"here"}]}`)
	_, err = a.Draw(t.Context(), id, marked)
	require.NoError(t, err)
	count(t, a, id, "gusset", 7)
	_, err = a.Draw(t.Context(), id, marked)
	require.NoError(t, err)
	w, err := a.store.ReadWork(t.Context(), id, store.Wants{})
	require.NoError(t, err)
	assert.Equal(t, 7, w.Last["right"].Round, "the count goes on from where it was")
}

// What depends on what is knitted has the tries, whatever else it wants: an open try says
// how far, before any round is counted.
func TestWhatIsKnittedIsReadWithItsTries(t *testing.T) {
	t.Parallel()
	a, id := sampled(t)
	_, err := a.AddTry(t.Context(), id, NewTry{Try: tryon.Try{Key: "k", Date: "2026-03-01", Side: "right", Section: "gusset", Round: "8", Top: "-6"}})
	require.NoError(t, err)
	reached := func(w triedWork, pl *project.Planner) tryon.Place {
		h, err := w.knitted(pl, w.doc, project.Right)
		require.NoError(t, err)
		return h.At
	}
	var changed, read tryon.Place
	_, err = a.changeTried(t.Context(), id, store.Wants{}, func(w triedWork, pl *project.Planner) (store.Change, error) {
		changed = reached(w, pl)
		return store.Change{}, nil
	})
	require.NoError(t, err)
	w, err := a.readTried(t.Context(), id, store.Wants{})
	require.NoError(t, err)
	pl, done := a.plannerOf(w.work)
	defer done()
	read = reached(w, pl)
	for _, at := range []tryon.Place{changed, read} {
		assert.Equal(t, stitch.Gusset, at.Part)
		assert.Equal(t, 8, at.Round)
	}
}
