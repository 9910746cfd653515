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

// preparing is the part of a file name that marks a backup in restoration.
const preparing = ".restore-"

// leftover matches the name of an unfinished copy or of a file that SQLite
// keeps beside it. Its groups are the final name and the purpose.
var leftover = regexp.MustCompile(`^(.+)\.(part|restore)-[0-9]+(-journal|-wal|-shm)?$`)

// copying marks a directory as one in which copies are being made, until done
// is called.
func copying(dir string) (done func()) {
	if unlock := lockFolder(dir, false); unlock != nil {
		return unlock
	}
	return func() {}
}

// clearLeftovers removes the copies that a killed backup or restore left beside
// the database at path and in its backup directory. It removes only files whose
// name or contents show that they are this program's, and only while nobody
// makes copies there. What can't be removed does no harm and stays.
func clearLeftovers(path string) {
	base := filepath.Base(path)
	clearFolder(filepath.Dir(path), func(of, kind, full string) bool {
		return kind == "restore" && of == base || kind == "part" && oursBegun(full)
	})
	clearFolder(backupDir(path), func(of, kind, _ string) bool {
		_, ok := parseBackupName(of)
		return ok && kind == "part"
	})
}

// clearFolder removes the leftovers in a directory for which is returns true.
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

// oursBegun reports whether a file has the header of a database of this program
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
