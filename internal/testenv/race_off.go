//go:build !race

package testenv

// RaceEnabled reports whether the race detector is on, which makes everything
// several times as slow.
const RaceEnabled = false
