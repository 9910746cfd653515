package store

import (
	"context"
	"database/sql"
	"encoding/json"

	"thenar/internal/exportfile"
	"thenar/internal/fault"
)

// ExportMitt returns a mitt with all its data; fault.NotFound if there is none.
func (s *Store) ExportMitt(ctx context.Context, id int64) (f exportfile.File, err error) {
	defer fault.Wrap(&err, "store.ExportMitt(%d)", id)
	f = s.emptyFile()
	err = s.read(ctx, func(tx *txn) error { return addMitt(ctx, tx, &f, id) })
	return f, err
}

// ExportClass returns a class with its history; fault.NotFound if there is
// none.
func (s *Store) ExportClass(ctx context.Context, id int64) (f exportfile.File, err error) {
	defer fault.Wrap(&err, "store.ExportClass(%d)", id)
	f = s.emptyFile()
	err = s.read(ctx, func(tx *txn) error {
		c, err := packClass(ctx, tx, id)
		f.Classes = append(f.Classes, c)
		return err
	})
	return f, err
}

// ExportAll returns everything but the devices, whose tokens let other machines
// in.
func (s *Store) ExportAll(ctx context.Context) (f exportfile.File, err error) {
	defer fault.Wrap(&err, "store.ExportAll")
	f = s.emptyFile()
	err = s.read(ctx, func(tx *txn) error {
		mitts, err := queryIDs(ctx, tx, `SELECT id FROM mitt ORDER BY id`)
		for _, id := range mitts {
			if err := addMitt(ctx, tx, &f, id); err != nil {
				return err
			}
		}
		if err != nil {
			return err
		}
		classes, err := queryIDs(ctx, tx, `SELECT id FROM class ORDER BY id`)
		for _, id := range classes {
			c, err := packClass(ctx, tx, id)
			if err != nil {
				return err
			}
			f.Classes = append(f.Classes, c)
		}
		if err != nil {
			return err
		}
		return packHabits(ctx, tx, &f)
	})
	return f, err
}

func (s *Store) emptyFile() exportfile.File {
	return exportfile.File{Format: exportfile.Format, Made: s.stamp()}
}

// queryIDs returns the first column of all rows of a query.
func queryIDs(ctx context.Context, tx *txn, query string, args ...any) ([]int64, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (n int64, err error) { return n, rows.Scan(&n) }, query, args...)
}

// addMitt adds a mitt to a file, and lists the keys that had to be replaced.
func addMitt(ctx context.Context, tx *txn, f *exportfile.File, id int64) error {
	m, err := packMitt(ctx, tx, id)
	if err != nil {
		return err
	}
	f.Mended = append(f.Mended, m.MendKeys()...)
	f.Mitts = append(f.Mitts, m)
	return nil
}

// packMitt returns a mitt with its keys as they are stored.
func packMitt(ctx context.Context, tx *txn, id int64) (m exportfile.Mitt, err error) {
	m.ID = id
	if _, err := headOf(ctx, tx, id); err != nil {
		return m, err
	}
	if err := tx.QueryRowContext(ctx, `SELECT created FROM mitt WHERE id = ?`, id).Scan(&m.Created); err != nil {
		return m, err
	}
	m.Revisions, err = collect(ctx, tx, packRevision, `
		SELECT revision, at, 'decision', document, NULL, NULL, NULL, NULL FROM decision WHERE mitt = ?1
		UNION ALL
		SELECT revision, at, kind, NULL, target, key, edits, inverse FROM stroke WHERE mitt = ?1
		ORDER BY 1`, id)
	if err != nil {
		return m, err
	}
	m.Moments, err = collect(ctx, tx, func(rows *sql.Rows) (n exportfile.Moment, err error) {
		return n, rows.Scan(&n.Revision, &n.At, &n.Name)
	}, `SELECT revision, at, name FROM moment WHERE mitt = ? ORDER BY id`, id)
	if err != nil {
		return m, err
	}
	m.Versions, err = collect(ctx, tx, func(rows *sql.Rows) (v exportfile.Version, err error) {
		var record string
		err = rows.Scan(&v.At, &v.Revision, &v.Name, &record)
		v.Record = []byte(record)
		return v, err
	}, `SELECT at, revision, name, record FROM version WHERE mitt = ? ORDER BY number`, id)
	if err != nil {
		return m, err
	}
	if m.Tries, err = packTries(ctx, tx, id); err != nil {
		return m, err
	}
	if m.Pictures, err = packPictures(ctx, tx, id); err != nil {
		return m, err
	}
	m.Counts, err = collect(ctx, tx, func(rows *sql.Rows) (c exportfile.Count, err error) {
		return c, rows.Scan(&c.Key, &c.At, &c.Side, &c.Section, &c.Round)
	}, `SELECT key, at, side, section, round FROM count WHERE mitt = ? ORDER BY id`, id)
	return m, err
}

