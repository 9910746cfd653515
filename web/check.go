package web

import (
	"bytes"
	"errors"
	"io"
	"net/http"

	"thenar/internal/app"
	"thenar/internal/fault"
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
	c := view.Check{Text: r.PostForm.Get("text"), Stitches: r.PostForm.Get("stitches"), Rounds: r.PostForm.Get("rounds")}
	if text, err := sentFile(r); err != nil {
		return err
	} else if text != "" {
		c.Text = text
	}
	status := http.StatusOK
	var err error
	if c.Checked, err = app.CheckMeasured(c.Text, c.Stitches, c.Rounds); err != nil {
		if fault.KindOf(err) != fault.Invalid {
			return err
		}
		status = http.StatusUnprocessableEntity
		if !errors.As(err, &c.Faults) {
			c.Faults.Add("text", "%s", fault.Message(err))
		}
	}
	return page(w, r, status, view.CheckPage(c))
}

// checkPattern works the text of a mitt's pattern in all its sizes.
func (s *Server) checkPattern(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	var text bytes.Buffer
	if _, err := s.app.PatternFile(r.Context(), id, patternAsk(r.URL.Query()), "txt", &text); err != nil {
		return err
	}
	c := view.Check{Text: text.String()}
	if c.Checked, err = app.CheckMeasured(c.Text, "", ""); err != nil {
		return err
	}
	return page(w, r, http.StatusOK, view.CheckPage(c))
}

// sentFile returns the text of the file that a form brought, or nothing.
func sentFile(r *http.Request) (string, error) {
	if r.MultipartForm == nil {
		return "", nil
	}
	file, _, err := r.FormFile("file")
	if errors.Is(err, http.ErrMissingFile) {
		return "", nil
	}
	if err != nil {
		return "", bodyFault(err)
	}
	defer file.Close()
	raw, err := io.ReadAll(io.LimitReader(file, app.MaxWritten+1))
	if err != nil {
		return "", bodyFault(err)
	}
	return string(raw), nil
}
