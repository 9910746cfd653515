package web

import (
	"bytes"
	"context"
	"fmt"
	"iter"
	"maps"
	"net/http"
	"net/url"
	"slices"
	"strings"

	"thenar/internal/app"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/pdf"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/web/view"
)

// printMitt shows the handout of a mitt, laid out as the address asks, or as
// was kept.
func (s *Server) printMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	o, p := printOptions(r, doc.Print)
	p.Title, p.BackName = "Print "+doc.Name, doc.Name
	p.Back = fmt.Sprintf("/mitts/%d", m.ID)
	p.Action, p.Handout, p.Keep = p.Back+"/print", true, p.Back+"/print"
	p.More = []view.Choice{{Value: p.Back + "/sizes", Words: "table of sizes"}, {Value: p.Back + "/wall", Words: "wall chart"}, {Value: "/paper/measure", Words: "measuring sheet"}, {Value: "/paper/ruler", Words: "swatch ruler"}}
	if asks := doc.Questions(); len(asks) > 0 {
		p.Ask(p.Back+"/sure", asks)
		return s.sheets(w, r, p, nil)
	}
	sheet, err := s.sheet(r.Context(), m, doc, o)
	if err != nil {
		return err
	}
	return s.sheets(w, r, p, paper.Handout(sheet, o))
}

// sheet is what a handout of a mitt is about. There is none as long as there is
// a question about its hand.
func (s *Server) sheet(ctx context.Context, m store.Mitt, doc project.Document, o paper.Options) (paper.Sheet, error) {
	if err := unsure(doc.Questions(), "its print page"); err != nil {
		return paper.Sheet{}, err
	}
	doc.FromLeft = o.FromLeft
	out, err := s.outputs(ctx, m, doc)
	if out == nil {
		return paper.Sheet{}, fault.New(fault.Invalid, "There is no plan to print yet. In the way: %s", fault.Message(err))
	}
	s.logDegraded(ctx, err)
	return paper.Sheet{Doc: doc, Out: out, Needle: doc.Sheet.Given("gauge.swatches[0].needle")}, nil
}

// Handout returns the sheets of a mitt's handout as the print page shows them;
// what is asked goes before what was kept.
func (s *Server) Handout(ctx context.Context, id int64, asked url.Values) (app.Sheets, error) {
	m, doc, err := s.mitt(ctx, id)
	if err != nil {
		return app.Sheets{}, err
	}
	o, err := paper.Read(before(asked, doc.Print))
	if err != nil {
		return app.Sheets{}, err
	}
	sheet, err := s.sheet(ctx, m, doc, o)
	if err != nil {
		return app.Sheets{}, err
	}
	return app.SheetsOf(doc.Name, paper.Handout(sheet, o)), nil
}

// keepPrint keeps how the handout of a mitt is laid out.
func (s *Server) keepPrint(w http.ResponseWriter, r *http.Request) error {
	kept, err := postedPrint(r)
	if err != nil {
		return err
	}
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	doc.Print = kept
	if _, err := s.saveDoc(r.Context(), m.ID, m.Decided, doc); err != nil {
		return err
	}
	http.Redirect(w, r, fmt.Sprintf("/mitts/%d/print", m.ID), http.StatusSeeOther)
	return nil
}

// postedPrint reads the options that a form sends to be kept, checked and
// written anew.
func postedPrint(r *http.Request) (string, error) {
	if err := r.ParseForm(); err != nil {
		return "", bodyFault(err)
	}
	q, err := url.ParseQuery(r.PostForm.Get("print"))
	if err != nil {
		return "", fault.New(fault.Invalid, "print: is no list of options; lay the sheets out again")
	}
	o, err := paper.Read(q)
	if err != nil {
		return "", err
	}
	return o.Query().Encode(), nil
}

// printOptions reads how sheets are laid out from an address; without any, as
// it was kept. What can't be read is told at its field, and the rest stands.
func printOptions(r *http.Request, kept string) (paper.Options, view.Print) {
	q := r.URL.Query()
	if !q.Has("paper") { // else a form has said all of it
		q = before(q, kept)
	}
	o, err := paper.Read(q)
	p := view.Print{Options: o, Faults: map[string]string{}, Typed: q.Get, Kept: kept == o.Query().Encode()}
	p.Blame(err)
	return o, p
}

// before are options that were kept, with those that are asked in their place.
func before(asked url.Values, kept string) url.Values {
	q, err := url.ParseQuery(kept)
	if err != nil {
		q = url.Values{}
	}
	maps.Copy(q, asked)
	return q
}

// sheets answers with printed pages: as a page of the browser, or, at an
// address that ends so, as a PDF.
func (s *Server) sheets(w http.ResponseWriter, r *http.Request, p view.Print, pages []*draw.Scene) error {
	if len(pages) == 0 && asPDF(r) {
		return fault.New(fault.Invalid, "There is nothing to print yet. %s", strings.Join(p.Trouble, " "))
	}
	return s.stream(w, r, p, slices.Values(pages))
}

// printed answers with printed sheets: as a page of the browser, or, at an
// address that ends so, as a PDF.
func (s *Server) printed(w http.ResponseWriter, r *http.Request, p view.Print, sheets app.Sheets) (err error) {
	if !asPDF(r) {
		if p.Pages, p.Lacking, err = sheets.SVG(r.Context()); err != nil {
			return err
		}
		return page(w, r, http.StatusOK, view.PrintPage(p))
	}
	var b bytes.Buffer
	if _, err := sheets.WritePDF(r.Context(), &b, p.Title); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/pdf")
	keepAs(w, "inline", p.Title, ".pdf")
	_, err = b.WriteTo(w)
	return err
}

func asPDF(r *http.Request) bool { return strings.HasSuffix(r.URL.Path, ".pdf") }

// stream is sheets for pages that are laid out as they are asked for, as long
// as somebody waits for them. At least one comes.
func (s *Server) stream(w http.ResponseWriter, r *http.Request, p view.Print, pages iter.Seq[*draw.Scene]) error {
	if !asPDF(r) {
		var lacking letters
		for scene := range pages {
			if err := r.Context().Err(); err != nil {
				return err
			}
			lacking.look(scene)
			p.Pages = append(p.Pages, view.SVG(scene, true))
		}
		p.Lacking = string(lacking)
		return page(w, r, http.StatusOK, view.PrintPage(p))
	}
	var b bytes.Buffer
	if _, err := pdf.Write(r.Context(), &b, p.Title, pages); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/pdf")
	keepAs(w, "inline", p.Title, ".pdf")
	_, err := b.WriteTo(w)
	return err
}

// letters are those of pages that the face of a PDF doesn't have.
type letters []rune

// look adds those of a page.
func (l *letters) look(scene *draw.Scene) {
	scene.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) {
		for _, r := range i.Text {
			if !draw.Has(r, i.Letter.Bold) && !slices.Contains(*l, r) {
				*l = append(*l, r)
			}
		}
	})
}
