package view

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
	"thenar/internal/words"
)

// At the needles of a glove every line of its words is met once, in order, and the little
// finger is gone on to.
func TestTasksOfAGlove(t *testing.T) {
	r := &mitt.Request{
		Kind: mitt.Glove, Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32},
		Hand: hand.Hand{Circumference: 190 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 4},
	}
	r.Make.Fingers[hand.Middle], r.Make.Fingers[hand.Little] = mitt.HalfFinger, mitt.HalfFinger // whose ribs take a round to fit
	p, err := mitt.New().Plan(r)
	require.NoError(t, err)
	out := &project.Outputs{Plan: p, Mitt: p.Mitt()}
	out.Charts = chart.Source{Mitt: out.Mitt, Base: p.Gusset.Base}.Prepare()
	out.Words = words.Instructions(out.Mitt, words.Hands{})
	needles := &Needles{inWork: map[chart.Anchor][]chart.Yarn{}, said: out.WithStops()}
	var told, met []string
	titles, woven := map[stitch.Part]string{}, map[stitch.Part]string{}
	stops := 0
	for _, passage := range needles.said {
		for i, s := range passage.Steps {
			last := !slices.ContainsFunc(passage.Steps[i:], func(s words.Step) bool { return s.From > 0 })
			if !s.Stop || !last {
				told = append(told, s.Text)
				continue
			}
			again := told[len(told)-1] // it is read before the last round
			if before := passage.Steps[i-1]; before.From == before.To {
				told = told[:len(told)-1]
			}
			told, stops = append(told, s.Text, again), stops+1
		}
	}
	assert.Positive(t, stops)
	last := ""
	for _, task := range tryon.Tasks(out.Mitt) {
		one := needles.newTask(out, task, map[chart.Anchor]NeedleTask{})
		for _, text := range append(append(one.First, one.Words), one.Then...) {
			if text != last || !one.IsRound { // rounds that read alike are one line
				met = append(met, text)
			}
			last = text
		}
		if task.Round == tryon.Woven {
			woven[task.Part] = one.Words
			assert.Equal(t, "weave in the ends of the "+task.Part.Words(), TaskWords(out.Mitt, task, words.US))
		}
		if task.Round == tryon.Opening {
			titles[task.Part] = one.Title
			assert.NotEmpty(t, TaskWords(out.Mitt, task, words.US))
		}
	}
	assert.Equal(t, told, met)
	for _, part := range []stitch.Part{stitch.Index, stitch.Middle, stitch.Ring, stitch.Little} {
		i := slices.IndexFunc(met, func(text string) bool {
			return strings.Contains(text, "below the tip of the "+part.Words()) || strings.Contains(text, "below where the tip of the "+part.Words()) || strings.Contains(text, part.Words()+" is to be free")
		})
		assert.GreaterOrEqual(t, i, 0, "when the %s is tried on", part.Words())
		assert.Contains(t, woven[part], "eave in its ", part.Words())
	}
	assert.Equal(t, "On to the little finger", titles[stitch.Little])
	assert.Equal(t, "go on to the little finger", TaskWords(out.Mitt, tryon.Task{Part: stitch.Little}, words.US))
	assert.Equal(t, "Put the middle finger on the needles", titles[stitch.Middle])
	assert.NotContains(t, titles, stitch.Ring, "it goes on from the upper hand")
}
