package exportfile

import (
	"context"
	"fmt"

	"thenar/internal/fault"
	"thenar/internal/photo"
)

// maxDots are the most that the photographs of a file have together: those of
// 1,500 as large as any that is kept. A small file could name far more, each of
// them right by itself, and keep whoever takes it in busy for hours.
const maxDots = 4_000_000_000

// keepPhotos brings the photographs of a file into the form in which they are
// kept. It fails with fault.Fields, or with ctx.
func (f *File) keepPhotos(ctx context.Context) error {
	sum := int64(0)
	for _, m := range f.Mitts {
		for _, t := range m.Tries {
			sum += photo.Dots(t.Photo)
		}
	}
	if sum > maxDots {
		return fault.Fields{{Path: "FILE", Message: fmt.Sprintf("has photographs of %d million dots together; %d are the most: export fewer mitts at a time", sum/1e6, int64(maxDots/1e6))}}
	}
	c := checker{}
	for i := range f.Mitts {
		for j := range f.Mitts[i].Tries {
			t := &f.Mitts[i].Tries[j]
			if t.Photo == nil {
				continue
			}
			kept, err := photo.Kept(ctx, t.Photo)
			if ctx.Err() != nil {
				return ctx.Err()
			}
			c.under(fmt.Sprintf("mitts[%d].tries[%d]", i, j), err)
			t.Photo = kept
			if c.full() {
				return c.faults
			}
		}
	}
	return c.faults.Err()
}
