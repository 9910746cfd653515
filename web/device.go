package web

import (
	"context"
	"net/http"
	"strconv"
	"strings"
	"time"

	"github.com/go-chi/chi/v5"

	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/store"
	"thenar/web/view"
)

// deviceKey is where a request's context keeps the device that it comes from;
// there is none where everybody comes from this machine.
type deviceKey struct{}

// stillIn tells whether the device that a request comes from has not been let
// out since: a line of events stands for hours.
func (s *Server) stillIn(ctx context.Context) bool {
	id, far := ctx.Value(deviceKey{}).(int64)
	if !far {
		return true
	}
	in, err := s.store.IsIn(ctx, id)
	return err == nil && in
}

// came notes the day on which a device comes, trying once a day: a file that
// can't be written does not hold up who only reads.
func (s *Server) came(ctx context.Context, d store.Device) {
	today := s.store.Now().Format(time.DateOnly)
	if d.Day == today {
		return
	}
	if was, _ := s.days.Swap(d.ID, today); was == today {
		return
	}
	if err := s.store.Came(ctx, d.ID); err != nil {
		s.log.Error("the day of a device", "error", err)
	}
}

// kinds names a device after what its browser says of it, the first that fits
// (common practice, no source).
var kinds = []struct{ says, also, name string }{
	{"iPhone", "", "iPhone"},
	{"iPad", "", "iPad"},
	{"Android", "Mobile", "Android phone"},
	{"Android", "", "Android tablet"},
	{"Windows", "", "Windows computer"},
	{"CrOS", "", "ChromeOS computer"},
	{"Macintosh", "", "Mac"},
	{"Linux", "", "Linux computer"},
}

// deviceName is what a device is called until it is given a name.
func deviceName(agent string) string {
	for _, k := range kinds {
		if strings.Contains(agent, k.says) && strings.Contains(agent, k.also) {
			return k.name
		}
	}
	return "another device"
}

// deviceLines are the devices that are let in, for the page.
func (s *Server) deviceLines(ctx context.Context) ([]view.Device, error) {
	list, err := s.store.Devices(ctx)
	if err != nil {
		return nil, err
	}
	here, _ := ctx.Value(deviceKey{}).(int64)
	lines, now := make([]view.Device, len(list)), s.store.Now()
	for i, d := range list {
		lines[i] = view.Device{ID: d.ID, Name: d.Name, In: inDays(d.At.Local().Format(time.DateOnly), now), Last: inDays(d.Day, now), This: d.ID == here}
	}
	return lines, nil
}

// inDays is a day as one speaks of it.
func inDays(day string, now time.Time) string {
	switch day {
	case now.Format(time.DateOnly):
		return "today"
	case now.AddDate(0, 0, -1).Format(time.DateOnly):
		return "yesterday"
	}
	at, err := time.Parse(time.DateOnly, day)
	if err != nil {
		return "at a time that is not known"
	}
	return at.Format("2 January 2006")
}

// maxName is how many letters the name of a device has at most.
const maxName = 60

// nameDevice gives a device a name.
func (s *Server) nameDevice(w http.ResponseWriter, r *http.Request) error {
	if err := r.ParseForm(); err != nil {
		return bodyFault(err)
	}
	name := strings.TrimSpace(r.PostForm.Get("name"))
	if name == "" || plain.Line(name, maxName) != "" {
		return fault.Fields{{Path: "name", Message: "is no name for a device; write one of up to 60 letters, in one line"}}
	}
	if err := s.store.NameDevice(r.Context(), deviceID(r), name); err != nil {
		return err
	}
	http.Redirect(w, r, "/status#devices", http.StatusSeeOther)
	return nil
}

// letOut lets a device out.
func (s *Server) letOut(w http.ResponseWriter, r *http.Request) error {
	if err := s.store.LetOut(r.Context(), deviceID(r)); err != nil {
		return err
	}
	http.Redirect(w, r, "/status#devices", http.StatusSeeOther)
	return nil
}

// letAllOut lets every device out, also the one from which that is asked.
func (s *Server) letAllOut(w http.ResponseWriter, r *http.Request) error {
	if _, err := s.store.LetAllOut(r.Context()); err != nil {
		return err
	}
	http.Redirect(w, r, "/status#devices", http.StatusSeeOther)
	return nil
}

// deviceID is the device of the address; none has the number 0.
func deviceID(r *http.Request) int64 {
	id, _ := strconv.ParseInt(chi.URLParam(r, "device"), 10, 64)
	return id
}
