package web

import (
	"context"
	"net/http"
	"time"
)

// backupLook is how often the server checks whether today's backup is made,
// since it may run for weeks.
const backupLook = time.Hour

// backupDaily makes a backup once a day while the app serves. A failure is
// logged, shows on the status page, and is tried again.
func (s *Server) backupDaily(ctx context.Context) {
	for {
		made, err := s.app.BackupDaily(ctx)
		switch {
		case ctx.Err() != nil:
			return
		case err != nil:
			s.log.Error("no backup today", "error", err)
		case made != "":
			s.log.Info("backup", "file", made)
		}
		select {
		case <-ctx.Done():
			return
		case <-time.After(backupLook):
		}
	}
}

// backupNow makes a backup when the person asks for it.
func (s *Server) backupNow(w http.ResponseWriter, r *http.Request) error {
	if _, err := s.app.BackupNow(r.Context()); err != nil {
		return err
	}
	http.Redirect(w, r, "/status#backups", http.StatusSeeOther)
	return nil
}

// checkNow looks through the whole file when the person asks for it.
func (s *Server) checkNow(w http.ResponseWriter, r *http.Request) error {
	if err := s.app.Check(r.Context()); err != nil {
		return err
	}
	http.Redirect(w, r, "/status", http.StatusSeeOther) // the page says what was found
	return nil
}
