// Package photo reads uploaded photographs and removes what tells where and with
// which camera they were taken.
package photo

import (
	"bytes"
	"context"
	"errors"
	"image"
	"image/jpeg"
	"io"
	"net/http"
	"runtime/debug"

	"thenar/internal/fault"
)

// The bounds of a photograph: the bytes of the upload, and the longer side and
// the JPEG quality (1 to 100) with which it is stored.
const (
	MaxBytes = 24 << 20
	side     = 1600
	quality  = 80
)

const advice = "send a JPEG or PNG picture of at most 24 MB, or leave it out"

// decoding limits the program to one picture at a time, since each may take
// maxDecoded bytes.
var decoding = make(chan struct{}, 1)

// large is the size in decoded bytes from which a picture's memory is returned
// to the system at once. Left to the garbage collector, several in a row took a
// gigabyte.
const large = 16 << 20

// waited is a reader that fails once its context ends: decoding a picture of
// many dots in few bytes takes many seconds.
type waited struct {
	ctx  context.Context
	from io.Reader
}

// Read implements io.Reader.
func (w *waited) Read(p []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	return w.from.Read(p[:min(len(p), lookEach)])
}

// lookEach is the number of bytes read between two checks of the context; 1 KB
// may hold a million dots.
const lookEach = 1 << 10

// alone waits for its turn to decode; done ends the turn. It fails only with
// ctx.
func alone(ctx context.Context) (done func(), err error) {
	select {
	case decoding <- struct{}{}:
		return func() { <-decoding }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// Read reads a photograph and encodes it anew as a JPEG, upright and at most
// 1600 dots wide or high. It returns nil for empty input. Anything but a
// picture is a fault of the field photo.
func Read(ctx context.Context, r io.Reader) ([]byte, error) {
	done, err := alone(ctx)
	if err != nil {
		return nil, err
	}
	defer done()
	return read(ctx, r)
}

func read(ctx context.Context, r io.Reader) ([]byte, error) {
	raw, err := io.ReadAll(io.LimitReader(r, MaxBytes+1))
	if err != nil || len(raw) == 0 {
		return nil, err
	}
	if kind := http.DetectContentType(raw); len(raw) > MaxBytes || kind != "image/jpeg" && kind != "image/png" {
		return nil, fault.Fields{{Path: "photo", Message: "is no picture that can be read; " + advice}}
	}
	size, err := measure(raw)
	switch {
	case err != nil:
		return nil, fault.Fields{{Path: "photo", Message: "is damaged; " + advice}}
	case !size.small():
		return nil, size.refusal()
	}
	if size.bytes >= large {
		defer debug.FreeOSMemory()
	}
	picture, _, err := image.Decode(&waited{ctx, bytes.NewReader(raw)})
	if ctx.Err() != nil {
		return nil, ctx.Err()
	}
	if err != nil {
		return nil, fault.Fields{{Path: "photo", Message: "is damaged; " + advice}}
	}
	small, err := fitted(ctx, picture, side)
	if err != nil {
		return nil, err
	}
	var b bytes.Buffer
	err = jpeg.Encode(&b, upright(small, heldAs(raw)), &jpeg.Options{Quality: quality})
	return b.Bytes(), err
}

// Kept returns a photograph as it is stored: unchanged if Read wrote it, so
// that exports and imports lose nothing, else encoded anew.
func Kept(ctx context.Context, raw []byte) ([]byte, error) {
	done, err := alone(ctx)
	if err != nil {
		return nil, err
	}
	defer done()
	if bare(raw) {
		if size, err := measure(raw); err == nil && max(size.width, size.height) <= side {
			if _, err := jpeg.Decode(bytes.NewReader(raw)); err == nil {
				return raw, nil
			}
		}
	}
	kept, err := read(ctx, bytes.NewReader(raw))
	if err == nil && kept == nil {
		err = errors.New("an empty photograph")
	}
	return kept, err
}

// Dots returns the number of dots in a picture's header; 0 if it can't be read
// or Read would refuse it.
func Dots(raw []byte) int64 {
	size, err := measure(raw)
	if err != nil || !size.small() {
		return 0
	}
	return int64(size.width) * int64(size.height)
}

// plain holds the markers of a JPEG with nothing but a picture: tables, frame
// and scan (ITU-T T.81, table B.1).
var plain = map[byte]bool{0xDB: true, baselineFrame: true, 0xC4: true}

// bare reports whether a JPEG has only the segments of its picture, and nothing
// after its end: no location, camera or comment.
func bare(raw []byte) bool {
	if len(raw) < 4 || raw[0] != 0xFF || raw[1] != startOfImage {
		return false
	}
	for at := 2; at+4 <= len(raw) && raw[at] == 0xFF; {
		if raw[at+1] == startOfScan {
			end := bytes.Index(raw[at:], []byte{0xFF, endOfImage})
			return end >= 0 && at+end+2 == len(raw)
		}
		if !plain[raw[at+1]] {
			return false
		}
		at += 2 + int(raw[at+2])<<8 + int(raw[at+3])
	}
	return false
}
