package sheet

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"github.com/agnivade/levenshtein"
	"github.com/go-json-experiment/json"
	"github.com/go-json-experiment/json/jsontext"

	"thenar/internal/fault"
)

// Largest is the greatest number of bytes that a sheet may have.
const Largest = 1 << 20

// root is the name of the sheet as a whole in messages.
const root = "sheet"

// byteOrderMark begins a file of some editors; it says nothing.
var byteOrderMark = []byte("\ufeff")

// Parse reads a measure sheet from JSON. It refuses an unknown or repeated key, a
// value of the wrong type, and anything after the document, with a fault that
// names the field; capitals matter in keys. Texts are kept as they stand; Request
// says whether they can be used.
func Parse(data []byte) (Sheet, error) {
	data = bytes.TrimPrefix(data, byteOrderMark)
	p := parser{sheet: Sheet{}}
	if len(data) > Largest {
		p.faults.Add(root, "has %d bytes; a measure sheet has at most %d", len(data), Largest)
		return nil, p.faults
	}
	if len(bytes.TrimSpace(data)) == 0 {
		p.faults.Add(root, `is empty; write a JSON object such as {"gauge": …, "hand": …}`)
		return nil, p.faults
	}
	p.dec = jsontext.NewDecoder(bytes.NewReader(data))
	if err := p.value("", &tree); err != nil {
		p.faults.Add(root, "is not JSON as expected: %s", reason(err))
		return nil, p.faults
	}
	if _, err := p.dec.ReadToken(); !errors.Is(err, io.EOF) {
		p.faults.Add(root, "goes on after the document; one JSON object is all")
	}
	if err := p.faults.Err(); err != nil {
		return nil, err
	}
	return p.sheet, nil
}

// reason returns a syntax error in a few words, with its place.
func reason(err error) string {
	var syntax *jsontext.SyntacticError
	if errors.As(err, &syntax) {
		if errors.Is(syntax.Err, jsontext.ErrDuplicateName) {
			return fmt.Sprintf("a key stands twice (byte %d, at %s); keep one", syntax.ByteOffset, syntax.JSONPointer)
		}
		if errors.Is(syntax.Err, io.ErrUnexpectedEOF) {
			return fmt.Sprintf("it ends too early, after byte %d", syntax.ByteOffset)
		}
		return fmt.Sprintf("%v (byte %d)", syntax.Err, syntax.ByteOffset)
	}
	return strings.TrimPrefix(err.Error(), "jsontext: ")
}

type parser struct {
	dec    *jsontext.Decoder
	sheet  Sheet
	faults fault.Fields

	unknown int // the number of unknown keys so far
}

// value reads one value for a node. It returns an error of syntax, after which
// nothing more can be read; any other mistake is added to the faults.
func (p *parser) value(path string, n *node) error {
	k := p.dec.PeekKind()
	switch n.kind {
	case object:
		if k == '{' {
			return p.object(path, n)
		}
	case list:
		if k == '[' {
			return p.rows(path, n)
		}
	case rhythm, rounds:
		if k == '[' {
			return p.intervals(path)
		}
		if k == '0' {
			return p.text(path)
		}
	case drawn:
		if k == '[' {
			return p.drawing(path)
		}
	case length, height, signed:
		if k == '0' || k == '"' {
			return p.text(path)
		}
	case choice, text, date:
		if k == '"' {
			return p.text(path)
		}
	case flag:
		if k == 't' || k == 'f' {
			return p.text(path)
		}
	default:
		if k == '0' {
			return p.text(path)
		}
	}
	got, err := p.dec.ReadValue()
	if err != nil {
		return err
	}
	at := path
	if at == "" {
		at = root
	}
	p.faults.Add(at, "is %s; write %s", clip(string(got)), n.expected())
	return nil
}

// expected says what value a node takes, for a message.
func (n *node) expected() string {
	switch n.kind {
	case object:
		return "an object in braces"
	case list:
		return "a list of objects in brackets"
	case length, height, signed:
		return `a length as a number, or as text such as "7 1/2"`
	case choice:
		return "one of: " + strings.Join(n.words, ", ")
	case flag:
		return "true or false"
	case text:
		return "text in quotes"
	case date:
		return `a date such as "2025-03-09"`
	case rhythm, rounds:
		return "a whole number such as 3, or a list such as [2, 3]"
	case drawn:
		return `a list of texts such as ["..a.", ".a.a"]`
	case whole:
		return "a whole number"
	}
	return "a number"
}

// clip returns text cut to 40 characters, so that a message stays short whatever
// was typed.
func clip(text string) string {
	const longest = 40
	r := []rune(text)
	if len(r) <= longest {
		return text
	}
	return string(r[:longest]) + "…"
}

