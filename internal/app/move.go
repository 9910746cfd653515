package app

import (
	"context"
	"fmt"
	"io"

	"thenar/internal/exportfile"
)

// MaxExport is the most bytes that an exported file may have.
const MaxExport = exportfile.MaxBytes

// Export is one mitt, one class or everything, with its whole history, as a
// file that another Thenar or a person can read.
type Export struct {
	Name string // of the mitt or the class; empty for everything
	file exportfile.File
}

// ExportMitt returns a mitt with all that is known of it.
func (a *App) ExportMitt(ctx context.Context, id int64) (Export, error) {
	f, err := a.store.ExportMitt(ctx, id)
	if err != nil {
		return Export{}, err
	}
	return Export{f.Mitts[0].Name(), f}, nil
}

// ExportClass returns a class with its history.
func (a *App) ExportClass(ctx context.Context, id int64) (Export, error) {
	f, err := a.store.ExportClass(ctx, id)
	if err != nil {
		return Export{}, err
	}
	return Export{f.Classes[0].Name(), f}, nil
}

// ExportAll returns everything but what lets other machines in.
func (a *App) ExportAll(ctx context.Context) (Export, error) {
	f, err := a.store.ExportAll(ctx)
	return Export{file: f}, err
}

// Write writes the file, checked by what reads it.
func (e Export) Write(w io.Writer) error { return exportfile.Write(w, e.file) }

// Mended returns what had to be changed to be written, in words.
func (e Export) Mended() []string { return e.file.Mended }

// ReadExport reads an exported file and checks all of it.
func ReadExport(ctx context.Context, raw []byte) (Export, error) {
	f, err := exportfile.Read(ctx, raw)
	return Export{file: f}, err
}

// What is one sort of thing that moves house.
type What string

// The things that move house.
const (
	MovedMitt   What = "mitt"
	MovedClass  What = "class"
	MovedMotifs What = "motifs"
)

// Arrival is what became of one mitt or class that was taken in, or of the
// motifs together.
type Arrival struct {
	What What
	ID   int64 // its number here; 0 for motifs
	Name string
	How  string
}

// Import takes in all that a file holds, or nothing of it, and doubles nothing
// that is here already.
func (a *App) Import(ctx context.Context, e Export) (list []Arrival, err error) {
	came, err := a.store.Import(ctx, e.file)
	if err != nil {
		return nil, err
	}
	for i, one := range came.Mitts {
		list = append(list, Arrival{MovedMitt, one.ID, e.file.Mitts[i].Name(), one.Words()})
	}
	for i, one := range came.Classes {
		list = append(list, Arrival{MovedClass, one.ID, e.file.Classes[i].Name(), one.Words()})
	}
	if came.Motifs > 0 {
		list = append(list, Arrival{What: MovedMotifs, Name: "Motifs", How: fmt.Sprintf("%d new", came.Motifs)})
	}
	return list, nil
}
