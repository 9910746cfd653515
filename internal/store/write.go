package store

import (
	"context"
	"database/sql"
	"errors"
)

// maxBatch is the largest number of saves in one transaction.
const maxBatch = 64

// change is one save. It may run twice, so it must not keep anything from its
// first run. Its context is that of the transaction: a person who stops waiting
// must not cancel the saves of others.
type change func(ctx context.Context, tx *txn) error

// save is a change in the queue, with the channel on which its caller waits.
type save struct {
	change   change
	done     chan error
	panicked any // what the change panicked with
}

// errPanicked is the result of a change that panicked; its caller panics again.
var errPanicked = errors.New("a change panicked")

// write queues a change and returns once it is on the disk or refused. Saves
// that wait at the same time share one transaction, since the disk takes as
// long for one as for many; each is kept or refused by itself.
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
	err := <-w.done // once queued, a save is finished even if ctx ends
	if w.panicked != nil {
		panic(w.panicked)
	}
	return err
}

// keepWriting writes saves until the store is closed.
func (s *Store) keepWriting() {
	defer close(s.written)
	for {
		select {
		case first := <-s.saves:
			s.writeBatch(s.withWaiting(first))
		case <-s.looks.C:
			_ = s.checkOrSaveLog(context.Background()) // the next save reports it
		case <-s.closing:
			return
		}
	}
}

// withWaiting returns first and the saves that wait behind it.
func (s *Store) withWaiting(first *save) []*save {
	list := []*save{first}
	for len(list) < maxBatch {
		select {
		case w := <-s.saves:
			list = append(list, w)
		default:
			return list
		}
	}
	return list
}

// writeBatch writes saves in one transaction and tells each its result. A save
// that fails before it wrote anything, as most that fail do, leaves the others
// alone. After any other failure each is tried by itself, since SQLite rolls
// back all of a transaction or nothing.
func (s *Store) writeBatch(list []*save) {
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
			s.writeBatch([]*save{w})
		default:
			w.done <- err
		}
	}
}

// transaction checks that the file is still the one that was opened, and
// commits what f writes.
func (s *Store) transaction(ctx context.Context, f change) error {
	err := s.writing.transact(ctx, false, func(tx *txn) error {
		if err := s.checkUnchanged(ctx, tx); err != nil {
			return err
		}
		return f(ctx, tx)
	})
	if err = s.finishTransaction(ctx, err); err != nil {
		s.writerCache.forgetAll()
	}
	return trouble(s.path, err)
}

// run runs the change; a panic in it is kept for its caller.
func (w *save) run(ctx context.Context, tx *txn) (err error) {
	defer func() {
		if p := recover(); p != nil {
			w.panicked, err = p, errPanicked
		}
	}()
	w.panicked = nil
	return w.change(ctx, tx)
}
