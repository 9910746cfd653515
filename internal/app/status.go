package app

import (
	"context"
	"time"

	"thenar/internal/fault"
	"thenar/internal/store"
)

// State is what is known about the file.
type State = store.State

// Status is how the file is, and what keeps it safe. A part that could not be
// read gives its reason; the others stand all the same, since the page says
// what to do then.
type Status struct {
	State
	Unread    error // why the file can't be read; nil if it can
	Stopped   error // why nothing can be saved; nil if it can
	Backups   []BackupFile
	NoBackups error
	Devices   []Device
	NoDevices error
	Now       time.Time
}

// State returns what is known about the file, without checking all of it.
func (a *App) State(ctx context.Context) (State, error) { return a.store.State(ctx) }

// Savable returns why nothing can be saved now, or nil. A full disk only shows
// when something is saved.
func (a *App) Savable(ctx context.Context) error { return a.store.Savable(ctx) }

// Status returns all that is known about the file, its backups and the devices
// that are let in.
func (a *App) Status(ctx context.Context) Status {
	s := Status{Now: a.store.Now()}
	if s.State, s.Unread = a.store.State(ctx); s.Unread != nil {
		s.Damage = fault.Message(s.Unread)
	}
	s.Stopped = a.store.Savable(ctx)
	s.Backups, s.NoBackups = a.store.Backups()
	s.Devices, s.NoDevices = a.store.Devices(ctx)
	return s
}

// Check looks through the whole file, which takes longer the larger it is. The
// next Status tells what it found.
func (a *App) Check(ctx context.Context) error {
	if err := a.store.Check(ctx); err != nil && fault.KindOf(err) != fault.Unavailable {
		return err
	}
	return nil
}
