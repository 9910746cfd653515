package app

import (
	"context"
	"fmt"
	"io"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/fault"
	"thenar/internal/paper"
	"thenar/internal/photo"
	"thenar/internal/project"
	"thenar/internal/store"
)

// MostPhotos is the most photographs of a pattern.
const MostPhotos = 20

// photoKey returns the key of a photograph, or of what belongs to one, by its number from 1.
func photoKey(of string, n int) string { return of + strconv.Itoa(n) }

// PatternPhoto is a photograph of a pattern: its number from 1, its name and its caption.
type PatternPhoto struct {
	N             int
	Name, Caption string
}

// CaptionKey is the key of its caption among the texts.
func (p PatternPhoto) CaptionKey() string { return photoKey(project.PatternCaption, p.N) }

// Photos returns the photographs of a pattern in their order.
func (d *Design) Photos() []PatternPhoto { return photosOf(d.Doc.Pattern) }

func photosOf(by project.PatternTexts) (list []PatternPhoto) {
	for n := 1; n <= MostPhotos; n++ {
		if name := by.Given(photoKey(project.PatternPhoto, n)); name != "" {
			list = append(list, PatternPhoto{n, name, by.Given(photoKey(project.PatternCaption, n))})
		}
	}
	return list
}

// photographed returns the texts with other photographs, numbered from 1.
func photographed(by project.PatternTexts, list []PatternPhoto) project.PatternTexts {
	for n := 1; n <= MostPhotos; n++ {
		var p PatternPhoto
		if n <= len(list) {
			p = list[n-1]
		}
		by = by.With(photoKey(project.PatternPhoto, n), p.Name).With(photoKey(project.PatternCaption, n), p.Caption)
	}
	return by
}

// AddPhoto reads a photograph and adds it to a mitt's pattern.
func (a *App) AddPhoto(ctx context.Context, id int64, r io.Reader) error {
	raw, err := photo.Read(ctx, r)
	if err == nil && raw == nil {
		err = fault.Fields{{Path: "photo", Message: "is missing; choose a picture first"}}
	}
	if err != nil {
		return err
	}
	return a.keepPhoto(ctx, id, raw)
}

// TakePhoto adds the photograph of a try to its mitt's pattern.
func (a *App) TakePhoto(ctx context.Context, id, try int64) error {
	raw, err := a.store.Photo(ctx, id, try)
	if err != nil {
		return err
	}
	return a.keepPhoto(ctx, id, raw)
}

func (a *App) keepPhoto(ctx context.Context, id int64, raw []byte) error {
	name, err := a.store.KeepPicture(ctx, raw)
	if err != nil {
		return err
	}
	return a.changePhotos(ctx, id, func(list []PatternPhoto) ([]PatternPhoto, error) {
		for _, p := range list {
			if p.Name == name {
				return nil, fault.New(fault.Invalid, "This photograph is in the pattern already.")
			}
		}
		if len(list) >= MostPhotos {
			return nil, fault.New(fault.Invalid, "A pattern has %d photographs at the most. Take one out first.", MostPhotos)
		}
		return append(list, PatternPhoto{Name: name}), nil
	})
}

// MovePhoto puts a photograph of a pattern, by its name, first, on the title page; or takes
// it out.
func (a *App) MovePhoto(ctx context.Context, id int64, name string, out bool) error {
	return a.changePhotos(ctx, id, func(list []PatternPhoto) (moved []PatternPhoto, err error) {
		for _, p := range list {
			switch {
			case p.Name != name:
				moved = append(moved, p)
			case !out:
				moved = append([]PatternPhoto{p}, moved...)
			}
		}
		return moved, nil
	})
}

// changePhotos saves other photographs of a pattern.
func (a *App) changePhotos(ctx context.Context, id int64, change func([]PatternPhoto) ([]PatternPhoto, error)) error {
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		list, err := change(photosOf(w.doc.Pattern))
		if err != nil {
			return store.Change{}, err
		}
		next := w.doc
		next.Pattern = photographed(next.Pattern, list)
		if err := next.Check(); err != nil {
			return store.Change{}, err
		}
		return w.decision(next)
	})
	return err
}

// Picture returns a photograph for patterns as a JPEG.
func (a *App) Picture(ctx context.Context, name string) ([]byte, error) {
	return a.store.Picture(ctx, name)
}

// photographs reads the photographs of a pattern for its pages. One that is not here, since
// only a file named it, is left out.
func (a *App) photographs(ctx context.Context, by project.PatternTexts, address string) (list []paper.PatternPhoto, err error) {
	for _, p := range photosOf(by) {
		raw, err := a.store.Picture(ctx, p.Name)
		if fault.KindOf(err) == fault.NotFound {
			continue
		}
		if err != nil {
			return nil, fmt.Errorf("photographs: %w", err)
		}
		of := paper.PatternPhoto{Picture: draw.Picture{JPEG: raw}, Caption: p.Caption}
		if address != "" {
			of.Picture.Address = address + p.Name
		}
		list = append(list, of)
	}
	return list, nil
}
