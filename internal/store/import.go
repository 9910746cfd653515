package store

import (
	"context"
	"database/sql"
	"encoding/json"

	"thenar/internal/exportfile"
	"thenar/internal/fault"
	"thenar/internal/plain"
)

// Import adds the contents of a file, all or nothing, under new numbers. What
// is here already is not doubled. A mitt is recognised by its revisions: one
// that was worked on elsewhere gets the revisions missing here, and one that
// was changed in both places is added whole beside the one here.
func (s *Store) Import(ctx context.Context, f exportfile.File) (done Imported, err error) {
	defer fault.Wrap(&err, "store.Import")
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		done = Imported{}
		var answered int64
		if err := tx.QueryRowContext(ctx, `SELECT count(*) FROM verdict`).Scan(&answered); err != nil {
			return err
		}
		for _, m := range f.Mitts {
			a, err := takeMitt(ctx, tx, m)
			if err != nil {
				return err
			}
			done.Mitts = append(done.Mitts, a)
		}
		for _, c := range f.Classes {
			a, err := takeClass(ctx, tx, c)
			if err != nil {
				return err
			}
			done.Classes = append(done.Classes, a)
		}
		for _, m := range f.Motifs {
			fresh, err := takeMotif(ctx, tx, m)
			if err != nil {
				return err
			}
			if fresh {
				done.Motifs++
			}
		}
		if answered > 0 {
			return nil // habits forgotten elsewhere must not drop what was learned here
		}
		return takeUnlearned(ctx, tx, f.Unlearned)
	})
	if err != nil {
		return Imported{}, err
	}
	return done, nil
}

// takeMitt imports one mitt.
func takeMitt(ctx context.Context, tx *txn, m exportfile.Mitt) (a Arrived, err error) {
	fingerprints, err := m.Fingerprints()
	if err != nil {
		return a, err
	}
	a, here, err := findOrAdd(ctx, tx, "mitt", m.Created, fingerprints, func(id int64) ([]string, error) {
		there, err := packMitt(ctx, tx, id)
		if err != nil {
			return nil, err
		}
		there.MendKeys() // as an export from here does
		return there.Fingerprints()
	})
	if err != nil {
		return a, err
	}
	return a, unpackMitt(ctx, tx, a.ID, here, m)
}

// unpackMitt adds to a mitt the revisions of m after the first here, and all
// moments, versions, tries and counts that it lacks.
func unpackMitt(ctx context.Context, tx *txn, id int64, here int, m exportfile.Mitt) error {
	// Tries come first, since the revisions' sheets must name them by their new
	// numbers. They can, since no foreign key ties a try to its revision.
	tries, err := takeTries(ctx, tx, id, m.Tries)
	if err != nil {
		return err
	}
	for _, p := range m.Pictures {
		if err := takePicture(ctx, tx, p); err != nil {
			return err
		}
	}
	if m, err = m.Renumbered(tries); err != nil {
		return err
	}
	for _, r := range m.Revisions[here:] {
		if err := takeRevision(ctx, tx, id, r); err != nil {
			return err
		}
	}
	for _, n := range m.Moments {
		_, err := tx.ExecContext(ctx, `
			INSERT INTO moment (mitt, revision, at, name) SELECT ?1, ?2, ?3, ?4
			WHERE NOT EXISTS (SELECT 1 FROM moment WHERE mitt = ?1 AND revision = ?2 AND at >= ?3)`, id, n.Revision, n.At, n.Name)
		if err != nil {
			return err
		}
	}
	if err := takeVersions(ctx, tx, id, m.Versions); err != nil {
		return err
	}
	// Only the last count of a hand matters, so counts older than the newest one
	// here are left out.
	counted, err := keysHere(ctx, tx, `SELECT id, key FROM count WHERE mitt = ? ORDER BY id`, id)
	if err != nil {
		return err
	}
	for _, c := range m.Counts {
		if _, here := counted[c.Key]; here {
			continue
		}
		_, err := tx.ExecContext(ctx, `
			INSERT INTO count (mitt, key, at, side, section, round) SELECT ?1, ?2, ?3, ?4, ?5, ?6
			WHERE NOT EXISTS (SELECT 1 FROM count WHERE mitt = ?1 AND side = ?4 AND at > ?3)`,
			id, c.Key, c.At, c.Side, c.Section, c.Round)
		if err != nil {
			return err
		}
	}
	return nil
}

func takeRevision(ctx context.Context, tx *txn, id int64, r exportfile.Revision) error {
	if r.Kind == exportfile.Decision {
		return decide(ctx, tx, id, r.Revision, r.At, r.Document)
	}
	edits, err := encode(r.Edits)
	if err != nil {
		return err
	}
	inverse, err := encode(r.Inverse)
	if err != nil {
		return err
	}
	_, err = tx.ExecContext(ctx, `
		INSERT INTO stroke (mitt, revision, at, kind, target, edits, inverse, key) VALUES (?, ?, ?, ?, ?, ?, ?, ?)`,
		id, r.Revision, r.At, r.Kind, sql.NullInt64{Int64: r.Target, Valid: r.Target > 0}, edits, inverse, sql.NullString{String: r.Key, Valid: r.Key != ""})
	return err
}

