package woff2

import (
	"encoding/binary"
	"errors"
	"fmt"
)

// The header of a TrueType file and a record of its table directory, in bytes,
// and the first number of the file (OpenType specification, "Organization of an
// OpenType Font").
const (
	sfntHeader = 12
	sfntRecord = 16
	trueType   = 0x00010000
)

// table is a named part of a font.
type table struct {
	tag  string
	data []byte
}

// readTables returns the tables of a TrueType font in the order of its
// directory.
func readTables(ttf []byte) ([]table, error) {
	r := reader{data: ttf}
	if r.u32() != trueType {
		return nil, errors.New("not a TrueType font: it should begin with 00010000")
	}
	tables := make([]table, r.u16())
	r.bytes(6) // for a binary search
	for i := range tables {
		tables[i].tag = string(r.bytes(4))
		r.u32() // the checksum, which a reader of WOFF2 works out anew
		from, length := uint64(r.u32()), uint64(r.u32())
		if from+length > uint64(len(ttf)) {
			return nil, fmt.Errorf("table %q lies outside the file", tables[i].tag)
		}
		tables[i].data = ttf[from : from+length]
	}
	return tables, r.err("the table directory")
}

// reader takes numbers off the front of a piece of a font. Past the end it
// gives zeros and remembers that it was asked too much.
type reader struct {
	data  []byte
	short bool
}

func (r *reader) bytes(n int) []byte {
	if n > len(r.data) {
		r.short, r.data = true, nil
		return make([]byte, n)
	}
	b := r.data[:n]
	r.data = r.data[n:]
	return b
}

func (r *reader) u8() uint8   { return r.bytes(1)[0] }
func (r *reader) u16() uint16 { return binary.BigEndian.Uint16(r.bytes(2)) }
func (r *reader) i16() int16  { return int16(r.u16()) }
func (r *reader) u32() uint32 { return binary.BigEndian.Uint32(r.bytes(4)) }

// err returns that the piece ended too early, or nil if it did not.
func (r *reader) err(what string) error {
	if r.short {
		return fmt.Errorf("%s ends too early", what)
	}
	return nil
}
