// Package app is what a person can do with Thenar: open a mitt, save its
// numbers, draw on its chart, count a round, try it on, run a class, print,
// back up. The browser's handlers and the command line both call it, and
// neither holds a rule of its own.
//
// A change reads everything it stands on once, works outside any transaction,
// and ends in one write that names the revisions it stood on.
package app

import (
	"context"
	"sync"

	"thenar/internal/grade"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/store"
)

// App carries out what people ask for, on one file.
type App struct {
	store    *store.Store
	planners sync.Pool                       // of *project.Planner: each serves one request at a time
	days     sync.Map                        // the last day noted for each device, by its ID
	knitting cache[struct{}, []project.Made] // the plans of the mitts on the needles
	worn     cache[wornKey, *picture.Worn]   // what the mitts of the shelf wear
	costs    cache[costKey, Cost]            // of class sets
	graded   cache[string, *grade.Graded]    // the sizes of mitts, by the stamp of what they follow from; nobody changes them
	counted  counted                         // by the requests that are over
}

// Open opens the file at path. A missing file is made, and an older schema is
// brought up to date.
func Open(ctx context.Context, path string) (*App, error) {
	st, err := store.Open(ctx, path)
	if err != nil {
		return nil, err
	}
	return New(st), nil
}

// Close closes the file.
func (a *App) Close() error { return a.store.Close() }

// Schema returns the number of the newest schema.
func Schema() int { return store.NewestSchema() }

// New returns an App on an open store, which the caller closes.
func New(st *store.Store) *App {
	a := &App{store: st}
	a.knitting.most, a.worn.most, a.costs.most, a.graded.most = maxPlans, maxWorn, maxCosts, maxGraded
	a.planners.New = func() any { return project.NewPlanner() }
	return a
}

// Planner lends a planner from the pool for one request. Calling the function
// gives it back.
func (a *App) Planner() (*project.Planner, func()) {
	pl := a.planners.Get().(*project.Planner)
	pl.Begin()
	return pl, func() {
		a.counted.add(pl.End())
		a.planners.Put(pl)
	}
}

// counted adds up the plans that requests worked out.
type counted struct {
	mu sync.Mutex
	project.Counted
}

func (c *counted) add(more project.Counted) {
	c.mu.Lock()
	defer c.mu.Unlock()
	c.Plans += more.Plans
	c.Searched += more.Searched
}

// Plans returns how many plans the finished requests worked out. Tests hold
// each request to its number.
func (a *App) Plans() project.Counted {
	a.counted.mu.Lock()
	defer a.counted.mu.Unlock()
	return a.counted.Counted
}
