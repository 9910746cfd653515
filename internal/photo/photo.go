// Package photo takes photographs in: it reads what was sent, and keeps
// nothing of where and with what it was taken.
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

// The bounds of a photograph: its bytes as it is sent, and the longer side to
// which it is made smaller.
const (
	MaxBytes = 24 << 20
	side     = 1600
	grade    = 80
)

const advice = "send a JPEG or PNG picture of at most 24 MB, or leave it out"

// decoding is held by whoever decodes: one picture at a time, wherever it comes
// from, since each may take as much as maxDecoded.
var decoding = make(chan struct{}, 1)

// large is a picture, in bytes decoded, whose memory is given back before the
// next one is decoded. Left to the usual sweep, one after the other takes a
// gigabyte.
const large = 16 << 20

// waited is a picture that is read as long as somebody waits for it: decoding
// one that is large in dots and small in bytes takes many seconds.
type waited struct {
	ctx  context.Context
	from io.Reader
}

// Read is that of io.Reader; it fails with the context.
func (w *waited) Read(p []byte) (int, error) {
	if err := w.ctx.Err(); err != nil {
		return 0, err
	}
	return w.from.Read(p[:min(len(p), lookEach)])
}

// lookEach are the bytes of a file that are read between two looks at whether
// somebody still waits: 1 KB may hold a million dots.
const lookEach = 1 << 10

// alone waits until nobody else decodes; the function ends it. It fails only
// with ctx.
func alone(ctx context.Context) (done func(), err error) {
	select {
	case decoding <- struct{}{}:
		return func() { <-decoding }, nil
	case <-ctx.Done():
		return nil, ctx.Err()
	}
}

// Read reads a photograph and writes it anew as a JPEG, upright and at most
// 1600 dots wide or high. Nothing sent gives none. What is no such picture is
// a fault of the field photo.
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
	err = jpeg.Encode(&b, upright(small, heldAs(raw)), &jpeg.Options{Quality: grade})
	return b.Bytes(), err
}

// Kept gives a photograph as it is kept: as it is where it was written by Read,
// so that it loses nothing from one move to the next, else written anew.
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

// Dots are how many a picture says that it has; 0 where it can't be told or is
// refused unread.
func Dots(raw []byte) int64 {
	size, err := measure(raw)
	if err != nil || !size.small() {
		return 0
	}
	return int64(size.width) * int64(size.height)
}

// plain are the markers of a JPEG that holds a picture and nothing else (ITU-T
// T.81, table B.1): tables, the frame and the scan.
var plain = map[byte]bool{0xDB: true, baselineFrame: true, 0xC4: true}

// bare tells whether a JPEG has no segment beside those of the picture, and
// nothing after its end: no place, no camera, no comment.
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
