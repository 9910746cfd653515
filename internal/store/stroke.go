package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"slices"

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

// Request is a stroke to be drawn.
type Request struct {
	Kind  Kind
	After int64  // the revision that the caller saw
	Key   string // chosen by the caller, so that a repeated request is drawn once; may be empty
	Edits []chart.Edit

	// Also are edits that go with the stroke, an undo or a redo too: what follows from it. An
	// undo of the stroke takes them back with it.
	Also []chart.Edit

	// Newest draws the stroke on the newest revision, whichever it is: After and
	// Restored are ignored, and Between is empty.
	Newest bool

	// OnlyCells refuses, with ErrMoved, an undo or redo that changes more than
	// cells: the caller has to work out the consequences first.
	OnlyCells bool

	// Restored is the Mitt.Restored with which the caller saw After; nil if the
	// caller read it just now.
	Restored *int64

	// Rewrite applies edits of the sheet to a document and returns their inverse.
	// It may be nil for a stroke without edits of the sheet.
	Rewrite func(document []byte, edits []chart.Edit) ([]byte, []chart.Edit, error)
}

// stroke is a stroke about to be drawn; target is the revision of the stroke
// that an undo or redo applies to.
type stroke struct {
	kind   Kind
	target int64
	edits  []chart.Edit
}

// Applied is the result of a stroke.
type Applied struct {
	Revision int64        // the mitt's newest revision, that of this stroke
	Edits    []chart.Edit // of this stroke
	Between  []chart.Edit // of the strokes before it that the caller had not seen, in order
	Later    []chart.Edit // if this stroke was drawn by an earlier request: of the strokes after it, in order
	CanUndo  bool         // whether there is a stroke to undo now
	CanRedo  bool         // whether there is one to redo
}

// Append draws a stroke of edits; see Draw.
func (s *Store) Append(ctx context.Context, id, after int64, edits []chart.Edit) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Do, After: after, Edits: edits})
}

// Undo takes back the last stroke that is not undone; see Draw.
func (s *Store) Undo(ctx context.Context, id, after int64) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Undo, After: after})
}

// Redo draws the stroke again that was undone last; see Draw.
func (s *Store) Redo(ctx context.Context, id, after int64) (Applied, error) {
	return s.Draw(ctx, id, Request{Kind: Redo, After: after})
}

// Draw draws a stroke. A do sets the cells of its edits, whatever they hold by
// now, so that the last of two strokes on one cell wins. An undo takes back the
// last stroke, whoever drew it, and a redo draws the one again that was undone
// last, each as a new revision. Applied.Between then holds what the caller had
// not seen. Without edits there is no new revision, and a stroke whose key is
// there already is not drawn again. Edits of the sheet also make a decision,
// one revision before the stroke.
//
// It fails with fault.NotFound for an unknown mitt, and with fault.Conflict if
// there is nothing to undo or redo, or if the mitt has no revision After or had
// another before a restore (both with the cause ErrStale).
func (s *Store) Draw(ctx context.Context, id int64, r Request) (applied Applied, err error) {
	defer fault.Wrap(&err, "store.Draw(%d, %s)", id, r.Kind)
	done, err := s.Commit(ctx, id, Change{Strokes: []Request{r}})
	if err != nil {
		return Applied{}, err
	}
	return done.Applied[0], nil
}

// checkRequest refuses a stroke of another file's chart. If the stroke was
// drawn before, it returns that result again, and true.
func (s *Store) checkRequest(ctx context.Context, tx *txn, id int64, r Request, at heads) (Applied, bool, error) {
	if !r.Newest {
		if err := ofThisFile(ctx, tx, r, at.head); err != nil {
			return Applied{}, false, err
		}
	}
	return s.drawnBefore(ctx, tx, id, r)
}

