package store

import (
	"bytes"
	"encoding/binary"
	"io"
	"os"
	"path/filepath"
	"regexp"
	"slices"
)

// preparing marks the name of a backup that is being put back.
const preparing = ".restore-"

// leftover is the name of a copy that is being made, and of SQLite's files
// beside it: what it will be, and what it is made for.
var leftover = regexp.MustCompile(`^(.+)\.(part|restore)-[0-9]+(-journal|-wal|-shm)?$`)

// copying is called by who makes copies in a directory, before and (what it
// returns) after.
func copying(dir string) (done func()) {
	if unlock := lockFolder(dir, false); unlock != nil {
		return unlock
	}
	return func() {}
}

// clearLeftovers takes away the copies that a killed backup or restore left
// beside the database at path and in the folder of its backups: those whose
// names or contents say that they are this program's, and only where nobody
// makes copies there now. What can't be cleared stays, since it is in nobody's
// way.
func clearLeftovers(path string) {
	base := filepath.Base(path)
	clearFolder(filepath.Dir(path), func(of, kind, full string) bool {
		return kind == "restore" && of == base || kind == "part" && oursBegun(full)
	})
	clearFolder(backupDir(path), func(of, kind, _ string) bool {
		_, ok := savedAs(of)
		return ok && kind == "part"
	})
}

// clearFolder takes away a directory's leftovers of which is says yes.
func clearFolder(dir string, is func(of, kind, full string) bool) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		return
	}
	entries = slices.DeleteFunc(entries, func(e os.DirEntry) bool {
		return !e.Type().IsRegular() || !leftover.MatchString(e.Name())
	})
	if len(entries) == 0 {
		return
	}
	unlock := lockFolder(dir, true)
	if unlock == nil {
		return
	}
	defer unlock()
	for _, e := range entries {
		m := leftover.FindStringSubmatch(e.Name())
		if full := filepath.Join(dir, e.Name()); is(m[1], m[2], full) {
			_ = os.Remove(full)
		}
	}
}

// oursBegun reports whether a file begins as a database of this program
// (https://sqlite.org/fileformat2.html, 1.3).
func oursBegun(path string) bool {
	f, err := os.Open(path)
	if err != nil {
		return false
	}
	defer f.Close()
	head := make([]byte, 72)
	if _, err := io.ReadFull(f, head); err != nil {
		return false
	}
	return bytes.HasPrefix(head, []byte("SQLite format 3\x00")) && binary.BigEndian.Uint32(head[68:]) == applicationID
}
