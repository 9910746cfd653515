package app

import (
	"context"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/store"
)

// Palettes are the yarns of other mitts that can be brought to a mitt.
type Palettes struct {
	ID     int64
	Name   string // of the mitt
	Others []OtherPalette
}

// OtherPalette is the yarns of another mitt.
type OtherPalette struct {
	ID     int64
	Name   string
	Yarns  chart.Palette // those that it names or colours, at least one; a name may be empty
	Brings int           // how many of them would be laid into the mitt
}

// wantsPalettes is what has to be read to bring yarns to a mitt.
func wantsPalettes() store.Wants { return store.Wants{Marks: true, Others: true} }

// Palettes returns the yarns of all mitts that name or colour any, the mitt
// changed last first.
func (a *App) Palettes(ctx context.Context, id int64) (Palettes, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsPalettes()))
	if err != nil {
		return Palettes{}, err
	}
	p := Palettes{ID: w.ID, Name: w.doc.Name}
	for _, m := range w.Others {
		doc, err := project.Decode(m.Document)
		if err != nil {
			return Palettes{}, err
		}
		if own := doc.OwnYarns(); len(own) > 0 {
			p.Others = append(p.Others, OtherPalette{m.ID, doc.Name, own, len(w.doc.Brought(w.Marks, doc))})
		}
	}
	return p, nil
}

// BringYarns lays the names and colours of another mitt's yarns into the empty
// places of a mitt's palette, as one stroke that can be undone. Nothing painted
// changes: a yarn that is named here, or painted with, keeps its place.
func (a *App) BringYarns(ctx context.Context, id, from int64) error {
	_, err := a.change(ctx, id, wantsPalettes(), func(w *work, _ *project.Planner) (store.Change, error) {
		other, err := w.otherMitt(from)
		if err != nil {
			return store.Change{}, err
		}
		brought := w.doc.Brought(w.Marks, other)
		switch {
		case len(other.OwnYarns()) == 0:
			return store.Change{}, fault.New(fault.Invalid, "from: %q names no yarns of its own; choose another mitt", other.Name)
		case len(brought) == 0:
			return store.Change{}, fault.New(fault.Invalid, "from: nothing of %q has to be brought; its yarns are here, or no place is empty", other.Name)
		}
		return w.stroke(project.YarnEdits(brought)), nil
	})
	return err
}

// otherMitt returns the document of another mitt that was read beside this one.
func (w *work) otherMitt(id int64) (project.Document, error) {
	if id == w.ID {
		return project.Document{}, fault.New(fault.Invalid, "from: is this mitt itself; choose another mitt")
	}
	for _, m := range w.Others {
		if m.ID == id {
			return project.Decode(m.Document)
		}
	}
	return project.Document{}, fault.New(fault.Invalid, "from: there is no such mitt; choose one of the list")
}
