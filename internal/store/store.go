package store

import (
	"context"
	"database/sql"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"sync"
	"sync/atomic"
	"time"

	_ "modernc.org/sqlite" // the driver "sqlite"

	"thenar/internal/fault"
)

// patience is how long to wait for another program to finish writing.
const patience = 5 * time.Second

// readers is the largest number of reads at a time.
const readers = 4

// Store is an open database file, safe for use by many goroutines.
type Store struct {
	// Now returns the time recorded with a revision. It is time.Now unless it is
	// set before the store is used.
	Now func() time.Time

	path        string
	file        os.FileInfo // of path, when it was opened
	writer      *sql.DB     // one connection
	reader      *sql.DB
	every       int // the number of strokes between snapshots
	writerCache writerCache
	readerCache readerCache

	writing *prepared // on writer
	reading *prepared // on reader

	logFiles

	checked atomic.Pointer[checked]

	reads, writes atomic.Int64

	saves   chan *save
	close   sync.Once
	closing chan struct{} // closed when no more saves are taken
	written chan struct{} // closed after the last save
}

// Open opens the database file at path, makes it and its directory if they are
// missing, and migrates it to the newest schema.
//
// It fails with fault.Invalid if path can't be read and written or holds
// anything but a database of this program, and with fault.Newer if a newer
// program wrote it. A file that is refused is not changed.
func Open(ctx context.Context, path string) (s *Store, err error) {
	defer fault.Wrap(&err, "store.Open(%q)", path)
	if path == "" {
		return nil, fault.New(fault.Invalid, "db: no file is named; name one with -db")
	}
	full, err := filepath.Abs(path)
	if err != nil {
		return nil, err
	}
	if err := createFile(full); err != nil {
		return nil, fault.New(fault.Invalid, "db: %s can't be used (%v); name another file with -db", full, err)
	}
	// SQLite would open such a file for reading only, and leave read-only files
	// beside it.
	if len(inTheWay(full)) > 0 {
		return nil, closed(full)
	}
	// SQLite waits for a busy file, but not while another program switches a new
	// file to write-ahead logging: that needs a retry.
	for deadline := time.Now().Add(patience); ; {
		s, err = open(ctx, full)
		if !busy(err) || time.Now().After(deadline) {
			return s, explain(full, err)
		}
		select {
		case <-ctx.Done():
			return nil, ctx.Err()
		case <-time.After(10 * time.Millisecond):
		}
	}
}

func open(ctx context.Context, path string) (*Store, error) {
	if err := inspect(ctx, path); err != nil {
		return nil, err
	}
	s := &Store{
		Now: time.Now, path: path, every: snapshotEvery,
		saves: make(chan *save), closing: make(chan struct{}), written: make(chan struct{}),
	}
	if err := s.connect(ctx, path); err != nil {
		return nil, errors.Join(err, s.disconnect())
	}
	s.looks = time.NewTicker(looksEvery)
	s.writing, s.reading = prepareFor(s.writer), prepareFor(s.reader)
	go s.keepWriting()
	return s, nil
}

// connect opens the writer, migrates, and opens the readers.
func (s *Store) connect(ctx context.Context, path string) error {
	var err error
	if s.writer, err = pool(ctx, dsn(path, "_txlock=immediate"), 1); err != nil {
		return err
	}
	if s.file, err = os.Stat(path); err != nil {
		return err
	}
	if err := check(ctx, s.writer, path); err != nil {
		return err
	}
	s.noteCheck(nil)
	steps, err := builtIn()
	if err != nil {
		return err
	}
	if err := s.backupBeforeMigrating(ctx, len(steps)); err != nil {
		return err
	}
	if err := migrate(ctx, s.writer, path, steps); err != nil {
		return err
	}
	if s.reader, err = pool(ctx, dsn(path, "_pragma=query_only(1)"), readers); err != nil {
		return err
	}
	clearLeftovers(path)
	return s.findLog()
}

// Close finishes the saves under way and closes the file. The store can't be
// used after that.
func (s *Store) Close() (err error) {
	defer fault.Wrap(&err, "store.Close")
	s.close.Do(func() {
		close(s.closing)
		<-s.written
		s.looks.Stop()
		err = s.foldLog(context.Background())
	})
	if s.index.state() == otherFile {
		// The last connection to close would remove the file at the log's path,
		// which holds the saves of another program.
		return err
	}
	return errors.Join(err, s.disconnect())
}

func (s *Store) disconnect() (err error) {
	// The writer closes last: the last connection moves the log into the file,
	// which a reader may not do.
	for _, db := range []*sql.DB{s.reader, s.writer} {
		if db != nil {
			err = errors.Join(err, db.Close())
		}
	}
	return err
}

// making makes goroutines take turns at making files: a process that closes a
// file loses all its locks on it, even those that SQLite holds through another
// connection.
var making sync.Mutex

// createFile makes the file at path, private to its owner, unless it exists.
// SQLite gives its own files beside it the same permissions.
func createFile(path string) error {
	making.Lock()
	defer making.Unlock()
	if err := os.MkdirAll(filepath.Dir(path), 0o700); err != nil {
		return err
	}
	if info, err := os.Stat(path); err == nil && !info.Mode().IsRegular() {
		return errors.New("it is no file")
	}
	if err := createEmpty(path); !errors.Is(err, os.ErrExist) {
		return err
	}
	return nil
}

// createEmpty makes an empty file that is private to its owner.
func createEmpty(path string) error {
	f, err := os.OpenFile(path, os.O_CREATE|os.O_EXCL|os.O_WRONLY, 0o600)
	if err != nil {
		return err
	}
	return f.Close()
}

// read runs f in one transaction, which sees one state of the file.
func (s *Store) read(ctx context.Context, f func(*txn) error) error {
	s.reads.Add(1)
	err := s.reading.transact(ctx, true, f)
	if code(err) != -1 && s.checkOrSaveLog(ctx) != nil && s.folded.Load() {
		err = s.reading.transact(ctx, true, f) // a new connection could not find the removed log
	}
	return trouble(s.path, err)
}

// Transactions returns the number of reads, and of changes handed to the
// writer, since the file was opened. Tests use it to bound the cost of a
// request.
func (s *Store) Transactions() (reads, writes int64) { return s.reads.Load(), s.writes.Load() }

// timeFormat has a fixed width, so that times sort as text.
const timeFormat = "2006-01-02T15:04:05.000000000Z"

func (s *Store) stamp() string { return s.Now().UTC().Format(timeFormat) }

func parseTime(text string) (time.Time, error) {
	t, err := time.Parse(timeFormat, text)
	if err != nil {
		return time.Time{}, fmt.Errorf("time in the database: %w", err)
	}
	return t, nil
}
