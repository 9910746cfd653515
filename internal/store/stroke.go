package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Kind is what a stroke does.
type Kind string

// The kinds of stroke.
const (
	Do   Kind = "do"
	Undo Kind = "undo"
	Redo Kind = "redo"
)

// Request is a stroke that a caller wants drawn.
type Request struct {
	Kind  Kind
	After int64  // the revision that the caller knew
	Key   string // the caller's own name of the stroke, so that it is drawn once; may be empty
	Edits []chart.Edit

	// Newest says that the server makes the stroke itself, on whatever revision
	// is the newest: After and Restored are not looked at, and Between is empty.
	Newest bool

	// OnlyCells refuses, with ErrMoved, an undo or redo that has more to it than
	// cells: the caller has to work out what follows from it first.
	OnlyCells bool

	// Restored is the file in which the caller knew After, as Mitt.Restored;
	// nil where the caller read it just now.
	Restored *int64

	// Rewrite puts edits of the sheet into a document and gives the edits that
	// take them back. Without it a stroke has no edits of the sheet.
	Rewrite func(document []byte, edits []chart.Edit) ([]byte, []chart.Edit, error)
}

// stroke is a stroke that is about to be drawn; target is the one that an
// undo or redo speaks of.
type stroke struct {
	kind   Kind
	target int64
	edits  []chart.Edit
}

// Applied is what a stroke did.
type Applied struct {
	Revision int64        // the mitt's newest revision, that of this stroke
	Edits    []chart.Edit // what this stroke set
	Between  []chart.Edit // what was set before it and after the revision that the caller knew, in order
	Later    []chart.Edit // of a stroke that was drawn before already: what was set after it, in order
	CanUndo  bool         // whether there is a stroke to take back now
	CanRedo  bool         // whether there is one to bring again
}

// Append draws a stroke of edits; see Draw.
func (s *Store) Append(ctx context.Context, id, after int64, edits []chart.Edit) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Do, After: after, Edits: edits})
}

// Undo takes back the last stroke that stands; see Draw.
func (s *Store) Undo(ctx context.Context, id, after int64) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Undo, After: after})
}

// Redo brings the stroke again that was taken back last; see Draw.
func (s *Store) Redo(ctx context.Context, id, after int64) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Redo, After: after})
}

// Draw draws a stroke. A do sets the cells of its edits, whatever they hold by
// now, so that of two strokes on one cell the last wins; an undo takes back the
// last stroke that stands, whoever drew it, and a redo brings the one again
// that was taken back last, each as a new revision. Applied.Between then holds
// what the caller did not know. No edits make no revision, and a stroke whose
// key is there already is not drawn again. Edits of the sheet also make a
// decision, one revision before the stroke.
//
// It fails with fault.NotFound for an unknown mitt, and with fault.Conflict
// where after is a revision that the mitt doesn't have or that was another
// before a backup was put back (both are ErrStale), or where there is nothing
// to take back or to bring again.
func (s *Store) Draw(ctx context.Context, id int64, r Request) (applied Applied, err error) {
	defer fault.Wrap(&err, "store.Draw(%d, %s)", id, r.Kind)
	done, err := s.Commit(ctx, id, Change{Strokes: []Request{r}})
	if err != nil {
		return Applied{}, err
	}
	return done.Applied[0], nil
}

// known looks whether a stroke comes from a chart of this file, and whether it
// was drawn already; its answer is then given again.
func (s *Store) known(ctx context.Context, tx *txn, id int64, r Request, at heads) (Applied, bool, error) {
	if !r.Newest {
		if err := ofThisFile(ctx, tx, r, at.head); err != nil {
			return Applied{}, false, err
		}
	}
	return s.again(ctx, tx, id, r)
}

