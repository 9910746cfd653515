package floors_test

import (
	"fmt"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// asked lists the places of a Go file that ask for one of some names of a
// package, "mitt.Mitten": in a comparison or as a case of a switch.
func asked(files *token.FileSet, file *ast.File, names []string) []string {
	var list []string
	look := func(list *[]string) func(ast.Expr) {
		return func(e ast.Expr) {
			if call, ok := e.(*ast.CallExpr); ok && len(call.Args) == 1 {
				e = call.Args[0] // string(stitch.Gusset)
			}
			if s, ok := e.(*ast.SelectorExpr); ok {
				if of, ok := s.X.(*ast.Ident); ok && slices.Contains(names, of.Name+"."+s.Sel.Name) {
					*list = append(*list, fmt.Sprintf("%s asks for %s.%s", files.Position(e.Pos()), of.Name, s.Sel.Name))
				}
			}
		}
	}(&list)
	ast.Inspect(file, func(n ast.Node) bool {
		switch n := n.(type) {
		case *ast.BinaryExpr:
			if n.Op == token.EQL || n.Op == token.NEQ {
				look(n.X)
				look(n.Y)
			}
		case *ast.CaseClause:
			for _, e := range n.List {
				look(e)
			}
		}
		return true
	})
	return list
}

// constants are the constants of a type that a package declares, as others name
// them.
func constants(t *testing.T, dir, typed string) []string {
	t.Helper()
	var list []string
	paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(t, err)
	for _, path := range paths {
		file, err := parser.ParseFile(token.NewFileSet(), path, nil, 0)
		require.NoError(t, err)
		for _, d := range file.Decls {
			g, ok := d.(*ast.GenDecl)
			if !ok || g.Tok != token.CONST {
				continue
			}
			for _, s := range g.Specs {
				v := s.(*ast.ValueSpec)
				if id, ok := v.Type.(*ast.Ident); ok && id.Name == typed {
					list = append(list, file.Name.Name+"."+v.Names[0].Name)
				}
			}
		}
	}
	return list
}

// A new kind of mitt is a line of mitt's table with its builders, a new part a
// line of stitch's: nobody else asks which one is there.
func TestNobodyAsksForAKindOrAPart(t *testing.T) {
	root := filepath.Join("..", "..")
	kinds := constants(t, filepath.Join(root, "internal", "mitt"), "Kind")
	parts := constants(t, filepath.Join(root, "internal", "stitch"), "Part")
	require.Contains(t, kinds, "mitt.Mitten")
	require.Contains(t, parts, "stitch.Thumb")
	seen := 0
	require.NoError(t, filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		dir := filepath.ToSlash(filepath.Dir(path))
		if strings.HasSuffix(dir, "internal/stitch") || strings.HasSuffix(dir, "internal/mitt") {
			return nil
		}
		files := token.NewFileSet()
		source, err := os.ReadFile(path)
		if err != nil {
			return err
		}
		file, err := parser.ParseFile(files, path, source, parser.SkipObjectResolution)
		if err != nil {
			return err
		}
		seen++
		assert.Empty(t, asked(files, file, append(slices.Clone(parts), kinds...)))
		return nil
	}))
	assert.Greater(t, seen, 100)
}

// In mitt, the kind is asked for in its table only.
func TestKindsHaveOneTable(t *testing.T) {
	dir := filepath.Join("..", "mitt")
	var kinds []string
	for _, name := range constants(t, dir, "Kind") {
		kinds = append(kinds, strings.TrimPrefix(name, "mitt."))
	}
	paths, err := filepath.Glob(filepath.Join(dir, "*.go"))
	require.NoError(t, err)
	for _, path := range paths {
		if strings.HasSuffix(path, "_test.go") {
			continue
		}
		files := token.NewFileSet()
		file, err := parser.ParseFile(files, path, nil, 0)
		require.NoError(t, err)
		ast.Inspect(file, func(n ast.Node) bool {
			if id, ok := n.(*ast.Ident); ok && slices.Contains(kinds, id.Name) && filepath.Base(path) != "kind.go" {
				assert.Fail(t, "a kind is named outside its table", "%s: %s", files.Position(id.Pos()), id.Name)
			}
			return true
		})
	}
}
