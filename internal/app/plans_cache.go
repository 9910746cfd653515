package app

import (
	"sync"

	"thenar/internal/project"
)

// maxPlansCached is the number of mitts whose plans are cached.
const maxPlansCached = 64

// plansCache holds the plans of the mitts on the needles, by mitt: every number
// that is typed is compared with them.
type plansCache struct {
	mu sync.Mutex
	of map[int64][]project.Made
}

func (k *plansCache) get(id int64) []project.Made {
	k.mu.Lock()
	defer k.mu.Unlock()
	return k.of[id]
}

func (k *plansCache) put(id int64, plans []project.Made) {
	k.mu.Lock()
	defer k.mu.Unlock()
	if k.of == nil || len(k.of) >= maxPlansCached {
		k.of = map[int64][]project.Made{}
	}
	k.of[id] = plans
}

// plannerOf lends a planner for a request about one mitt, primed with the plans
// by which that mitt is knitted. Calling the function gives it back.
func (a *App) plannerOf(w *work) (*project.Planner, func()) {
	pl, done := a.Planner()
	pl.Recall(a.knitting.get(w.ID)...)
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
			a.knitting.put(w.ID, plans)
		}
		done()
	}
}
