package app

import (
	"context"
	"strings"
	"time"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/plain"
	"thenar/internal/store"
)

// Device is a browser on another machine that was let in.
type Device = store.Device

// kinds names a device after the user agent of its browser. The first row that
// fits is taken (common practice, no source).
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

// deviceName returns what a device is called until the person names it.
func deviceName(agent string) string {
	for _, k := range kinds {
		if strings.Contains(agent, k.says) && strings.Contains(agent, k.also) {
			return k.name
		}
	}
	return "another device"
}

// QR returns the QR code of a link that lets another device in: its rows of
// squares, true where dark, margin included.
func QR(link string) ([][]bool, error) { return draw.QR(link) }

// LetIn lets a device in, named after its user agent, and returns the token by
// which it is known from then on.
func (a *App) LetIn(ctx context.Context, agent string) (token string, err error) {
	return a.store.LetIn(ctx, deviceName(agent))
}

// FindDevice returns the device of a token, even one that was let out since.
// known is false for a token that was never given.
func (a *App) FindDevice(ctx context.Context, token string) (d Device, known bool, err error) {
	return a.store.FindDevice(ctx, token)
}

// IsIn reports whether a device is still let in.
func (a *App) IsIn(ctx context.Context, device int64) (bool, error) {
	return a.store.IsIn(ctx, device)
}

// NoteUse notes that a device was used today. It tries once a day, so that a
// file that can't be written does not slow down somebody who only reads.
func (a *App) NoteUse(ctx context.Context, d Device) error {
	today := a.store.Now().Format(time.DateOnly)
	if d.Day == today {
		return nil
	}
	if was, _ := a.days.Swap(d.ID, today); was == today {
		return nil
	}
	return a.store.NoteUse(ctx, d.ID)
}

// maxDeviceName is the most letters in a device's name.
const maxDeviceName = 60

func (a *App) NameDevice(ctx context.Context, device int64, name string) error {
	name = strings.TrimSpace(name)
	if name == "" || plain.Line(name, maxDeviceName) != "" {
		return fault.Fields{{Path: "name", Message: "is no name for a device; write one of up to 60 letters, in one line"}}
	}
	return a.store.NameDevice(ctx, device, name)
}

// LetOut lets a device out: from then on it needs the link again.
func (a *App) LetOut(ctx context.Context, device int64) error { return a.store.LetOut(ctx, device) }

// LetAllOut lets every device out, the one that asks for it included, and
// returns how many there were.
func (a *App) LetAllOut(ctx context.Context) (int64, error) { return a.store.LetAllOut(ctx) }
