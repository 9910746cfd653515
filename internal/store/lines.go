package store

import (
	"context"
	"maps"
	"slices"
	"sync"

	"thenar/internal/chart"
)

// maxLines is of how many mitts the writer remembers what their strokes come
// to.
const maxLines = 64

// lines are what the writer remembers, so that a stroke doesn't replay those
// before it. What is remembered may be older than the file, where another
// program drew, but never newer.
type lines struct {
	of      map[int64]*remembered
	touched []int64 // by the save that is being carried out
}

func (l *lines) begin() { l.touched = l.touched[:0] }

// forget drops what a save touched that was taken back.
func (l *lines) forget() {
	for _, id := range l.touched {
		delete(l.of, id)
	}
}

func (l *lines) forgetAll() { clear(l.of) }

// remembered is a line with what it is known again by: the time of its last
// stroke, since a backup that was put back has other strokes under the same
// numbers, and the snapshot, which may have been deleted.
type remembered struct {
	line
	mark   mark
	recent []Drawn // the last strokes, in order and without a hole
}

type mark struct {
	at   string // of the last stroke; empty: there is none
	kept int64  // the snapshot's revision; 0: there is none
}

// seen are the lines that readers remember. Each is as it was read and never
// changed, so that many may look at it.
type seen struct {
	mu sync.Mutex
	of map[int64]*remembered
}

func (l *seen) get(id int64) *remembered {
	l.mu.Lock()
	defer l.mu.Unlock()
	return l.of[id]
}

func (l *seen) put(id int64, r *remembered) {
	l.mu.Lock()
	defer l.mu.Unlock()
	if l.of == nil || len(l.of) >= maxLines {
		l.of = map[int64]*remembered{}
	}
	l.of[id] = r
}

// marksAt are what the strokes of a mitt come to at its head, for a reader.
func (s *Store) marksAt(ctx context.Context, tx *txn, id, head int64) (chart.Marks, error) {
	if l := s.seen.get(id); l != nil {
		now, err := markAt(ctx, tx, id, l.revision)
		if err != nil {
			return nil, err
		}
		if now == l.mark {
			next := line{marks: maps.Clone(l.marks), strokes: l.strokes, revision: l.revision}
			return s.remember(ctx, tx, id, next, head)
		}
	}
	l, err := replay(ctx, tx, id, head)
	if err != nil {
		return nil, err
	}
	return s.remember(ctx, tx, id, l, head)
}

// remember follows a line to the head and keeps it for the next reader.
func (s *Store) remember(ctx context.Context, tx *txn, id int64, l line, head int64) (chart.Marks, error) {
	if err := l.follow(ctx, tx, id, head); err != nil {
		return nil, err
	}
	m, err := markAt(ctx, tx, id, l.revision)
	if err != nil {
		return nil, err
	}
	s.seen.put(id, &remembered{line: l, mark: m})
	return maps.Clone(l.marks), nil
}

// line is what the strokes of a mitt come to at its head, to lay one more on.
func (s *Store) line(ctx context.Context, tx *txn, id, head int64) (*remembered, error) {
	s.lines.touched = append(s.lines.touched, id)
	l := s.lines.of[id]
	if l != nil {
		now, err := markAt(ctx, tx, id, l.revision)
		if err != nil {
			return nil, err
		}
		if now == l.mark {
			return l, l.catchUp(ctx, tx, id, head)
		}
	}
	replayed, err := replay(ctx, tx, id, head)
	if err != nil {
		return nil, err
	}
	if s.lines.of == nil || len(s.lines.of) >= maxLines {
		s.lines.of = map[int64]*remembered{}
	}
	l = &remembered{line: replayed}
	s.lines.of[id] = l
	return l, nil
}

// catchUp follows a line with what another program drew meanwhile, which is not
// among the strokes that are remembered one by one.
func (l *remembered) catchUp(ctx context.Context, tx *txn, id, head int64) error {
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

// drawn notes the stroke that was laid on a line.
func (l *remembered) drawn(revision int64, at string, edits []chart.Edit) {
	l.revision, l.mark.at = revision, at
	l.strokes++
	l.recent = append(l.recent, Drawn{revision, edits})
	if len(l.recent) > 2*maxRecent {
		l.recent = slices.Clone(l.recent[maxRecent:])
	}
}

// since are the strokes after a revision, if all of them are remembered.
func (l *remembered) since(after int64) ([]Drawn, bool) {
	at := slices.IndexFunc(l.recent, func(d Drawn) bool { return d.Revision > after })
	switch {
	case l.revision <= after:
		return nil, true
	case at <= 0: // older ones may have gone from memory
		return nil, false
	}
	return l.recent[at:], true
}

// maxRecent is how many strokes of a mitt are remembered one by one.
const maxRecent = 64

// markAt is by what the line of a mitt up to a stroke is known.
func markAt(ctx context.Context, tx *txn, id, revision int64) (m mark, err error) {
	err = tx.QueryRowContext(ctx, `
		SELECT coalesce((SELECT at FROM stroke WHERE mitt = ?1 AND revision = ?2), ''),
			coalesce((SELECT revision FROM snapshot WHERE mitt = ?1), 0)`, id, revision).Scan(&m.at, &m.kept)
	return m, err
}
