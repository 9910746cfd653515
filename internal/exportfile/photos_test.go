package exportfile

import (
	"bytes"
	"context"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/png"
	"runtime"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// enlarged returns a PNG of one dot whose header claims other dimensions (PNG,
// third edition, 11.2.1).
func enlarged(t testing.TB, width, height int) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, image.NewNRGBA(image.Rect(0, 0, 1, 1))))
	raw := b.Bytes()
	binary.BigEndian.PutUint32(raw[16:], uint32(width))
	binary.BigEndian.PutUint32(raw[20:], uint32(height))
	binary.BigEndian.PutUint32(raw[29:], crc32.ChecksumIEEE(raw[12:29]))
	return raw
}

// pictured returns a file with these photographs, each in a try of its own.
func pictured(t testing.TB, photos ...[]byte) []byte {
	t.Helper()
	f, err := Read(t.Context(), whole(t))
	require.NoError(t, err)
	m := &f.Mitts[0]
	one := m.Tries[0]
	m.Tries = nil
	for i, p := range photos {
		one.ID, one.Key, one.Photo = int64(i+1), fmt.Sprintf("T%d", i), p
		m.Tries = append(m.Tries, one)
	}
	var b bytes.Buffer
	require.NoError(t, Write(&b, f))
	return b.Bytes()
}

// Each photograph is held to the bounds of an upload, and all together to
// maxDots, before any of them is decoded.
func TestPhotographsOfAFileAreBounded(t *testing.T) {
	var many [][]byte
	for range 70 {
		many = append(many, enlarged(t, 12_000, 5000))
	}
	for _, c := range []struct {
		raw  []byte
		says string
	}{
		{pictured(t, enlarged(t, 50_000_000, 1)), "mitts[0].tries[0].photo: has 50000000 by 1 dots"},
		{pictured(t, many...), "FILE: has photographs of 4200 million dots together; 4000 are the most"},
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := Read(t.Context(), c.raw)
		runtime.ReadMemStats(&after)
		require.Error(t, err)
		assert.Equal(t, fault.Invalid, fault.KindOf(err))
		assert.Contains(t, err.Error(), c.says)
		assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(32<<20))
	}
	gone, cancel := context.WithCancel(t.Context())
	cancel()
	_, err := Read(gone, pictured(t, many[0]))
	assert.ErrorIs(t, err, context.Canceled, "nobody waits for the result")
}
