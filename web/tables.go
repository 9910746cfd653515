package web

import (
	"fmt"
	"net/http"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/paper"
	"thenar/internal/units"
	"thenar/web/view"
)

// printMeasuring shows a measuring sheet.
func (s *Server) printMeasuring(w http.ResponseWriter, r *http.Request) error {
	sheets, err := app.MeasuringSheet(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewBlankPrint(sheets, "Measuring sheet", "/paper/measure"), sheets)
}

// printRuler shows rulers for swatches.
func (s *Server) printRuler(w http.ResponseWriter, r *http.Request) error {
	sheets, err := app.Ruler(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewBlankPrint(sheets, "Swatch ruler", "/paper/ruler"), sheets)
}

// printGrid shows blank grid paper in the proportions of a gauge that the
// address gives.
func (s *Server) printGrid(w http.ResponseWriter, r *http.Request) error {
	g, err := app.GridPaper(app.Layout{Asked: r.URL.Query()})
	if err != nil {
		return err
	}
	return s.printed(w, r, view.NewGridPrint(g), g.Sheets)
}

// printWall shows a chart of a mitt for the wall.
func (s *Server) printWall(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	o, p := printOptions(r, "")
	p.Title, p.Back, p.BackName = "Wall chart of "+doc.Name, fmt.Sprintf("/mitts/%d", m.ID), doc.Name
	p.Action = p.Back + "/wall"
	cell := r.URL.Query().Get("cell")
	if strings.TrimSpace(cell) == "" {
		cell = "15"
	}
	p.Fields = []view.PrintField{{Name: "cell", Label: "Cell", Unit: "mm", Value: cell}}
	sheet, err := s.sheet(r.Context(), m, doc, o)
	if err != nil {
		return err
	}
	v := chart.View(r.URL.Query().Get("view"))
	if views := sheet.Out.Charts.Views(); v == "" && len(views) > 0 {
		v = views[0]
	}
	pages := paper.Wall(sheet, o, v)
	if pages == nil {
		p.Trouble = []string{"This mitt has no such chart."}
	} else {
		p.Hidden = map[string]string{"view": string(v)}
	}
	return s.sheets(w, r, p, pages)
}

// printSizes shows the table of a mitt's design over hands and gauges.
func (s *Server) printSizes(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.load(r)
	if err != nil {
		return err
	}
	o, p := printOptions(r, "")
	p.Title, p.Back, p.BackName = "Sizes of "+doc.Name, fmt.Sprintf("/mitts/%d", m.ID), doc.Name
	p.Action = p.Back + "/sizes"
	unit := doc.Sheet.Unit()
	ask, err := grade.Read(r.URL.Query().Get, unit)
	p.Fields = sizeFields(ask, len(doc.Sheet.OfOneHand()) > 0)
	if err != nil {
		p.Blame(err)
		for i, f := range p.Fields {
			if text := r.URL.Query().Get(f.Name); text != "" {
				p.Fields[i].Value = text
			}
		}
		p.Trouble = []string{"There is no such table; the reason stands at its field."}
		return s.sheets(w, r, p, nil)
	}
	grid, err := grade.Table(r.Context(), doc.Sheet, ask)
	if err != nil {
		return fault.New(fault.Invalid, "There is no table of sizes yet. In the way: %s", fault.Message(err))
	}
	return s.sheets(w, r, p, paper.SizeTable(o, doc.Name, ask, grid))
}

// sizeFields are the fields of a table of sizes, as they were asked; fixed says
// whether the design has counts of one hand, which may be kept.
func sizeFields(a grade.Request, fixed bool) []view.PrintField {
	number := func(v float64) string {
		if v == 0 {
			return ""
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	by, unit, over := "girth", string(a.Unit), "10 cm"
	if a.BySize {
		by, unit = "size", ""
	}
	if a.Unit == units.IN {
		over = "4 in"
	}
	list := []view.PrintField{
		{Name: "by", Label: "Hands by", Value: by, Choices: []view.Choice{{Value: "size", Words: "glove size"}, {Value: "girth", Words: "circumference"}}},
		{Name: "from", Label: "from", Unit: unit, Value: number(a.From)},
		{Name: "to", Label: "to", Unit: unit, Value: number(a.To)},
		{Name: "step", Label: "in steps of", Unit: unit, Value: number(a.Step)},
		{Name: "gauge_from", Label: "Stitches over " + over + ", from", Value: number(a.Gauge[0])},
		{Name: "gauge_to", Label: "to", Value: number(a.Gauge[1])},
		{Name: "gauge_step", Label: "in steps of", Value: number(a.Gauge[2])},
		{Name: "rounds", Label: "Rounds for a stitch", Value: number(a.Rounds)},
	}
	if fixed {
		keep := view.PrintField{Name: "keep", Label: "Keep the fixed counts", Tick: true}
		if a.Keep {
			keep.Value = "1"
		}
		list = append(list, keep)
	}
	return list
}
