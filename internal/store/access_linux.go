package store

import (
	"errors"
	"io/fs"
	"syscall"
)

// writable reports whether a file or directory may be written by this program,
// without opening it: who closes a file gives back its locks on it. What can't
// be told counts as writable; what isn't there, too.
func writable(path string) bool {
	const (
		here      = -0x64 // AT_FDCWD
		effective = 0x200 // AT_EACCESS: as who opens, not as who started it
		write     = 2     // W_OK
	)
	for _, err := range []error{syscall.Access(path, write), syscall.Faccessat(here, path, write, effective)} {
		if errors.Is(err, fs.ErrPermission) || errors.Is(err, syscall.EROFS) {
			return false
		}
	}
	return true
}
