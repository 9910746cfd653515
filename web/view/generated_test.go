package view

import (
	"bytes"
	"go/format"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/a-h/templ"
	"github.com/a-h/templ/generator"
	"github.com/a-h/templ/parser/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Every component's Go is what `go tool templ generate` writes of its source, and has one.
// The pieces of templ that do this are here already; the tool would be built for it alone,
// with its editor's half.
func TestComponentsAreThoseOfTheSources(t *testing.T) {
	t.Parallel()
	sources, err := filepath.Glob("*.templ")
	require.NoError(t, err)
	require.NotEmpty(t, sources)
	generated, err := filepath.Glob("*_templ.go")
	require.NoError(t, err)
	require.Len(t, generated, len(sources))
	for _, source := range sources {
		parsed, err := parser.Parse(source)
		require.NoError(t, err, source)
		var b bytes.Buffer
		_, err = generator.Generate(parsed, &b, generator.WithVersion(templ.Version()), generator.WithFileName("web/view/"+source))
		require.NoError(t, err, source)
		want, err := format.Source(b.Bytes())
		require.NoError(t, err, source)
		have, err := os.ReadFile(strings.TrimSuffix(source, ".templ") + "_templ.go")
		require.NoError(t, err)
		assert.True(t, bytes.Equal(want, have), "%s: run go tool templ generate", source)
	}
}
