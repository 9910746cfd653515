package store

import (
	"context"
	"crypto/rand"

	"thenar/internal/fault"
)

// Key is the key by which browsers on other machines are let in, of at least
// 128 bits (crypto/rand.Text). It is made when it is first asked for.
func (s *Store) Key(ctx context.Context) (key string, err error) {
	defer fault.Wrap(&err, "store.Key")
	err = s.write(ctx, func(ctx context.Context, tx *txn) error {
		if _, err := tx.ExecContext(ctx, `INSERT INTO access (id, key) VALUES (1, ?) ON CONFLICT (id) DO NOTHING`, rand.Text()); err != nil {
			return err
		}
		return tx.QueryRowContext(ctx, `SELECT key FROM access`).Scan(&key)
	})
	return key, err
}
