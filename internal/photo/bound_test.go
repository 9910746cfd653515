package photo

import (
	"bytes"
	"context"
	"image"
	"image/png"
	"runtime"
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// scanned is a progressive JPEG of greys with so many scans: the first has the
// mean of each block, the others one code each, by which all blocks are passed
// over (ITU-T T.81, G.1.2.2: a run of up to 32,767 blocks that end).
func scanned(scans int) []byte {
	segment := func(marker byte, data ...byte) []byte {
		return append([]byte{0xFF, marker, 0, byte(len(data) + 2)}, data...)
	}
	codes := func(kind, symbol byte) []byte { // one code, of one bit
		return segment(0xC4, append(append([]byte{kind, 1}, make([]byte, 15)...), symbol)...)
	}
	raw := []byte{0xFF, 0xD8}
	raw = append(raw, segment(0xDB, append([]byte{0}, bytes.Repeat([]byte{1}, 64)...)...)...)
	raw = append(raw, segment(0xC2, 8, 0, 16, 0, 16, 1, 1, 0x11, 0)...)
	raw = append(raw, codes(0x00, 0)...)
	raw = append(raw, codes(0x10, 0xE0)...)
	raw = append(raw, append(segment(0xDA, 1, 1, 0, 0, 0, 0), 0x0F)...)
	for range scans - 1 {
		raw = append(raw, append(segment(0xDA, 1, 1, 0, 1, 1, 0), 0, 1)...)
	}
	return append(raw, 0xFF, 0xD9)
}

// A progressive JPEG may go over its picture again and again, for a few bytes
// each time; how often is counted before it is decoded.
func TestScansAreBounded(t *testing.T) {
	for scans, ok := range map[int]bool{10: true, maxScans: true, maxScans + 1: false} {
		kept, err := Read(t.Context(), bytes.NewReader(scanned(scans)))
		if ok {
			require.NoError(t, err, scans)
			assert.True(t, bare(kept))
			continue
		}
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.ErrorContains(t, err, "101 scans")
		assert.Zero(t, Dots(scanned(scans)))
	}
}

// What is refused says by what.
func TestRefusalNamesTheBound(t *testing.T) {
	_, err := Read(t.Context(), bytes.NewReader(headed(t, 12_000, 12_000, 8, 0, 0)))
	assert.ErrorContains(t, err, "549 MB", "its sides are within the bound")
	_, err = Read(t.Context(), bytes.NewReader(headed(t, 12_001, 1, 8, 0, 0)))
	assert.ErrorContains(t, err, "at most 12,000 on a side")
}

// leaving is a context that ends when it was looked at so many times.
type leaving struct {
	context.Context
	looks int
}

func (l *leaving) Err() error {
	if l.looks--; l.looks < 0 {
		return context.Canceled
	}
	return nil
}

// Decoding ends when nobody waits for the picture any more, and is no fault of
// the picture then.
//
//thenar:race
func TestDecodingEndsWithWhoWaits(t *testing.T) {
	raw := drawn(t, 2000, 2000, 8, 0, 0)
	require.Greater(t, len(raw), 3*lookEach)
	for what, take := range map[string]func(context.Context) ([]byte, error){
		"Read": func(ctx context.Context) ([]byte, error) { return Read(ctx, bytes.NewReader(raw)) },
		"Kept": func(ctx context.Context) ([]byte, error) { return Kept(ctx, raw) },
	} {
		_, err := take(&leaving{t.Context(), 3})
		assert.ErrorIs(t, err, context.Canceled, what)
	}
}

// The memory of a large picture is given back when it is kept, without waiting
// for a sweep.
func TestLargePictureLeavesNothing(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, (&png.Encoder{CompressionLevel: png.BestSpeed}).Encode(&b, image.NewNRGBA(image.Rect(0, 0, 4096, 1024))))
	defer debug.SetGCPercent(debug.SetGCPercent(-1)) // no other sweep
	var before, after runtime.MemStats
	runtime.GC()
	runtime.ReadMemStats(&before)
	_, err := Read(t.Context(), &b)
	require.NoError(t, err)
	runtime.ReadMemStats(&after)
	assert.Less(t, int64(after.HeapAlloc)-int64(before.HeapAlloc), int64(large/2))
}
