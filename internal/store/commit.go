package store

import (
	"context"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Change is what one action of a person adds to a mitt. It is written whole or
// not at all.
type Change struct {
	Base     *Base     // the state it was worked out from; nil: any
	Document []byte    // the new decision; nil: none
	After    int64     // of Document and Answer: the revision that the person saw
	Strokes  []Request // in order; each after the first is drawn on the one before
	Counts   []Count
	Answer   *Answer // to a try
	Moment   string  // the name of the new revision; empty: none
}

// Committed is the result of a change.
type Committed struct {
	Revision int64     // the newest decision or stroke
	Decided  int64     // the newest decision
	Applied  []Applied // what each stroke did
	Again    bool      // the change had been committed before; nothing was added
}

// Commit adds a change to a mitt.
//
// It fails with fault.NotFound for an unknown mitt or try, with fault.Conflict
// if something else was decided since the revision that the person saw, as Save
// and Draw do, and with ErrMoved if the mitt is no longer as in the change's
// Base. A change whose first stroke has a key that is there already was
// committed before, and its response was lost: nothing is added again.
func (s *Store) Commit(ctx context.Context, id int64, c Change) (done Committed, err error) {
	defer fault.Wrap(&err, "store.Commit(%d)", id)
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		done, err = s.commit(ctx, tx, id, c)
		return err
	})
	if err != nil {
		return Committed{}, err
	}
	return done, nil
}

// commit makes all checks before it writes anything.
func (s *Store) commit(ctx context.Context, tx *txn, id int64, c Change) (Committed, error) {
	at, err := headOf(ctx, tx, id)
	if err != nil {
		return Committed{}, err
	}
	done := Committed{Revision: at.head, Decided: at.decided}
	if len(c.Strokes) > 0 {
		applied, known, err := s.checkRequest(ctx, tx, id, c.Strokes[0], at)
		if known || err != nil {
			done.Applied, done.Again = []Applied{applied}, true
			return done, err
		}
	}
	if err := c.Base.check(ctx, tx, id, at); err != nil {
		return done, err
	}
	if c.Document != nil {
		saved, err := at.has(ctx, tx, id, c.After, c.Document)
		if err != nil {
			return done, err
		}
		if saved {
			c.Document = nil
		}
	}
	if c.Answer != nil {
		if err := c.answerable(ctx, tx, id, at); err != nil {
			return done, err
		}
	}
	return done, s.add(ctx, tx, id, c, at, &done)
}

// add inserts the rows of a change.
func (s *Store) add(ctx context.Context, tx *txn, id int64, c Change, at heads, done *Committed) error {
	was := at
	if c.Document != nil {
		at = heads{at.head + 1, at.head + 1}
		if err := decide(ctx, tx, id, at.head, s.stamp(), c.Document); err != nil {
			return err
		}
	}
	for i, r := range c.Strokes {
		r.Newest = r.Newest || i > 0
		applied, err := s.draw(ctx, tx, id, r, at)
		if err != nil {
			return err
		}
		done.Applied = append(done.Applied, applied)
		if applied.Revision > at.head && len(chart.OfSheet(applied.Edits)) > 0 {
			at.decided = applied.Revision - 1 // a stroke comes after its decision
		}
		at.head = applied.Revision
	}
	for _, count := range c.Counts {
		if err := s.count(ctx, tx, id, count); err != nil {
			return err
		}
	}
	if c.Answer != nil {
		if err := s.answer(ctx, tx, *c.Answer, was.head, at.head); err != nil {
			return err
		}
	}
	done.Revision, done.Decided = at.head, at.decided
	if c.Moment != "" && at != was {
		return s.name(ctx, tx, id, at.head, c.Moment)
	}
	return nil
}

// answerable fails if the mitt has no such try, or if the answer comes from a
// page that is older than the newest decision or from another file.
func (c Change) answerable(ctx context.Context, tx *txn, id int64, at heads) error {
	var there bool
	if err := tx.QueryRowContext(ctx, `SELECT count(*) > 0 FROM try WHERE mitt = ? AND id = ?`, id, c.Answer.Try).Scan(&there); err != nil {
		return err
	}
	switch {
	case !there:
		return fault.New(fault.NotFound, "This mitt has no try %d.", c.Answer.Try)
	case at.decided > c.After || c.After > at.head:
		return fault.New(fault.Conflict, "Another window changed this mitt meanwhile. Nothing of the try is put in yet; load the page again.")
	}
	return nil
}
