package store

import (
	"context"
	"database/sql"
	"fmt"
	"io/fs"
	"sync"

	"thenar/migrations"
)

// step is one migration: step n brings schema n-1 to schema n.
type step struct{ name, script string }

// builtIn reads the migrations that are built into this program.
var builtIn = sync.OnceValues(func() ([]step, error) { return steps(migrations.FS) })

// steps returns all migrations in order; their numbers must have no gap.
func steps(files fs.FS) ([]step, error) {
	names, err := fs.Glob(files, "*.sql") // sorted
	if err != nil {
		return nil, err
	}
	var all []step
	for i, name := range names {
		if prefix := fmt.Sprintf("%04d_", i+1); len(name) < len(prefix) || name[:len(prefix)] != prefix {
			return nil, fmt.Errorf("migration %s should begin with %s", name, prefix)
		}
		script, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		all = append(all, step{name, string(script)})
	}
	return all, nil
}

// NewestSchema returns the number of the newest schema that this program knows.
func NewestSchema() int {
	all, err := builtIn()
	if err != nil {
		panic(err) // a broken build: no file can be opened with it
	}
	return len(all)
}

// Schema returns the number of the open file's schema, which is the newest.
func (s *Store) Schema() int { return NewestSchema() }

// migrate brings a file to the schema of the last step. All steps run in one
// transaction that also writes their number, so that they are done wholly or
// not at all, and once, even if several programs open the file at the same
// time.
func migrate(ctx context.Context, db *sql.DB, path string, steps []step) error {
	return prepareFor(db).transact(ctx, false, func(tx *txn) error {
		var version int
		if err := tx.QueryRowContext(ctx, "PRAGMA user_version").Scan(&version); err != nil {
			return err
		}
		if version > len(steps) {
			return newer(path, version, len(steps))
		}
		for ; version < len(steps); version++ {
			if err := runStep(ctx, tx, steps[version], version+1); err != nil {
				return err
			}
		}
		return nil
	})
}

// runStep runs one step and records its number.
func runStep(ctx context.Context, tx *txn, s step, number int) error {
	if _, err := tx.ExecContext(ctx, s.script); err != nil {
		return fmt.Errorf("migration %s: %w", s.name, err)
	}
	_, err := tx.ExecContext(ctx, fmt.Sprintf("PRAGMA user_version = %d; PRAGMA application_id = %d", number, applicationID))
	return err
}
