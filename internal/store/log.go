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

// How the names of SQLite's files beside a database in use end: the log of what
// was saved last, and the map of it, which programs share
// (https://sqlite.org/walformat.html). Both stay as long as anybody has the
// database open.
const (
	logEnd = "-wal"
	mapEnd = "-shm"
)

// looksEvery is how often it is looked whether the log is there while nobody
// saves.
const looksEvery = 10 * time.Second

// beside is a file beside the database, as it was when that was opened.
type beside struct {
	path   string
	opened os.FileInfo
}

// What became of a file beside the database.
type became int

const (
	stayed became = iota
	gone
	another // or it can't be told
)

func (b beside) now() became {
	info, err := os.Stat(b.path)
	switch {
	case err == nil && os.SameFile(info, b.opened):
		return stayed
	case errors.Is(err, fs.ErrNotExist):
		return gone
	}
	return another
}

// logFiles are the log and its map. A log that is removed while it is in use
// is still written by who has it open, and lost when the last of them ends.
type logFiles struct {
	log, index beside
	looks      *time.Ticker
	folded     atomic.Bool // a log that was removed is in the database by now
}

// findLog notes the log and its map, which are there once the file was read.
func (s *Store) findLog() (err error) {
	real, err := filepath.EvalSymlinks(s.path) // they lie beside the file itself
	if err != nil {
		return err
	}
	for end, b := range map[string]*beside{logEnd: &s.log, mapEnd: &s.index} {
		b.path = real + end
		if b.opened, err = os.Stat(b.path); err != nil {
			return err
		}
	}
	return nil
}

// logThere refuses where the log or its map is not the one that was opened.
func (s *Store) logThere() error {
	for _, b := range []beside{s.log, s.index} {
		if b.now() != stayed {
			return fault.New(fault.Unavailable, "%s was removed or replaced while Thenar used it. Start Thenar again.%s", b.path, safe)
		}
	}
	s.folded.Store(false)
	return nil
}

// keepLog is logThere, outside of a transaction, and brings what a removed log
// holds into the database, from where nothing removes it. It returns nil where
// log and map are there.
func (s *Store) keepLog(ctx context.Context) (refusal error) {
	refusal = s.logThere()
	if refusal == nil {
		return nil
	}
	if err := s.fold(ctx); err != nil {
		return fault.New(fault.Unavailable, "%s was removed while Thenar used it, with the newest saves. Export everything, then start Thenar again. This is not saved yet.", s.log.path).Because(err)
	}
	return refusal
}

// fold writes all of a removed log into the database through the connection
// that still has it, and empties it, so that no connection looks into it any
// more. A log that is in its place is left alone, since the next start reads
// it; so is everything where another program has begun a map of its own: one
// of the two would write over the other's saves.
func (s *Store) fold(ctx context.Context) error {
	if s.log.now() == stayed || s.folded.Load() {
		return nil
	}
	if s.index.now() == another {
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

// after ends a transaction that came to err: one that was committed while its
// log was being removed is kept only if the log could be.
func (s *Store) after(ctx context.Context, err error) error {
	if s.log.now() == stayed {
		return err
	}
	refusal := s.keepLog(ctx)
	if err == nil && s.folded.Load() {
		return nil
	}
	if err != nil && s.there() != nil {
		return err // the file was moved with its log
	}
	return refusal
}
