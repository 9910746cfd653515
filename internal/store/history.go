package store

import (
	"cmp"
	"context"
	"database/sql"
	"slices"
	"time"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Revision is one entry in the history of a mitt.
type Revision struct {
	Revision int64
	At       time.Time // UTC
	Kind     string    // "decision", or a stroke's "do", "undo" or "redo"
	Name     string    // given by the person; may be empty

	Document []byte       // of a decision
	Edits    []chart.Edit // of a stroke
	Inverse  []chart.Edit // what takes the stroke back

	size int64 // bytes of the texts
}

// A page of the history has at most maxPage revisions, with not more than
// maxPageBytes of texts unless a single one is longer. maxNamed is the most
// earlier revisions with a name that are read beside it.
const (
	maxPage      = 200
	maxPageBytes = 4 << 20
	maxNamed     = 100
)

const (
	momentName = `(SELECT name FROM moment WHERE mitt = ?1 AND revision = r.revision ORDER BY id DESC LIMIT 1)`

	// historyPage selects the newest revisions before ?2. It does not read the
	// texts, which may be long.
	historyPage = `
		SELECT revision, at, kind, coalesce(` + momentName + `, ''), size FROM (
			SELECT * FROM (SELECT revision, at, 'decision' AS kind, octet_length(document) AS size
				FROM decision WHERE mitt = ?1 AND revision < ?2 ORDER BY revision DESC LIMIT ?3)
			UNION ALL
			SELECT * FROM (SELECT revision, at, kind, octet_length(edits) + octet_length(inverse)
				FROM stroke WHERE mitt = ?1 AND revision < ?2 ORDER BY revision DESC LIMIT ?3)) AS r
		ORDER BY revision DESC LIMIT ?3`

	named = `SELECT revision, '', '', name, 0 FROM (
		SELECT revision, ` + momentName + ` AS name FROM (SELECT DISTINCT revision FROM moment WHERE mitt = ?1 AND revision < ?2) AS r)
		WHERE name != '' ORDER BY revision DESC LIMIT ?3`
)

// readHistory reads the page of the history that ends before a revision, or
// with the newest one if before is 0.
func (w *Work) readHistory(ctx context.Context, tx *txn, before int64) (err error) {
	if before <= 0 {
		before = w.Revision + 1
	}
	if w.History, err = collect(ctx, tx, scanRevision, historyPage, w.ID, before, maxPage); err != nil || len(w.History) == 0 {
		return err
	}
	size := int64(0)
	for i, r := range w.History {
		if size += r.size; i > 0 && size > maxPageBytes {
			w.History = w.History[:i]
			break
		}
	}
	slices.Reverse(w.History)
	first := w.History[0].Revision
	if w.Named, err = collect(ctx, tx, scanRevision, named, w.ID, first, maxNamed); err != nil {
		return err
	}
	slices.Reverse(w.Named)
	return w.readTexts(ctx, tx, first, before)
}

// readTexts reads what the revisions of History decided and drew.
func (w *Work) readTexts(ctx context.Context, tx *txn, first, before int64) error {
	decisions, err := collect(ctx, tx, func(rows *sql.Rows) (r Revision, err error) {
		return r, rows.Scan(&r.Revision, &r.Document)
	}, `SELECT revision, document FROM decision WHERE mitt = ?1 AND revision < ?3
		AND revision >= coalesce((SELECT max(revision) FROM decision WHERE mitt = ?1 AND revision < ?2), 0) ORDER BY revision`, w.ID, first, before)
	if err != nil {
		return err
	}
	strokes, err := collect(ctx, tx, func(rows *sql.Rows) (r Revision, err error) {
		var edits, inverse string
		if err = rows.Scan(&r.Revision, &edits, &inverse); err != nil {
			return r, err
		}
		if r.Edits, err = decode(edits); err != nil {
			return r, err
		}
		r.Inverse, err = decode(inverse)
		return r, err
	}, `SELECT revision, edits, inverse FROM stroke WHERE mitt = ? AND revision >= ? AND revision < ?`, w.ID, first, before)
	if err != nil {
		return err
	}
	for _, d := range append(decisions, strokes...) {
		if d.Revision < first {
			w.Stood = d.Document
			continue
		}
		if i, ok := slices.BinarySearchFunc(w.History, d.Revision, func(r Revision, at int64) int { return cmp.Compare(r.Revision, at) }); ok {
			r := &w.History[i]
			r.Document, r.Edits, r.Inverse = d.Document, d.Edits, d.Inverse
		}
	}
	return nil
}

func scanRevision(rows *sql.Rows) (r Revision, err error) {
	var at string
	if err := rows.Scan(&r.Revision, &at, &r.Kind, &r.Name, &r.size); err != nil || at == "" {
		return r, err
	}
	r.At, err = parseTime(at)
	return r, err
}

func noRevision(revision, newest int64) error {
	return fault.New(fault.NotFound, "This mitt has no moment %d; its newest is %d.", revision, newest)
}

// Name names a revision of a mitt; an empty name removes the earlier one.
func (s *Store) Name(ctx context.Context, id, revision int64, name string) (err error) {
	defer fault.Wrap(&err, "store.Name(%d, %d)", id, revision)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		at, err := headOf(ctx, tx, id)
		if err != nil {
			return err
		}
		if revision < 1 || revision > at.head {
			return noRevision(revision, at.head)
		}
		return s.name(ctx, tx, id, revision, name)
	})
}

func (s *Store) name(ctx context.Context, tx *txn, id, revision int64, name string) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO moment (mitt, revision, at, name) VALUES (?, ?, ?, ?)`, id, revision, s.stamp(), name)
	return err
}

// News is what was added to a mitt after a revision.
type News struct {
	Strokes  []Drawn // in order
	Revision int64   // the newest decision or stroke
	Decided  int64   // the newest decision
	CanUndo  bool
	CanRedo  bool
	Restored int64 // as Mitt.Restored
}

// Since returns what was added to a mitt after a revision; fault.NotFound if
// there is no such mitt.
func (s *Store) Since(ctx context.Context, id, after int64) (n News, err error) {
	defer fault.Wrap(&err, "store.Since(%d, %d)", id, after)
	err = s.read(ctx, func(tx *txn) error {
		at, err := headOf(ctx, tx, id)
		if err != nil {
			return err
		}
		n.Revision, n.Decided = at.head, at.decided
		if err := tx.QueryRowContext(ctx, `SELECT `+restored).Scan(&n.Restored); err != nil {
			return err
		}
		if at.head <= after {
			return nil
		}
		if n.Strokes, err = strokesSince(ctx, tx, id, after); err != nil {
			return err
		}
		t, err := undoStateOf(ctx, tx, id)
		n.CanUndo, n.CanRedo = t.undo > 0, t.redo > 0
		return err
	})
	if err != nil {
		return News{}, err
	}
	return n, nil
}
