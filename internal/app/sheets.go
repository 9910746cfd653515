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
	"thenar/internal/words"
)

// Layout says how sheets are laid out, by the query of an address. What is
// asked there wins over what was kept.
type Layout struct {
	Asked url.Values
	Final bool // no page can ask again: what can't be read or used is an error
}

// Sheets are printed sheets, with how they are laid out.
type Sheets struct {
	Name             string // of the mitt or the class
	Options          paper.Options
	Typed            url.Values       // the options as they were asked for
	Faults           error            // which of these can't be used; the others stand
	Kept             bool             // Options are those that were kept
	Asks             []sheet.Question // that have to be answered before anything is printed
	Trouble          []string         // why nothing is printed, or not all
	Lacks            error            // why what a try changed is missing
	Motifs           bool             // some are laid by rule, and charts may show one of each, boxed
	Author, Language string           // as a PDF tells them; empty: nobody, English
	scenes           iter.Seq[*draw.Scene]
}

// languageOf returns the tag of the English in which terms are.
func languageOf(t words.Terms) string {
	if t == words.UK {
		return "en-GB"
	}
	return "en-US"
}

// sheets reads how sheets are laid out: as asked, and as kept where nothing is
// asked.
func (l Layout) sheets(name, kept string) (Sheets, error) {
	q := l.Asked
	if l.Final || !q.Has("paper") { // a form with "paper" sends every option itself
		q = over(q, kept)
	}
	o, err := paper.Read(q)
	if err != nil && l.Final {
		return Sheets{}, err
	}
	return Sheets{Name: name, Options: o, Typed: q, Faults: err, Kept: kept == o.Query().Encode()}, nil
}

// over returns the kept options, with those that are asked for in their place.
func over(asked url.Values, kept string) url.Values {
	q, err := url.ParseQuery(kept)
	if err != nil {
		q = url.Values{}
	}
	maps.Copy(q, asked)
	return q
}

// keptLayout checks options that are to be kept, and returns them in canonical
// form.
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

// ask shows questions instead of the sheets. If no page can ask them, it
// returns a fault that says where to answer.
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

// unsure returns a fault for each open question that says where to answer it,
// since nothing is printed until then.
func unsure(asks []sheet.Question, where string) error {
	var faults fault.Fields
	for _, q := range asks {
		_, words, _ := strings.Cut(q.Words, ": ")
		faults.Add(q.Path, "%s Nothing is printed until somebody says yes on %s", words, where)
	}
	return faults.Err()
}

// lay sets the pages of the sheets.
func (s *Sheets) lay(pages []*draw.Scene) {
	if len(pages) > 0 {
		s.scenes = slices.Values(pages)
	}
}

// Empty reports whether there is nothing to print.
func (s Sheets) Empty() bool { return s.scenes == nil }

// Begins returns for each page the first part that begins on it; "" where none does.
func (s Sheets) Begins() (list []string) {
	for p := range s.Pages() {
		first := ""
		if len(p.scene.Headings) > 0 {
			first = p.scene.Headings[0].Text
		}
		list = append(list, first)
	}
	return list
}

// Page is one printed page.
type Page struct{ scene *draw.Scene }

// Label returns what the page is.
func (p Page) Label() string { return p.scene.Label }

// WriteSVG writes the page as SVG, sized in mm.
func (p Page) WriteSVG(w io.Writer) error { return draw.WriteSVG(w, p.scene, true) }

// Pages returns the pages in order. Some are laid out only as they are asked
// for.
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

// SVG returns the pages as SVG, those before the first one empty, and the letters
// that the typeface of a PDF lacks. Pages are counted from 0.
func (s Sheets) SVG(ctx context.Context, first int) (pages []string, lacking string, err error) {
	var lacks []rune
	for p := range s.Pages() {
		if err := ctx.Err(); err != nil {
			return nil, "", err
		}
		var b strings.Builder
		if len(pages) >= first {
			if err := p.WriteSVG(&b); err != nil {
				return nil, "", err
			}
		}
		pages, lacks = append(pages, b.String()), p.lacks(lacks)
	}
	return pages, string(lacks), nil
}

// lacks appends the letters of the page that the typeface of a PDF doesn't
// have.
func (p Page) lacks(list []rune) []rune {
	p.scene.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) {
		for _, r := range i.Text {
			if !i.Letter.Face.Has(r) && !slices.Contains(list, r) {
				list = append(list, r)
			}
		}
	})
	return list
}

// WritePDF writes all pages as one PDF, and returns the letters that its
// typeface lacks. Sheets without a page are refused.
func (s Sheets) WritePDF(ctx context.Context, w io.Writer, title string) (lacking string, err error) {
	if s.Empty() {
		return "", fault.New(fault.Invalid, "There is nothing to print yet. %s", strings.Join(s.Trouble, " "))
	}
	return pdf.Write(ctx, w, pdf.About{Title: title, Author: s.Author, Language: s.Language}, s.scenes)
}
