package app

import (
	"context"
	"sync"

	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/store"
)

// maxWorn is the number of mitts whose colours are cached.
const maxWorn = 512

// wornKey says what the colours of a mitt were read from: after a restore other revisions
// have the same numbers.
type wornKey struct{ restored, revision int64 }

// wornCache holds what the mitts of the shelf wear, since that takes all strokes of their
// charts.
type wornCache struct {
	mu sync.Mutex
	of map[int64]wornAt
}

type wornAt struct {
	key  wornKey
	worn *picture.Worn
}

func (c *wornCache) get(id int64, key wornKey) (*picture.Worn, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	at, ok := c.of[id]
	return at.worn, ok && at.key == key
}

func (c *wornCache) put(id int64, key wornKey, worn *picture.Worn) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.of == nil || len(c.of) >= maxWorn {
		c.of = map[int64]wornAt{}
	}
	c.of[id] = wornAt{key, worn}
}

// wornBy returns the colours that are painted on a mitt.
func (a *App) wornBy(ctx context.Context, w *work, p *project.Planned) (*picture.Worn, error) {
	key := wornKey{w.Restored, w.Revision}
	if worn, ok := a.worn.get(w.ID, key); ok {
		return worn, nil
	}
	full, err := a.store.ReadWork(ctx, w.ID, store.Wants{Marks: true})
	if err != nil {
		return nil, err
	}
	worn := picture.NewWorn(p.Charts(w.doc, full.Marks))
	a.worn.put(w.ID, key, worn)
	return worn, nil
}
