package web

import (
	"bytes"
	"io"
	"math/rand/v2"
	"runtime"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A rendered page is what was written, whatever the lengths of its pieces; one of
// several megabytes takes no fresh memory once there was such a page.
func TestRenderedPage(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 4))
	for range 20 {
		var got rendered
		var want, sent bytes.Buffer
		for range r.IntN(30) {
			piece := bytes.Repeat([]byte{byte(r.IntN(256))}, []int{0, 1, 100, len(chunk{}), r.IntN(4 * len(chunk{}))}[r.IntN(5)])
			want.Write(piece)
			if r.IntN(2) == 0 {
				_, _ = got.Write(piece)
			} else {
				_, _ = got.WriteString(string(piece))
			}
		}
		require.NoError(t, got.sendTo(&sent))
		require.True(t, bytes.Equal(want.Bytes(), sent.Bytes()))
		got.free()
	}

	sheet := strings.Repeat("M 1 2 L 3 4 ", 4000)
	render := func() {
		var b rendered
		for range 100 {
			_, _ = b.WriteString(sheet)
		}
		require.NoError(t, b.sendTo(io.Discard))
		b.free()
	}
	render()
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	for range 5 {
		render()
	}
	runtime.ReadMemStats(&after)
	assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(100*len(sheet)), "of five pages as long")
}
