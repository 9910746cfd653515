package view

import (
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
	needles := &Needles{inWork: map[chart.Anchor][]chart.Yarn{}}
	out.Words = words.Instructions(out.Mitt, words.Hands{})
	var told, met []string
	titles := map[stitch.Part]string{}
	for _, passage := range out.Words {
		for _, s := range passage.Steps {
			told = append(told, s.Text)
		}
	}
	last := ""
	for _, task := range tryon.Tasks(out.Mitt) {
		one := needles.newTask(out, task, map[chart.Anchor]NeedleTask{})
		for _, text := range append(append(one.First, one.Words), one.Then...) {
			if text != last || !one.IsRound { // rounds that read alike are one line
				met = append(met, text)
			}
			last = text
		}
		if task.Round == tryon.Opening {
			titles[task.Part] = one.Title
			assert.NotEmpty(t, TaskWords(out.Mitt, task, words.US))
		}
	}
	assert.Equal(t, told, met)
	assert.Equal(t, "On to the little finger", titles[stitch.Little])
	assert.Equal(t, "go on to the little finger", TaskWords(out.Mitt, tryon.Task{Part: stitch.Little}, words.US))
	assert.Equal(t, "Take up the middle finger", titles[stitch.Middle])
	assert.NotContains(t, titles, stitch.Ring, "it goes on from the upper hand")
}
