//go:build !linux

package store

import "os"

// writable reports whether anybody may write a file or directory. A path that
// can't be checked counts as writable.
func writable(path string) bool {
	info, err := os.Stat(path)
	return err != nil || info.Mode().Perm()&0o222 != 0
}
