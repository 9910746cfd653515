package sheet

import (
	"strings"

	"thenar/internal/repeat"
)

// PathKnitted is where rounds stand that are knitted and that the motifs, as they are laid now,
// would make otherwise: those of each hand, in the order in which it worked them.
const PathKnitted = "knitted"

// maxKnittedText is the greatest number of characters that may be kept of one hand's rounds.
const maxKnittedText = 400_000

// Knitted returns the rounds of a hand that stay as they were worked, whatever the motifs are
// now. Those that can't be read are left out; Request reports it.
func (s Sheet) Knitted(side string) repeat.Worked { return s.reader().knitted(side) }

func (r *reader) knitted(side string) repeat.Worked {
	path := join(PathKnitted, side)
	lines := r.drawn(path)
	if lines == nil {
		return nil
	}
	w, why := repeat.ReadWorked(lines)
	if why != "" {
		r.faults.Add(path, "%s", why)
	}
	return w
}

// SetKnitted puts the rounds of a hand that stay as they were worked in place of those before.
func (s Sheet) SetKnitted(side string, w repeat.Worked) {
	s.Put(join(PathKnitted, side), strings.Join(w.Lines(), betweenRows))
}
