package web

import (
	"fmt"
	"net/http"
	"strings"
	"time"

	"thenar/internal/app"
	"thenar/web/view"
)

// status shows how the app and its file are doing: as a page to a browser,
// otherwise as a line for each figure.
func (s *Server) status(w http.ResponseWriter, r *http.Request) error {
	if !strings.Contains(r.Header.Get("Accept"), "text/html") {
		return s.statusLines(w, r)
	}
	return s.statusPage(w, r, http.StatusOK, nil)
}

func (s *Server) statusLines(w http.ResponseWriter, r *http.Request) error {
	st, err := s.app.State(r.Context())
	if err != nil {
		return err
	}
	last := "none"
	if list, err := s.app.Backups(); err != nil {
		last = "unknown" // the page says why
	} else if b, ok := app.LastBackup(list); ok {
		last = b.At.UTC().Format(time.RFC3339)
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	_, err = fmt.Fprintf(w, "up\nschema %d\nmitts %d\nclasses %d\nbytes %d\nwhole %t\nbackup %s\n",
		st.Schema, st.Mitts, st.Classes, st.Size, st.Damage == "", last)
	return err
}

// statusPage shows the status page; more, if set, adds to it what was just
// done. It works even if the file can't be read, since it says what to do then.
func (s *Server) statusPage(w http.ResponseWriter, r *http.Request, status int, more func(*view.Status)) error {
	st := s.app.Status(r.Context())
	for what, err := range map[string]error{"state of the database": st.Unread, "backups": st.NoBackups, "devices": st.NoDevices} {
		if err != nil {
			s.log.Error(what, "error", err)
		}
	}
	if st.Unread != nil || st.Stopped != nil {
		status = http.StatusServiceUnavailable
	}
	here, _ := r.Context().Value(deviceKey{}).(int64)
	p, err := view.NewStatus(st, here, s.door.Link)
	if err != nil {
		return err
	}
	if more != nil {
		more(&p)
	}
	return page(w, r, status, view.StatusPage(p))
}
