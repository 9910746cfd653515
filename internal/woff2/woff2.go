// Package woff2 packs a TrueType font for the web as the W3C's Recommendation
// "WOFF File Format 2.0" describes; the sections named in this package are
// those of its text. The files that the pages load from static/fonts are made
// here once, by a test, and committed: the program itself packs nothing.
package woff2

import (
	"bytes"
	"encoding/binary"
	"fmt"

	"github.com/andybalholm/brotli"
)

// headerSize is the length of the WOFF2 header in bytes (section 4.1).
const headerSize = 48

// Encode returns a TrueType font as WOFF2. Outlines, widths and everything else
// come back unchanged, but for the bit of the table head that says that the
// font was packed, and a signature, which would no longer hold. The same font
// gives the same bytes.
func Encode(ttf []byte) ([]byte, error) {
	tables, err := readTables(ttf)
	if err != nil {
		return nil, fmt.Errorf("woff2: %w", err)
	}
	entries, err := transform(tables)
	if err != nil {
		return nil, fmt.Errorf("woff2: %w", err)
	}
	var directory, content []byte
	for _, e := range entries {
		directory = e.appendTo(directory)
		content = append(content, e.content...)
	}
	packed, err := compress(content)
	if err != nil {
		return nil, fmt.Errorf("woff2: %w", err)
	}
	out := append(header(entries, len(directory), len(packed)), directory...)
	return pad(append(out, packed...)), nil
}

// header returns the WOFF2 header (section 4.1) of a file without metadata and
// private data.
func header(entries []entry, directory, packed int) []byte {
	unpacked := sfntHeader + sfntRecord*len(entries)
	for _, e := range entries {
		unpacked += padded(e.original)
	}
	h := make([]byte, 0, headerSize)
	h = append(h, "wOF2"...)
	h = binary.BigEndian.AppendUint32(h, trueType)
	h = binary.BigEndian.AppendUint32(h, uint32(padded(headerSize+directory+packed)))
	h = binary.BigEndian.AppendUint16(h, uint16(len(entries)))
	h = binary.BigEndian.AppendUint16(h, 0) // reserved
	h = binary.BigEndian.AppendUint32(h, uint32(unpacked))
	h = binary.BigEndian.AppendUint32(h, uint32(packed))
	return h[:headerSize] // version, metadata and private data are all zero
}

// compress packs the tables as one brotli stream (RFC 7932), as small as it
// can.
func compress(content []byte) ([]byte, error) {
	var out bytes.Buffer
	w := brotli.NewWriterOptions(&out, brotli.WriterOptions{Quality: brotli.BestCompression})
	if _, err := w.Write(content); err != nil {
		return nil, err
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
}

// padded returns a length in bytes, rounded up to whole words of four.
func padded(n int) int { return (n + 3) &^ 3 }

// pad appends zeros up to a whole word of four bytes.
func pad(b []byte) []byte { return append(b, make([]byte, padded(len(b))-len(b))...) }
