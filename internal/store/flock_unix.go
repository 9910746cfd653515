//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package store

import (
	"os"
	"syscall"
)

// lockFolder locks a directory (flock(2)), which stands apart from the locks
// that SQLite has on files and ends with the process. It gives nil where it
// can't: also at once, where alone is asked for and anybody has it.
func lockFolder(dir string, alone bool) (unlock func()) {
	d, err := os.Open(dir)
	if err != nil {
		return nil
	}
	how := syscall.LOCK_SH
	if alone {
		how = syscall.LOCK_EX | syscall.LOCK_NB
	}
	if err := syscall.Flock(int(d.Fd()), how); err != nil {
		_ = d.Close()
		return nil
	}
	return func() { _ = d.Close() }
}
