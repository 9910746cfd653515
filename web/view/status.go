package view

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// NewStatus returns the status page as the device here sees it, which is 0 for
// this machine. link is the address that lets other devices in.
func NewStatus(s app.Status, here int64, link string) (p Status, err error) {
	p = Status{
		Path: s.Path, Size: sizeWords(s.Size), Schema: s.Schema, Mitts: s.Mitts, Classes: s.Classes,
		Checked: Clock(s.Checked, time.Now()), Damage: s.Damage, Link: link,
	}
	if link != "" {
		if p.Code, err = newCode(link); err != nil {
			return Status{}, err
		}
	}
	if s.Stopped != nil {
		p.Stopped = fault.Message(s.Stopped)
	}
	if s.NoBackups != nil {
		p.NoBackups = fault.Message(s.NoBackups)
	}
	for _, b := range s.Backups {
		p.Backups = append(p.Backups, newBackup(b))
	}
	if last, ok := app.LastBackup(s.Backups); ok {
		b := newBackup(last)
		p.Last = &b
	}
	for _, d := range s.Devices {
		p.Devices = append(p.Devices, Device{ID: d.ID, Name: d.Name, In: inDays(d.At.Local().Format(time.DateOnly), s.Now), Last: inDays(d.Day, s.Now), This: d.ID == here})
	}
	return p, nil
}

// newCode returns the QR code of a link.
func newCode(link string) (Code, error) {
	rows, err := app.QR(link)
	if err != nil {
		return Code{}, fmt.Errorf("view.newCode: %w", err)
	}
	var path strings.Builder
	for y, row := range rows {
		for x, dark := range row {
			if dark {
				fmt.Fprintf(&path, "M%d %dh1v1h-1z", x, y)
			}
		}
	}
	return Code{Side: len(rows), Path: path.String()}, nil
}

// whys say why each kind of backup was made.
var whys = map[string]string{
	"daily": "of the day", "asked": "asked for", "replaced": "what stood before a backup was put back", "damaged": "damaged, as it was when a backup was put back",
}

func newBackup(b app.BackupFile) Backup {
	why, ok := whys[b.Why]
	if !ok {
		why = "before the step from " + strings.ReplaceAll(b.Why, "-", " ")
	}
	return Backup{Name: filepath.Base(b.Path), Path: b.Path, Why: why, Size: sizeWords(b.Size), At: Clock(b.At, time.Now()), Stamp: b.At.UTC().Format(time.RFC3339)}
}

// NewArrived returns what became of each mitt and class of an imported file,
// with its address.
func NewArrived(came []app.Arrival) (list []Arrived) {
	for _, a := range came {
		one := Arrived{Name: a.Name, How: a.How}
		switch a.What {
		case app.MovedMitt:
			one.Href = MittAt(a.ID, "")
		case app.MovedClass:
			one.Href = fmt.Sprintf("/classes/%d", a.ID)
		}
		list = append(list, one)
	}
	if len(list) == 0 {
		list = append(list, Arrived{Name: "Nothing", How: "the file holds no mitt and no class"})
	}
	return list
}
