package web

import (
	"net/http"

	"github.com/go-chi/chi/v5"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// lastDesk is the cookie in which a browser remembers at which desk it last saw
// a mitt. It is sent to the pages of that mitt only.
const lastDesk = "desk"

// keepDesk is how long it is remembered, in seconds.
const keepDesk = 400 * 24 * 3600

// toDesk leads to the desk at which the work on a mitt is: Fit until there is a
// plan; then where this browser last saw it, or Knit if something is on the
// needles.
func (s *Server) toDesk(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	stage, err := s.app.Stage(r.Context(), id)
	if err != nil {
		return err
	}
	desk := view.FitDesk
	last, err := r.Cookie(lastDesk)
	switch {
	case chartAsk(r) != (view.ChartAsk{}):
		desk = view.ChartDesk // an earlier address of a chart
	case stage == app.Unplanned:
	case err == nil && view.IsDesk(last.Value):
		desk = view.Desk(last.Value)
	case stage == app.Knitting:
		desk = view.KnitDesk
	}
	return leadTo(w, r, desk, id)
}

// lead answers an earlier address with the desk to which it leads.
func lead(desk view.Desk) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		id, err := mittID(r)
		if err != nil {
			return err
		}
		return leadTo(w, r, desk, id)
	}
}

// leadNeedles answers the earlier address of Knit. A script that asks there is
// told where the knitting stands.
func (s *Server) leadNeedles(w http.ResponseWriter, r *http.Request) error {
	if !wantsJSON(r) {
		return lead(view.KnitDesk)(w, r)
	}
	id, err := mittID(r)
	if err != nil {
		return err
	}
	return s.showNeedles(w, r, id)
}

// leadTo redirects to a desk, with what the address asks for.
func leadTo(w http.ResponseWriter, r *http.Request, desk view.Desk, id int64) error {
	to := desk.At(id)
	if r.URL.RawQuery != "" {
		to += "?" + r.URL.RawQuery
	}
	http.Redirect(w, r, to, http.StatusSeeOther)
	return nil
}

// looked reports whether somebody looks at the page that a request asks for. A
// script that reads it, or a browser that fetches it ahead, does not. A browser
// without these headers is believed (Fetch Metadata Request Headers, W3C).
func looked(r *http.Request) bool {
	dest := r.Header.Get("Sec-Fetch-Dest")
	return (dest == "" || dest == "document") && r.Header.Get("Sec-Purpose") == ""
}

// showDesk shows a mitt at the desk in the address, and lets the browser
// remember it.
func (s *Server) showDesk(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	name := chi.URLParam(r, "desk")
	if !view.IsDesk(name) {
		return fault.New(fault.NotFound, "There is no desk at this address.")
	}
	others := w.Header().Values("Set-Cookie")
	if looked(r) {
		http.SetCookie(w, &http.Cookie{
			Name: lastDesk, Value: name, Path: view.MittAt(id, ""), MaxAge: keepDesk, HttpOnly: true, SameSite: http.SameSiteLaxMode,
		})
	}
	if err := s.atDesk(w, r, id, view.Desk(name)); err != nil {
		w.Header()["Set-Cookie"] = others
		return err
	}
	return nil
}

func (s *Server) atDesk(w http.ResponseWriter, r *http.Request, id int64, desk view.Desk) error {
	switch desk {
	case view.KnitDesk:
		return s.showNeedles(w, r, id)
	case view.TryDesk:
		return s.showTries(w, r, id)
	case view.PatternDesk:
		return s.heavy(func(w http.ResponseWriter, r *http.Request) error { return s.showPattern(w, r, id) })(w, r)
	}
	open := s.app.OpenFit
	if desk == view.ChartDesk {
		open = s.app.OpenChart
	}
	m, err := open(r.Context(), id)
	if err != nil {
		return err
	}
	s.logDegraded(r.Context(), m.Lacks)
	if desk == view.ChartDesk {
		return page(w, r, http.StatusOK, view.ChartPage(view.NewMitt(m, desk, chartAgain(r))))
	}
	return page(w, r, http.StatusOK, view.FitPage(view.NewMitt(m, desk, chartAsk(r))))
}