// draw lays a stroke on a mitt.
func (s *Store) draw(ctx context.Context, tx *txn, id int64, r Request, at heads) (Applied, error) {
	if r.Newest {
		r.After = at.head
	}
	l, err := s.replayed(ctx, tx, id, at.head)
	if err != nil {
		return Applied{}, err
	}
	st, t, err := next(ctx, tx, id, r)
	if err != nil {
		return Applied{}, err
	}
	if r.OnlyCells && !chart.OnlyCells(st.edits) {
		return Applied{}, errMoved()
	}
	applied := Applied{Revision: at.head, Edits: st.edits}
	if applied.Between, err = between(ctx, tx, id, l, r.After); err != nil {
		return Applied{}, err
	}
	if st.kind != Do || len(st.edits) > 0 {
		if applied.Revision, err = s.put(ctx, tx, id, at, l, st, r); err != nil {
			return Applied{}, err
		}
		if st.kind == Do {
			t = undoState{undo: applied.Revision}
		} else if t, err = undoStateOf(ctx, tx, id); err != nil {
			return Applied{}, err
		}
	}
	applied.CanUndo, applied.CanRedo = t.undo > 0, t.redo > 0
	return applied, nil
}

// ErrStale is the cause where a request comes from a chart that this file does
// not have: its edits can be drawn once the caller has read the mitt anew.
var ErrStale = errors.New("the chart is not of this file")

// ofThisFile refuses what was asked of another file than this one.
func ofThisFile(ctx context.Context, tx *txn, r Request, head int64) error {
	if r.Restored != nil {
		var now int64
		if err := tx.QueryRowContext(ctx, `SELECT `+restored).Scan(&now); err != nil {
			return err
		}
		if now != *r.Restored {
			return fault.New(fault.Conflict, "A backup was put back since this chart was opened. Nothing was drawn; load the page again.").Because(ErrStale)
		}
	}
	if r.After < 0 || r.After > head {
		return fault.New(fault.Conflict, "This chart speaks of revision %d, and the newest of this mitt is %d. Nothing was drawn; load the page again.", r.After, head).Because(ErrStale)
	}
	return nil
}

// between is what was set after a revision, from memory if it is there.
func between(ctx context.Context, tx *txn, id int64, l *cached, after int64) (edits []chart.Edit, err error) {
	since, known := l.since(after)
	if !known {
		if since, err = strokesSince(ctx, tx, id, after); err != nil {
			return nil, err
		}
	}
	for _, d := range since {
		edits = append(edits, d.Edits...)
	}
	return edits, nil
}

// next is the stroke that a request comes to, and, unless it is a do with
// edits, the turns of head.
func next(ctx context.Context, tx *txn, id int64, r Request) (st stroke, t undoState, err error) {
	if r.Kind == Do && len(r.Edits) > 0 {
		return stroke{kind: Do, edits: r.Edits}, t, nil
	}
	if t, err = undoStateOf(ctx, tx, id); err != nil {
		return stroke{}, t, err
	}
	st, err = turned(ctx, tx, id, r, t)
	return st, t, err
}

// turned is the stroke of an undo or redo, or of nothing at all.
func turned(ctx context.Context, tx *txn, id int64, r Request, t undoState) (stroke, error) {
	switch {
	case r.Kind == Undo && t.undo == 0:
		return stroke{}, fault.New(fault.Conflict, "There is no stroke to undo.")
	case r.Kind == Redo && t.redo == 0:
		return stroke{}, fault.New(fault.Conflict, "There is no stroke to redo: nothing was undone since the last one.")
	case r.Kind == Undo:
		edits, err := recall(ctx, tx, `SELECT inverse FROM stroke WHERE mitt = ? AND revision = ?`, id, t.undo)
		return stroke{Undo, t.undo, edits}, err
	case r.Kind == Redo:
		edits, err := recall(ctx, tx, `SELECT edits FROM stroke WHERE mitt = ? AND revision = ?`, id, t.redo)
		return stroke{Redo, t.redo, edits}, err
	}
	return stroke{kind: Do, edits: r.Edits}, nil
}

func recall(ctx context.Context, tx *txn, query string, id, revision int64) ([]chart.Edit, error) {
	var text string
	if err := tx.QueryRowContext(ctx, query, id, revision).Scan(&text); err != nil {
		return nil, err
	}
	return decode(text)
}

