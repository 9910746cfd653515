package web

import (
	"bytes"
	"net/http"
	"net/url"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// download returns a handler that sends a file worked out from a mitt, to save
// under the name that write sets.
func (s *Server) download(kind string, write func(*bytes.Buffer, http.ResponseWriter, *http.Request, app.Written) error) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		id, err := mittID(r)
		if err != nil {
			return err
		}
		m, err := s.app.Written(r.Context(), id)
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if err := write(&b, w, r, m); err != nil {
			return err
		}
		w.Header().Set("Content-Type", kind)
		_, err = b.WriteTo(w)
		return err
	}
}

// downloadChart returns a handler that sends a chart, laid out as the page shows
// it, in a format.
func (s *Server) downloadChart(kind, format string) handler {
	return s.download(kind, func(b *bytes.Buffer, w http.ResponseWriter, r *http.Request, m app.Written) error {
		ask := fileAsk(r.URL.Query())
		if err := m.Chart(r.Context(), b, format, ask); err != nil {
			return err
		}
		partName(w, m.Name, m.View(ask), "."+format)
		return nil
	})
}

// fileAsk reads which chart file is asked for from the query of an address.
func fileAsk(q url.Values) app.ChartAsk {
	return app.ChartAsk{
		View: q.Get("view"), Layout: q.Get("layout"), Middle: q.Get("middle"), Square: q.Get("cells") == "square",
		Boxed: q.Has("boxed"),
		Title: q.Has("title"), Key: q.Has("key"), Caption: q.Has("caption"), Text: q.Get("text"), Marks: q.Has("marks"),
	}
}

// downloadWords sends the instructions as plain text.
func (s *Server) downloadWords() handler {
	return s.download("text/plain; charset=utf-8", func(b *bytes.Buffer, w http.ResponseWriter, r *http.Request, m app.Written) error {
		if err := writeWords(b, r, m); err != nil {
			return err
		}
		keepAs(w, "attachment", m.Name, ".txt")
		return nil
	})
}

// writeWords writes all the instructions, or those for the rounds in the query:
// section=gusset&from=3&to=7.
func writeWords(b *bytes.Buffer, r *http.Request, m app.Written) error {
	q := r.URL.Query()
	section := q.Get("section")
	if section == "" {
		return m.Words(b)
	}
	from, err := strconv.Atoi(q.Get("from"))
	to, err2 := strconv.Atoi(q.Get("to"))
	if err == nil && err2 == nil {
		if found, err := m.WordsOf(b, section, from, to); found || err != nil {
			return err
		}
	}
	return fault.New(fault.Invalid, "There are no rounds %.20s to %.20s of a section %.20q in this mitt.", q.Get("from"), q.Get("to"), section)
}
