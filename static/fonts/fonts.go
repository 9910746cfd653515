// Package fonts holds the faces of page and paper as TrueType: Source Sans 3
// for text, Source Serif 4 for headings. Both are by Adobe, under the SIL Open
// Font License 1.1 (OFL-Source-Sans-3.txt and OFL-Source-Serif-4.txt beside
// this file), whole and unchanged: a changed face could not keep the name. The
// program carries them compressed (gzip -9 -n), and unpacks a face when it is
// first asked for. The same faces lie here as WOFF2, which package static serves
// with the licences.
package fonts

import (
	"bytes"
	"compress/gzip"
	_ "embed" // the directives below
	"io"
	"sync"
)

//go:embed SourceSans3-Regular.ttf.gz
var sansRegular []byte

//go:embed SourceSans3-SemiBold.ttf.gz
var sansSemiBold []byte

//go:embed SourceSerif4-SemiBold.ttf.gz
var serifSemiBold []byte

var (
	// SansRegular returns Source Sans 3 Regular as TrueType, version 3.052 by its
	// name table.
	SansRegular = sync.OnceValue(func() []byte { return unpacked(sansRegular) })

	// SansSemiBold returns Source Sans 3 SemiBold as TrueType, version 3.052 by its
	// name table.
	SansSemiBold = sync.OnceValue(func() []byte { return unpacked(sansSemiBold) })

	// SerifSemiBold returns Source Serif 4 SemiBold as TrueType, version 4.004 by
	// its name table.
	SerifSemiBold = sync.OnceValue(func() []byte { return unpacked(serifSemiBold) })
)

// unpacked returns a face that was compressed here.
func unpacked(face []byte) []byte {
	r, err := gzip.NewReader(bytes.NewReader(face))
	if err != nil {
		panic("fonts: " + err.Error()) // the file beside this one is damaged
	}
	whole, err := io.ReadAll(r)
	if err != nil {
		panic("fonts: " + err.Error())
	}
	return whole
}
