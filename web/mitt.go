package web

import (
	"context"
	"errors"
	"net/http"
	"net/url"
	"strconv"
	"time"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// numberIn returns a number from the address, or a fault with the message none.
func numberIn(r *http.Request, name, none string) (int64, error) {
	id, err := strconv.ParseInt(chi.URLParam(r, name), 10, 64)
	if err != nil || id < 1 {
		return 0, fault.New(fault.NotFound, "%s", none)
	}
	return id, nil
}

// mittID returns the number of the mitt in the address.
func mittID(r *http.Request) (int64, error) {
	return numberIn(r, "id", "There is no mitt at this address.")
}

// toMitt redirects to a page of a mitt.
func toMitt(w http.ResponseWriter, r *http.Request, id int64, below string) error {
	http.Redirect(w, r, view.MittAt(id, below), http.StatusSeeOther)
	return nil
}

// typed reads a form about the mitt in the address.
func typed(r *http.Request) (id int64, form app.Typed, err error) {
	if id, err = mittID(r); err != nil {
		return 0, nil, err
	}
	if err := r.ParseForm(); err != nil {
		return 0, nil, bodyFault(err)
	}
	return id, app.Typed(r.PostForm), nil
}

// logDegraded logs what a page lacks, unless it lacks it only because nobody
// waits for the page any more.
func (s *Server) logDegraded(ctx context.Context, lacks error) {
	if lacks != nil && ctx.Err() == nil {
		s.log.Error("a page is not whole", "error", lacks)
	}
}

// saveMitt saves the measure form. A script is told the revision; after a plain
// form the page is shown again.
func (s *Server) saveMitt(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	revision, err := s.app.SaveNumbers(r.Context(), id, form)
	var fields fault.Fields
	conflict := fault.KindOf(err) == fault.Conflict
	if err != nil && !wantsJSON(r) && (conflict || errors.As(err, &fields)) {
		u, err := s.app.Unsaved(r.Context(), id, form)
		if err != nil {
			return err
		}
		s.logDegraded(r.Context(), u.Lacks)
		if conflict {
			return page(w, r, http.StatusConflict, view.FitPage(view.NewContested(u)))
		}
		return page(w, r, http.StatusBadRequest, view.FitPage(view.NewMitt(u.Mitt, view.FitDesk, view.ChartAsk{})))
	}
	return saved(w, r, id, revision, err, "")
}

// saved answers a form that was saved: a script gets the revision, a browser
// the page it came from.
func saved(w http.ResponseWriter, r *http.Request, id, revision int64, err error, below string) error {
	if err != nil {
		return err
	}
	if wantsJSON(r) {
		writeJSON(w, http.StatusOK, map[string]any{"revision": revision, "saved": time.Now().Format("15:04")})
		return nil
	}
	return toMitt(w, r, id, below)
}

// preview answers a change of the form with the fragments of the page that
// follow from it; after a stroke, with those that follow from the chart.
// Nothing is saved.
func (s *Server) preview(w http.ResponseWriter, r *http.Request) error {
	id, form, err := typed(r)
	if err != nil {
		return err
	}
	var desk view.Desk // none: the parts of all desks
	if name := r.URL.Query().Get("desk"); view.IsDesk(name) {
		desk = view.Desk(name)
	}
	preview := s.app.Preview
	switch desk {
	case "", view.FitDesk:
		preview = s.app.PreviewFit
	case view.ChartDesk:
		preview = s.app.PreviewChart
	}
	m, err := preview(r.Context(), id, form)
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), m.Lacks)
	if r.URL.Query().Get("after") == "stroke" {
		return page(w, r, http.StatusOK, view.StrokeFragments(view.AfterStroke(m, desk, chartAsk(r))))
	}
	return page(w, r, http.StatusOK, view.Fragments(view.NewMitt(m, desk, chartAsk(r))))
}

func (s *Server) sheetJSON(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	raw, err := s.app.SheetJSON(r.Context(), id)
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	_, err = w.Write(raw)
	return err
}

// answerMitt takes the answer to a question about a measurement of a mitt, and
// redirects to its print page.
func (s *Server) answerMitt(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	form := r.PostForm
	if err := s.app.AnswerQuestion(r.Context(), id, form.Get("path"), form.Get("text"), form.Get("answer") == "yes"); err != nil {
		return err
	}
	return toMitt(w, r, id, "/desk/pattern")
}

// chartAsk returns which chart of a mitt the address asks for, and how it is
// drawn.
func chartAsk(r *http.Request) view.ChartAsk { return view.ReadChartAsk(r.URL.Query()) }

// lastChart is the cookie in which a page keeps the query of the chart that it
// shows. It is sent to the pages of its mitt only.
const lastChart = "chart"

// chartAgain is chartAsk for the chart's desk: an address that asks for nothing
// shows what this browser saw last.
func chartAgain(r *http.Request) view.ChartAsk {
	asked := chartAsk(r)
	if asked != (view.ChartAsk{}) {
		return asked
	}
	c, err := r.Cookie(lastChart)
	if err != nil {
		return asked
	}
	text, err := url.QueryUnescape(c.Value)
	if err != nil {
		return asked
	}
	q, err := url.ParseQuery(text)
	if err != nil {
		return asked
	}
	return view.ReadChartAsk(q)
}
