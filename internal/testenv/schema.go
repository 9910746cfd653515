package testenv

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// Schema returns a JSON Schema of the top testdata directory, compiled by an
// independent library, with those that it speaks of. The test must lie two directories
// below the top.
func Schema(t testing.TB, name string, others ...string) *jsonschema.Schema {
	t.Helper()
	c := jsonschema.NewCompiler()
	for _, file := range append([]string{name}, others...) {
		raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", file))
		if err != nil {
			t.Fatal(err)
		}
		if err := c.AddResource(file, parsed(t, raw)); err != nil {
			t.Fatal(err)
		}
	}
	s, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Validate returns how raw breaks the schema, nil if it doesn't. A text that is
// not JSON fails the test.
func Validate(t testing.TB, s *jsonschema.Schema, raw []byte) error {
	t.Helper()
	return s.Validate(parsed(t, raw))
}

func parsed(t testing.TB, raw []byte) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	return v
}
