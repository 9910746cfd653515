package sheet

import (
	"bytes"
	"encoding/json"
	"regexp"
	"strconv"
	"strings"
)

// plainNumber matches a number without an exponent that JSON takes as it stands.
var plainNumber = regexp.MustCompile(`^-?(0|[1-9][0-9]*)(\.[0-9]+)?$`)

// JSON returns the sheet as a document that Parse reads. Keys are in the order of
// the sheet, and what was not given is left out. A typed number is written as a
// number, anything else as text.
func (s Sheet) JSON() []byte {
	var b bytes.Buffer
	s.write(&b, "", &tree)
	var out bytes.Buffer
	// The document was put together from valid parts, so Indent can't fail.
	_ = json.Indent(&out, b.Bytes(), "", "  ")
	out.WriteByte('\n')
	return out.Bytes()
}

// has reports whether anything at or below a path was given.
func (s Sheet) has(path string) bool {
	for p := range s {
		if (p == path || strings.HasPrefix(p, path+".") || strings.HasPrefix(p, path+"[")) && s.Given(p) != "" {
			return true
		}
	}
	return false
}

func (s Sheet) write(b *bytes.Buffer, path string, n *node) {
	switch n.kind {
	case object:
		s.writeObject(b, path, n)
	case list:
		b.WriteByte('[')
		for i := range s.Rows(path) {
			if i > 0 {
				b.WriteByte(',')
			}
			s.writeObject(b, row(path, i), n)
		}
		b.WriteByte(']')
	default:
		b.Write(n.scalar(s.Given(path)))
	}
}

func (s Sheet) writeObject(b *bytes.Buffer, path string, n *node) {
	b.WriteByte('{')
	comma := false
	for i := range n.members {
		m := &n.members[i]
		at := join(path, m.key)
		if m.key == "format" {
			b.WriteString(`"format":"` + Format + `"`)
			comma = true
			continue
		}
		if !s.has(at) {
			continue
		}
		if comma {
			b.WriteByte(',')
		}
		comma = true
		b.WriteString(`"` + m.key + `":`)
		s.write(b, at, m)
	}
	b.WriteByte('}')
}

// scalar returns one typed value as JSON.
func (n *node) scalar(typed string) []byte {
	switch n.kind {
	case ease:
		if v, ok := easeOf(typed); ok && !plainNumber.MatchString(typed) {
			raw, _ := json.Marshal(v)
			return raw
		}
	case number, amount:
		typed = strings.Replace(typed, ",", ".", 1)
		if v, ok := count(typed); ok && !plainNumber.MatchString(typed) {
			raw, _ := json.Marshal(v)
			return raw
		}
	case whole:
		if v, ok := wholeOf(typed); ok && !plainNumber.MatchString(typed) { // such as 007
			return []byte(strconv.Itoa(v))
		}
	case flag:
		if typed == "true" || typed == "false" {
			return []byte(typed)
		}
	case drawn:
		raw, _ := json.Marshal(strings.Split(typed, betweenRows)) // marshalling texts can't fail
		return raw
	case rhythm, rounds:
		if strings.Contains(typed, ",") {
			return []byte("[" + typed + "]")
		}
	}
	if n.kind != choice && n.kind != text && n.kind != date && plainNumber.MatchString(typed) {
		return []byte(typed)
	}
	raw, _ := json.Marshal(typed) // marshalling a string can't fail
	return raw
}
