package store

import (
	"context"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"sync/atomic"
	"time"

	"thenar/internal/fault"
)

// The suffixes of SQLite's files beside an open database: the write-ahead log,
// and its map, which programs share (https://sqlite.org/walformat.html). Both
// exist as long as any program has the database open.
const (
	logEnd = "-wal"
	mapEnd = "-shm"
)

// looksEvery is the interval at which the log is checked while nobody saves.
const looksEvery = 10 * time.Second

// sideFile is a file beside the database, as it was when the database was
// opened.
type sideFile struct {
	path   string
	opened os.FileInfo
}

// fileState is what has happened to a file beside the database.
type fileState int

// The states of a file beside the database.
const (
	unchanged fileState = iota
	removed
	otherFile // replaced, or its state can't be read
)

func (b sideFile) state() fileState {
	info, err := os.Stat(b.path)
	switch {
	case err == nil && os.SameFile(info, b.opened):
		return unchanged
	case errors.Is(err, fs.ErrNotExist):
		return removed
	}
	return otherFile
}

// logFiles are the log and its map. A log that is removed while in use still
// takes the writes of the programs that have it open, and is lost when the last
// of them ends.
type logFiles struct {
	log, index sideFile
	looks      *time.Ticker
	folded     atomic.Bool // whether the contents of a removed log are in the database
}

// findLog records the log and its map, which exist once the database was read.
func (s *Store) findLog() (err error) {
	real, err := filepath.EvalSymlinks(s.path) // they lie beside the target of a link
	if err != nil {
		return err
	}
	for end, b := range map[string]*sideFile{logEnd: &s.log, mapEnd: &s.index} {
		b.path = real + end
		if b.opened, err = os.Stat(b.path); err != nil {
			return err
		}
	}
	return nil
}

// checkLog fails if the log or its map is not the one that was opened.
func (s *Store) checkLog() error {
	for _, b := range []sideFile{s.log, s.index} {
		if b.state() != unchanged {
			return fault.New(fault.Unavailable, "%s was removed or replaced while Thenar used it. Start Thenar again.%s", b.path, safe)
		}
	}
	s.folded.Store(false)
	return nil
}

// checkOrSaveLog fails as checkLog does, and first saves the contents of a
// removed log into the database. It must be called outside of a transaction.
func (s *Store) checkOrSaveLog(ctx context.Context) (refusal error) {
	refusal = s.checkLog()
	if refusal == nil {
		return nil
	}
	if err := s.foldLog(ctx); err != nil {
		return fault.New(fault.Unavailable, "%s was removed, with the newest saves. Export everything, then start Thenar again. This is not saved yet.", s.log.path).Because(err)
	}
	return refusal
}

// foldLog writes all of a removed log into the database, through the connection
// that still has it, and empties it, so that no connection reads it any more. A
// log that exists is left to the next start. So is everything if another
// program has begun a map of its own: either would overwrite the other's saves.
func (s *Store) foldLog(ctx context.Context) error {
	if s.log.state() == unchanged || s.folded.Load() {
		return nil
	}
	if s.index.state() == otherFile {
		return errors.New("another program uses the file with another log")
	}
	var busy, frames, moved int
	if err := s.writer.QueryRowContext(ctx, `PRAGMA wal_checkpoint(TRUNCATE)`).Scan(&busy, &frames, &moved); err != nil {
		return err
	}
	if busy != 0 {
		return errors.New("somebody reads the file")
	}
	s.folded.Store(true)
	return nil
}

// finishTransaction returns the result of a transaction that ended with err. If
// the log was removed during the commit, the transaction counts as saved only
// once the log is in the database.
func (s *Store) finishTransaction(ctx context.Context, err error) error {
	if s.log.state() == unchanged {
		return err
	}
	refusal := s.checkOrSaveLog(ctx)
	if err == nil && s.folded.Load() {
		return nil
	}
	if err != nil && s.checkFile() != nil {
		return err // the database was moved together with its log
	}
	return refusal
}
