package web

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"net/http"
	"time"

	"thenar/internal/exportfile"
	"thenar/internal/fault"
	"thenar/internal/store"
	"thenar/web/view"
)

// sendParcel answers with an exported file, for keeping, named after what it holds.
func sendParcel(w http.ResponseWriter, name string, f exportfile.File) error {
	var b bytes.Buffer
	if err := exportfile.Write(&b, f); err != nil {
		return err
	}
	w.Header().Set("Content-Type", "application/json")
	keepAs(w, "attachment", name, ".json")
	_, err := b.WriteTo(w)
	return err
}

func (s *Server) exportMitt(w http.ResponseWriter, r *http.Request) error {
	m, doc, err := s.head(r)
	if err != nil {
		return err
	}
	f, err := s.store.ExportMitt(r.Context(), m.ID)
	if err != nil {
		return err
	}
	return sendParcel(w, doc.Name, f)
}

func (s *Server) exportClass(w http.ResponseWriter, r *http.Request) error {
	c, doc, err := s.loadClass(r)
	if err != nil {
		return err
	}
	f, err := s.store.ExportClass(r.Context(), c.ID)
	if err != nil {
		return err
	}
	return sendParcel(w, doc.Name, f)
}

func (s *Server) exportAll(w http.ResponseWriter, r *http.Request) error {
	f, err := s.store.ExportAll(r.Context())
	if err != nil {
		return err
	}
	return sendParcel(w, "thenar-"+time.Now().Format(time.DateOnly), f)
}

// importFile takes in an exported file and tells what became of it. What can't
// be used says where, and changes nothing.
func (s *Server) importFile(w http.ResponseWriter, r *http.Request) error {
	file, done, err := s.readParcel(w, r)
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
	came, err := s.store.Import(r.Context(), file)
	if err != nil {
		return err
	}
	return s.statusPage(w, r, http.StatusOK, func(p *view.Status) { p.Arrived = arrived(file, came) })
}

// readParcel reads the file of the form when it is its turn, which begins when
// all of it has arrived.
func (s *Server) readParcel(w http.ResponseWriter, r *http.Request) (f exportfile.File, done func(), err error) {
	if err := readParts(r); err != nil {
		return f, nil, err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll() // nothing of it stays on the disk
	}
	sent, head, err := r.FormFile("file")
	switch {
	case errors.Is(err, http.ErrMissingFile), errors.Is(err, http.ErrNotMultipart):
		return f, nil, fault.Fields{{Path: "FILE", Message: "is missing; choose a file that was exported"}}
	case err != nil:
		return f, nil, bodyFault(err)
	}
	defer sent.Close()
	if done, err = s.turn(w, r); err != nil {
		return f, nil, err
	}
	raw := make([]byte, head.Size)
	if _, err = io.ReadFull(sent, raw); err == nil {
		f, err = exportfile.Read(r.Context(), raw)
	}
	return f, done, err
}

// arrived says of each mitt and class what became of it.
func arrived(file exportfile.File, done store.Imported) (list []view.Arrived) {
	for i, a := range done.Mitts {
		list = append(list, view.Arrived{Name: file.Mitts[i].Name(), How: a.Words(), Href: fmt.Sprintf("/mitts/%d", a.ID)})
	}
	for i, a := range done.Classes {
		list = append(list, view.Arrived{Name: file.Classes[i].Name(), How: a.Words(), Href: fmt.Sprintf("/classes/%d", a.ID)})
	}
	if done.Motifs > 0 {
		list = append(list, view.Arrived{Name: "Motifs", How: fmt.Sprintf("%d new", done.Motifs)})
	}
	if len(list) == 0 {
		list = append(list, view.Arrived{Name: "Nothing", How: "the file holds no mitt and no class"})
	}
	return list
}
