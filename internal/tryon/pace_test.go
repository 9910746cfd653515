package tryon

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
)

// Ten rounds of 40 stitches, most of them in two minutes: 20 a minute. Rounds
// counted after the fact, or with a night in between, are left out.
func TestPaceLeavesOutRests(t *testing.T) {
	at := time.Date(2026, 3, 1, 20, 0, 0, 0, time.UTC)
	list := []Counted{{at, 0, 0}}
	for i, took := range []time.Duration{2, 2, 3, 2, 1, 2, 2, 2, 2, 600} {
		at = at.Add(took * time.Minute)
		list = append(list, Counted{at, i + 1, 40})
	}
	list = append(list, Counted{at.Add(time.Second), 11, 40})
	pace, own := Pace(list)
	assert.False(t, own, "nine rounds tell")
	assert.InDelta(t, usualPace, pace, 0)
	at = at.Add(2 * time.Minute)
	list = append(list, Counted{at, 12, 40})
	pace, own = Pace(list)
	assert.True(t, own)
	assert.InDelta(t, 20, pace, 0.3)
}
