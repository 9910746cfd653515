package app

import (
	"context"
	"fmt"
	"io"

	"thenar/internal/exportfile"
)

// MaxExport is the most bytes in an exported file.
const MaxExport = exportfile.MaxBytes

// Export is a mitt, a class or everything, with its whole history, as a file
// that another Thenar or a person can read.
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

// ExportAll returns everything except the devices and the secret that let them
// in.
func (a *App) ExportAll(ctx context.Context) (Export, error) {
	f, err := a.store.ExportAll(ctx)
	return Export{file: f}, err
}

// Write writes the file, after reading it back as a check.
func (e Export) Write(w io.Writer) error { return exportfile.Write(w, e.file) }

// Mended returns, in words, what had to be changed so that it could be written.
func (e Export) Mended() []string { return e.file.Mended }

// ReadExport reads an exported file and checks all of it.
func ReadExport(ctx context.Context, raw []byte) (Export, error) {
	f, err := exportfile.Read(ctx, raw)
	return Export{file: f}, err
}

// What is a kind of thing that an exported file holds.
type What string

// The kinds of things that an exported file holds.
const (
	MovedMitt   What = "mitt"
	MovedClass  What = "class"
	MovedMotifs What = "motifs"
)

// Arrival is what became of an imported mitt or class, or of all imported
// motifs together.
type Arrival struct {
	What What
	ID   int64 // its number here; 0 for motifs
	Name string
	How  string
}

// Import takes in everything that a file holds, or nothing at all. What is here
// already is not doubled.
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
