package app

import (
	"sync"

	"thenar/internal/picture"
	"thenar/internal/store"
)

// maxWorn is the number of mitts whose colours are cached.
const maxWorn = 512

// wornKey says what the colours of a mitt were read from: after a restore other revisions
// have the same numbers.
type wornKey struct{ restored, revision int64 }

func wornOf(m store.Mitt) wornKey { return wornKey{m.Restored, m.Revision} }

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
	if _, known := c.of[id]; c.of == nil || !known && len(c.of) >= maxWorn {
		c.of = map[int64]wornAt{}
	}
	c.of[id] = wornAt{key, worn}
}
