package testenv

import (
	"fmt"
	"syscall"
	"testing"
)

// Disk returns a directory on a file system of its own with room for a number of
// bytes. Mounting it needs root.
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
