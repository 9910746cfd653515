// Package testenv is what tests need from outside Go: programs, environment
// variables, golden files, JSON Schemas, a small disk. A test whose program or
// file is not on this machine is skipped here and nowhere else; it fails
// instead if THENAR_BROWSER=required is set.
package testenv

import (
	"os"
	"os/exec"
	"testing"
)

// Browser returns the path of a Chromium for page tests, if possible of one
// without windows, which takes half the time.
func Browser(t testing.TB) string {
	t.Helper()
	return firstOf(t, "chromium-headless-shell", "chromium", "chromium-browser", "google-chrome")
}

// Program returns the path of a program that a test runs.
func Program(t testing.TB, name string) string {
	t.Helper()
	return firstOf(t, name)
}

// File returns the path of the file that an environment variable names.
func File(t testing.TB, variable string) string {
	t.Helper()
	path := os.Getenv(variable)
	if _, err := os.Stat(path); err != nil {
		missing(t, "the file named by "+variable)
	}
	return path
}

// Long reports whether tests run all of their cases, as `.ci/run long` has them
// do by setting THENAR_LONG. Otherwise they run a sample, so that the check
// before a commit stays short.
func Long() bool { return os.Getenv("THENAR_LONG") != "" }

// Cases returns how many cases a test runs: few, or all in a long run.
func Cases(few, all int) int {
	if Long() {
		return all
	}
	return few
}

// Some returns the cases of a list that a test runs: the whole list in a long
// run, otherwise only so many, evenly spread from the first on.
func Some[T any](few int, all []T) []T {
	if Long() || few >= len(all) {
		return all
	}
	list := make([]T, few)
	for i := range list {
		list[i] = all[i*len(all)/few]
	}
	return list
}

func firstOf(t testing.TB, names ...string) string {
	t.Helper()
	for _, name := range names {
		if path, err := exec.LookPath(name); err == nil {
			return path
		}
	}
	missing(t, names[0])
	return ""
}

func missing(t testing.TB, what string) {
	t.Helper()
	if os.Getenv("THENAR_BROWSER") == "required" {
		t.Fatalf("%s is needed and not on this machine", what)
	}
	t.Skipf("%s is not on this machine", what)
}
