package app

import "sync"

// cache holds what takes long to work out about mitts, or about classes, by their
// numbers. Each value has a key that says what it was worked out from: for another
// key there is none. When one more comes than the cache holds, it begins anew.
type cache[K comparable, V any] struct {
	most int // mitts or classes that are held
	mu   sync.Mutex
	of   map[int64]cached[K, V]
}

type cached[K comparable, V any] struct {
	key   K
	value V
}

func (c *cache[K, V]) get(id int64, key K) (V, bool) {
	c.mu.Lock()
	defer c.mu.Unlock()
	at, ok := c.of[id]
	if !ok || at.key != key {
		var none V
		return none, false
	}
	return at.value, true
}

func (c *cache[K, V]) put(id int64, key K, value V) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if _, held := c.of[id]; c.of == nil || !held && len(c.of) >= c.most {
		c.of = map[int64]cached[K, V]{}
	}
	c.of[id] = cached[K, V]{key, value}
}
