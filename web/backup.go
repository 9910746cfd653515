package web

import (
	"context"
	"net/http"
	"time"
)

// backupLook is how often it is looked whether the day has a backup: a server
// may run for weeks.
const backupLook = time.Hour

// backupDaily makes a backup once a day, as long as the app serves. One that
// can't be made is told in the log and on the status page, and tried again.
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

// checkNow looks through the file when the person asks for it.
func (s *Server) checkNow(w http.ResponseWriter, r *http.Request) error {
	if err := s.app.Check(r.Context()); err != nil {
		return err
	}
	http.Redirect(w, r, "/status", http.StatusSeeOther) // which says what was found
	return nil
}
