package testenv

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// Schema returns a JSON Schema of the top testdata directory, compiled by an
// independent library. The test must lie two directories below the top.
func Schema(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(name, parsed(t, raw)); err != nil {
		t.Fatal(err)
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