// text reads a scalar and keeps it as it was typed.
func (p *parser) text(path string) error {
	token, err := p.dec.ReadToken()
	if err != nil {
		return err
	}
	text := token.String()
	if token.Kind() == '"' && strings.TrimSpace(text) == "" {
		p.faults.Add(path, "is empty; leave the key out or give a value")
		return nil
	}
	p.sheet[path] = text
	return nil
}

func (p *parser) object(path string, n *node) error {
	if _, err := p.dec.ReadToken(); err != nil {
		return err
	}
	for p.dec.PeekKind() != '}' {
		token, err := p.dec.ReadToken()
		if err != nil {
			return err
		}
		key := token.String()
		member := n.find(key)
		if member == nil {
			p.strange(n, path, key)
			if err := p.dec.SkipValue(); err != nil {
				return err
			}
			continue
		}
		if err := p.value(join(path, key), member); err != nil {
			return err
		}
	}
	_, err := p.dec.ReadToken()
	return err
}

// maxStrange is the number of unknown keys that get a message at most. A sheet may
// hold a hundred thousand, and each message compares the key with all known ones.
const maxStrange = 50

// strange adds the fault of a key that n does not have.
func (p *parser) strange(n *node, path, key string) {
	switch p.unknown++; {
	case p.unknown <= maxStrange:
		p.faults.Add(join(path, clip(key)), "is not known here; %s", n.instead(key))
	case p.unknown == maxStrange+1:
		p.faults.Add(root, "has more keys that are not known; mend these first")
	}
}

// mostListed is the number of known keys that a message lists at most.
const mostListed = 20

// instead says which key may be meant by one that is not known: the nearest, or any, where
// half of the letters of the nearest are others.
func (n *node) instead(key string) string {
	best, off := n.nearest(key)
	if 2*off <= max(len(key), len(best)) || len(n.members) > mostListed {
		return fmt.Sprintf("the nearest known key is %q", best)
	}
	known := make([]string, len(n.members))
	for i, m := range n.members {
		known[i] = m.key
	}
	return "known keys are " + strings.Join(known, ", ")
}

// nearest returns the known key that differs from key in the fewest letters, and in how
// many. Capitals count as small letters.
func (n *node) nearest(key string) (best string, least int) {
	least = -1
	key = strings.ToLower(clip(key))
	for _, m := range n.members {
		if d := levenshtein.ComputeDistance(key, m.key); least < 0 || d < least {
			best, least = m.key, d
		}
	}
	return best, least
}

func (p *parser) rows(path string, n *node) error {
	if _, err := p.dec.ReadToken(); err != nil {
		return err
	}
	rowNode := node{members: n.members}
	for i := 0; p.dec.PeekKind() != ']'; i++ {
		if i == n.maxRows {
			p.faults.Add(path, "has more than %d %s; %d are the most", n.maxRows, cmp.Or(n.rows, "rows"), n.maxRows)
		}
		if i >= n.maxRows {
			if err := p.dec.SkipValue(); err != nil {
				return err
			}
			continue
		}
		if err := p.value(row(path, i), &rowNode); err != nil {
			return err
		}
	}
	_, err := p.dec.ReadToken()
	return err
}

// intervals reads a list of whole numbers, intervals or rounds, and keeps it as
// "2, 3".
func (p *parser) intervals(path string) error {
	raw, err := p.dec.ReadValue()
	if err != nil {
		return err
	}
	inner := strings.TrimSuffix(strings.TrimPrefix(string(raw), "["), "]")
	var parts []string
	for _, part := range strings.Split(inner, ",") {
		part = strings.TrimSpace(part)
		if _, err := strconv.ParseUint(part, 10, 31); err != nil {
			p.faults.Add(path, "is %s; write a whole number such as 3, or a list such as [2, 3]", clip(string(raw)))
			return nil
		}
		parts = append(parts, part)
	}
	p.sheet[path] = strings.Join(parts, ", ")
	return nil
}

// drawing reads a list of texts, and keeps it with strokes between them.
func (p *parser) drawing(path string) error {
	raw, err := p.dec.ReadValue()
	if err != nil {
		return err
	}
	var rows []string
	if json.Unmarshal(raw, &rows) != nil || slices.ContainsFunc(rows, func(row string) bool { return strings.TrimSpace(row) == "" || strings.Contains(row, betweenRows) }) {
		p.faults.Add(path, "is %s; write %s", clip(string(raw)), (&node{kind: drawn}).expected())
		return nil
	}
	if len(rows) == 0 {
		p.faults.Add(path, "is empty; leave the key out or give a value")
		return nil
	}
	p.sheet[path] = strings.Join(rows, betweenRows)
	return nil
}
