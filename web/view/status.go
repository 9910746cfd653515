package view

import (
	"fmt"
	"path/filepath"
	"strings"
	"time"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// NewStatus returns the page of what is kept, as it is shown on the device
// here; 0 is this machine.
func NewStatus(s app.Status, here int64) Status {
	p := Status{
		Path: s.Path, Size: sizeWords(s.Size), Schema: s.Schema, Mitts: s.Mitts, Classes: s.Classes,
		Checked: Clock(s.Checked, time.Now()), Damage: s.Damage,
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
	return p
}

// whys says why each kind of backup was made.
var whys = map[string]string{
	"daily": "of the day", "asked": "asked for", "replaced": "what stood before a backup was put back", "damaged": "damaged, as it was when a backup was put back",
}

func newBackup(b app.Saved) Backup {
	why, ok := whys[b.Why]
	if !ok {
		why = "before the step from " + strings.ReplaceAll(b.Why, "-", " ")
	}
	return Backup{Name: filepath.Base(b.Path), Path: b.Path, Why: why, Size: sizeWords(b.Size), At: Clock(b.At, time.Now()), Stamp: b.At.UTC().Format(time.RFC3339)}
}

// NewArrived returns what became of each mitt and class of a file, with where
// it stands now.
func NewArrived(came []app.Arrival) (list []Arrived) {
	for _, a := range came {
		one := Arrived{Name: a.Name, How: a.How}
		switch a.What {
		case app.MovedMitt:
			one.Href = fmt.Sprintf("/mitts/%d", a.ID)
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
