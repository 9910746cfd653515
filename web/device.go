package web

import (
	"context"
	"net/http"
	"strconv"

	"github.com/go-chi/chi/v5"
)

// deviceKey is where a request's context keeps the device that it comes from;
// there is none where everybody comes from this machine.
type deviceKey struct{}

// stillIn reports whether the device that a request comes from has not been let
// out since: a line of events stands for hours.
func (s *Server) stillIn(ctx context.Context) bool {
	id, far := ctx.Value(deviceKey{}).(int64)
	if !far {
		return true
	}
	in, err := s.app.IsIn(ctx, id)
	return err == nil && in
}

// nameDevice gives a device a name.
func (s *Server) nameDevice(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	return toDevices(w, r, s.app.NameDevice(r.Context(), deviceID(r), r.PostForm.Get("name")))
}

// letOut lets a device out.
func (s *Server) letOut(w http.ResponseWriter, r *http.Request) error {
	return toDevices(w, r, s.app.LetOut(r.Context(), deviceID(r)))
}

// letAllOut lets every device out, also the one from which that is asked.
func (s *Server) letAllOut(w http.ResponseWriter, r *http.Request) error {
	_, err := s.app.LetAllOut(r.Context())
	return toDevices(w, r, err)
}

// toDevices leads back to the list of devices, unless something failed.
func toDevices(w http.ResponseWriter, r *http.Request, err error) error {
	if err == nil {
		http.Redirect(w, r, "/status#devices", http.StatusSeeOther)
	}
	return err
}

// deviceID is the device of the address; none has the number 0.
func deviceID(r *http.Request) int64 {
	id, _ := strconv.ParseInt(chi.URLParam(r, "device"), 10, 64)
	return id
}
