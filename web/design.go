package web

import (
	"bytes"
	"context"
	"errors"
	"net/http"
	"net/url"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showDesign shows a mitt in its sizes.
func (s *Server) showDesign(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	d, err := s.app.OpenDesign(r.Context(), id)
	if err != nil {
		return err
	}
	return s.designPage(w, r, http.StatusOK, view.Design{Design: d})
}

// designPage answers with the page of a mitt in its sizes, and its proofs: the pages of what
// is saved. Where these can't be laid out, it says why in their place.
func (s *Server) designPage(w http.ResponseWriter, r *http.Request, status int, d view.Design) (err error) {
	if d.Classes, err = s.app.ClassesOfSizes(r.Context()); err != nil {
		return err
	}
	if d.Graded == nil {
		return page(w, r, status, view.DesignPage(d))
	}
	sheets, err := s.app.PatternPages(r.Context(), d.ID, app.PatternAsk{Pictures: view.MittAt(d.ID, view.DesignBelow+"/photo/")}, app.Layout{Asked: r.URL.Query()})
	if fault.KindOf(err) == fault.Invalid {
		d.Proofs.Trouble = []string{fault.Message(err)}
	} else if err != nil {
		return err
	}
	if err == nil {
		d.Proofs, d.Begins = view.NewPatternPrint(d.ID, sheets), sheets.Begins()
		if d.Proofs.Pages, d.Proofs.Lacking, err = sheets.SVG(r.Context(), 0); err != nil {
			return err
		}
	}
	return page(w, r, status, view.DesignPage(d))
}

// savePatternTexts saves what was typed for the pattern.
func (s *Server) savePatternTexts(w http.ResponseWriter, r *http.Request) error {
	return s.changeDesign(w, r, func(ctx context.Context, id int64, form app.Typed, _ url.Values) (app.Design, error) {
		return s.app.SavePattern(ctx, id, form)
	})
}

// saveDesign saves what was typed of the sizes.
func (s *Server) saveDesign(w http.ResponseWriter, r *http.Request) error {
	return s.changeDesign(w, r, func(ctx context.Context, id int64, form app.Typed, _ url.Values) (app.Design, error) {
		return s.app.SaveDesign(ctx, id, form)
	})
}

// fillDesign fills the sizes from a standard.
func (s *Server) fillDesign(w http.ResponseWriter, r *http.Request) error {
	return s.changeDesign(w, r, func(ctx context.Context, id int64, form app.Typed, f url.Values) (app.Design, error) {
		set := f.Get(app.FillField("set"))
		bound := func(name string) string { return f.Get(app.FillField(set + "." + name)) }
		return s.app.FillSizes(ctx, id, form, app.SizeSet(set), bound("from"), bound("to"), bound("step"))
	})
}

// listDesign adds sizes from a pasted list.
func (s *Server) listDesign(w http.ResponseWriter, r *http.Request) error {
	return s.changeDesign(w, r, func(ctx context.Context, id int64, form app.Typed, f url.Values) (app.Design, error) {
		return s.app.PasteSizes(ctx, id, form, f.Get(app.FillField("list")))
	})
}

// classDesign takes the hands of a class as sizes.
func (s *Server) classDesign(w http.ResponseWriter, r *http.Request) error {
	return s.changeDesign(w, r, func(ctx context.Context, id int64, form app.Typed, f url.Values) (app.Design, error) {
		of := func(name string) string { return f.Get(app.FillField("class" + name)) }
		return s.app.SizesOfClass(ctx, id, form, app.SizesAsk{
			Class: of(""), From: of(".from"), To: of(".to"), Numbered: of(".by") == "number", Gauges: of(".gauges") != "",
		})
	})
}

// changeDesign answers a change of the sizes: with the page again, or with what could not
// be saved, as it was typed, and why.
func (s *Server) changeDesign(w http.ResponseWriter, r *http.Request, change func(ctx context.Context, id int64, form app.Typed, f url.Values) (app.Design, error)) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	changed, err := change(r.Context(), id, form, r.PostForm)
	d := view.Design{Design: changed, Asked: r.PostForm}
	var fields fault.Fields
	switch {
	case err == nil:
		return toMitt(w, r, id, view.DesignBelow)
	case d.Doc.Sheet == nil:
		return err
	case fault.KindOf(err) == fault.Conflict:
		d.Message = fault.Message(err) + " What you typed stands below, not saved. Send it once more to save it over the other."
		return s.designPage(w, r, http.StatusConflict, d)
	case errors.As(err, &fields):
		return s.designPage(w, r, http.StatusBadRequest, d)
	}
	return err
}

// showSize shows one of the sizes on its hand.
func (s *Server) showSize(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	d, err := s.app.OpenDesign(r.Context(), id)
	if err != nil {
		return err
	}
	v := view.Design{Design: d}
	at, err := strconv.Atoi(chi.URLParam(r, "size"))
	if err != nil || !v.HasSize(at-1) {
		return fault.New(fault.NotFound, "This mitt has no such size, or it can't be made.")
	}
	return page(w, r, http.StatusOK, view.SizeOnHand(v, at-1))
}

// openSize begins a mitt with one of the sizes.
func (s *Server) openSize(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	size, err := s.app.OpenSize(r.Context(), id, r.PostForm.Get("size"))
	if err != nil {
		return err
	}
	return toMitt(w, r, size, "")
}

// patternTypes are the kinds of file in which a pattern is sent, with their media types.
var patternTypes = map[string]string{
	app.PlainText: "text/plain; charset=utf-8", app.Markdown: "text/markdown; charset=utf-8", app.HTML: "text/html; charset=utf-8",
}

// downloadPattern sends the text of a mitt for all its sizes as a file of a kind.
func (s *Server) downloadPattern(kind string) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		id, err := mittID(r)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		name, err := s.app.PatternFile(r.Context(), id, patternAsk(r.URL.Query()), kind, &b)
		if err != nil {
			return err
		}
		w.Header().Set("Content-Type", patternTypes[kind])
		keepAs(w, "attachment", name+", all sizes", "."+kind)
		_, err = b.WriteTo(w)
		return err
	}
}

// printPattern answers with a mitt in all its sizes as a PDF.
func (s *Server) printPattern(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	q := r.URL.Query()
	sheets, err := s.app.PatternPages(r.Context(), id, patternAsk(q), app.Layout{Asked: q})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewPatternPrint(id, sheets), sheets)
}

// patternAsk reads how the text is put from the query of an address.
func patternAsk(q url.Values) app.PatternAsk {
	return app.PatternAsk{Hand: q.Get("side"), ByRound: q.Has("rounds")}
}
