//go:build linux || darwin || freebsd || netbsd || openbsd || dragonfly

package store

import (
	"os"
	"syscall"
)

// lockFolder locks a directory (flock(2)), shared or, if alone is set,
// exclusively and without waiting. The lock is independent of SQLite's locks on
// files, and ends with the process. It returns nil if it can't have the lock.
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
