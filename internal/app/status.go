package app

import (
	"context"
	"time"

	"thenar/internal/fault"
	"thenar/internal/store"
)

// State is what is known of the file.
type State = store.State

// Status is how the file does and what keeps it safe. A part that could not be
// told has its reason; the others stand all the same, since the page of it says
// what to do then.
type Status struct {
	State
	Unread    error // why the file can't be read
	Stopped   error // what keeps saves out of it
	Backups   []BackupFile
	NoBackups error
	Devices   []Device
	NoDevices error
	Now       time.Time
}

// State returns what is known of the file, without looking through it.
func (a *App) State(ctx context.Context) (State, error) { return a.store.State(ctx) }

// Savable returns what keeps saves out of the file now, nil if nothing does. A
// disk that is full shows only in saving.
func (a *App) Savable(ctx context.Context) error { return a.store.Savable(ctx) }

// Status returns all that is known of the file, of its backups and of the
// devices that are let in.
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

// Check looks through the file, which takes longer the larger it is. What it
// finds is told by the next Status.
func (a *App) Check(ctx context.Context) error {
	if err := a.store.Check(ctx); err != nil && fault.KindOf(err) != fault.Unavailable {
		return err
	}
	return nil
}
