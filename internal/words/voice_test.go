package words

import (
	"errors"
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

const longest = testenv.LongestSentence

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
			assert.LessOrEqual(t, testenv.WordCount(m.text), longest, "%s: %s", m.at, m.text)
		}
		for _, sentence := range testenv.Sentences(m.text) {
			assert.LessOrEqual(t, testenv.WordCount(sentence), longest, "%s: %s", m.at, sentence)
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
		for _, sentence := range testenv.Sentences(m.text) {
			assert.LessOrEqual(t, testenv.WordCount(sentence), longest, "%s: %s", m.at, sentence)
		}
	}
}

// TestHelpIsShort reads the help of every verb and flag.
func TestHelpIsShort(t *testing.T) {
	for _, m := range texts(t, helpOf) {
		for _, sentence := range testenv.Sentences(m.text) {
			assert.LessOrEqual(t, testenv.WordCount(sentence), longest, "%s: %s", m.at, sentence)
		}
	}
}

// flags names the methods that make a flag, with the place of its help.
var flags = map[string]int{"Bool": 2, "BoolVar": 3, "Int": 2, "IntVar": 3, "String": 2, "StringVar": 3, "Float64": 2}

// helpOf returns the text that explains a verb or a flag.
func helpOf(n ast.Node) (ast.Expr, bool) {
	switch n := n.(type) {
	case *ast.KeyValueExpr:
		key, ok := n.Key.(*ast.Ident)
		return n.Value, ok && key.Name == "does"
	case *ast.CallExpr:
		at, known := flags[named(n.Fun)]
		if known && len(n.Args) == at+1 {
			return n.Args[at], true
		}
	}
	return nil, false
}

// TestTextsAreAsKnittersSpeak reads every text of the sources that has two words
// or more: no sentence is too long, and none has a word that a knitter would not
// say. What programs read, and errors that carry another one, are for the log.
func TestTextsAreAsKnittersSpeak(t *testing.T) {
	for _, m := range texts(t, func(n ast.Node) (ast.Expr, bool) {
		lit, ok := n.(*ast.BasicLit)
		return lit, ok && lit.Kind == token.STRING && strings.Contains(lit.Value, " ")
	}) {
		if forPrograms.MatchString(m.at) || strings.Contains(m.text, "%w") || strings.HasPrefix(m.text, "M ") || strings.Contains(m.text, "[-") || strings.Contains(m.text, "\nschema %d") {
			continue
		}
		assert.Empty(t, testenv.NotSaid.FindAllString(m.text, -1), "%s: %s", m.at, m.text)
		for _, sentence := range testenv.Sentences(m.text) {
			assert.LessOrEqual(t, testenv.WordCount(sentence), longest, "%s: %s", m.at, sentence)
		}
	}
}

// TestNoPercentageIsParted checks that a number and its sign have no space between them at
// which a line may break, on paper or on a screen.
func TestNoPercentageIsParted(t *testing.T) {
	parted := regexp.MustCompile(`(?:\d|%[-+.0-9]*[dfgs]) %(?:%|[^-+.\w\[%]|$)`)
	for _, m := range texts(t, func(n ast.Node) (ast.Expr, bool) {
		lit, ok := n.(*ast.BasicLit)
		return lit, ok && lit.Kind == token.STRING
	}) {
		if !forPrograms.MatchString(m.at) {
			assert.NotRegexp(t, parted, m.text, m.at)
		}
	}
}

// forPrograms are the files whose texts are read by programs, by who writes
// programs, or as lists of single words.
var forPrograms = regexp.MustCompile(`internal/(store|exportfile|testenv|readback|floors)/|internal/chart/(motif|parse)|internal/roster/language|web/(status|history)\.go|internal/shaping/`)

// text is a text of the sources, with its place.
type text struct{ at, text string }

// source is a file of the program, as it is parsed.
type source struct {
	files *token.FileSet
	file  *ast.File
}

// sources parses the program once.
var sources = sync.OnceValues(func() (list []source, err error) {
	for _, root := range []string{"../../internal", "../../web", "../../cmd"} {
		err = errors.Join(err, filepath.WalkDir(root, func(path string, _ fs.DirEntry, err error) error {
			if err != nil || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") || strings.HasSuffix(path, "_templ.go") {
				return err
			}
			files := token.NewFileSet()
			file, err := parser.ParseFile(files, path, nil, parser.SkipObjectResolution)
			list = append(list, source{files, file})
			return err
		}))
	}
	return list, err
})

// texts returns the texts in the sources that pick chooses.
func texts(t *testing.T, pick func(ast.Node) (ast.Expr, bool)) []text {
	t.Helper()
	all, err := sources()
	require.NoError(t, err)
	var list []text
	for _, s := range all {
		ast.Inspect(s.file, func(n ast.Node) bool {
			if value, ok := pick(n); ok {
				if lit, ok := value.(*ast.BasicLit); ok && lit.Kind == token.STRING {
					said, err := strconv.Unquote(lit.Value)
					require.NoError(t, err)
					list = append(list, text{s.files.Position(lit.Pos()).String(), said})
				}
			}
			return true
		})
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
