package store

import (
	"context"
	"database/sql"
	"encoding/json"
	"errors"
	"fmt"

	"thenar/internal/chart"
)

// snapshotEvery is the number of strokes after which a snapshot is written, so
// that no more than these are ever replayed.
const snapshotEvery = 256

// replayed is the result of the strokes of one mitt.
type replayed struct {
	marks    chart.Marks
	strokes  int   // the number of strokes since the snapshot
	revision int64 // of the last stroke; 0: there is none
}

// replay applies the snapshot, if there is one, and all strokes after it up to
// a revision.
func replay(ctx context.Context, tx *txn, id, revision int64) (replayed, error) {
	l := replayed{marks: chart.Marks{}}
	var text string
	err := tx.QueryRowContext(ctx, `SELECT revision, marks FROM snapshot WHERE mitt = ? AND revision <= ?`, id, revision).Scan(&l.revision, &text)
	switch {
	case errors.Is(err, sql.ErrNoRows):
	case err != nil:
		return replayed{}, err
	default:
		edits, err := decode(text)
		if err != nil {
			return replayed{}, err
		}
		l.marks.Apply(edits)
	}
	return l, l.follow(ctx, tx, id, revision)
}

// follow applies the strokes after l.revision up to revision.
func (l *replayed) follow(ctx context.Context, tx *txn, id, revision int64) error {
	since, err := strokesSince(ctx, tx, id, l.revision)
	if err != nil {
		return err
	}
	for _, st := range since {
		if st.Revision > revision {
			break
		}
		l.marks.Apply(st.Edits)
		l.strokes++
		l.revision = st.Revision
	}
	return nil
}

// Drawn is a stored stroke.
type Drawn struct {
	Revision int64        `json:"revision"`
	Edits    []chart.Edit `json:"edits"`
}

// strokesSince returns the strokes after a revision, in order.
func strokesSince(ctx context.Context, tx *txn, id, after int64) ([]Drawn, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (d Drawn, err error) {
		var text string
		if err := rows.Scan(&d.Revision, &text); err != nil {
			return Drawn{}, err
		}
		d.Edits, err = decode(text)
		return d, err
	}, `SELECT revision, edits FROM stroke WHERE mitt = ? AND revision > ? ORDER BY revision`, id, after)
}

// keep writes l as the snapshot at a revision, in place of the older one. A
// snapshot is the edits that paint its marks on an empty chart.
func (l replayed) keep(ctx context.Context, tx *txn, id, revision int64) error {
	text, err := encode(l.marks.Edits())
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `
		INSERT INTO snapshot (mitt, revision, marks) VALUES (?, ?, ?)
		ON CONFLICT (mitt) DO UPDATE SET revision = excluded.revision, marks = excluded.marks`, id, revision, text)
	return err
}

// undoState holds the revisions of the strokes that an undo and a redo apply
// to; 0 if there is none.
type undoState struct{ undo, redo int64 }

// undoStateOf returns the state that a replay of all strokes with two stacks
// would reach: a do is pushed on the undo stack and clears the redo stack, an
// undo moves the top of the first to the second, a redo moves it back. Reading
// from the newest stroke needs only few rows: each undo cancels one earlier
// stroke of the undo stack, each redo one of the redo stack, and nothing before
// a do is on the redo stack.
func undoStateOf(ctx context.Context, tx *txn, id int64) (t undoState, err error) {
	rows, err := tx.QueryContext(ctx, `
		SELECT kind, coalesce(target, revision) FROM stroke WHERE mitt = ? ORDER BY revision DESC`, id)
	if err != nil {
		return undoState{}, err
	}
	defer rows.Close()
	undone, redone := 0, 0 // undos and redos seen whose strokes are still to come
	cleared := false
	for (t.undo == 0 || (t.redo == 0 && !cleared)) && rows.Next() {
		var kind Kind
		var stroke int64
		if err := rows.Scan(&kind, &stroke); err != nil {
			return undoState{}, err
		}
		switch {
		case kind == Undo:
			undone++
		case undone > 0:
			undone--
		case t.undo == 0:
			t.undo = stroke
		}
		switch {
		case cleared || t.redo > 0:
		case kind == Do:
			cleared = true
		case kind == Redo:
			redone++
		case redone > 0:
			redone--
		default:
			t.redo = stroke
		}
	}
	return t, rows.Err()
}

// encode returns edits as a JSON array, [] for none.
func encode(edits []chart.Edit) (string, error) {
	if len(edits) == 0 {
		return "[]", nil
	}
	text, err := json.Marshal(edits)
	return string(text), err
}

func decode(text string) (edits []chart.Edit, err error) {
	if err := json.Unmarshal([]byte(text), &edits); err != nil {
		return nil, fmt.Errorf("edits in the database: %w", err)
	}
	return edits, nil
}
