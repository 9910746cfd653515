package sheet

import (
	"encoding/json"
	"errors"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/testenv"
	"thenar/internal/units"
)

// The schema is testdata/sheet.schema.json. Its $comment says what it can't
// express; the tests below hold the parser against the rest, by way of an
// independent library (santhosh-tekuri/jsonschema).
const schemaFile = "sheet.schema.json"

// schemaNode is a part of a schema as the test reads it.
type schemaNode struct {
	Ref         string                 `json:"$ref"`
	Defs        map[string]*schemaNode `json:"$defs"`
	Description string                 `json:"description"`
	Properties  map[string]*schemaNode `json:"properties"`
	Items       *schemaNode            `json:"items"`
	MaxItems    int                    `json:"maxItems"`
	Enum        []any                  `json:"enum"`
}

// Every key of a sheet is in the schema with a description, and every key of
// the schema is in a sheet; lists may be as long in both, and choices have the
// same words.
func TestSchemaHasEveryKey(t *testing.T) {
	raw, err := os.ReadFile(filepath.Join("..", "..", "testdata", schemaFile))
	require.NoError(t, err)
	var doc schemaNode
	require.NoError(t, json.Unmarshal(raw, &doc))
	var compare func(path string, n *node, s *schemaNode)
	compare = func(path string, n *node, s *schemaNode) {
		if name, isRef := strings.CutPrefix(s.Ref, "#/$defs/"); isRef {
			at := *doc.Defs[name]
			at.Description += s.Description
			s = &at
		}
		assert.NotEmpty(t, s.Description, "%s has no description", path)
		if n.kind == list {
			assert.Equal(t, n.maxRows, s.MaxItems, "rows of %s", path)
			s = s.Items
		}
		if n.kind == choice && n.key != "format" {
			var words []any
			for _, w := range n.words {
				words = append(words, w)
			}
			assert.Equal(t, words, s.Enum, "%s", path)
		}
		keys := make([]string, len(n.members))
		for i := range n.members {
			m := &n.members[i]
			keys[i] = m.key
			if at := s.Properties[m.key]; assert.NotNil(t, at, "%s is not in the schema", join(path, m.key)) {
				compare(join(path, m.key), m, at)
			}
		}
		for key := range s.Properties {
			assert.Contains(t, keys, key, "%s is in the schema and in no sheet", join(path, key))
		}
	}
	compare("", &tree, &doc)
}

// pool is JSON of every kind that may stand at a key: what is right somewhere,
// what lies just outside, what is typed as text, and what is wrong everywhere.
var pool = []string{
	"null", "true", "false", "{}", "[]", `""`, `" "`, `"wide"`, "0", "-1", "1", "3", "4", "8", "9", "13", "14", "99", "100", "0.5", "7.5", "0.2", "0.21",
	"-0.49", "-0.5", "0.99", "1.01", "1000", "1001", "-1000", "-1001", "1500", "1501", "1999", "2001", "10000", "10001",
	`"7 1/2"`, `"7½"`, `"½"`, `"7,5"`, `".5"`, `"5."`, `"0"`, `"0,0"`, `"0/5"`, `"1/0"`, `"1 2"`, `"7 1/2 cm"`, `"1.2.3"`, `"-0.4"`, `"+1"`, `"−1"`, `"- 7½"`, `"1e1"`, `"5 %"`,
	"[1, 4, 7]", "[2, 3]", "[1]", "[2]", "[0]", "[-1]", "[1.5]", `["2"]`, "[[2]]", "[{}]", "[1501]", `"2025-03-09"`, `"9 March"`, `"#B9694A"`, `"#B9694"`, `"red"`,
}

// inexpressible reports a refusal that hangs on two keys: a gauge is stitches
// over a width.
func inexpressible(err error) bool { return strings.Contains(err.Error(), "knitting lies between") }

// At every key of a sheet, schema and parser agree on every value: what the
// schema refuses can't be planned, and what it takes is never refused at its
// key by the parser.
func TestSchemaAgreesWithTheParser(t *testing.T) {
	t.Parallel()
	s := testenv.Schema(t, schemaFile)
	planner := mitt.New()
	cases, refused := 0, 0
	eachKey("", &tree, func(path string, n *node) {
		if strings.HasPrefix(path, pathOther+".") {
			return // the same as of the hand that was tried on last
		}
		values := append([]string{}, pool...)
		for _, w := range n.words {
			values = append(values, fmt.Sprintf("%q", w))
		}
		if of, ok := mitt.NumberAt(path); ok {
			low, high := of.Range()
			values = append(values, fmt.Sprint(low-1), fmt.Sprint(low), fmt.Sprint(high), fmt.Sprint(high+1))
		}
		for _, value := range values {
			doc := around(path, value)
			require.True(t, json.Valid([]byte(doc)), doc)
			schema := testenv.Validate(t, s, []byte(doc))
			read, planned := readAll(planner, doc)
			cases++
			if schema != nil {
				refused++
				assert.True(t, read != nil || planned != nil || lenient(path, value), "the schema refuses %s at %s, the parser does not: %v", value, path, schema)
			} else if read != nil && !inexpressible(read) {
				assert.False(t, at(read, path), "the parser refuses %s at %s, the schema does not: %v", value, path, read)
			}
		}
	})
	t.Logf("%d values, %d of them refused", cases, refused)
	assert.Greater(t, cases-refused, 500)
	assert.Greater(t, refused, 5_000)
}

