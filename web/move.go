package web

import (
	"bytes"
	"errors"
	"io"
	"net/http"
	"time"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/web/view"
)

// sendExport sends an exported file to save, unless err is set.
func sendExport(w http.ResponseWriter, name string, e app.Export, err error) error {
	if err != nil {
		return err
	}
	var b bytes.Buffer
	if err := e.Write(&b); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	keepAs(w, "attachment", name, ".json")
	_, err = b.WriteTo(w)
	return err
}

func (s *Server) exportMitt(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	e, err := s.app.ExportMitt(r.Context(), id)
	return sendExport(w, e.Name, e, err)
}

func (s *Server) exportClass(w http.ResponseWriter, r *http.Request) error {
	id, err := classID(r)
	if err != nil {
		return err
	}
	e, err := s.app.ExportClass(r.Context(), id)
	return sendExport(w, e.Name, e, err)
}

func (s *Server) exportAll(w http.ResponseWriter, r *http.Request) error {
	e, err := s.app.ExportAll(r.Context())
	return sendExport(w, "thenar-"+time.Now().Format(time.DateOnly), e, err)
}

// importFile takes in an exported file and shows what became of it. A file that
// can't be used changes nothing, and the page says where the fault is.
func (s *Server) importFile(w http.ResponseWriter, r *http.Request) error {
	file, done, err := s.readExport(w, r)
	if done != nil {
		defer done()
	}
	var fields fault.Fields
	if errors.As(err, &fields) && !wantsJSON(r) {
		return s.statusPage(w, r, http.StatusBadRequest, func(p *view.Status) { p.Message = fields.Error() })
	}
	if err != nil {
		return err
	}
	came, err := s.app.Import(r.Context(), file)
	if err != nil {
		return err
	}
	return s.statusPage(w, r, http.StatusOK, func(p *view.Status) { p.Arrived = view.NewArrived(came) })
}

// readExport reads the file of the form. It waits for its turn only after the
// whole file has arrived.
func (s *Server) readExport(w http.ResponseWriter, r *http.Request) (e app.Export, done func(), err error) {
	if err := readParts(r); err != nil {
		return e, nil, err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll() // leaves nothing on the disk
	}
	sent, head, err := r.FormFile("file")
	switch {
	case errors.Is(err, http.ErrMissingFile), errors.Is(err, http.ErrNotMultipart):
		return e, nil, fault.Fields{{Path: "FILE", Message: "is missing; choose a file that was exported"}}
	case err != nil:
		return e, nil, bodyFault(err)
	}
	defer sent.Close()
	if done, err = s.turn(w, r); err != nil {
		return e, nil, err
	}
	raw := make([]byte, head.Size)
	if _, err = io.ReadFull(sent, raw); err == nil {
		e, err = app.ReadExport(r.Context(), raw)
	}
	return e, done, err
}
