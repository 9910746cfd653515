package web

import (
	"io"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"

	"thenar/web/view"
)

// addPhoto adds a photograph to a mitt's pattern: the one that is sent, or that of a try.
func (s *Server) addPhoto(w http.ResponseWriter, r *http.Request) error {
	id, err := mittID(r)
	if err != nil {
		return err
	}
	if err := readParts(r); err != nil {
		return err
	}
	if r.MultipartForm != nil {
		defer r.MultipartForm.RemoveAll() // leaves nothing on the disk
	}
	if try, err := strconv.ParseInt(r.PostFormValue("try"), 10, 64); err == nil {
		err = s.app.TakePhoto(r.Context(), id, try)
		return photographed(w, r, id, err)
	}
	var sent io.Reader = http.NoBody
	if file, _, err := r.FormFile("file"); err == nil { // otherwise none was sent
		defer file.Close()
		sent = file
	}
	return photographed(w, r, id, s.app.AddPhoto(r.Context(), id, sent))
}

// movePhoto puts a photograph of a pattern first, or takes it out.
func (s *Server) movePhoto(w http.ResponseWriter, r *http.Request) error {
	id, _, err := typed(r)
	if err != nil {
		return err
	}
	return photographed(w, r, id, s.app.MovePhoto(r.Context(), id, r.PostForm.Get("name"), r.PostForm.Get("to") == "out"))
}

func photographed(w http.ResponseWriter, r *http.Request, id int64, err error) error {
	if err != nil {
		return err
	}
	return toMitt(w, r, id, view.DesignBelow+"#photographs")
}

// showPicture sends a photograph of a pattern. What stands at its name never changes.
func (s *Server) showPicture(w http.ResponseWriter, r *http.Request) error {
	picture, err := s.app.Picture(r.Context(), chi.URLParam(r, "name"))
	if err != nil {
		return err
	}
	w.Header().Set("Content-Type", "image/jpeg")
	_, err = w.Write(picture)
	return err
}
