package store

import (
	"errors"
	"io/fs"
	"syscall"
)

// writable reports whether this program may write a file or directory. It does
// not open the file, since closing it would release this process's locks on it.
// A path that is missing or can't be checked counts as writable.
func writable(path string) bool {
	const (
		here      = -0x64 // AT_FDCWD
		effective = 0x200 // AT_EACCESS: the effective user, as for open
		write     = 2     // W_OK
	)
	for _, err := range []error{syscall.Access(path, write), syscall.Faccessat(here, path, write, effective)} {
		if errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS) {
			return false
		}
	}
	return true
}