func packRevision(rows *sql.Rows) (r exportfile.Revision, err error) {
	var document, key, edits, inverse sql.NullString
	var target sql.NullInt64
	if err := rows.Scan(&r.Revision, &r.At, &r.Kind, &document, &target, &key, &edits, &inverse); err != nil {
		return r, err
	}
	if document.Valid {
		r.Document = []byte(document.String)
		return r, nil
	}
	r.Target, r.Key = target.Int64, key.String
	if r.Edits, err = decode(edits.String); err != nil {
		return r, err
	}
	r.Inverse, err = decode(inverse.String)
	return r, err
}

func packTries(ctx context.Context, tx *txn, mitt int64) ([]exportfile.Try, error) {
	list, err := collect(ctx, tx, func(rows *sql.Rows) (t exportfile.Try, err error) {
		var record string
		err = rows.Scan(&t.ID, &t.Key, &t.At, &t.Revision, &record, &t.Photo)
		t.Record = []byte(record)
		return t, err
	}, `SELECT id, key, at, revision, record, photo FROM try WHERE mitt = ? ORDER BY id`, mitt)
	if err != nil {
		return nil, err
	}
	for i := range list {
		list[i].Answers, err = collect(ctx, tx, func(rows *sql.Rows) (v exportfile.Answer, err error) {
			var answer string
			err = rows.Scan(&v.At, &v.Before, &v.Revision, &answer)
			v.Record = []byte(answer)
			return v, err
		}, `SELECT at, before, revision, answer FROM verdict WHERE try = ? ORDER BY id`, list[i].ID)
		if err != nil {
			return nil, err
		}
	}
	return list, nil
}

func packClass(ctx context.Context, tx *txn, id int64) (c exportfile.Class, err error) {
	c.ID = id
	if _, err := loadClass(ctx, tx, id); err != nil {
		return c, err
	}
	if err := tx.QueryRowContext(ctx, `SELECT created FROM class WHERE id = ?`, id).Scan(&c.Created); err != nil {
		return c, err
	}
	c.Revisions, err = collect(ctx, tx, func(rows *sql.Rows) (r exportfile.ClassRevision, err error) {
		var document string
		err = rows.Scan(&r.Revision, &r.At, &document)
		r.Document = []byte(document)
		return r, err
	}, `SELECT revision, at, document FROM class_decision WHERE class = ? ORDER BY revision`, id)
	if err != nil {
		return c, err
	}
	mitts, err := c.Mitts()
	if err != nil {
		return c, err
	}
	for _, mitt := range mitts {
		p, err := collect(ctx, tx, func(rows *sql.Rows) (p exportfile.Pattern, err error) {
			return p, rows.Scan(&p.Mitt, &p.Created)
		}, `SELECT id, created FROM mitt WHERE id = ?`, mitt)
		if err != nil {
			return c, err
		}
		c.Patterns = append(c.Patterns, p...)
	}
	return c, nil
}

// packHabits adds the motifs and habits, which belong to the person rather than
// to a mitt.
func packHabits(ctx context.Context, tx *txn, f *exportfile.File) (err error) {
	f.Motifs, err = collect(ctx, tx, func(rows *sql.Rows) (m exportfile.Motif, err error) {
		var cells string
		if err := rows.Scan(&m.At, &m.Name, &cells, &m.Removed); err != nil {
			return m, err
		}
		return m, json.Unmarshal([]byte(cells), &m.Cells)
	}, `SELECT m.at, name, cells, coalesce(r.at, '') FROM motif m LEFT JOIN motif_removed r ON r.motif = m.id ORDER BY m.id`)
	if err != nil {
		return err
	}
	f.Unlearned, err = collect(ctx, tx, func(rows *sql.Rows) (u exportfile.Unlearned, err error) {
		return u, rows.Scan(&u.At, &u.Zone, &u.Answer)
	}, `SELECT u.at, u.zone, v.at FROM unlearned u JOIN verdict v ON v.id = u.verdict ORDER BY u.id`)
	return err
}
