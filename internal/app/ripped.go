package app

import (
	"slices"
	"strconv"

	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/words"
)

// ripped returns the rip-back to which the last try of this hand led, as long as nothing is
// knitted since; else nil. is is the mitt as it is planned now.
func (w *work) ripped(pl *project.Planner, doc project.Document, is stitch.Mitt) *words.Ripping {
	before := w.At(lastCorrected(w.Tries, doc))
	c, counted := w.Last[string(doc.Side)]
	if before == nil || !counted {
		return nil
	}
	for _, t := range slices.Backward(w.Tries) {
		if t.Answer == nil || !slices.Contains(doc.Sheet.Tried(), t.ID) {
			continue
		}
		one, err := entryOf(doc, t)
		a := one.Answer
		if err != nil || one.Try.Side != string(doc.Side) || a.Ripped == 0 || a.Section == "" {
			return nil
		}
		at := tryon.PlaceAfter(is, reached(c, tryon.Tasks(is)))
		alone := at.Part != a.Section || at.Round != a.Round
		if _, finger := mitt.FingerOf(a.Section); alone && (!finger || c.At.After(t.Answer.At)) {
			return nil
		}
		then, err := project.Decode(before.Document)
		if err != nil {
			return nil
		}
		then.Side = doc.Side
		p, err := pl.Plan(then.Effective())
		if err != nil {
			return nil // the earlier document no longer has a plan
		}
		round, _ := strconv.Atoi(one.Try.Round) // read when it was answered
		return &words.Ripping{
			Was: p.Mitt(), Is: is, From: stitch.Part(one.Try.Section), At: round, To: a.Section, Round: a.Round, Rounds: a.Ripped, Alone: alone,
		}
	}
	return nil
}
