package web

import (
	"context"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"
)

// deviceKey is the context key of the device that sent a request. Without a
// door there is none.
type deviceKey struct{}

// stillIn reports whether the device that sent a request is still let in. An
// event stream stays open for hours, in which it may have been let out.
func (s *Server) stillIn(ctx context.Context) bool {
	id, far := ctx.Value(deviceKey{}).(int64)
	if !far {
		return true
	}
	in, err := s.app.IsIn(ctx, id)
	return err == nil && in
}

func (s *Server) nameDevice(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	return toDevices(w, r, s.app.NameDevice(r.Context(), deviceID(r), r.PostForm.Get("name")))
}

func (s *Server) letOut(w http.ResponseWriter, r *http.Request) error {
	return toDevices(w, r, s.app.LetOut(r.Context(), deviceID(r)))
}

// letAllOut lets every device out, the one that asks for it included.
func (s *Server) letAllOut(w http.ResponseWriter, r *http.Request) error {
	_, err := s.app.LetAllOut(r.Context())
	return toDevices(w, r, err)
}

// toDevices redirects to the list of devices, unless err is set.
func toDevices(w http.ResponseWriter, r *http.Request, err error) error {
	if err == nil {
		http.Redirect(w, r, "/status#devices", http.StatusSeeOther)
	}
	return err
}

// deviceID returns the number of the device in the address, or 0, which no
// device has.
func deviceID(r *http.Request) int64 {
	id, _ := strconv.ParseInt(chi.URLParam(r, "device"), 10, 64)
	return id
}
