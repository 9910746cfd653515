package mitt

import "fmt"

// heads are the short names of numbers at the head of a column of a table.
var heads = map[Number]string{
	CastOn: "cast on", HandStitches: "hand", Increases: "increases", GussetRounds: "rounds", Held: "held", BridgeStitches: "bridge",
	ThumbStitches: "thumb", RoundsAboveGusset: "above", TopRounds: "top",
}

// Head returns what n is called at the head of a column of a table; empty for a number
// that no table has.
func (w Names) Head(n Number) string {
	return w.call(n, func(c called) string { return c.head }, heads[n])
}

// SeamWords says once, beside a table, that what is cast on includes the seam's stitches;
// empty if there is no seam.
func (w Names) SeamWords() string {
	switch {
	case !w.Make.Flat:
		return ""
	case w.down():
		return fmt.Sprintf("Bound off with %d for the seam.", 2*seamEdge)
	}
	return fmt.Sprintf("Cast on with %d for the seam.", 2*seamEdge)
}
