package testenv

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/santhosh-tekuri/jsonschema/v6"
)

// Schema is a JSON Schema of the top testdata directory, as an independent
// library reads it; the test stands two directories below the top.
func Schema(t testing.TB, name string) *jsonschema.Schema {
	t.Helper()
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", name))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource(name, value(t, raw)); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile(name)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// Valid asks a schema of a text; what is no JSON fails the test.
func Valid(t testing.TB, s *jsonschema.Schema, raw []byte) error {
	t.Helper()
	return s.Validate(value(t, raw))
}

func value(t testing.TB, raw []byte) any {
	t.Helper()
	v, err := jsonschema.UnmarshalJSON(bytes.NewReader(raw))
	if err != nil {
		t.Fatal(err)
	}
	return v
}