// again is the answer to a stroke that was drawn already.
func (s *Store) again(ctx context.Context, tx *txn, id int64, r Request) (applied Applied, drawn bool, err error) {
	if r.Key == "" {
		return Applied{}, false, nil
	}
	var text string
	err = tx.QueryRowContext(ctx, `SELECT revision, edits FROM stroke WHERE mitt = ? AND key = ?`, id, r.Key).Scan(&applied.Revision, &text)
	if errors.Is(err, sql.ErrNoRows) {
		return Applied{}, false, nil
	}
	if err != nil {
		return Applied{}, false, err
	}
	if applied.Edits, err = decode(text); err != nil {
		return Applied{}, false, err
	}
	after := min(r.After, applied.Revision)
	if r.Newest {
		after = applied.Revision
	}
	since, err := strokesSince(ctx, tx, id, after)
	if err != nil {
		return Applied{}, false, err
	}
	for _, st := range since {
		switch {
		case st.Revision > applied.Revision:
			applied.Later = append(applied.Later, st.Edits...)
		case st.Revision < applied.Revision:
			applied.Between = append(applied.Between, st.Edits...)
		}
	}
	t, err := undoStateOf(ctx, tx, id)
	applied.CanUndo, applied.CanRedo = t.undo > 0, t.redo > 0
	return applied, true, err
}

// put writes a stroke with its inverse, which is what its cells hold at head,
// before it a decision if it has edits of the sheet, and from time to time a
// snapshot. It gives the stroke's revision.
func (s *Store) put(ctx context.Context, tx *txn, id int64, at heads, l *cached, st stroke, r Request) (int64, error) {
	revision, marked := at.head+1, len(l.marks)
	back := l.marks.Apply(st.edits)
	if n := len(l.marks); n > chart.MaxMarks && n > marked {
		return 0, fault.New(fault.Invalid, "This mitt would have %d marked cells, and %d are the most. Nothing was drawn.", n, chart.MaxMarks)
	}
	if sheet := chart.OfSheet(st.edits); len(sheet) > 0 {
		undone, err := s.rewrite(ctx, tx, id, at, sheet, r)
		if err != nil {
			return 0, err
		}
		back, revision = append(back, undone...), revision+1
	}
	edits, err := encode(st.edits)
	if err != nil {
		return 0, err
	}
	inverse, err := encode(back)
	if err != nil {
		return 0, err
	}
	when := s.stamp()
	target := sql.NullInt64{Int64: st.target, Valid: st.kind != Do}
	key := sql.NullString{String: r.Key, Valid: r.Key != ""}
	_, err = tx.ExecContext(ctx, `
		INSERT INTO stroke (mitt, revision, at, kind, target, edits, inverse, key) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
		id, revision, when, st.kind, target, edits, inverse, key)
	if err != nil {
		return revision, err
	}
	l.drawn(revision, when, st.edits)
	if l.strokes < s.every {
		return revision, nil
	}
	l.strokes, l.mark.kept = 0, revision
	return revision, l.keep(ctx, tx, id, revision)
}

// rewrite puts edits of the sheet into a new decision.
func (s *Store) rewrite(ctx context.Context, tx *txn, id int64, at heads, edits []chart.Edit, r Request) ([]chart.Edit, error) {
	if r.Rewrite == nil {
		return nil, fmt.Errorf("a stroke with %d edits of the sheet, and nothing that carries them out", len(edits))
	}
	var document string
	if err := tx.QueryRowContext(ctx, `SELECT document FROM decision WHERE mitt = ? AND revision = ?`, id, at.decided).Scan(&document); err != nil {
		return nil, err
	}
	rewritten, inverse, err := r.Rewrite([]byte(document), edits)
	if err != nil {
		return nil, err
	}
	return inverse, decide(ctx, tx, id, at.head+1, s.stamp(), rewritten)
}
