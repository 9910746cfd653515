package woff2

import "slices"

// known are the tags that the directory names by their number in this list
// (section 4.1, "Known Table Tags").
var known = []string{
	"cmap", "head", "hhea", "hmtx", "maxp", "name", "OS/2", "post", "cvt ", "fpgm", "glyf", "loca", "prep",
	"CFF ", "VORG", "EBDT", "EBLC", "gasp", "hdmx", "kern", "LTSH", "PCLT", "VDMX", "vhea", "vmtx", "BASE",
	"GDEF", "GPOS", "GSUB", "EBSC", "JSTF", "MATH", "CBDT", "CBLC", "COLR", "CPAL", "SVG ", "sbix", "acnt",
	"avar", "bdat", "bloc", "bsln", "cvar", "fdsc", "feat", "fmtx", "fvar", "gvar", "hsty", "just", "lcar",
	"mort", "morx", "opbd", "prop", "trak", "Zapf", "Silf", "Glat", "Gloc", "Feat", "Sill",
}

// spelledOut stands for a tag that is not in the list and follows in letters.
const spelledOut = 63

// entry is a table as it goes into the file.
type entry struct {
	tag         string
	original    int    // its length in bytes in the TrueType file
	content     []byte // what is packed of it
	transformed bool   // whether content is written in another way than the table
	version     byte   // the number of that way, 0 to 3
}

// appendTo appends the entry of the table directory (section 4.1).
func (e entry) appendTo(b []byte) []byte {
	if at := slices.Index(known, e.tag); at >= 0 {
		b = append(b, e.version<<6|byte(at))
	} else {
		b = append(append(b, e.version<<6|spelledOut), e.tag...)
	}
	b = appendBase128(b, uint32(e.original))
	if e.transformed {
		b = appendBase128(b, uint32(len(e.content)))
	}
	return b
}
