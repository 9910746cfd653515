package web

import (
	"bytes"
	"context"
	"net/http"
	"net/url"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
	"thenar/web/view"
)

// exportCell is the width of a stitch in a chart that is handed out as a
// file, in mm.
const exportCell = 6

// export answers with a file that follows from a mitt, for keeping.
func (s *Server) export(kind, ending string, write func(b *bytes.Buffer, e exported) error) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		m, doc, err := s.load(r)
		if err != nil {
			return err
		}
		out, err := s.outputs(r.Context(), m, doc)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if err := write(&b, exported{r.Context(), out, doc, chartAsk(r), r.URL.Query()}); err != nil {
			return err
		}
		w.Header().Set("Content-Type", kind)
		keepAs(w, "attachment", doc.Name, ending)
		_, err = b.WriteTo(w)
		return err
	}
}

// exported is what a file is made from.
type exported struct {
	ctx context.Context // of who waits for it
	*project.Outputs
	doc   project.Document
	ask   view.ChartAsk
	query url.Values
}

// writeWords writes all instructions, or those of the rounds that the address
// asks for: section=gusset&from=3&to=7.
func writeWords(b *bytes.Buffer, e exported) error {
	section := e.query.Get("section")
	if section == "" {
		return words.Write(b, e.Words)
	}
	from, err := strconv.Atoi(e.query.Get("from"))
	to, err2 := strconv.Atoi(e.query.Get("to"))
	some := words.Select(e.Words, stitch.Part(section), from, to)
	if err != nil || err2 != nil || len(some) == 0 {
		return fault.New(fault.Invalid, "There are no rounds %.20s to %.20s of a section %.20q in this mitt.", e.query.Get("from"), e.query.Get("to"), section)
	}
	return words.Write(b, some)
}

func writeChartTable(b *bytes.Buffer, e exported) error {
	return chart.CSV(b, e.Grid(e.ask.Options))
}

func (e exported) scene() *draw.Scene {
	scene, _ := picture.Chart(e.Grid(e.ask.Options), picture.Look{
		Cell: exportCell, Gauge: e.Plan.Gauge, Square: e.ask.Square, Symbols: view.Symbols(e.doc), Unit: e.doc.Sheet.Unit(),
	})
	return scene
}

func writeChartPicture(b *bytes.Buffer, e exported) error { return draw.WriteSVG(b, e.scene(), true) }

func writeChartDots(b *bytes.Buffer, e exported) error { return draw.WritePNG(e.ctx, b, e.scene()) }
