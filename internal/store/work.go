package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"

	"thenar/internal/chart"
	"thenar/internal/fault"
)

// Base is the state of a mitt that a change was worked out from. Commit refuses
// the change with ErrMoved if any of it is different by now.
type Base struct {
	Restored int64 // as Mitt.Restored
	Decided  int64 // the newest decision
	Head     int64 // the newest decision or stroke; 0: strokes don't matter to the change
	Counted  int64 // the number of the newest count of either hand; 0: none
}

// Wants selects what ReadWork reads besides the document and the last counts.
type Wants struct {
	Marks   bool   // Marks, CanUndo and CanRedo
	Turn    Kind   // Undo or Redo: the edits that it would draw
	Key     string // whether a stroke with this key is stored
	Counts  bool   // all counts
	Tries   bool   // the tries of this mitt
	Went    bool   // the versions that went out
	History bool   // the newest revisions, or those before Before
	Before  int64  // 0: History goes up to the newest
	Habits  bool   // what habits are learned from
	Earlier []Pick // earlier revisions; each may depend on those before it
	Others  bool   // all other mitts
}

// Pick chooses an earlier revision, given what was read so far, and whether to
// read its marks; revision 0 is none.
type Pick func(Work) (revision int64, marks bool)

// Work is a mitt with the progress on it, all read in one transaction.
type Work struct {
	Mitt
	Base    Base
	Last    map[string]Count // the last count by hand; none for a hand that was never counted
	Turn    []chart.Edit     // what an undo or redo would draw now; nil: nothing
	Drawn   bool             // a stroke with the wanted key is stored
	Counts  []Count          // the oldest first
	Tries   []Try            // the oldest first
	Went    []Version        // the oldest first
	History []Revision       // one page of it, the oldest first
	Stood   []byte           // the document before the first of History; nil: it begins the mitt
	Named   []Revision       // those before History that have a name, the oldest first
	Habits  Habits
	Earlier []Mitt // as picked, except revisions that the mitt doesn't have
	Others  []Mitt // the last changed first; as List returns them
}

// At returns an earlier revision; nil if it was not read.
func (w *Work) At(revision int64) *Mitt {
	for i := range w.Earlier {
		if w.Earlier[i].Revision == revision {
			return &w.Earlier[i]
		}
	}
	return nil
}

// ReadWork reads a mitt and what is wanted besides it in one transaction;
// fault.NotFound if there is no such mitt.
func (s *Store) ReadWork(ctx context.Context, id int64, wants Wants) (w Work, err error) {
	defer fault.Wrap(&err, "store.ReadWork(%d)", id)
	err = s.read(ctx, func(tx *txn) error {
		w = Work{}
		if w.Mitt, err = readMitt(ctx, tx, id); err != nil {
			return err
		}
		w.Base = Base{Restored: w.Restored, Decided: w.Decided}
		if err := w.readCounts(ctx, tx, wants); err != nil {
			return err
		}
		if err := s.readStrokes(ctx, tx, &w, wants); err != nil {
			return err
		}
		if err := w.readTries(ctx, tx, wants); err != nil {
			return err
		}
		for _, pick := range wants.Earlier {
			if err := w.readEarlier(ctx, tx, pick); err != nil {
				return err
			}
		}
		return w.readOthers(ctx, tx, wants)
	})
	if err != nil {
		return Work{}, err
	}
	return w, nil
}

// readOthers reads the other mitts if they are wanted.
func (w *Work) readOthers(ctx context.Context, tx *txn, wants Wants) error {
	if !wants.Others {
		return nil
	}
	all, err := readMitts(ctx, tx)
	w.Others = slices.DeleteFunc(all, func(m Mitt) bool { return m.ID == w.ID })
	return err
}

// readCounts reads the last counts, or all if they are wanted.
func (w *Work) readCounts(ctx context.Context, tx *txn, wants Wants) error {
	query := lastCounts + ` WHERE m.id = ?`
	if wants.Counts {
		query = counts + ` WHERE c.mitt = ? ORDER BY c.id`
	}
	list, err := collect(ctx, tx, func(rows *sql.Rows) (Count, error) { return scanCount(rows) }, query, w.ID)
	if err != nil {
		return err
	}
	w.Last = map[string]Count{}
	for _, c := range list {
		w.Last[c.Side] = c
		w.Base.Counted = max(w.Base.Counted, c.id)
	}
	if wants.Counts {
		w.Counts = list
	}
	return nil
}

