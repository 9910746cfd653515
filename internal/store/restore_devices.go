package store

import (
	"context"
	"database/sql"
	"errors"
	"slices"
	"time"
)

// errLetOut is the cause of a failure because devices were let in or out while a
// backup was prepared.
var errLetOut = errors.New("devices were let in or out meanwhile")

// letInNow returns the devices that the open file lets in.
func (s *Store) letInNow(ctx context.Context) (list []Device, err error) {
	return list, s.reading.transact(ctx, true, func(tx *txn) (err error) {
		list, err = devicesIn(ctx, tx)
		return err
	})
}

// checkLetIn fails with errLetOut unless the devices in are those that are let in
// now.
func (s *Store) checkLetIn(ctx context.Context, in []Device) error {
	now, err := s.letInNow(ctx)
	if err == nil && !slices.EqualFunc(now, in, func(a, b Device) bool { return a.handle == b.handle }) {
		return errLetOut
	}
	return err
}

// letInOnly makes the file of a backup let in exactly the devices in: those
// that were let out since the backup stay out, those that were let in since
// come in. A device that was let out in either stays out.
func letInOnly(ctx context.Context, path string, in []Device) (err error) {
	db, err := sql.Open("sqlite", uri(path))
	if err != nil {
		return err
	}
	defer func() { err = errors.Join(err, db.Close()) }()
	s := &Store{Now: time.Now}
	return prepareFor(db).transact(ctx, false, func(tx *txn) error {
		now := map[string]bool{}
		for _, d := range in {
			now[d.handle] = true
			if err := s.updateDevice(ctx, tx, d); err != nil {
				return err
			}
		}
		there, err := devicesIn(ctx, tx)
		if err != nil {
			return err
		}
		for _, d := range there {
			if now[d.handle] {
				continue
			}
			if _, err := tx.ExecContext(ctx, `INSERT INTO device_out (device, at) VALUES (?, ?)`, d.ID, s.stamp()); err != nil {
				return err
			}
		}
		return nil
	})
}

// updateDevice writes the present state of a device into the file of a backup.
func (s *Store) updateDevice(ctx context.Context, tx *txn, d Device) error {
	old, err := scanDevice(tx.QueryRowContext(ctx, devices+`WHERE d.handle = ?`, d.handle))
	if errors.Is(err, sql.ErrNoRows) {
		return s.putDevice(ctx, tx, d)
	}
	if err != nil {
		return err
	}
	if old.Name != d.Name {
		if _, err := tx.ExecContext(ctx, `INSERT INTO device_name (device, at, name) VALUES (?, ?, ?)`, old.ID, s.stamp(), d.Name); err != nil {
			return err
		}
	}
	if old.Day < d.Day {
		_, err = tx.ExecContext(ctx, `INSERT INTO device_day (device, day) VALUES (?, ?)`, old.ID, d.Day)
	}
	return err
}
