package web

import (
	"bytes"
	"errors"
	"net/http"
	"net/url"

	"thenar/internal/app"
	"thenar/web/view"
)

// maxCheck is the most bytes of a form with instructions: pasted, and as a file.
const maxCheck = 2*app.MaxWritten + maxForm

// showCheck shows the empty count check.
func (s *Server) showCheck(w http.ResponseWriter, r *http.Request) error {
	return page(w, r, http.StatusOK, view.CheckPage(view.Check{}))
}

// checkText works instructions that were pasted, or sent as a file, and shows them with what
// was found.
func (s *Server) checkText(w http.ResponseWriter, r *http.Request) error {
	if err := readParts(r); err != nil {
		return err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll()
	}
	c := view.Check{Text: r.PostForm.Get("text"), Measures: measuresOf(r.PostForm)}
	text, err := sentFile(r)
	if err != nil {
		return err
	}
	if len(text) > 0 {
		c.Text = string(text)
	}
	status := http.StatusOK
	if c.Checked, err = app.CheckMeasured(c.Text, c.Measures); errors.As(err, &c.Faults) {
		status = http.StatusUnprocessableEntity
	} else if err != nil {
		return err
	}
	return page(w, r, status, view.CheckPage(c))
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
