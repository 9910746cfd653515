package testenv

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// raced is the directive by which `.ci/run` finds the tests that it runs under
// the race detector.
const raced = "//thenar:race"

// unwatched are tests that start goroutines and are not run under the race
// detector before a commit, and why; a long check runs them under it, too.
var unwatched = map[string]string{
	"TestKilledUnderSaves":          "what happens at once happens in another process",
	"TestLongLinesTakeLittleMemory": "what happens at once happens in another process",
	"TestFullDiskInTheBrowser":      "one window, of a server that is only started by it",
}

// No test that starts goroutines is left out of the run under the race
// detector, and the directive stands where `.ci/run` finds it: on the line
// before a test.
func TestConcurrentTestsAreRaced(t *testing.T) {
	watched := 0
	require.NoError(t, filepath.WalkDir("../..", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, "_test.go") {
			return err
		}
		files := token.NewFileSet()
		file, err := parser.ParseFile(files, path, nil, parser.ParseComments)
		require.NoError(t, err)
		directives := 0
		for _, group := range file.Comments {
			for _, line := range group.List {
				if line.Text == raced {
					directives++
				}
			}
		}
		for _, decl := range file.Decls {
			f, ok := decl.(*ast.FuncDecl)
			if !ok || f.Recv != nil || !strings.HasPrefix(f.Name.Name, "Test") {
				continue
			}
			marked := f.Doc != nil && f.Doc.List[len(f.Doc.List)-1].Text == raced
			if marked {
				directives--
				watched++
			}
			if _, not := unwatched[f.Name.Name]; starts(f.Body) && !not {
				assert.True(t, marked, "%s: %s starts goroutines; end its comment with %s", path, f.Name.Name, raced)
			}
		}
		assert.Zero(t, directives, "%s: %s stands elsewhere than at the end of a test's comment", path, raced)
		return nil
	}))
	assert.Greater(t, watched, 10)
}

// starts reports whether a function's body starts goroutines.
func starts(body *ast.BlockStmt) (found bool) {
	ast.Inspect(body, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.GoStmt:
			found = true
		case *ast.CallExpr:
			if f, ok := n.Fun.(*ast.SelectorExpr); ok && f.Sel.Name == "Go" {
				found = true
			}
		}
		return !found
	})
	return found
}
