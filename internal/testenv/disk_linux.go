package testenv

import (
	"fmt"
	"syscall"
	"testing"
)

// Disk is a directory on a small file system of its own, of so many bytes,
// which takes root to make.
func Disk(t testing.TB, bytes int) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, fmt.Sprintf("size=%d,mode=0700", bytes)); err != nil {
		missing(t, "the right to mount a small file system ("+err.Error()+")")
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Errorf("unmount: %v", err)
		}
	})
	return dir
}
