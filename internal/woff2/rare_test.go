package woff2

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/goregular"

	"thenar/internal/testenv"
)

// What no face here has comes back, too: a box that is not that of the points,
// an advance whose bearing is not the leftmost point, a composite glyph with
// instructions.
func TestRareGlyphsComeBack(t *testing.T) {
	t.Parallel()
	program := testenv.Program(t, "woff2_decompress")
	tables := goTables(t)
	glyf, loca := find(tables, "glyf"), find(tables, "loca")
	require.Positive(t, int16(binary.BigEndian.Uint16(glyf.data)), "the first glyph has contours")
	glyf.data[3]--             // its xMin
	glyf.data[7]++             // its xMax
	last := len(loca.data) - 4 // two numbers, of two bytes each
	from := 2 * int(binary.BigEndian.Uint16(loca.data[last:]))
	glyf.data = append(glyf.data[:from],
		0xff, 0xff, 0, 1, 0, 2, 0, 3, 0, 4, // composite, its box
		0x01, 0x02, 0, 36, 7, 9, // one part with a program after it: glyph 36, moved
		0, 3, 0xb0, 0x01, 0x21, 0) // the program: PUSHB 1, POP; up to a whole word
	binary.BigEndian.PutUint16(loca.data[last+2:], uint16(len(glyf.data)/2))

	ttf := write(tables)
	packed, err := Encode(ttf)
	require.NoError(t, err)
	got := decompress(t, program, packed)
	sameFont(t, ttf, got)
	sameTables(t, ttf, got)
	end := glyphs(t, got)
	assert.Equal(t, []byte{0xb0, 0x01, 0x21}, end[len(end)-1].program)
}

// A font whose tables contradict each other is refused.
func TestTablesMustAgree(t *testing.T) {
	t.Parallel()
	for _, c := range []struct {
		tag, says string
		change    func([]byte) []byte
	}{
		{"glyf", "lies outside glyf", func(b []byte) []byte { return b[:len(b)-100] }},
		{"glyf", "glyph 0: its outline ends too early", func(b []byte) []byte { b[0] = 0x7f; return b }},
		{"loca", `"loca" does not fit the number of glyphs`, func(b []byte) []byte { return append(b, 0, 0) }},
		{"loca", `"loca" does not fit the number of glyphs`, func(b []byte) []byte { return b[:len(b)-2] }},
		{"hmtx", `"hmtx" does not fit the number of glyphs`, func(b []byte) []byte { return b[2:] }},
	} {
		tables := goTables(t)
		changed := find(tables, c.tag)
		changed.data = c.change(changed.data)
		_, err := Encode(write(tables))
		assert.ErrorContains(t, err, c.says)
	}
}

// goTables returns the tables of a font of Go's, each in a memory of its own.
func goTables(t *testing.T) []table {
	t.Helper()
	tables, err := readTables(goregular.TTF)
	require.NoError(t, err)
	for i := range tables {
		tables[i].data = slices.Clone(tables[i].data)
	}
	return tables
}

func find(tables []table, tag string) *table {
	return &tables[slices.IndexFunc(tables, func(t table) bool { return t.tag == tag })]
}

// write returns a font of these tables, without checksums.
func write(tables []table) []byte {
	head := binary.BigEndian.AppendUint32(nil, trueType)
	head = binary.BigEndian.AppendUint16(head, uint16(len(tables)))
	head = append(head, make([]byte, 6)...)
	var data []byte
	for _, t := range tables {
		head = append(head, t.tag...)
		head = binary.BigEndian.AppendUint32(head, 0)
		head = binary.BigEndian.AppendUint32(head, uint32(sfntHeader+sfntRecord*len(tables)+len(data)))
		head = binary.BigEndian.AppendUint32(head, uint32(len(t.data)))
		data = pad(append(data, t.data...))
	}
	return append(head, data...)
}
