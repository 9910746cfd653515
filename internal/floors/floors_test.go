// Package floors holds the order of the house: it reads the table of floors
// in floors.md and compares it with what every package really imports.
package floors

import (
	"bytes"
	"encoding/json"
	"errors"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

const module = "thenar/"

// helper marks a package of the table's last rows: tests may import it from
// anywhere, and it imports nothing of ours.
const helper = -1

// rule is one row of the table.
type rule struct {
	floor   int
	imports []string
	outside []string
}

var ticked = regexp.MustCompile("`([^`]+)`")

// readRules reads the rows "| floor | `package` | … | imports | modules |".
func readRules(t *testing.T) map[string]rule {
	t.Helper()
	text, err := os.ReadFile("floors.md")
	require.NoError(t, err)
	rules := map[string]rule{}
	for line := range strings.Lines(string(text)) {
		cells := strings.Split(strings.TrimSpace(line), "|")
		if len(cells) != 7 || !strings.Contains(cells[2], "`") {
			continue
		}
		r := rule{floor: helper}
		if n, err := strconv.Atoi(strings.TrimSpace(cells[1])); err == nil {
			r.floor = n
		}
		for _, m := range ticked.FindAllStringSubmatch(cells[4], -1) {
			r.imports = append(r.imports, m[1])
		}
		for _, m := range ticked.FindAllStringSubmatch(cells[5], -1) {
			r.outside = append(r.outside, m[1])
		}
		rules[ticked.FindStringSubmatch(cells[2])[1]] = r
	}
	require.Greater(t, len(rules), 10, "the table of floors in floors.md")
	return rules
}

// listed is what the go command says of a package.
type listed struct {
	ImportPath                         string
	Imports, TestImports, XTestImports []string
}

func list(t *testing.T) []listed {
	t.Helper()
	cmd := exec.Command("go", "list", "-json=ImportPath,Imports,TestImports,XTestImports", "./...")
	cmd.Dir = filepath.Join("..", "..")
	out, err := cmd.Output()
	require.NoError(t, err)
	var packages []listed
	for dec := json.NewDecoder(bytes.NewReader(out)); ; {
		var p listed
		if err := dec.Decode(&p); errors.Is(err, io.EOF) {
			return packages
		} else {
			require.NoError(t, err)
		}
		packages = append(packages, p)
	}
}

// Every package stands in the table, and every package of the table exists.
func TestTableIsComplete(t *testing.T) {
	rules := readRules(t)
	var have []string
	for _, p := range list(t) {
		name := strings.TrimPrefix(p.ImportPath, module)
		have = append(have, name)
		assert.Contains(t, rules, name, "a package without a row in floors.md")
	}
	for name := range rules {
		assert.Contains(t, have, name, "a row in floors.md without a package")
	}
}

// A package imports only from strictly lower floors, and exactly what its
// row lists: an edge that nobody uses is deleted.
func TestImportsPointDown(t *testing.T) {
	rules := readRules(t)
	for _, p := range list(t) {
		name := strings.TrimPrefix(p.ImportPath, module)
		rule := rules[name]
		var used []string
		for _, path := range p.Imports {
			to, ours := strings.CutPrefix(path, module)
			if !ours {
				checkOutside(t, name, rule, path)
				continue
			}
			used = append(used, to)
			assert.Contains(t, rule.imports, to, "%s imports %s, which its row does not list", name, to)
			assert.Less(t, rules[to].floor, rule.floor, "%s imports %s, which is not on a lower floor", name, to)
		}
		for _, to := range rule.imports {
			assert.Contains(t, used, to, "the row of %s lists %s, which it does not import", name, to)
		}
	}
}

// checkOutside holds a package to the modules of its row; the standard
// library, whose paths have no dot, is free.
func checkOutside(t *testing.T, name string, r rule, path string) {
	t.Helper()
	if !strings.Contains(strings.Split(path, "/")[0], ".") {
		return
	}
	allowed := slices.ContainsFunc(r.outside, func(module string) bool { return strings.HasPrefix(path, module) })
	assert.True(t, allowed, "%s imports %s, which its row does not list", name, path)
}

// Tests may use what their package may, the helpers, and lower floors.
func TestTestImportsPointDown(t *testing.T) {
	rules := readRules(t)
	for _, p := range list(t) {
		name := strings.TrimPrefix(p.ImportPath, module)
		for _, path := range append(p.TestImports, p.XTestImports...) {
			to, ours := strings.CutPrefix(path, module)
			if !ours || to == name || rules[to].floor == helper {
				continue
			}
			assert.Less(t, rules[to].floor, rules[name].floor, "the tests of %s import %s, which is not on a lower floor", name, to)
		}
	}
}