// draw adds a stroke to a mitt.
func (s *Store) draw(ctx context.Context, tx *txn, id int64, r Request, at heads) (Applied, error) {
	if r.Newest {
		r.After = at.head
	}
	l, err := s.replayed(ctx, tx, id, at.head)
	if err != nil {
		return Applied{}, err
	}
	st, t, err := strokeFor(ctx, tx, id, r)
	if err != nil {
		return Applied{}, err
	}
	if r.OnlyCells && !chart.OnlyCells(st.edits) {
		return Applied{}, errMoved()
	}
	st.edits = slices.Concat(st.edits, r.Also)
	applied := Applied{Revision: at.head, Edits: st.edits}
	if applied.Between, err = between(ctx, tx, id, l, r.After); err != nil {
		return Applied{}, err
	}
	if st.kind != Do || len(st.edits) > 0 {
		if applied.Revision, err = s.insertStroke(ctx, tx, id, at, l, st, r); err != nil {
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

// ErrStale is the cause of refusing a request from a chart of another file. Its
// edits can be drawn once the caller has read the mitt again.
var ErrStale = errors.New("the chart is not of this file")

// ofThisFile fails with ErrStale if a request was made for another file.
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
		return fault.New(fault.Conflict, "This chart knows moment %d, and this mitt ends at %d. Nothing was drawn; load the page again.", r.After, head).Because(ErrStale)
	}
	return nil
}

// between returns the edits after a revision, from the cache if it has them.
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

// strokeFor returns the stroke that a request asks for, and the undo state
// before it, which is not read for a do with edits.
func strokeFor(ctx context.Context, tx *txn, id int64, r Request) (st stroke, t undoState, err error) {
	if r.Kind == Do && len(r.Edits) > 0 {
		return stroke{kind: Do, edits: r.Edits}, t, nil
	}
	if t, err = undoStateOf(ctx, tx, id); err != nil {
		return stroke{}, t, err
	}
	st, err = turnStroke(ctx, tx, id, r, t)
	return st, t, err
}

// turnStroke returns the stroke of an undo, a redo, or a do without edits.
func turnStroke(ctx context.Context, tx *txn, id int64, r Request, t undoState) (stroke, error) {
	switch {
	case r.Kind == Undo && t.undo == 0:
		return stroke{}, fault.New(fault.Conflict, "There is no stroke to take back.")
	case r.Kind == Redo && t.redo == 0:
		return stroke{}, fault.New(fault.Conflict, "Nothing was taken back since the last stroke.")
	case r.Kind == Undo:
		edits, err := readEdits(ctx, tx, `SELECT inverse FROM stroke WHERE mitt = ? AND revision = ?`, id, t.undo)
		return stroke{Undo, t.undo, edits}, err
	case r.Kind == Redo:
		edits, err := readEdits(ctx, tx, `SELECT edits FROM stroke WHERE mitt = ? AND revision = ?`, id, t.redo)
		return stroke{Redo, t.redo, edits}, err
	}
	return stroke{kind: Do, edits: r.Edits}, nil
}

func readEdits(ctx context.Context, tx *txn, query string, id, revision int64) ([]chart.Edit, error) {
	var text string
	if err := tx.QueryRowContext(ctx, query, id, revision).Scan(&text); err != nil {
		return nil, err
	}
	return decode(text)
}

// drawnBefore returns the result of a request whose stroke, found by its key, was
// drawn before; drawn is false if there is none.
func (s *Store) drawnBefore(ctx context.Context, tx *txn, id int64, r Request) (applied Applied, drawn bool, err error) {
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

// insertStroke inserts a stroke with its inverse, the present contents of its
// cells. Edits of the sheet make a decision before it, and every so many
// strokes a snapshot follows. It returns the stroke's revision.
func (s *Store) insertStroke(ctx context.Context, tx *txn, id int64, at heads, l *cached, st stroke, r Request) (int64, error) {
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
	l.strokes, l.source.snapshot = 0, revision
	return revision, l.keep(ctx, tx, id, revision)
}

// rewrite adds a decision with the edits of the sheet applied, and returns
// their inverse.
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
