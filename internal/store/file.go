package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"net/url"
	"path/filepath"
	"strconv"
	"strings"

	"thenar/internal/fault"
)

// applicationID marks a database file as this program's: the letters THNR in
// the header field that SQLite reserves for applications
// (https://sqlite.org/fileformat2.html, 1.3.15).
const applicationID = 0x54484e52

// milliseconds is patience in SQLite's unit.
var milliseconds = strconv.FormatInt(patience.Milliseconds(), 10)

// pragmas are set on every connection. With synchronous FULL a save is on the
// disk before it is acknowledged, also in WAL mode.
var pragmas = []struct{ name, ask, answer string }{
	{"busy_timeout", milliseconds, milliseconds},
	{"foreign_keys", "1", "1"},
	{"journal_mode", "WAL", "wal"},
	{"synchronous", "FULL", "2"},
}

// uri returns path as a URI for SQLite, with ?, # and % escaped.
func uri(path string) string {
	path = filepath.ToSlash(path)
	if !strings.HasPrefix(path, "/") {
		path = "/" + path // it begins with a drive letter
	}
	return (&url.URL{Scheme: "file", Path: path}).String()
}

// dsn returns the data source name that opens path with all pragmas and the
// query parameter more.
func dsn(path, more string) string {
	query := []string{more}
	for _, p := range pragmas {
		query = append(query, fmt.Sprintf("_pragma=%s(%s)", p.name, p.ask))
	}
	return uri(path) + "?" + strings.Join(query, "&")
}

// pool opens up to size connections. It reads the pragmas back, since SQLite
// silently ignores a wrong one and may use another journal than asked for.
func pool(ctx context.Context, dsn string, size int) (*sql.DB, error) {
	db, err := sql.Open("sqlite", dsn)
	if err != nil {
		return nil, err
	}
	db.SetMaxOpenConns(size)
	db.SetMaxIdleConns(size)
	for _, p := range pragmas {
		var got string
		if err := db.QueryRowContext(ctx, "PRAGMA "+p.name).Scan(&got); err != nil {
			return nil, errors.Join(err, db.Close())
		}
		if got != p.answer {
			err := fault.New(fault.Invalid, "db: %s is %q there, not %q: saves would not be safe; name a file on a local disk", p.name, got, p.answer)
			return nil, errors.Join(err, db.Close())
		}
	}
	return db, nil
}

// errNotOurs is the cause of refusing a file of another program.
var errNotOurs = errors.New("another program's application_id")

// inspect refuses a file of another program or of a newer schema, without
// changing it.
func inspect(ctx context.Context, path string) (err error) {
	db, err := sql.Open("sqlite", uri(path)+"?mode=ro&_pragma=busy_timeout("+milliseconds+")")
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	// One statement, so that no other program can migrate in between.
	var tables, id, version int
	row := db.QueryRowContext(ctx, `
		SELECT (SELECT count(*) FROM sqlite_schema),
			(SELECT application_id FROM pragma_application_id),
			(SELECT user_version FROM pragma_user_version)`)
	if err := row.Scan(&tables, &id, &version); err != nil {
		return err
	}
	empty := tables == 0 && id == 0 && version == 0
	if !empty && id != applicationID {
		return fault.New(fault.Invalid, "db: %s is not a Thenar file: another program keeps its data there; name another file with -db", path).Because(errNotOurs)
	}
	if !empty && version > NewestSchema() {
		return newer(path, version, NewestSchema())
	}
	return nil
}

// newer returns the fault of a file whose schema this program does not know.
func newer(path string, version, newest int) error {
	return fault.New(fault.Newer, "db: %s is of a newer Thenar (schema %d, here up to %d); start that one, or name another file", path, version, newest)
}
