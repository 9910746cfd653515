package web

import (
	"bytes"
	"net/http"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// showPattern shows the words of a mitt, and its handout laid out as the address
// asks, or otherwise as was kept.
func (s *Server) showPattern(w http.ResponseWriter, r *http.Request, id int64) error {
	m, sheets, err := s.app.Pattern(r.Context(), id, app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), m.Lacks)
	p, err := s.drawn(r, id, sheets, 0)
	if err != nil {
		return err
	}
	if r.URL.Query().Get("all") == "" {
		p.Hold(view.MittAt(id, "/sheets"))
	}
	return page(w, r, http.StatusOK, view.PatternPage(view.NewMitt(m, view.PatternDesk, view.ChartAsk{}), p))
}

// showSheets answers with the sheets of a handout that were held back when its
// page was sent, from the one in the address on.
func (s *Server) showSheets(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	from, err := strconv.ParseUint(r.URL.Query().Get("from"), 10, 16)
	if err != nil {
		return fault.New(fault.Invalid, "from: is %.20q; write the number of a page, counted from 0", r.URL.Query().Get("from"))
	}
	sheets, err := s.app.Handout(r.Context(), id, app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	p, err := s.drawn(r, id, sheets, int(from))
	if err != nil {
		return err
	}
	p.HoldFrom(int(from))
	return page(w, r, http.StatusOK, view.HeldSheets(p))
}

// drawn returns the page of a mitt's handout with its sheets drawn, from the
// first one on.
func (s *Server) drawn(r *http.Request, id int64, sheets app.Sheets, first int) (p view.Print, err error) {
	s.logDegraded(r.Context(), sheets.Lacks)
	p = view.NewHandoutPrint(id, sheets)
	p.Pages, p.Lacking, err = sheets.SVG(r.Context(), first)
	return p, err
}

// printMitt answers with the handout of a mitt as a PDF.
func (s *Server) printMitt(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	sheets, err := s.app.Handout(r.Context(), id, app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewHandoutPrint(id, sheets), sheets)
}

// keepPrint saves how the handout of a mitt is laid out.
func (s *Server) keepPrint(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	revision, err := s.app.KeepPrint(r.Context(), id, r.PostForm.Get("print"))
	return saved(w, r, id, revision, err, "/desk/pattern")
}

// printWall shows a chart of a mitt for the wall.
func (s *Server) printWall(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	c, err := s.app.WallChart(r.Context(), id, app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewWallPrint(id, c), c.Sheets)
}

// printSizes shows a mitt's design for several hands and gauges.
func (s *Server) printSizes(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	t, err := s.app.SizeTable(r.Context(), id, app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewSizesPrint(id, t), t.Sheets)
}

// printMeasuring shows the sheet on which a hand is measured.
func (s *Server) printMeasuring(w http.ResponseWriter, r *http.Request) error {
	sheets, err := app.MeasuringSheet(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewMeasuringPrint(sheets), sheets.Sheets)
}

// printRuler shows rulers for swatches.
func (s *Server) printRuler(w http.ResponseWriter, r *http.Request) error {
	sheets, err := app.Ruler(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewBlankPrint(sheets, "Swatch ruler", "/paper/ruler"), sheets)
}

// printGrid shows blank grid paper in the proportions of the gauge in the
// address.
func (s *Server) printGrid(w http.ResponseWriter, r *http.Request) error {
	g, err := app.GridPaper(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewGridPrint(g), g.Sheets)
}

// printed answers with sheets: as a PDF if the address ends in .pdf, otherwise
// as a page of the browser.
func (s *Server) printed(w http.ResponseWriter, r *http.Request, p view.Print, sheets app.Sheets) (err error) {
	s.logDegraded(r.Context(), sheets.Lacks)
	if !asPDF(r) {
		if p.Pages, p.Lacking, err = sheets.SVG(r.Context(), 0); err != nil {
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