// takeTries adds the tries that are not here, and maps the number of each in
// the file to its number here.
func takeTries(ctx context.Context, tx *txn, mitt int64, list []exportfile.Try) (numbered map[int64]int64, err error) {
	numbered = map[int64]int64{}
	here, err := keysHere(ctx, tx, `SELECT id, key FROM try WHERE mitt = ? ORDER BY id`, mitt)
	if err != nil {
		return nil, err
	}
	for _, t := range list {
		id, known := here[t.Key]
		if !known {
			made, err := tx.ExecContext(ctx, `INSERT INTO try (mitt, key, at, revision, record, photo) VALUES (?, ?, ?, ?, ?, ?)`,
				mitt, t.Key, t.At, t.Revision, string(t.Record), t.Photo)
			if err != nil {
				return nil, err
			}
			if id, err = made.LastInsertId(); err != nil {
				return nil, err
			}
		}
		numbered[t.ID] = id
		for _, v := range t.Answers { // only the newest one holds
			_, err := tx.ExecContext(ctx, `
				INSERT INTO verdict (try, at, before, revision, answer) SELECT ?1, ?2, ?3, ?4, ?5
				WHERE NOT EXISTS (SELECT 1 FROM verdict WHERE try = ?1 AND at >= ?2)`, id, v.At, v.Before, v.Revision, string(v.Record))
			if err != nil {
				return nil, err
			}
		}
	}
	return numbered, nil
}

// keysHere maps the keys of a mitt's tries or counts, mended as in an export,
// to their numbers.
func keysHere(ctx context.Context, tx *txn, query string, mitt int64) (map[string]int64, error) {
	type row struct {
		id  int64
		key string
	}
	rows, err := collect(ctx, tx, func(rows *sql.Rows) (r row, err error) { return r, rows.Scan(&r.id, &r.key) }, query, mitt)
	if err != nil {
		return nil, err
	}
	kept := make([]string, len(rows))
	for i, r := range rows {
		kept[i] = r.key
	}
	keys, _ := plain.MendedKeys(kept)
	here := make(map[string]int64, len(rows))
	for i, r := range rows {
		here[keys[i]] = r.id
	}
	return here, nil
}

// takeVersions adds the versions that are not here, behind those that are: of two that went
// out in two places under one number, the one that comes in gets the next.
func takeVersions(ctx context.Context, tx *txn, id int64, list []exportfile.Version) error {
	for _, v := range list {
		known, err := queryIDs(ctx, tx, `SELECT id FROM version WHERE mitt = ? AND at = ? AND revision = ? AND name = ?`, id, v.At, v.Revision, v.Name)
		if err != nil {
			return err
		}
		if len(known) > 0 {
			continue
		}
		if err := addVersion(ctx, tx, id, v.At, v.Revision, v.Name, v.Record); err != nil {
			return err
		}
	}
	return nil
}

// takeClass imports one class.
func takeClass(ctx context.Context, tx *txn, c exportfile.Class) (a Arrived, err error) {
	fingerprints, err := c.Fingerprints()
	if err != nil {
		return a, err
	}
	a, here, err := findOrAdd(ctx, tx, "class", c.Created, fingerprints, func(id int64) ([]string, error) {
		there, err := packClass(ctx, tx, id)
		if err != nil {
			return nil, err
		}
		return there.Fingerprints()
	})
	if err != nil {
		return a, err
	}
	mitts := map[int64]int64{}
	for _, p := range c.Patterns {
		found, err := queryIDs(ctx, tx, `SELECT id FROM mitt WHERE created = ? ORDER BY id LIMIT 1`, p.Created)
		if err != nil {
			return a, err
		}
		if len(found) > 0 {
			mitts[p.Mitt] = found[0]
		}
	}
	if c, err = c.Renumbered(mitts); err != nil {
		return a, err
	}
	for _, r := range c.Revisions[here:] {
		if err := decideClass(ctx, tx, a.ID, r.Revision, r.At, r.Document); err != nil {
			return a, err
		}
	}
	return a, nil
}

// takeMotif adds a motif unless it is here; fresh reports whether it was added.
func takeMotif(ctx context.Context, tx *txn, m exportfile.Motif) (fresh bool, err error) {
	cells, err := json.Marshal(m.Cells)
	if err != nil {
		return false, err
	}
	made, err := tx.ExecContext(ctx, `
		INSERT INTO motif (at, name, cells) SELECT ?1, ?2, ?3
		WHERE NOT EXISTS (SELECT 1 FROM motif WHERE at = ?1 AND name = ?2 AND cells = ?3)`, m.At, m.Name, string(cells))
	if err != nil {
		return false, err
	}
	n, err := made.RowsAffected()
	if err != nil || n == 0 || m.Removed == "" {
		return n > 0, err
	}
	id, err := made.LastInsertId()
	if err != nil {
		return true, err
	}
	_, err = tx.ExecContext(ctx, `INSERT INTO motif_removed (motif, at) VALUES (?, ?)`, id, m.Removed)
	return true, err
}

// takeUnlearned drops the habits that were dropped elsewhere.
func takeUnlearned(ctx context.Context, tx *txn, list []exportfile.Unlearned) error {
	for _, u := range list {
		_, err := tx.ExecContext(ctx, `
			INSERT INTO unlearned (at, zone, verdict) SELECT ?1, ?2, max(id) FROM verdict WHERE at <= ?3 HAVING max(id) IS NOT NULL`, u.At, u.Zone, u.Answer)
		if err != nil {
			return err
		}
	}
	return nil
}
