package exportfile

import (
	"context"
	"fmt"

	"thenar/internal/fault"
	"thenar/internal/photo"
)

// maxDots is the most dots that the photographs of a file may have together, as
// many as 1,500 photographs of the largest kept size. A small file can declare
// far more, each photograph allowed by itself, and reading it would take hours.
const maxDots = 4_000_000_000

// convertPhotos replaces the photographs of a file by the form in which the
// program keeps them. It fails with fault.Fields, or with ctx.
func (f *File) convertPhotos(ctx context.Context) error {
	sum := int64(0)
	for _, m := range f.Mitts {
		for _, t := range m.Tries {
			sum += photo.Dots(t.Photo)
		}
		for _, p := range m.Pictures {
			sum += photo.Dots(p.Photo)
		}
	}
	if sum > maxDots {
		return fault.Fields{{Path: "FILE", Message: fmt.Sprintf("has photographs of %d million dots together; %d are the most: export fewer mitts at a time", sum/1e6, int64(maxDots/1e6))}}
	}
	c := checker{}
	keep := func(path string, raw *[]byte) error {
		kept, err := photo.Kept(ctx, *raw)
		if ctx.Err() != nil {
			return ctx.Err()
		}
		c.nested(path, err)
		if *raw = kept; c.full() {
			return c.faults
		}
		return nil
	}
	for i := range f.Mitts {
		for j := range f.Mitts[i].Tries {
			t := &f.Mitts[i].Tries[j]
			if t.Photo == nil {
				continue
			}
			if err := keep(fmt.Sprintf("mitts[%d].tries[%d]", i, j), &t.Photo); err != nil {
				return err
			}
		}
		for j := range f.Mitts[i].Pictures {
			if err := keep(fmt.Sprintf("mitts[%d].pictures[%d]", i, j), &f.Mitts[i].Pictures[j].Photo); err != nil {
				return err
			}
		}
	}
	return c.faults.Err()
}
