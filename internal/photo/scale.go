package photo

import (
	"context"
	"image"
	"runtime"
	"sync"
	"sync/atomic"

	"golang.org/x/image/draw"
)

// strip is the number of rows or columns that are scaled at a time. The scaler
// keeps 32 bytes for each dot between its two passes, which for a whole
// photograph would be hundreds of megabytes.
const strip = 16

// fitted returns a picture that is at most longest dots wide and high, scaled
// by Catmull and Rom's kernel (1974) where it is larger. First the rows are
// scaled, then the columns. It fails only with ctx.
func fitted(ctx context.Context, picture image.Image, longest int) (*image.RGBA, error) {
	from := picture.Bounds()
	width, height := from.Dx(), from.Dy()
	if width <= longest && height <= longest {
		same := image.NewRGBA(image.Rect(0, 0, width, height))
		draw.Draw(same, same.Rect, picture, from.Min, draw.Src)
		return same, nil
	}
	toWidth, toHeight := longest, longest
	if width > height {
		toHeight = max(height*longest/width, 1)
	} else {
		toWidth = max(width*longest/height, 1)
	}
	narrow := image.NewRGBA(image.Rect(0, 0, toWidth, height))
	if err := scaleRows(ctx, narrow, picture); err != nil {
		return nil, err
	}
	out := image.NewRGBA(image.Rect(0, 0, toWidth, toHeight))
	return out, scaleColumns(ctx, out, narrow)
}

// scaleRows scales each row of a picture to the width of to.
func scaleRows(ctx context.Context, to *image.RGBA, picture image.Image) error {
	from := picture.Bounds()
	scaler := draw.CatmullRom.NewScaler(to.Rect.Dx(), strip, from.Dx(), strip)
	return inStrips(ctx, to.Rect.Dy(), func(y, end int) {
		of := image.Rect(from.Min.X, from.Min.Y+y, from.Max.X, from.Min.Y+end)
		scaler.Scale(to, image.Rect(0, y, to.Rect.Dx(), end), picture, of, draw.Src, nil)
	})
}

// scaleColumns scales each column of a picture to the height of to.
func scaleColumns(ctx context.Context, to, picture *image.RGBA) error {
	scaler := draw.CatmullRom.NewScaler(strip, to.Rect.Dy(), strip, picture.Rect.Dy())
	return inStrips(ctx, to.Rect.Dx(), func(x, end int) {
		of := image.Rect(x, 0, end, picture.Rect.Dy())
		scaler.Scale(to, image.Rect(x, 0, end, to.Rect.Dy()), picture, of, draw.Src, nil)
	})
}

// inStrips calls scale for one strip of n rows or columns after another, on all
// processors, until ctx ends.
func inStrips(ctx context.Context, n int, scale func(from, to int)) error {
	var next atomic.Int64
	var workers sync.WaitGroup
	for range runtime.GOMAXPROCS(0) {
		workers.Go(func() {
			for ctx.Err() == nil {
				from := int(next.Add(strip)) - strip
				if from >= n {
					return
				}
				scale(from, min(from+strip, n))
			}
		})
	}
	workers.Wait()
	return ctx.Err()
}
