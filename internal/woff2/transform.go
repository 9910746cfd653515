package woff2

import (
	"encoding/binary"
	"errors"
	"fmt"
	"slices"
)

// packedFont is the bit of the flags of head that says that the font went
// through a lossless packing (section 5, and OpenType, "head").
const packedFont = 1 << 11

// outlines are the glyphs of a font with what their tables need of each other.
type outlines struct {
	glyphs  []glyph
	long    bool // whether loca has four bytes for each glyph
	advance int  // number of glyphs with an advance of their own in hmtx
}

// transform returns the tables as they go into the file, in the same order.
func transform(tables []table) ([]entry, error) {
	tables = slices.DeleteFunc(slices.Clone(tables), func(t table) bool { return t.tag == "DSIG" })
	f, err := readOutlines(tables)
	if err != nil {
		return nil, err
	}
	entries := make([]entry, len(tables))
	for i, t := range tables {
		e := entry{tag: t.tag, original: len(t.data), content: t.data}
		switch t.tag {
		case "head":
			e.content = slices.Clone(t.data)
			e.content[16] |= packedFont >> 8
		case "glyf":
			e.content, e.transformed = f.glyf(), true
		case "loca":
			e.content, e.transformed = nil, true // follows from glyf
		case "hmtx":
			if content, ok := f.hmtx(t.data); ok {
				e.content, e.transformed, e.version = content, true, 1
			}
		}
		entries[i] = e
	}
	return entries, nil
}

// readOutlines reads the glyphs and the numbers that say how they are stored.
func readOutlines(tables []table) (outlines, error) {
	data := map[string][]byte{}
	for _, t := range tables {
		data[t.tag] = t.data
	}
	for tag, least := range map[string]int{"head": 54, "hhea": 36, "maxp": 6, "hmtx": 0, "loca": 0, "glyf": 0} {
		if have, ok := data[tag]; !ok || len(have) < least {
			return outlines{}, fmt.Errorf("table %q is missing or too short", tag)
		}
	}
	f := outlines{
		long:    binary.BigEndian.Uint16(data["head"][50:]) != 0,
		advance: int(binary.BigEndian.Uint16(data["hhea"][34:])),
	}
	count := int(binary.BigEndian.Uint16(data["maxp"][4:]))
	if f.advance == 0 || f.advance > count || len(data["hmtx"]) != 2*(f.advance+count) {
		return outlines{}, errors.New(`table "hmtx" does not fit the number of glyphs`)
	}
	pieces, err := split(data["glyf"], data["loca"], count, f.long)
	if err != nil {
		return outlines{}, err
	}
	f.glyphs = make([]glyph, count)
	for i, piece := range pieces {
		if f.glyphs[i], err = readGlyph(piece); err != nil {
			return outlines{}, fmt.Errorf("glyph %d: %w", i, err)
		}
	}
	return f, nil
}

// split cuts glyf into its glyphs at the offsets of loca.
func split(glyf, loca []byte, count int, long bool) ([][]byte, error) {
	r := reader{data: loca}
	width, next := 2, func() int { return 2 * int(r.u16()) }
	if long {
		width, next = 4, func() int { return int(r.u32()) }
	}
	if len(loca) != width*(count+1) {
		return nil, errors.New(`table "loca" does not fit the number of glyphs`)
	}
	pieces := make([][]byte, count)
	from := next()
	for i := range pieces {
		to := next()
		if from > to || to > len(glyf) {
			return nil, fmt.Errorf("glyph %d lies outside glyf", i)
		}
		pieces[i] = glyf[from:to]
		from = to
	}
	return pieces, nil
}

// hmtx returns the table of advances without the left side bearings (section
// 5.4), which a reader takes from the leftmost point of each glyph, and reports
// whether they are that in the whole font.
func (f outlines) hmtx(table []byte) ([]byte, bool) {
	const noBearings = 3 // bit 0: of glyphs with an advance, bit 1: of those without
	content := []byte{noBearings}
	r := reader{data: table}
	for i, g := range f.glyphs {
		if i < f.advance {
			content = append(content, r.bytes(2)...)
		}
		if r.i16() != g.box[0] {
			return nil, false
		}
	}
	return content, true
}
