//go:build !(linux || darwin || freebsd || netbsd || openbsd || dragonfly)

package store

// lockFolder can't lock a directory here.
func lockFolder(string, bool) (unlock func()) { return nil }
