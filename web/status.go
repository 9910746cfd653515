package web

import (
	"fmt"
	"net/http"
	"path/filepath"
	"slices"
	"strings"
	"time"

	"github.com/skip2/go-qrcode"

	"thenar/internal/fault"
	"thenar/internal/store"
	"thenar/web/view"
)

// status says how the app and its database do: to a browser as a page, else
// as a line for each figure.
func (s *Server) status(w http.ResponseWriter, r *http.Request) error {
	if !strings.Contains(r.Header.Get("Accept"), "text/html") {
		return s.statusLines(w, r)
	}
	return s.statusPage(w, r, http.StatusOK, nil)
}

func (s *Server) statusLines(w http.ResponseWriter, r *http.Request) error {
	st, err := s.store.State(r.Context())
	if err != nil {
		return err
	}
	list, err := s.store.Backups()
	last := newest(list)
	if err != nil { // the page says why
		last = "unknown"
	}
	w.Header().Set("Content-Type", "text/plain; charset=utf-8")
	_, err = fmt.Fprintf(w, "up\nschema %d\nmitts %d\nclasses %d\nbytes %d\nwhole %t\nbackup %s\n",
		st.Schema, st.Mitts, st.Classes, st.Size, st.Damage == "", last)
	return err
}

// statusPage is the page of what is kept; more puts on it what was done. It
// comes also where the database can't be read, since it says what to do then.
func (s *Server) statusPage(w http.ResponseWriter, r *http.Request, status int, more func(*view.Status)) error {
	st, err := s.store.State(r.Context())
	if err != nil {
		s.log.Error("state of the database", "error", err)
		st.Damage, status = fault.Message(err), http.StatusServiceUnavailable
	}
	p := view.Status{
		Path: st.Path, Size: inWords(st.Size), Schema: st.Schema, Mitts: st.Mitts, Classes: st.Classes,
		Checked: clock(st.Checked, time.Now()), Damage: st.Damage, Link: s.door.Link,
	}
	if err := s.store.Savable(r.Context()); err != nil {
		p.Stopped, status = fault.Message(err), http.StatusServiceUnavailable
	}
	list, err := s.store.Backups()
	if err != nil {
		p.NoBackups = fault.Message(err)
		s.log.Error("backups", "error", err)
	}
	p.Backups = backupLines(list)
	if i := slices.IndexFunc(list, store.Saved.Whole); i >= 0 {
		p.Last = &p.Backups[i]
	}
	if p.Link != "" {
		if p.Code, err = code(p.Link); err != nil {
			return err
		}
	}
	if p.Devices, err = s.deviceLines(r.Context()); err != nil { // what is wrong with the file stands above
		s.log.Error("devices", "error", err)
	}
	if more != nil {
		more(&p)
	}
	return page(w, r, status, view.StatusPage(p))
}

// newest is when the newest backup was made.
func newest(list []store.Saved) string {
	i := slices.IndexFunc(list, store.Saved.Whole)
	if i < 0 {
		return "none"
	}
	return list[i].At.UTC().Format(time.RFC3339)
}

// whys says why each kind of backup was made.
var whys = map[string]string{
	"daily": "of the day", "asked": "asked for", "replaced": "what stood before a backup was put back", "damaged": "damaged, as it was when a backup was put back",
}

func backupLines(list []store.Saved) []view.Backup {
	lines := make([]view.Backup, len(list))
	for i, b := range list {
		why, ok := whys[b.Why]
		if !ok {
			why = "before the step from " + strings.ReplaceAll(b.Why, "-", " ")
		}
		lines[i] = view.Backup{Name: filepath.Base(b.Path), Path: b.Path, Why: why, Size: inWords(b.Size), At: clock(b.At, time.Now()), Stamp: b.At.UTC().Format(time.RFC3339)}
	}
	return lines
}

// inWords is a size for people.
func inWords(bytes int64) string {
	switch {
	case bytes < 1000:
		return fmt.Sprintf("%d bytes", bytes)
	case bytes < 1_000_000:
		return fmt.Sprintf("%.0f kB", float64(bytes)/1e3)
	}
	return fmt.Sprintf("%.1f MB", float64(bytes)/1e6)
}

// code is the QR code of a link as the path of its dark squares, with the
// number of squares to a side (ISO/IEC 18004, with its margin of four).
func code(link string) (view.Code, error) {
	q, err := qrcode.New(link, qrcode.Medium)
	if err != nil {
		return view.Code{}, fmt.Errorf("web.code: %w", err)
	}
	dots := q.Bitmap()
	var path strings.Builder
	for y, row := range dots {
		for x, dark := range row {
			if dark {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x, y)
			}
		}
	}
	return view.Code{Side: len(dots), Path: path.String()}, nil
}
