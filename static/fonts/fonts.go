// Package fonts holds the faces of page and paper as TrueType: Source Sans 3
// for text, Source Serif 4 for headings. Both are by Adobe, under the SIL Open
// Font License 1.1 (OFL-Source-Sans-3.txt and OFL-Source-Serif-4.txt beside
// this file), whole and unchanged: a changed face could not keep the name. The
// same faces lie here as WOFF2, which package static serves with the licences.
package fonts

import _ "embed" // the directives below

// SansRegular is Source Sans 3 Regular as TrueType, version 3.052 by its name
// table.
//
//go:embed SourceSans3-Regular.ttf
var SansRegular []byte

// SansSemiBold is Source Sans 3 SemiBold as TrueType, version 3.052 by its name
// table.
//
//go:embed SourceSans3-SemiBold.ttf
var SansSemiBold []byte

// SerifSemiBold is Source Serif 4 SemiBold as TrueType, version 4.004 by its
// name table.
//
//go:embed SourceSerif4-SemiBold.ttf
var SerifSemiBold []byte
