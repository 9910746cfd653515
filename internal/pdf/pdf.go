// Package pdf writes scenes of package draw as a PDF, with the same marks as
// draw.WriteSVG and the bundled faces embedded.
package pdf

import (
	"cmp"
	"context"
	"io"
	"iter"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"thenar/internal/draw"
	"thenar/internal/fault"
)

// point is a typographic point in mm: 1/72 in.
const point = 25.4 / 72

// written is the date in every file, so that the same pages always make the same
// bytes.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// About is what a PDF says of itself. Language is a tag of BCP 47; empty: English.
type About struct{ Title, Author, Language string }

// Write writes scenes as a PDF, each on a page of its own size in mm, with their
// headings as its outline. It returns
// the letters that the face lacks, each once; they are printed as empty boxes.
// The content of all pages is held in memory, uncompressed, until the end, so
// the caller bounds their number. If ctx ends, Write fails before it has written
// anything.
func Write(ctx context.Context, w io.Writer, about About, pages iter.Seq[*draw.Scene]) (missing string, err error) {
	defer fault.Wrap(&err, "pdf.Write")
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetTitle(inUTF16(about.Title), false)
	if about.Author != "" {
		f.SetAuthor(inUTF16(about.Author), false)
	}
	f.SetCreator("Thenar", true)
	f.SetProducer("Thenar", true)
	f.SetLang(cmp.Or(about.Language, "en"))
	f.SetCreationDate(written)
	f.SetModificationDate(written)
	f.SetCatalogSort(true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCompression(true)
	for _, face := range draw.Faces {
		f.AddUTF8FontFromBytes(face.Family(), style(face), face.TrueType())
	}
	p := painter{f: f, missing: map[rune]bool{}}
	for s := range pages {
		if ctx.Err() != nil {
			break
		}
		p.page(s)
	}
	if ctx.Err() != nil {
		return "", ctx.Err()
	}
	p.outline()
	if err := f.Output(w); err != nil {
		return "", err
	}
	return p.letters(), nil
}

// letters returns the missing letters in the order of their first use.
func (p *painter) letters() string {
	var b strings.Builder
	for _, r := range p.order {
		b.WriteRune(r)
	}
	return b.String()
}
