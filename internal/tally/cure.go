package tally

import (
	"fmt"

	"thenar/internal/written"
)

// cure returns the smallest change to a round that takes so many stitches too few, or too
// many if by is below 0, with which it comes out; nothing if none is plain.
func (w *needles) cure(list []written.Item, by int) string {
	for at := len(list) - 1; at >= 0; at-- {
		i := &list[at]
		n := 1
		if i.Times.Written() {
			n = i.Times.For(w.size)
		}
		switch {
		case i.Does == written.Stitch && i.In == 1 && i.Out == 1 && i.Reach == written.NoReach && n+by > 0 && len(i.Name) == 1:
			return fmt.Sprintf("With %s%d in place of %s%d it comes out.", i.Name, n+by, i.Name, n)
		case i.Does == written.Together && i.Reach == written.NoReach:
			if each := eaten(i.Items, w.size); each > 0 && by%each == 0 && n+by/each > 0 {
				return fmt.Sprintf("With %d times in place of %d it comes out.", n+by/each, n)
			}
		case i.Does == written.Hold && i.Times.Written() && n+by > 0 && at == 0:
			return fmt.Sprintf("With %d put aside in place of %d it comes out.", n+by, n)
		}
	}
	return ""
}
