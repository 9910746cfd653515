package app

import "thenar/internal/project"

// maxPlans is the number of mitts whose plans are cached: every number that is typed
// for a mitt on the needles is compared with them.
const maxPlans = 64

// plannerOf lends a planner for a request about one mitt, primed with the plans
// by which that mitt is knitted. Calling the function gives it back.
func (a *App) plannerOf(w *work) (*project.Planner, func()) {
	pl, done := a.Planner()
	known, _ := a.knitting.get(w.ID, struct{}{})
	pl.Recall(known...)
	doc := w.doc
	return pl, func() {
		var plans []project.Made
		for side, c := range w.Last {
			if doc.Side = project.Side(side); c.Section == "" {
				continue
			}
			if made, ok := pl.Made(doc.Effective()); ok {
				plans = append(plans, made)
			}
		}
		if len(plans) > 0 {
			a.knitting.put(w.ID, struct{}{}, plans)
		}
		done()
	}
}
