package view

import (
	"go/ast"
	"go/parser"
	"go/token"
	"html"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	templ "github.com/a-h/templ/parser/v2"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// TestPagesSpeakAsKnittersDo reads every sentence in the components: none is
// longer than can be taken in at a glance, or uses a word of the workshop.
func TestPagesSpeakAsKnittersDo(t *testing.T) {
	files, err := filepath.Glob("*.templ")
	require.NoError(t, err)
	require.NotEmpty(t, files)
	for _, name := range files {
		file, err := templ.Parse(name)
		require.NoError(t, err)
		r := &reading{}
		for _, n := range file.Nodes {
			if c, ok := n.(*templ.HTMLTemplate); ok {
				r.nodes(c.Children)
				r.end()
			}
		}
		for _, text := range r.texts {
			for _, sentence := range testenv.Sentences(text) {
				assert.LessOrEqual(t, testenv.WordCount(sentence), testenv.LongestSentence, "%s: %s", name, sentence)
				assert.Empty(t, testenv.NotSaid.FindAllString(sentence, -1), "%s: %s", name, sentence)
			}
		}
	}
}

// reading gathers the texts of components: what stands in one block is one text.
// What is put in when a page is shown counts as one word.
type reading struct {
	block strings.Builder
	texts []string
}

// inLine are the elements that do not end a text.
var inLine = []string{"a", "b", "i", "em", "strong", "small", "code", "span", "output", "time", "details"}

// readOut are the attributes whose text is shown or read out.
var readOut = []string{"title", "aria-label", "placeholder", "alt", "aria-valuetext"}

// end ends a text.
func (r *reading) end() {
	if text := strings.Join(strings.Fields(r.block.String()), " "); text != "" {
		r.texts = append(r.texts, text)
	}
	r.block.Reset()
}

func (r *reading) nodes(list []templ.Node) {
	for _, n := range list {
		switch n := n.(type) {
		case *templ.Text:
			r.block.WriteString(html.UnescapeString(n.Value))
		case *templ.Whitespace:
			r.block.WriteByte(' ')
		case *templ.StringExpression:
			if texts := literals(n.Expression.Value); len(texts) == 1 {
				r.block.WriteString(texts[0])
			} else {
				r.block.WriteString("…")
			}
		case *templ.Element:
			r.element(n)
		case *templ.TemplElementExpression:
			r.texts = append(r.texts, literals(n.Expression.Value)...)
			r.nodes(n.Children)
		case *templ.IfExpression:
			r.branches(n.Then, n.Else)
			for _, e := range n.ElseIfs {
				r.branches(e.Then)
			}
		case templ.CompositeNode:
			r.branches(n.ChildNodes())
		}
		if t, ok := n.(templ.WhitespaceTrailer); ok && t.Trailing() != "" {
			r.block.WriteByte(' ')
		}
	}
}

// branches reads what stands in a text only sometimes, or several times.
func (r *reading) branches(lists ...[]templ.Node) {
	for _, list := range lists {
		if len(list) == 0 {
			continue
		}
		before := r.block.String()
		r.nodes(list)
		if !strings.HasPrefix(r.block.String(), before) {
			continue // a block in it has ended the text
		}
		r.end()
		r.block.WriteString(before)
	}
}

func (r *reading) element(e *templ.Element) {
	for _, a := range e.Attributes {
		r.attribute(a)
	}
	block := !slices.Contains(inLine, e.Name)
	if block {
		r.end()
	}
	if e.Name != "svg" {
		r.nodes(e.Children)
	}
	if block {
		r.end()
	}
}

func (r *reading) attribute(a templ.Attribute) {
	switch a := a.(type) {
	case *templ.ConstantAttribute:
		if slices.Contains(readOut, a.Key.String()) {
			r.texts = append(r.texts, html.UnescapeString(a.Value))
		}
	case *templ.ExpressionAttribute:
		if slices.Contains(readOut, a.Key.String()) {
			r.texts = append(r.texts, literals(a.Expression.Value)...)
		}
	case *templ.ConditionalAttribute:
		for _, inner := range slices.Concat(a.Then, a.Else) {
			r.attribute(inner)
		}
	}
}

// literals returns the texts of two words and more in an expression.
func literals(expression string) (list []string) {
	expr, err := parser.ParseExpr(expression)
	if err != nil {
		return nil
	}
	ast.Inspect(expr, func(n ast.Node) bool {
		if lit, ok := n.(*ast.BasicLit); ok && lit.Kind == token.STRING {
			if text, err := strconv.Unquote(lit.Value); err == nil && strings.Contains(strings.TrimSpace(text), " ") {
				list = append(list, text)
			}
		}
		return true
	})
	return list
}

// TestReadingFindsEverySentence reads a component of our own making.
func TestReadingFindsEverySentence(t *testing.T) {
	file, err := templ.ParseString("package x\n\ntempl x() {\n<p title=\"on it\">One { \"word\" } of\n<b>four</b>\nif true {\nor five\n}\n.</p>\n<button aria-label={ \"Press \" + x + \" it\" }>Go</button>\n@y(\"two words\")\n}\n")
	require.NoError(t, err)
	r := &reading{}
	r.nodes(file.Nodes[0].(*templ.HTMLTemplate).Children)
	r.end()
	assert.ElementsMatch(t, []string{"on it", "One … of four or five", "One … of four .", "Go", "two words"}, r.texts)
}
