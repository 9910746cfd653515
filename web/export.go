package web

import (
	"bytes"
	"fmt"
	"net/http"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// exportCell is the width of a stitch in a chart that is handed out as a
// file, in mm.
const exportCell = 6

// export answers with a file that follows from a mitt, for keeping.
func (s *Server) export(kind, ending string, write func(b *bytes.Buffer, out *project.Outputs) error) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		m, doc, err := s.load(r)
		if err != nil {
			return err
		}
		pl, done := s.planner()
		defer done()
		out, err := pl.Derive(doc, m.Marks)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if err := write(&b, out); err != nil {
			return err
		}
		w.Header().Set("Content-Type", kind)
		w.Header().Set("Content-Disposition", fmt.Sprintf(`attachment; filename="mitt-%d%s"`, m.ID, ending))
		_, err = b.WriteTo(w)
		return err
	}
}

func writeWords(b *bytes.Buffer, out *project.Outputs) error { return words.Write(b, out.Words) }

func writeChartTable(b *bytes.Buffer, out *project.Outputs) error {
	if err := charted(out); err != nil {
		return err
	}
	return chart.CSV(b, out.Grid)
}

func writeChartPicture(b *bytes.Buffer, out *project.Outputs) error {
	if err := charted(out); err != nil {
		return err
	}
	scene, _ := picture.Chart(out.Grid, out.Plan.Gauge, exportCell)
	return draw.WriteSVG(b, scene, true)
}

// charted refuses a mitt without a gusset.
func charted(out *project.Outputs) error {
	if out.Plan.Thumbed() {
		return nil
	}
	return fault.New(fault.Invalid, "A mitten without a thumb has no gusset to chart.")
}
