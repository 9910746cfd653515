package store

import (
	"context"
	"maps"
	"slices"
	"sync"

	"thenar/internal/chart"
)

// maxReplays is the number of mitts whose replayed strokes are cached.
const maxReplays = 64

// writerCache holds replayed strokes, so that the writer need not replay them
// for each new one. If another program drew, an entry may be older than the
// file, but never newer.
type writerCache struct {
	of      map[int64]*cached
	touched []int64 // the mitts that the current save changed
}

func (c *writerCache) begin() { c.touched = c.touched[:0] }

// forget drops the entries of a save that was rolled back.
func (c *writerCache) forget() {
	for _, id := range c.touched {
		delete(c.of, id)
	}
}

func (c *writerCache) forgetAll() { clear(c.of) }

// cached is a replay with its source, which shows whether it is still valid.
type cached struct {
	replayed
	source source
	recent []Drawn // the last strokes, in order and without a gap
}

// source identifies what a replay was made from: by the time of its last
// stroke, since after a restore other strokes have the same numbers, and by its
// snapshot, which may have been deleted.
type source struct {
	at       string // of the last stroke; empty: there is none
	snapshot int64  // the snapshot's revision; 0: there is none
}

// readerCache holds replays for readers. Entries are never changed, so that
// readers can share them.
type readerCache struct {
	mu sync.Mutex
	of map[int64]*cached
}

func (c *readerCache) get(id int64) *cached {
	c.mu.Lock()
	defer c.mu.Unlock()
	return c.of[id]
}

func (c *readerCache) put(id int64, r *cached) {
	c.mu.Lock()
	defer c.mu.Unlock()
	if c.of == nil || len(c.of) >= maxReplays {
		c.of = map[int64]*cached{}
	}
	c.of[id] = r
}

// marksAt returns the marks of a mitt at its head, for a reader.
func (s *Store) marksAt(ctx context.Context, tx *txn, id, head int64) (chart.Marks, error) {
	if l := s.readerCache.get(id); l != nil {
		now, err := sourceAt(ctx, tx, id, l.revision)
		if err != nil {
			return nil, err
		}
		if now == l.source {
			next := replayed{marks: maps.Clone(l.marks), strokes: l.strokes, revision: l.revision}
			return s.remember(ctx, tx, id, next, head)
		}
	}
	l, err := replay(ctx, tx, id, head)
	if err != nil {
		return nil, err
	}
	return s.remember(ctx, tx, id, l, head)
}

// remember brings a replay up to the head and caches it for the next reader.
func (s *Store) remember(ctx context.Context, tx *txn, id int64, l replayed, head int64) (chart.Marks, error) {
	if err := l.follow(ctx, tx, id, head); err != nil {
		return nil, err
	}
	m, err := sourceAt(ctx, tx, id, l.revision)
	if err != nil {
		return nil, err
	}
	s.readerCache.put(id, &cached{replayed: l, source: m})
	return maps.Clone(l.marks), nil
}

// replayed returns the replay of a mitt at its head, for the writer to change.
func (s *Store) replayed(ctx context.Context, tx *txn, id, head int64) (*cached, error) {
	s.writerCache.touched = append(s.writerCache.touched, id)
	l := s.writerCache.of[id]
	if l != nil {
		now, err := sourceAt(ctx, tx, id, l.revision)
		if err != nil {
			return nil, err
		}
		if now == l.source {
			return l, l.catchUp(ctx, tx, id, head)
		}
	}
	r, err := replay(ctx, tx, id, head)
	if err != nil {
		return nil, err
	}
	if s.writerCache.of == nil || len(s.writerCache.of) >= maxReplays {
		s.writerCache.of = map[int64]*cached{}
	}
	l = &cached{replayed: r}
	s.writerCache.of[id] = l
	return l, nil
}

// catchUp applies the strokes that another program drew. They are not in
// recent, which is therefore dropped.
func (l *cached) catchUp(ctx context.Context, tx *txn, id, head int64) error {
	before := l.revision
	if before == head {
		return nil
	}
	err := l.follow(ctx, tx, id, head)
	if l.revision != before {
		l.recent = nil
	}
	return err
}

// drawn records a stroke that was just applied.
func (l *cached) drawn(revision int64, at string, edits []chart.Edit) {
	l.revision, l.source.at = revision, at
	l.strokes++
	l.recent = append(l.recent, Drawn{revision, edits})
	if len(l.recent) > 2*maxRecent {
		l.recent = slices.Clone(l.recent[maxRecent:])
	}
}

// since returns the strokes after a revision; ok is false if not all are
// cached.
func (l *cached) since(after int64) ([]Drawn, bool) {
	at := slices.IndexFunc(l.recent, func(d Drawn) bool { return d.Revision > after })
	switch {
	case l.revision <= after:
		return nil, true
	case at <= 0: // older ones may no longer be cached
		return nil, false
	}
	return l.recent[at:], true
}

// maxRecent is the smallest number of a mitt's last strokes that a full cache
// entry holds one by one.
const maxRecent = 64

// sourceAt returns the source of a replay up to a stroke.
func sourceAt(ctx context.Context, tx *txn, id, revision int64) (m source, err error) {
	err = tx.QueryRowContext(ctx, `
		SELECT coalesce((SELECT at FROM stroke WHERE mitt = ?1 AND revision = ?2), ''),
			coalesce((SELECT revision FROM snapshot WHERE mitt = ?1), 0)`, id, revision).Scan(&m.at, &m.snapshot)
	return m, err
}
