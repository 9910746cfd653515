package store

import (
	"context"
	"crypto/rand"
	"crypto/sha256"
	"crypto/subtle"
	"database/sql"
	"errors"
	"strings"
	"time"

	"thenar/internal/fault"
)

// maxDevices is the largest number of devices that may be let in at a time.
const maxDevices = 1000

// Device is a browser on another machine that was let in.
type Device struct {
	ID   int64
	Name string
	At   time.Time // when it was let in
	Day  string    // the last day of its use in the server's time zone, as 2025-03-09
	Out  bool      // whether it was let out again

	handle string
	secret []byte // SHA-256 of its secret
}

// devices selects devices with their newest names and days.
const devices = `SELECT d.id, d.at, d.handle, d.secret,
	coalesce((SELECT n.name FROM device_name n WHERE n.device = d.id ORDER BY n.id DESC LIMIT 1), d.name),
	coalesce((SELECT max(y.day) FROM device_day y WHERE y.device = d.id), ''),
	EXISTS (SELECT 1 FROM device_out o WHERE o.device = d.id)
	FROM device d `

// scanDevice reads one row of devices.
func scanDevice(row interface{ Scan(...any) error }) (d Device, err error) {
	var at string
	if err := row.Scan(&d.ID, &at, &d.handle, &d.secret, &d.Name, &d.Day, &d.Out); err != nil {
		return d, err
	}
	d.At, err = parseTime(at)
	return d, err
}

// LetIn lets a device in and returns its token: a handle and a secret of at
// least 128 bits (crypto/rand.Text), of which only the hash is stored. It fails
// with fault.Conflict if maxDevices are let in.
func (s *Store) LetIn(ctx context.Context, name string) (token string, err error) {
	defer fault.Wrap(&err, "store.LetIn")
	handle, secret := rand.Text(), rand.Text()
	hash := sha256.Sum256([]byte(secret))
	return handle + "." + secret, s.write(ctx, func(ctx context.Context, tx *txn) error {
		var in int
		if err := tx.QueryRowContext(ctx, `SELECT (SELECT count(*) FROM device) - (SELECT count(*) FROM device_out)`).Scan(&in); err != nil {
			return err
		}
		if in >= maxDevices {
			return fault.New(fault.Conflict, "%d devices are let in already: let some out on the page This computer.", in)
		}
		return s.putDevice(ctx, tx, Device{At: s.Now(), Name: name, Day: s.Now().Format(time.DateOnly), handle: handle, secret: hash[:]})
	})
}

// putDevice adds a device.
func (s *Store) putDevice(ctx context.Context, tx *txn, d Device) error {
	if _, err := tx.ExecContext(ctx, `INSERT INTO device (at, handle, secret, name) VALUES (?, ?, ?, ?)`,
		d.At.UTC().Format(timeFormat), d.handle, d.secret, d.Name); err != nil {
		return err
	}
	_, err := tx.ExecContext(ctx, `INSERT INTO device_day (device, day) SELECT id, ? FROM device WHERE handle = ?`, d.Day, d.handle)
	return err
}

// FindDevice returns the device of a token; known is false if the token was
// never given out. A device that was let out is still found, with Out set.
func (s *Store) FindDevice(ctx context.Context, token string) (d Device, known bool, err error) {
	defer fault.Wrap(&err, "store.FindDevice")
	handle, secret, _ := strings.Cut(token, ".")
	hash := sha256.Sum256([]byte(secret))
	err = s.read(ctx, func(tx *txn) (err error) {
		d, err = scanDevice(tx.QueryRowContext(ctx, devices+`WHERE d.handle = ?`, handle))
		return err
	})
	if errors.Is(err, sql.ErrNoRows) {
		return Device{}, false, nil
	}
	if err != nil || subtle.ConstantTimeCompare(d.secret, hash[:]) != 1 {
		return Device{}, false, err
	}
	return d, true, nil
}

// IsIn reports whether a device is let in.
func (s *Store) IsIn(ctx context.Context, id int64) (in bool, err error) {
	defer fault.Wrap(&err, "store.IsIn(%d)", id)
	return in, s.read(ctx, func(tx *txn) error {
		return tx.QueryRowContext(ctx, `SELECT EXISTS (SELECT 1 FROM device WHERE id = ?1) AND NOT EXISTS (SELECT 1 FROM device_out WHERE device = ?1)`, id).Scan(&in)
	})
}

// Devices returns the devices that are let in, the newest first.
func (s *Store) Devices(ctx context.Context) (list []Device, err error) {
	defer fault.Wrap(&err, "store.Devices")
	return list, s.read(ctx, func(tx *txn) (err error) {
		list, err = devicesIn(ctx, tx)
		return err
	})
}

func devicesIn(ctx context.Context, tx *txn) (list []Device, err error) {
	rows, err := tx.QueryContext(ctx, devices+`WHERE d.id NOT IN (SELECT device FROM device_out) ORDER BY d.id DESC`)
	if err != nil {
		return nil, err
	}
	defer rows.Close()
	for rows.Next() {
		d, err := scanDevice(rows)
		if err != nil {
			return nil, err
		}
		list = append(list, d)
	}
	return list, rows.Err()
}

// NoteUse notes that a device was used today, once a day.
func (s *Store) NoteUse(ctx context.Context, id int64) (err error) {
	defer fault.Wrap(&err, "store.NoteUse(%d)", id)
	day := s.Now().Format(time.DateOnly)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		_, err := tx.ExecContext(ctx, `INSERT INTO device_day (device, day) SELECT id, ?2 FROM device WHERE id = ?1
			AND NOT EXISTS (SELECT 1 FROM device_day WHERE device = ?1 AND day = ?2)`, id, day)
		return err
	})
}

// NameDevice names a device; fault.NotFound if it is not let in.
func (s *Store) NameDevice(ctx context.Context, id int64, name string) (err error) {
	defer fault.Wrap(&err, "store.NameDevice(%d)", id)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		return requireOne(tx.ExecContext(ctx, `INSERT INTO device_name (device, at, name) SELECT id, ?2, ?3 FROM device WHERE id = ?1
			AND id NOT IN (SELECT device FROM device_out)`, id, s.stamp(), name))
	})
}

// LetOut lets a device out for good: it can come in again only as a new one. It
// fails with fault.NotFound if the device is not let in.
func (s *Store) LetOut(ctx context.Context, id int64) (err error) {
	defer fault.Wrap(&err, "store.LetOut(%d)", id)
	return s.write(ctx, func(ctx context.Context, tx *txn) error {
		return requireOne(tx.ExecContext(ctx, `INSERT INTO device_out (device, at) SELECT id, ?2 FROM device WHERE id = ?1
			AND id NOT IN (SELECT device FROM device_out)`, id, s.stamp()))
	})
}

// requireOne fails with fault.NotFound if a statement changed no device.
func requireOne(done sql.Result, err error) error {
	if err != nil {
		return err
	}
	if n, err := done.RowsAffected(); err != nil || n > 0 {
		return err
	}
	return fault.New(fault.NotFound, "This device is not let in any more.")
}

// LetAllOut lets every device out, and returns how many there were.
func (s *Store) LetAllOut(ctx context.Context) (n int64, err error) {
	defer fault.Wrap(&err, "store.LetAllOut")
	return n, s.write(ctx, func(ctx context.Context, tx *txn) error {
		done, err := tx.ExecContext(ctx, `INSERT INTO device_out (device, at) SELECT id, ? FROM device WHERE id NOT IN (SELECT device FROM device_out)`, s.stamp())
		if err != nil {
			return err
		}
		n, err = done.RowsAffected()
		return err
	})
}
