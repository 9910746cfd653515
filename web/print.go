package web

import (
	"net/http"

	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/web/view"
)

// printMitt shows the sheet of a mitt as pages of the paper asked for.
func (s *Server) printMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	name := r.URL.Query().Get("paper")
	if name == "" {
		name = paper.A4.Name
	}
	size, ok := paper.Named(name)
	if !ok {
		return fault.New(fault.Invalid, "paper is %.20q; choose a4 or letter.", name)
	}
	out, err := s.outputs(r.Context(), m, doc)
	if err != nil {
		return fault.New(fault.Invalid, "There is no plan to print yet. In the way: %s", fault.Message(err))
	}
	p := view.Print{ID: m.ID, Name: doc.Name, Paper: size.Name}
	for _, scene := range paper.Sheet(doc, out, size) {
		p.Pages = append(p.Pages, view.SVG(scene, true))
	}
	return page(w, r, http.StatusOK, view.PrintPage(p))
}
