// Package testenv is what tests ask of their surroundings: programs that may be
// missing on this machine, golden files, JSON Schemas. It is the one place that
// may skip a test. With THENAR_BROWSER=required a missing program is a failure.
package testenv

import (
	"os"
	"os/exec"
	"testing"
)

// Browser is the path of a Chromium for page tests.
func Browser(t testing.TB) string {
	t.Helper()
	return first(t, "chromium", "chromium-browser", "google-chrome")
}

// Program is the path of a program that a test runs.
func Program(t testing.TB, name string) string {
	t.Helper()
	return first(t, name)
}

// File is a file whose path stands in an environment variable.
func File(t testing.TB, variable string) string {
	t.Helper()
	path := os.Getenv(variable)
	if _, err := os.Stat(path); err != nil {
		missing(t, "the file named by "+variable)
	}
	return path
}

// Cases is how many of n cases a test goes through that has nothing to do at
// the same time: all of them, or a tenth where the race detector watches, under
// which each takes several times as long. (.ci/run goes through all of them
// without it.)
func Cases(n int) int {
	if Raced {
		return n / 10
	}
	return n
}

func first(t testing.TB, names ...string) string {
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
