package web

import (
	"bytes"
	"errors"
	"net/http"
	"net/url"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// maxCheck is the most bytes of a form with instructions and a chart’s table: pasted, and as
// files.
const maxCheck = 2*(app.MaxWritten+app.MaxChartTable) + maxForm

// showCheck shows the empty count check.
func (s *Server) showCheck(w http.ResponseWriter, r *http.Request) error {
	return page(w, r, http.StatusOK, view.CheckPage(view.Check{}))
}

// checkText works instructions that were pasted, or sent as a file, and shows them with what
// was found.
func (s *Server) checkText(w http.ResponseWriter, r *http.Request) error {
	c, err := checkSent(r)
	if err != nil {
		return err
	}
	return answerCheck(w, r, c)
}

// checkSent reads the form of the count check.
func checkSent(r *http.Request) (c view.Check, err error) {
	if err := readParts(r); err != nil {
		return c, err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll()
	}
	c = view.Check{Text: r.PostForm.Get("text"), Measures: measuresOf(r.PostForm)}
	text, err := sentFile(r)
	if len(text) > 0 {
		c.Text = string(text)
	}
	return c, err
}

// answerCheck works instructions and shows what was found; faults that the check has already
// stand at their fields.
func answerCheck(w http.ResponseWriter, r *http.Request, c view.Check) error {
	var err error
	var faults fault.Fields
	if c.Checked, err = app.CheckMeasured(c.Text, c.Measures); errors.As(err, &faults) {
		c.Faults = append(faults, c.Faults...)
	} else if err != nil {
		return err
	}
	if c.Checked.Report != nil && c.Checked.Gauged() {
		if c.Mitt, err = c.Checked.Mitt(r.PostForm.Get("mitt_size")); err != nil {
			c.Mitt, err = c.Checked.Mitt("") // a size of another text
		}
		if err != nil {
			return err
		}
	}
	if err := drawCheck(r, &c); err != nil {
		return err
	}
	status := http.StatusOK
	if len(c.Faults) > 0 {
		status = http.StatusUnprocessableEntity
	}
	return page(w, r, status, view.CheckPage(c))
}

// openWritten begins a mitt with the numbers of instructions, and leads to it.
func (s *Server) openWritten(w http.ResponseWriter, r *http.Request) error {
	c, err := checkSent(r)
	if err != nil {
		return err
	}
	id, err := s.app.OpenWritten(r.Context(), c.Text, c.Measures, r.PostForm.Get("mitt_size"))
	if errors.As(err, &c.Faults) {
		return answerCheck(w, r, c)
	}
	if err != nil {
		return err
	}
	return toMitt(w, r, id, "")
}

// measuresOf reads what was typed of gauge and yarn.
func measuresOf(form url.Values) app.Measures {
	return app.Measures{Stitches: form.Get("stitches"), Rounds: form.Get("rounds"), BallGrams: form.Get("ball_grams"), BallMetres: form.Get("ball_metres")}
}

// checkPattern works the text of a mitt's pattern in all its sizes.
func (s *Server) checkPattern(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if _, err := s.app.PatternFile(r.Context(), id, patternAsk(r.URL.Query()), app.PlainText, &text); err != nil {
		return err
	}
	c := view.Check{Text: text.String()}
	if c.Checked, err = app.CheckWritten(c.Text); err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.CheckPage(c))
}
