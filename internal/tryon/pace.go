package tryon

import (
	"slices"
	"time"
)

// UsualPace is how many stitches a minute are knitted where no counts of the
// person's own tell (common practice, no source).
const UsualPace = 25.0

// Counted is a round that was counted as it was knitted.
type Counted struct {
	At       time.Time
	Nth      int // from the cast-on
	Stitches int
}

// The bounds within which the time between two counts is that of a round:
// shorter ones were counted after the fact, longer ones had a rest in them.
const (
	shortestRound = 15 * time.Second
	longestRound  = 20 * time.Minute
	fewestRounds  = 10
)

// Pace is the median of stitches a minute over the rounds that were counted
// one after the other; own is false where fewer than ten tell, and it is the
// usual one.
func Pace(list []Counted) (perMinute float64, own bool) {
	var paces []float64
	for i := 1; i < len(list); i++ {
		took := list[i].At.Sub(list[i-1].At)
		if list[i].Nth == list[i-1].Nth+1 && took >= shortestRound && took <= longestRound {
			paces = append(paces, float64(list[i].Stitches)/took.Minutes())
		}
	}
	if len(paces) < fewestRounds {
		return UsualPace, false
	}
	slices.Sort(paces)
	return (paces[(len(paces)-1)/2] + paces[len(paces)/2]) / 2, true
}