// readStrokes reads the marks, and what an undo or redo would draw.
func (s *Store) readStrokes(ctx context.Context, tx *txn, w *Work, wants Wants) (err error) {
	if wants.Key != "" {
		if w.Drawn, err = drawn(ctx, tx, w.ID, wants.Key); err != nil {
			return err
		}
	}
	if !wants.Marks && wants.Turn == "" {
		return nil
	}
	w.Base.Head = w.Revision
	t, err := undoStateOf(ctx, tx, w.ID)
	if err != nil {
		return err
	}
	w.CanUndo, w.CanRedo = t.undo > 0, t.redo > 0
	if wants.Marks {
		if w.Marks, err = s.marksAt(ctx, tx, w.ID, w.Revision); err != nil {
			return err
		}
	}
	if wants.Turn == Undo && w.CanUndo || wants.Turn == Redo && w.CanRedo {
		st, err := turnStroke(ctx, tx, w.ID, Request{Kind: wants.Turn}, t)
		w.Turn = st.edits
		return err
	}
	return nil
}

func (w *Work) readTries(ctx context.Context, tx *txn, wants Wants) (err error) {
	if wants.Tries {
		if w.Tries, err = readTries(ctx, tx, w.ID); err != nil {
			return err
		}
	}
	if wants.History {
		if err := w.readHistory(ctx, tx, wants.Before); err != nil {
			return err
		}
	}
	if wants.Went {
		if w.Went, err = readVersions(ctx, tx, w.ID); err != nil {
			return err
		}
	}
	if wants.Habits {
		w.Habits, err = readHabits(ctx, tx)
	}
	return err
}

// readEarlier reads the revision that pick chooses.
func (w *Work) readEarlier(ctx context.Context, tx *txn, pick Pick) error {
	revision, marks := pick(*w)
	if revision < 1 || revision > w.Revision || w.At(revision) != nil {
		return nil
	}
	then, err := at(ctx, tx, w.Mitt, revision)
	if err != nil {
		return err
	}
	if marks {
		r, err := replay(ctx, tx, w.ID, revision)
		if err != nil {
			return err
		}
		then.Marks = r.marks
	}
	w.Earlier = append(w.Earlier, then)
	return nil
}

// at returns m as it was at an earlier revision, without its marks.
func at(ctx context.Context, tx *txn, m Mitt, revision int64) (Mitt, error) {
	var changed string
	err := tx.QueryRowContext(ctx, `
		SELECT d.revision, d.document, max(d.at, coalesce((SELECT max(at) FROM stroke WHERE mitt = ?1 AND revision <= ?2), ''))
		FROM decision d WHERE d.mitt = ?1 AND d.revision <= ?2 ORDER BY d.revision DESC LIMIT 1`, m.ID, revision).Scan(&m.Decided, &m.Document, &changed)
	if err != nil {
		return Mitt{}, err
	}
	m.Revision, m.Marks, m.CanUndo, m.CanRedo = revision, nil, false, false
	m.Changed, err = parseTime(changed)
	return m, err
}

// Shelf returns all mitts with the last count of each hand, the last changed
// first. It leaves out CanUndo and CanRedo, as List does, and Marks but of the
// mitts of which marked reports true.
func (s *Store) Shelf(ctx context.Context, marked func(Mitt) bool) (list []Work, err error) {
	defer fault.Wrap(&err, "store.Shelf")
	err = s.read(ctx, func(tx *txn) error {
		mitts, err := readMitts(ctx, tx)
		if err != nil {
			return err
		}
		last, err := collect(ctx, tx, func(rows *sql.Rows) (Count, error) { return scanCount(rows) }, lastCounts)
		if err != nil {
			return err
		}
		list = make([]Work, len(mitts))
		for i, m := range mitts {
			list[i] = Work{Mitt: m, Last: map[string]Count{}}
			for _, c := range last {
				if c.mitt == m.ID {
					list[i].Last[c.Side] = c
				}
			}
			if !marked(m) {
				continue
			}
			if list[i].Marks, err = s.marksAt(ctx, tx, m.ID, m.Revision); err != nil {
				return err
			}
		}
		return nil
	})
	return list, err
}

// ErrMoved is the cause of refusing a change because the mitt was changed after
// it was worked out. It has to be worked out again.
var ErrMoved = errors.New("the mitt has moved on")

// check fails with ErrMoved if a mitt is not as it was read.
func (b *Base) check(ctx context.Context, tx *txn, id int64, now heads) error {
	if b == nil {
		return nil
	}
	present := Base{Decided: now.decided, Head: now.head}
	err := tx.QueryRowContext(ctx, `SELECT `+restored+`, `+lastCounted, id).Scan(&present.Restored, &present.Counted)
	if err != nil {
		return err
	}
	if b.Head == 0 {
		present.Head = 0
	}
	if present != *b {
		return errMoved()
	}
	return nil
}

func errMoved() error {
	return fault.New(fault.Conflict, "Others are changing this mitt at the same time. Nothing of this is saved yet; try again.").Because(ErrMoved)
}
