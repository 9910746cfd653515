//go:build !race

package testenv

// Raced says that the race detector watches, under which everything takes
// several times as long.
const Raced = false
