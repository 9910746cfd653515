package paper

import (
	"thenar/internal/words"
)

// Drawings shrink in steps of 5 % down to this share of their wished size, in percent.
const leastDrawing = 75

// shrinking returns the shares of the wished size in which a drawing may be set.
func shrinking() (shares []float64) {
	for s := 100; s >= leastDrawing; s -= 5 {
		shares = append(shares, float64(s)/100)
	}
	return shares
}

// reasons returns the numbers that are printed: all but zeros that are not fixed.
func (h *handout) reasons() []words.Reason {
	var list []words.Reason
	for _, r := range h.Out.Reasons {
		if r.Number != "0" || r.Fixed {
			list = append(list, r)
		}
	}
	return list
}

func valueText(r words.Reason) string {
	if r.Fixed {
		return r.Value + fixedMark
	}
	return r.Value
}
