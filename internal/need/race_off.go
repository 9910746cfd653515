//go:build !race

package need

// Raced says that the race detector watches, under which everything takes
// several times as long.
const Raced = false
