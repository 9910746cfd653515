package testenv

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"
	"unicode/utf8"

	"github.com/google/go-cmp/cmp"
)

var update = flag.Bool("update", false, "write the golden files anew")

// Golden fails the test if got differs from the file, and shows the difference
// of texts.
// With -update it writes got to the file instead.
func Golden(t testing.TB, path string, got []byte) {
	t.Helper()
	if *update {
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(path, got, 0o600); err != nil {
			t.Fatal(err)
		}
		return
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatalf("%v; -update writes it", err)
	}
	if !utf8.Valid(want) {
		if !bytes.Equal(want, got) {
			t.Errorf("%s, of %d bytes, differs from the %d bytes got; -update writes it anew", path, len(want), len(got))
		}
		return
	}
	if diff := cmp.Diff(string(want), string(got)); diff != "" {
		t.Errorf("%s differs (-file +got); -update writes it anew:\n%s", path, diff)
	}
}
