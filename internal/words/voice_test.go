package words

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// longest is the greatest number of words of a message or a sentence: more are
// not read while the work is in the hands (common practice, no source).
const longest = 20

// messages names the functions whose texts are shown as messages, with the place
// of the text among their arguments.
var messages = map[string]int{"Add": 1, "New": 1, "say": 1, "impossible": 1, "wrong": 2, "refuse": 3}

// TestMessagesAreShort reads every message in the sources: none has more words
// than can be taken in at a glance. A caution may have several sentences, each
// of which is short.
func TestMessagesAreShort(t *testing.T) {
	for _, m := range texts(t, func(n ast.Node) (ast.Expr, bool) {
		call, ok := n.(*ast.CallExpr)
		if !ok {
			return nil, false
		}
		at, known := messages[named(call.Fun)]
		if !known || len(call.Args) <= at {
			return nil, false
		}
		return call.Args[at], true
	}) {
		if !strings.Contains(m.text, "medical advice") {
			assert.LessOrEqual(t, len(strings.Fields(m.text)), longest, "%s: %s", m.at, m.text)
		}
		for _, sentence := range sentences(m.text) {
			assert.LessOrEqual(t, len(strings.Fields(sentence)), longest, "%s: %s", m.at, sentence)
		}
	}
}

// TestLabelsAreShort reads every label, help and note of a field in the views.
func TestLabelsAreShort(t *testing.T) {
	for _, m := range texts(t, func(n ast.Node) (ast.Expr, bool) {
		pair, ok := n.(*ast.KeyValueExpr)
		if !ok {
			return nil, false
		}
		key, ok := pair.Key.(*ast.Ident)
		return pair.Value, ok && (key.Name == "Label" || key.Name == "Help" || key.Name == "Note")
	}) {
		for _, sentence := range sentences(m.text) {
			assert.LessOrEqual(t, len(strings.Fields(sentence)), longest, "%s: %s", m.at, sentence)
		}
	}
}

// text is a text of the sources, with its place.
type text struct{ at, text string }

// texts returns the texts in the sources that pick chooses.
func texts(t *testing.T, pick func(ast.Node) (ast.Expr, bool)) []text {
	t.Helper()
	var list []text
	for _, root := range []string{"../../internal", "../../web", "../../cmd"} {
		require.NoError(t, filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(path, "_templ.go") {
				return err
			}
			files := token.NewFileSet()
			file, err := parser.ParseFile(files, path, nil, 0)
			if err != nil {
				return err
			}
			ast.Inspect(file, func(n ast.Node) bool {
				if value, ok := pick(n); ok {
					if lit, ok := value.(*ast.BasicLit); ok && lit.Kind == token.STRING {
						said, err := strconv.Unquote(lit.Value)
						require.NoError(t, err)
						list = append(list, text{files.Position(lit.Pos()).String(), said})
					}
				}
				return true
			})
			return nil
		}))
	}
	require.NotEmpty(t, list)
	return list
}

// named returns the name of the function that is called.
func named(fun ast.Expr) string {
	switch f := fun.(type) {
	case *ast.Ident:
		return f.Name
	case *ast.SelectorExpr:
		return f.Sel.Name
	}
	return ""
}

// sentences cuts a text where a sentence ends.
func sentences(text string) []string {
	return strings.FieldsFunc(strings.ReplaceAll(text+" ", ". ", ".\n"), func(r rune) bool { return r == '\n' })
}
