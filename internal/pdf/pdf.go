// Package pdf writes draw's scenes as a PDF: the very same marks that WriteSVG
// writes, with the bundled faces in it.
package pdf

import (
	"context"
	"io"
	"iter"
	"strings"
	"time"

	"codeberg.org/go-pdf/fpdf"

	"thenar/internal/draw"
	"thenar/internal/fault"
)

// point is a point of typography in mm: 1/72 in.
const point = 25.4 / 72

// face is the name of the bundled face within the file.
const face = "Go"

// written is the date in every file: the same pages make the same bytes,
// whenever they are written.
var written = time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC)

// Write writes scenes as a PDF, each as a page of its own size in mm. Missing
// are the letters that the face lacks, each once; they come out as empty boxes.
// Of a scene nothing is held but what the file says of it, uncompressed, until
// the end: bound the pages of one file. It fails with what w fails with, and
// with ctx, before anything is written.
func Write(ctx context.Context, w io.Writer, title string, pages iter.Seq[*draw.Scene]) (missing string, err error) {
	defer fault.Wrap(&err, "pdf.Write")
	f := fpdf.NewCustom(&fpdf.InitType{UnitStr: "mm", Size: fpdf.SizeType{Wd: 210, Ht: 297}})
	f.SetTitle(inUTF16(title), false)
	f.SetCreator("Thenar", true)
	f.SetProducer("Thenar", true)
	f.SetLang("en")
	f.SetCreationDate(written)
	f.SetModificationDate(written)
	f.SetCatalogSort(true)
	f.SetMargins(0, 0, 0)
	f.SetAutoPageBreak(false, 0)
	f.SetCompression(true)
	regular, bold := draw.Faces()
	f.AddUTF8FontFromBytes(face, "", regular)
	f.AddUTF8FontFromBytes(face, "B", bold)
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
	if err := f.Output(w); err != nil {
		return "", err
	}
	return p.letters(), nil
}

// letters are the missing ones in the order in which they were met.
func (p *painter) letters() string {
	var b strings.Builder
	for _, r := range p.order {
		b.WriteRune(r)
	}
	return b.String()
}
