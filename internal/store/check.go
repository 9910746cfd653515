package store

import (
	"context"
	"database/sql"
	"strings"

	"thenar/internal/fault"
)

// check fails if a file is damaged: if a page or index is wrong, or a row
// refers to a missing one (https://sqlite.org/pragma.html, integrity_check and
// foreign_key_check).
func check(ctx context.Context, db *sql.DB, path string) error {
	for _, question := range []string{`PRAGMA integrity_check(3)`, `PRAGMA foreign_key_check`} {
		said, err := answers(ctx, db, question)
		if err != nil {
			return err
		}
		if whole := len(said) == 0 || len(said) == 1 && said[0] == "ok"; !whole {
			return damaged(path).Because(fault.New(fault.Internal, "%s: %s", question, strings.Join(said, "; ")))
		}
	}
	return nil
}

// answers returns the first column of each row that a query finds.
func answers(ctx context.Context, db *sql.DB, question string) (said []string, err error) {
	rows, err := db.QueryContext(ctx, question)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	columns, err := rows.Columns()
	if err != nil {
		return nil, err
	}
	for rows.Next() {
		row := make([]any, len(columns))
		var first sql.NullString
		row[0] = &first
		for i := 1; i < len(row); i++ {
			row[i] = new(any)
		}
		if err := rows.Scan(row...); err != nil {
			return nil, err
		}
		said = append(said, first.String)
	}
	return said, rows.Err()
}