// lenient reports whether the parser leaves alone what the schema refuses: a
// list that no plan reads, and a row of girths that is left empty at the end.
func lenient(path, value string) bool {
	return path == PathTried || strings.HasPrefix(path, "hand.profile") && strings.Contains(value, "{}")
}

// What the program writes holds to the schema: every section, and what is
// knitted of both hands.
func TestWrittenSheetsHoldToTheSchema(t *testing.T) {
	s, err := Parse([]byte(full))
	require.NoError(t, err)
	for i, side := range []string{"right", "left"} {
		k := mitt.Progress{Part: "thumb", Round: 3, BaseAbove: -4 * units.Millimetre, OneSided: true, HandTurned: i > 0}
		for _, n := range mitt.Knittable() {
			if list := k.Numbers(n); list != nil {
				*list = []int{1, 4}
			} else {
				*k.Number(n) = 1
			}
		}
		s.SetProgress(&k, side)
	}
	s[PathTried], s[PathSecond], s["ease.hand"] = "7, 12", Anew, "−5 %"
	assert.NoError(t, testenv.Validate(t, testenv.Schema(t, schemaFile), s.JSON()), "%s", s.JSON())
}

// What may stand in the place of the circumference is the same in both.
func TestSchemaAsksForTheSameHand(t *testing.T) {
	schema := testenv.Schema(t, schemaFile)
	keys := []string{"hand_circumference", "size", "hand_breadth", "hand_length", "reference"}
	values := []string{"19", "8", "8.5", "18", "women"}
	for set := range 1 << len(keys) {
		s := Sheet{"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "hand.thumb_circumference": "6"}
		for i, key := range keys {
			if set&(1<<i) != 0 {
				s["hand."+key] = values[i]
			}
		}
		_, err := s.Request()
		assert.Equal(t, err == nil, testenv.Validate(t, schema, s.JSON()) == nil, "%v", s)
	}
}

// eachKey goes through all keys of a sheet, lists and objects among them.
func eachKey(path string, n *node, do func(string, *node)) {
	if path != "" {
		do(path, n)
	}
	if n.kind == list {
		path = row(path, 0)
		do(path, &node{kind: object})
	}
	for i := range n.members {
		eachKey(join(path, n.members[i].key), &n.members[i], do)
	}
}

// around is a sheet that can be planned, with a value at a path: its row has
// what a row must have, and what is knitted of a hand is reached.
func around(path, value string) string {
	texts := map[string]string{
		"unit": `"mm"`, "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "100", "hand.hand_circumference": "190",
	}
	switch {
	case strings.HasPrefix(path, "gauge.swatches[0].rounds"), strings.HasPrefix(path, "gauge.swatches[0].height"):
		texts["gauge.swatches[0].rounds"], texts["gauge.swatches[0].height"] = "32", "100"
	case strings.HasPrefix(path, "hand.profile[0]."):
		texts["hand.profile[0].height"], texts["hand.profile[0].girth"] = "0", "180"
	case strings.HasPrefix(path, "hand.profile_above[0]."):
		texts["hand.profile_above[0].height"], texts["hand.profile_above[0].girth"] = "1", "180"
	case strings.HasPrefix(path, pathWorked+"."):
		texts[PathSection] = `"cuff"`
	}
	for p := range texts {
		if strings.HasPrefix(p, path+".") || strings.HasPrefix(p, path+"[") {
			delete(texts, p)
		}
	}
	texts[path] = value
	return written("", &tree, texts)
}

// written puts JSON at paths into a document.
func written(path string, n *node, texts map[string]string) string {
	if text, ok := texts[path]; ok {
		return text
	}
	below := false
	for p := range texts {
		below = below || path == "" || strings.HasPrefix(p, path+".") || strings.HasPrefix(p, path+"[")
	}
	if !below {
		return ""
	}
	if n.kind == list {
		return "[" + written(row(path, 0), &node{members: n.members}, texts) + "]"
	}
	var parts []string
	for i := range n.members {
		m := &n.members[i]
		if text := written(join(path, m.key), m, texts); text != "" {
			parts = append(parts, fmt.Sprintf("%q: %s", m.key, text))
		}
	}
	return "{" + strings.Join(parts, ", ") + "}"
}

// readAll parses a document, reads every section of it, and plans it.
func readAll(pl *mitt.Planner, doc string) (read, planned error) {
	s, err := Parse([]byte(doc))
	if err != nil {
		return err, nil
	}
	req, err := s.Request()
	if err != nil {
		return err, nil
	}
	_, err = pl.Plan(req)
	return nil, err
}

// at reports whether an error is about a path, or about the sheet as a whole.
func at(err error, path string) bool {
	var fields fault.Fields
	if !errors.As(err, &fields) {
		return err != nil
	}
	return fields.Has(path) || fields.Has(root)
}
