package tryon

import (
	"slices"
	"time"
)

// usualPace is the pace in stitches a minute that is assumed until the person's
// own counts show another (common practice, no source).
const usualPace = 25.0

// Counted is a round that was counted as it was knitted.
type Counted struct {
	At       time.Time
	Nth      int // from the cast-on
	Stitches int
}

// The time between two counts is taken as the time of a round only within these
// bounds (common practice, no source): less was counted after the fact, more had
// a rest in it. The pace is the person's own from minRounds such rounds on.
const (
	minRoundTime = 15 * time.Second
	maxRoundTime = 20 * time.Minute
	minRounds    = 10
)

// Pace returns the median pace, in stitches a minute, over rounds that were
// counted one after the other. With fewer than ten it returns the usual pace,
// and own is false.
func Pace(list []Counted) (perMinute float64, own bool) {
	var paces []float64
	for i := 1; i < len(list); i++ {
		took := list[i].At.Sub(list[i-1].At)
		if list[i].Nth == list[i-1].Nth+1 && took >= minRoundTime && took <= maxRoundTime {
			paces = append(paces, float64(list[i].Stitches)/took.Minutes())
		}
	}
	if len(paces) < minRounds {
		return usualPace, false
	}
	slices.Sort(paces)
	return (paces[(len(paces)-1)/2] + paces[len(paces)/2]) / 2, true
}
