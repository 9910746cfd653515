package web

import (
	"bytes"
	"errors"
	"net/http"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// drawCheck draws the chart of what was read, if it is asked for, and compares it with the
// table of another.
func drawCheck(r *http.Request, c *view.Check) error {
	form := r.PostForm
	c.Size, c.Section, c.Table = form.Get("size"), form.Get("section"), form.Get("against")
	sent, err := fileOf(r, "table")
	if err != nil {
		return err
	}
	if len(sent) > 0 {
		c.Table = string(sent)
	}
	if c.Checked.Report == nil || !form.Has("draw") {
		return nil
	}
	charts, err := c.Checked.Charts(c.Size)
	if err != nil { // a size of another text
		if charts, err = c.Checked.Charts(""); err != nil {
			return err
		}
	}
	c.Charts, c.Drawn = charts, true
	if c.Table == "" {
		return nil
	}
	against, err := charts.Against([]byte(c.Table), c.Section)
	var faults fault.Fields
	if errors.As(err, &faults) {
		c.Faults = append(c.Faults, faults...)
		return nil
	}
	c.Against = &against
	return err
}

// sendRead sends the charts of what was read as a file: one of them, or all.
func (s *Server) sendRead(kind, format string) handler {
	return func(w http.ResponseWriter, r *http.Request) error {
		c, err := checkSent(r)
		if err != nil {
			return err
		}
		var faults fault.Fields
		if c.Checked, err = app.CheckMeasured(c.Text, c.Measures); errors.As(err, &faults) {
			return answerCheck(w, r, c)
		} else if err != nil {
			return err
		}
		charts, err := c.Checked.Charts(r.PostForm.Get("size"))
		part := "all"
		if one := r.PostForm.Get("chart"); err == nil && one != "" {
			charts, err = charts.Only(one)
			part = one
		}
		if err != nil {
			return err
		}
		var b bytes.Buffer
		if err := charts.Write(r.Context(), &b, format); err != nil {
			return err
		}
		w.Header().Set("Content-Type", kind)
		partName(w, "read", part, "."+format)
		_, err = b.WriteTo(w)
		return err
	}
}
