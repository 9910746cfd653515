package app

import (
	"context"
	"io"
	"iter"
	"maps"
	"net/url"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/pdf"
	"thenar/internal/sheet"
)

// Layout says how sheets are laid out, as an address does: what is asked goes
// before what was kept.
type Layout struct {
	Asked url.Values
	Final bool // there is no page on which to ask again: what can't be read or used is an error
}

// Sheets are printed sheets, with how they are laid out.
type Sheets struct {
	Name    string // of what they are about
	Options paper.Options
	Typed   url.Values // the options as they were asked for
	Faults  error      // what of these can't be used; the rest stands
	Kept    bool       // these are the options that were kept
	Asks    []sheet.Question
	Trouble []string // why there is nothing to print, or less
	Lacks   error    // why they stand without what a try changed
	scenes  iter.Seq[*draw.Scene]
}

// sheets reads how sheets are laid out; without anything asked, as was kept.
func (l Layout) sheets(name, kept string) (Sheets, error) {
	q := l.Asked
	if l.Final || !q.Has("paper") { // else a form has said all of it
		q = over(q, kept)
	}
	o, err := paper.Read(q)
	if err != nil && l.Final {
		return Sheets{}, err
	}
	return Sheets{Name: name, Options: o, Typed: q, Faults: err, Kept: kept == o.Query().Encode()}, nil
}

// over are options that were kept, with those that are asked in their place.
func over(asked url.Values, kept string) url.Values {
	q, err := url.ParseQuery(kept)
	if err != nil {
		q = url.Values{}
	}
	maps.Copy(q, asked)
	return q
}

// keptLayout checks options that are to be kept, and writes them anew.
func keptLayout(text string) (string, error) {
	q, err := url.ParseQuery(text)
	if err != nil {
		return "", fault.New(fault.Invalid, "print: is no list of options; lay the sheets out again")
	}
	o, err := paper.Read(q)
	if err != nil {
		return "", err
	}
	return o.Query().Encode(), nil
}

// ask puts questions before the sheets. Who can't be asked is told where they
// are answered.
func (s *Sheets) ask(l Layout, asks []sheet.Question, where string) error {
	if l.Final {
		return unsure(asks, where)
	}
	s.Asks = asks
	for _, q := range asks {
		s.Trouble = append(s.Trouble, q.Words)
	}
	return nil
}

// unsure refuses to print as long as there are questions, and says where they
// are answered.
func unsure(asks []sheet.Question, where string) error {
	var faults fault.Fields
	for _, q := range asks {
		_, words, _ := strings.Cut(q.Words, ": ")
		faults.Add(q.Path, "%s Nothing is printed until somebody says yes on %s", words, where)
	}
	return faults.Err()
}

// lay puts pages that are laid out already on the sheets.
func (s *Sheets) lay(pages []*draw.Scene) {
	if len(pages) > 0 {
		s.scenes = slices.Values(pages)
	}
}

// Empty reports whether there is nothing to print.
func (s Sheets) Empty() bool { return s.scenes == nil }

// Page is one printed page.
type Page struct{ scene *draw.Scene }

// Label is what the page is.
func (p Page) Label() string { return p.scene.Label }

// WriteSVG writes the page as SVG, sized in mm.
func (p Page) WriteSVG(w io.Writer) error { return draw.WriteSVG(w, p.scene, true) }

// Pages returns the pages one after the other; they may be laid out as they are
// asked for.
func (s Sheets) Pages() iter.Seq[Page] {
	return func(yield func(Page) bool) {
		if s.Empty() {
			return
		}
		for scene := range s.scenes {
			if !yield(Page{scene}) {
				return
			}
		}
	}
}

// SVG returns all pages as SVG, and the letters that a PDF of them would lack.
func (s Sheets) SVG(ctx context.Context) (pages []string, lacking string, err error) {
	var lacks []rune
	for p := range s.Pages() {
		if err := ctx.Err(); err != nil {
			return nil, "", err
		}
		var b strings.Builder
		if err := p.WriteSVG(&b); err != nil {
			return nil, "", err
		}
		pages, lacks = append(pages, b.String()), p.lacks(lacks)
	}
	return pages, string(lacks), nil
}

// lacks adds the letters that the face of a PDF doesn't have.
func (p Page) lacks(list []rune) []rune {
	p.scene.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) {
		for _, r := range i.Text {
			if !draw.Has(r, i.Letter.Bold) && !slices.Contains(list, r) {
				list = append(list, r)
			}
		}
	})
	return list
}

// WritePDF writes all pages as one PDF, and returns the letters that its face
// lacks. Sheets without a page are refused.
func (s Sheets) WritePDF(ctx context.Context, w io.Writer, title string) (lacking string, err error) {
	if s.Empty() {
		return "", fault.New(fault.Invalid, "There is nothing to print yet. %s", strings.Join(s.Trouble, " "))
	}
	return pdf.Write(ctx, w, title, s.scenes)
}
