package store

import (
	"context"
	"database/sql"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// The kinds of stroke.
const (
	done   = "do"
	undone = "undo"
	redone = "redo"
)

// stroke is a stroke that is about to be drawn; target is the one that an
// undo or redo speaks of.
type stroke struct {
	kind   string
	target int64
	edits  []chart.Edit
}

// Applied is what a stroke did.
type Applied struct {
	Revision int64        // the mitt's newest revision, that of this stroke
	Edits    []chart.Edit // what this stroke set
	Between  []chart.Edit // what was set before it and after the revision that the caller knew, in order
	CanUndo  bool         // whether there is a stroke to take back now
	CanRedo  bool         // whether there is one to bring again
}

// Append draws a stroke: it sets the cells of edits, whatever they hold by
// now, so that of two strokes on one cell the last wins. after is the revision
// that the caller knew; Applied.Between then holds what it did not know.
// No edits make no revision.
//
// It fails with fault.NotFound for an unknown mitt, and with fault.Conflict
// where after is a revision that the mitt doesn't have.
func (s *Store) Append(ctx context.Context, id, after int64, edits []chart.Edit) (applied Applied, err error) {
	defer fault.Wrap(&err, "store.Append(%d)", id)
	return s.draw(ctx, id, after, func(*sql.Tx, turns) (stroke, error) {
		return stroke{kind: done, edits: edits}, nil
	})
}

// Undo takes back the last stroke that stands, as a new revision, whoever
// drew it. It fails as Append does, and with fault.Conflict where there is
// nothing to take back.
func (s *Store) Undo(ctx context.Context, id, after int64) (applied Applied, err error) {
	defer fault.Wrap(&err, "store.Undo(%d)", id)
	return s.draw(ctx, id, after, func(tx *sql.Tx, t turns) (stroke, error) {
		if t.undo == 0 {
			return stroke{}, fault.New(fault.Conflict, "There is no stroke to undo.")
		}
		edits, err := recall(ctx, tx, `SELECT inverse FROM stroke WHERE mitt = ? AND revision = ?`, id, t.undo)
		return stroke{undone, t.undo, edits}, err
	})
}

// Redo brings the stroke again that was taken back last, as a new revision.
// It fails as Append does, and with fault.Conflict where nothing was taken
// back since the last stroke.
func (s *Store) Redo(ctx context.Context, id, after int64) (applied Applied, err error) {
	defer fault.Wrap(&err, "store.Redo(%d)", id)
	return s.draw(ctx, id, after, func(tx *sql.Tx, t turns) (stroke, error) {
		if t.redo == 0 {
			return stroke{}, fault.New(fault.Conflict, "There is no stroke to redo: nothing was undone since the last one.")
		}
		edits, err := recall(ctx, tx, `SELECT edits FROM stroke WHERE mitt = ? AND revision = ?`, id, t.redo)
		return stroke{redone, t.redo, edits}, err
	})
}

func recall(ctx context.Context, tx *sql.Tx, query string, id, revision int64) ([]chart.Edit, error) {
	var text string
	if err := tx.QueryRowContext(ctx, query, id, revision).Scan(&text); err != nil {
		return nil, err
	}
	return decode(text)
}

// draw adds the stroke that next makes from the turns at head.
func (s *Store) draw(ctx context.Context, id, after int64, next func(*sql.Tx, turns) (stroke, error)) (Applied, error) {
	var applied Applied
	err := s.write(ctx, func(tx *sql.Tx) error {
		at, err := stand(ctx, tx, id)
		if err != nil {
			return err
		}
		if after < 0 || after > at.head {
			return fault.New(fault.Conflict, "This chart speaks of revision %d, and the newest of this mitt is %d. Nothing was drawn; load the page again.", after, at.head)
		}
		between, err := editsSince(ctx, tx, id, after)
		if err != nil {
			return err
		}
		t, err := lookBack(ctx, tx, id)
		if err != nil {
			return err
		}
		st, err := next(tx, t)
		if err != nil {
			return err
		}
		applied = Applied{Revision: at.head, Edits: st.edits, Between: slices.Concat(between...)}
		if st.kind != done || len(st.edits) > 0 {
			applied.Revision++
			if err := s.put(ctx, tx, id, applied.Revision, st); err != nil {
				return err
			}
			if t, err = lookBack(ctx, tx, id); err != nil {
				return err
			}
		}
		applied.CanUndo, applied.CanRedo = t.undo > 0, t.redo > 0
		return nil
	})
	if err != nil {
		return Applied{}, err
	}
	return applied, nil
}

// put writes a stroke with its inverse, which is what its cells hold at head,
// and from time to time a snapshot.
func (s *Store) put(ctx context.Context, tx *sql.Tx, id, revision int64, st stroke) error {
	l, err := replay(ctx, tx, id)
	if err != nil {
		return err
	}
	edits, err := encode(st.edits)
	if err != nil {
		return err
	}
	inverse, err := encode(l.marks.Apply(st.edits))
	if err != nil {
		return err
	}
	target := sql.NullInt64{Int64: st.target, Valid: st.kind != done}
	_, err = tx.ExecContext(ctx, `
		INSERT INTO stroke (mitt, revision, at, kind, target, edits, inverse) VALUES (?, ?, ?, ?, ?, ?, ?)`,
		id, revision, s.stamp(), st.kind, target, edits, inverse)
	if err != nil || l.strokes+1 < s.every {
		return err
	}
	return l.keep(ctx, tx, id, revision)
}
