package project

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
)

// Who knits from left to right works the other hand’s rounds as in a mirror
// and gets this hand's mitt: the make ones are named the other way round, the
// decreases as they are worked, and every count stays.
func TestFromLeft(t *testing.T) {
	for _, doc := range Samples() {
		own, err := NewPlanner().Derive(doc, chart.Marks{})
		require.NoError(t, err)
		other := doc
		other.Side = doc.Side.Other()
		mirror, err := NewPlanner().Derive(other, chart.Marks{})
		require.NoError(t, err)
		doc.FromLeft = true
		turned, err := NewPlanner().Derive(doc, chart.Marks{})
		require.NoError(t, err)

		assert.Equal(t, stitch.FromLeft(mirror.Mitt), turned.Mitt)
		assert.Equal(t, own.Plan, turned.Plan)
		assert.Empty(t, turned.Unsound)
		assert.Empty(t, stitch.Ledger(turned.Mitt))
		for i, s := range own.Mitt.Section(stitch.Gusset).Rounds {
			assert.Equal(t, s.Out(), turned.Mitt.Section(stitch.Gusset).Rounds[i].Out())
		}
		a, b := text(own), text(turned)
		assert.Less(t, strings.Index(a, "M1L"), strings.Index(a, "M1R"))
		assert.Less(t, strings.Index(b, "M1R"), strings.Index(b, "M1L"))
		assert.Contains(t, b, "the "+string(doc.Side)+" hand’s round")
		assert.Equal(t, strings.Contains(a, "crosses the palm, then the back"), strings.Contains(b, "crosses the back, then the palm"))
	}
}

func text(out *Outputs) string {
	var b strings.Builder
	for _, p := range out.Words {
		for _, s := range p.Steps {
			b.WriteString(s.Text + "\n")
		}
	}
	return b.String()
}
