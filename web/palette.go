package web

import (
	"net/http"
	"strconv"

	"thenar/internal/fault"
	"thenar/web/view"
)

// showPalettes offers the yarns of other mitts.
func (s *Server) showPalettes(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	p, err := s.app.Palettes(r.Context(), id)
	if err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.PalettesPage(p))
}

// bringYarns lays another mitt's yarns into the empty places of a mitt, and
// redirects to its chart.
func (s *Server) bringYarns(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	from, err := strconv.ParseInt(r.PostForm.Get("from"), 10, 64)
	if err != nil {
		return fault.New(fault.Invalid, "from: is %.20q; write the number of a mitt", r.PostForm.Get("from"))
	}
	if err := s.app.BringYarns(r.Context(), id, from); err != nil {
		return err
	}
	http.Redirect(w, r, view.ChartDesk.At(id), http.StatusSeeOther)
	return nil
}
