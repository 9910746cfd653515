package store

import (
	"context"
	"crypto/sha256"
	"database/sql"
	"encoding/hex"
	"errors"

	"thenar/internal/exportfile"
	"thenar/internal/fault"
)

// KeepPicture stores a photograph for patterns and returns its name, which is made of its
// contents. One that is there already is kept once.
func (s *Store) KeepPicture(ctx context.Context, photo []byte) (name string, err error) {
	defer fault.Wrap(&err, "store.KeepPicture")
	sum := sha256.Sum256(photo)
	name = hex.EncodeToString(sum[:8])
	return name, s.write(ctx, func(ctx context.Context, tx *txn) error {
		return takePicture(ctx, tx, exportfile.Picture{At: s.stamp(), Name: name, Photo: photo})
	})
}

func takePicture(ctx context.Context, tx *txn, p exportfile.Picture) error {
	_, err := tx.ExecContext(ctx, `INSERT INTO picture (at, name, photo) SELECT ?1, ?2, ?3 WHERE NOT EXISTS (SELECT 1 FROM picture WHERE name = ?2)`, p.At, p.Name, p.Photo)
	return err
}

// Picture returns the photograph of a name; fault.NotFound if there is none.
func (s *Store) Picture(ctx context.Context, name string) (photo []byte, err error) {
	defer fault.Wrap(&err, "store.Picture(%s)", name)
	err = s.read(ctx, func(tx *txn) error {
		return tx.QueryRowContext(ctx, `SELECT photo FROM picture WHERE name = ?`, name).Scan(&photo)
	})
	if errors.Is(err, sql.ErrNoRows) {
		return nil, fault.New(fault.NotFound, "There is no such photograph.")
	}
	return photo, err
}

// packPictures returns the photographs that any revision of a mitt names.
func packPictures(ctx context.Context, tx *txn, mitt int64) ([]exportfile.Picture, error) {
	return collect(ctx, tx, func(rows *sql.Rows) (p exportfile.Picture, err error) {
		return p, rows.Scan(&p.At, &p.Name, &p.Photo)
	}, `
		SELECT at, name, photo FROM picture p
		WHERE EXISTS (SELECT 1 FROM decision WHERE mitt = ?1 AND instr(document, '"' || p.name || '"') > 0)
		OR EXISTS (SELECT 1 FROM stroke WHERE mitt = ?1 AND (instr(edits, '"' || p.name || '"') > 0 OR instr(inverse, '"' || p.name || '"') > 0))
		ORDER BY id`, mitt)
}
