package store

import (
	"context"
	"database/sql"
	"errors"
)

// maxTogether is how many saves share one transaction at most.
const maxTogether = 64

// change is one save: it may be run twice, so it keeps nothing from its first
// run. The context that it is given is that of the transaction: a person who
// no longer waits must not break off the saves of others.
type change func(ctx context.Context, tx *txn) error

// save is a change on its way, with who waits for it.
type save struct {
	change   change
	done     chan error
	panicked any // what the change panicked with
}

// errPanicked ends a change that panicked; its caller panics in its place.
var errPanicked = errors.New("a change panicked")

// write runs a change as the only writer of the file and returns once it is on
// the disk. Saves that wait at the same time share one transaction, since the
// disk takes as long for one as for many; each is kept or refused by itself.
func (s *Store) write(ctx context.Context, c change) error {
	s.writes.Add(1)
	w := &save{change: c, done: make(chan error, 1)}
	select {
	case s.saves <- w:
	case <-ctx.Done():
		return ctx.Err()
	case <-s.closing:
		return sql.ErrConnDone
	}
	err := <-w.done // a save that was begun is finished, whoever waits
	if w.panicked != nil {
		panic(w.panicked)
	}
	return err
}

// keepWriting carries out saves until the store is closed.
func (s *Store) keepWriting() {
	defer close(s.written)
	for {
		select {
		case first := <-s.saves:
			s.together(s.andWaiting(first))
		case <-s.looks.C:
			_ = s.keepLog(context.Background()) // the next save tells
		case <-s.closing:
			return
		}
	}
}

// andWaiting is a save and the others that wait by now.
func (s *Store) andWaiting(first *save) []*save {
	list := []*save{first}
	for len(list) < maxTogether {
		select {
		case w := <-s.saves:
			list = append(list, w)
		default:
			return list
		}
	}
	return list
}

// together writes saves in one transaction and tells each how it went. A save
// that is refused before it wrote anything leaves the others alone, as nearly
// all do that are; else each is tried by itself, since SQLite takes back all of
// a transaction or nothing.
func (s *Store) together(list []*save) {
	results := make([]error, len(list))
	broken := false
	err := s.transaction(context.Background(), func(ctx context.Context, tx *txn) error {
		for i, w := range list {
			tx.wrote = false
			s.writerCache.begin()
			if results[i] = w.run(ctx, tx); results[i] != nil {
				s.writerCache.forget()
			}
			if broken = results[i] != nil && (tx.wrote || fatal(results[i])); broken {
				return results[i]
			}
		}
		return nil
	})
	for i, w := range list {
		switch {
		case err == nil:
			w.done <- results[i]
		case broken && len(list) > 1:
			s.together([]*save{w})
		default:
			w.done <- err
		}
	}
}

// transaction begins, checks that the file is still the one that was opened,
// and commits.
func (s *Store) transaction(ctx context.Context, f change) error {
	err := s.writing.transact(ctx, false, func(tx *txn) error {
		if err := s.same(ctx, tx); err != nil {
			return err
		}
		return f(ctx, tx)
	})
	if err = s.after(ctx, err); err != nil {
		s.writerCache.forgetAll()
	}
	return trouble(s.path, err)
}

// run runs the change; a panic in it is kept for who waits.
func (w *save) run(ctx context.Context, tx *txn) (err error) {
	defer func() {
		if p := recover(); p != nil {
			w.panicked, err = p, errPanicked
		}
	}()
	w.panicked = nil
	return w.change(ctx, tx)
}
