package photo

import (
	"bytes"
	"compress/zlib"
	"context"
	"encoding/binary"
	"fmt"
	"hash/crc32"
	"image"
	"image/jpeg"
	"math"
	"os"
	"runtime"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

// drawn is a PNG of so many dots of the kind colour, all of them zero: large in
// dots and small in bytes (PNG, third edition, 5.3 and 11.2).
func drawn(t testing.TB, width, height, depth, colour, passes int) []byte {
	t.Helper()
	var b bytes.Buffer
	b.WriteString("\x89PNG\r\n\x1a\n")
	chunk := func(name string, data []byte) {
		_ = binary.Write(&b, binary.BigEndian, uint32(len(data)))
		body := append([]byte(name), data...)
		b.Write(body)
		_ = binary.Write(&b, binary.BigEndian, crc32.ChecksumIEEE(body))
	}
	head := binary.BigEndian.AppendUint32(binary.BigEndian.AppendUint32(nil, uint32(width)), uint32(height))
	chunk("IHDR", append(head, byte(depth), byte(colour), 0, 0, byte(passes)))
	channels := map[int]int{0: 1, 2: 3, 6: 4}[colour]
	var packed bytes.Buffer
	z := zlib.NewWriter(&packed)
	row := make([]byte, 1+(width*depth*channels+7)/8)
	for range height {
		_, err := z.Write(row)
		require.NoError(t, err)
	}
	require.NoError(t, z.Close())
	chunk("IDAT", packed.Bytes())
	chunk("IEND", nil)
	return b.Bytes()
}

// headed is the head of a PNG, which is all that has to be looked at.
func headed(t testing.TB, width, height, depth, colour, passes int) []byte {
	t.Helper()
	raw := drawn(t, 1, 1, depth, colour, passes)
	binary.BigEndian.PutUint32(raw[16:], uint32(width))
	binary.BigEndian.PutUint32(raw[20:], uint32(height))
	binary.BigEndian.PutUint32(raw[29:], crc32.ChecksumIEEE(raw[12:29]))
	return raw
}

// framed is a JPEG up to its scan: a frame of the kind marker with components
// of these factors (ITU-T T.81, B.2.2).
func framed(width, height int, marker byte, factors ...byte) []byte {
	frame := []byte{8, byte(height >> 8), byte(height), byte(width >> 8), byte(width), byte(len(factors))}
	for i, f := range factors {
		frame = append(frame, byte(i+1), f, 0)
	}
	raw := []byte{0xFF, 0xD8, 0xFF, marker, 0, byte(len(frame) + 2)}
	return append(append(raw, frame...), 0xFF, 0xDA, 0, 2)
}

// A picture of one row of 50 million dots is 48 KB; refusing it allocates next
// to nothing, where decoding it takes gigabytes.
func TestOneRowOfFiftyMillionDots(t *testing.T) {
	raw := drawn(t, 50_000_000, 1, 8, 0, 0)
	require.Less(t, len(raw), 64<<10)
	for what, take := range map[string]func() ([]byte, error){
		"Read": func() ([]byte, error) { return Read(t.Context(), bytes.NewReader(raw)) },
		"Kept": func() ([]byte, error) { return Kept(t.Context(), raw) },
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		_, err := take()
		runtime.ReadMemStats(&after)
		assert.Equal(t, fault.Invalid, fault.KindOf(err), what)
		assert.ErrorContains(t, err, "12,000", what)
		assert.Less(t, after.TotalAlloc-before.TotalAlloc, uint64(4<<20), what)
	}
}

// What a picture takes is known from its head: dots by the bytes of the model,
// the coefficients of a progressive JPEG, passes, other colours.
func TestMeasure(t *testing.T) {
	const mb = 1_000_000
	for what, c := range map[string]struct {
		raw  []byte
		want int64
		ok   bool
	}{
		"8 bits a colour":               {headed(t, 5000, 5000, 8, 2, 0), 100 * mb, true},
		"16 bits a colour":              {headed(t, 5000, 5000, 16, 6, 0), 200 * mb, true},
		"16 bits, too many":             {headed(t, 6000, 6000, 16, 2, 0), 288 * mb, false},
		"in passes":                     {headed(t, 5000, 5000, 8, 2, 1), 200 * mb, true},
		"greys, one of them clear":      {headed(t, 9000, 9000, 8, 0, 0), 324 * mb, false},
		"a camera's 48 million":         {framed(8000, 6000, 0xC0, 0x22, 0x11, 0x11), 72 * mb, true},
		"progressive":                   {framed(4000, 3200, 0xC2, 0x22, 0x11, 0x11), 96 * mb, true},
		"progressive, as many as 48":    {framed(8000, 6000, 0xC2, 0x22, 0x11, 0x11), 360 * mb, false},
		"progressive behind fill bytes": {append([]byte{0xFF, 0xD8, 0xFF, 0xFF, 0xFF, 0xFF}, framed(8000, 6000, 0xC2, 0x22, 0x11, 0x11)[3:]...), 360 * mb, false},
		"printer's colours":             {framed(8000, 6000, 0xC0, 0x11, 0x11, 0x11, 0x11), 384 * mb, false},
		"one row":                       {headed(t, 12_001, 1, 8, 0, 0), 48_004, false},
		"one column":                    {framed(8, 12_001, 0xC0, 0x11), 96_064, false},
	} {
		got, err := measure(c.raw)
		require.NoError(t, err, what)
		assert.Equal(t, c.want, got.bytes, what)
		assert.Equal(t, c.ok, got.small(), what)
	}
	_, err := measure([]byte{0xFF, 0xD8, 0xFF, 0xDA, 0, 2, 0, 0})
	assert.Error(t, err)
}

// A picture is turned as another program turns it, for each way in which a
// camera can be held and in both orders of bytes. The files held-N.jpg have
// their tag from exiftool 12.57; upright-N.jpg are the same, turned without
// loss by jhead 3.06 with jpegtran.
func TestUpright(t *testing.T) {
	for held := 1; held <= 8; held++ {
		raw, err := os.ReadFile(fmt.Sprintf("testdata/held-%d.jpg", held))
		require.NoError(t, err)
		require.Equal(t, held, heldAs(raw))
		turned, err := os.Open(fmt.Sprintf("testdata/upright-%d.jpg", held))
		require.NoError(t, err)
		want, err := jpeg.Decode(turned)
		require.NoError(t, err)
		require.NoError(t, turned.Close())
		kept, err := Read(t.Context(), bytes.NewReader(raw))
		require.NoError(t, err)
		assert.NotContains(t, string(kept), "Exif")
		got, err := jpeg.Decode(bytes.NewReader(kept))
		require.NoError(t, err)
		require.Equal(t, want.Bounds(), got.Bounds(), "held as %d", held)
		assert.Less(t, apart(got, want), 4.0, "held as %d: writing it anew moves a colour by 2 or 3 of 255", held)
	}
}

// apart is the mean of how far the colours of two pictures of one size are
// apart, in parts of 255.
func apart(a, b image.Image) float64 {
	sum, n := 0.0, 0
	for y := range a.Bounds().Dy() {
		for x := range a.Bounds().Dx() {
			r1, g1, b1, _ := a.At(x, y).RGBA()
			r2, g2, b2, _ := b.At(x, y).RGBA()
			sum += math.Abs(float64(r1)-float64(r2)) + math.Abs(float64(g1)-float64(g2)) + math.Abs(float64(b1)-float64(b2))
			n += 3 * 257
		}
	}
	return sum / float64(n)
}

// A tag that names no way of holding a camera turns nothing, nor does one that
// is cut off.
func TestUnknownTagTurnsNothing(t *testing.T) {
	raw, err := os.ReadFile("testdata/held-1.jpg")
	require.NoError(t, err)
	tag := bytes.Index(raw, []byte{0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, 1}) // as a SHORT, one of them, 1
	require.Positive(t, tag)
	plain, err := Read(t.Context(), bytes.NewReader(raw))
	require.NoError(t, err)
	for _, held := range []byte{0, 9, 255} {
		raw[tag+9] = held
		got, err := Read(t.Context(), bytes.NewReader(raw))
		require.NoError(t, err)
		assert.Equal(t, plain, got)
	}
	for n := range 22 {
		assert.Equal(t, 1, orientation([]byte("MM\x00\x2A\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00")[:n]))
	}
}

// slowly is a picture that comes in two halves; what is asked in between waits.
type slowly struct {
	first, rest *bytes.Reader
	begun, on   chan struct{}
	once        sync.Once
}

func (s *slowly) Read(p []byte) (int, error) {
	if s.first.Len() > 0 {
		return s.first.Read(p)
	}
	s.once.Do(func() { close(s.begun); <-s.on })
	return s.rest.Read(p)
}

// One picture at a time is taken in; who does not wait any more goes.
//
//thenar:race
func TestOneAtATime(t *testing.T) {
	raw := encoded(t, 30, 20)
	s := &slowly{first: bytes.NewReader(raw[:100]), rest: bytes.NewReader(raw[100:]), begun: make(chan struct{}), on: make(chan struct{})}
	done := make(chan error, 1)
	go func() {
		_, err := Read(context.Background(), s)
		done <- err
	}()
	<-s.begun
	gone, cancel := context.WithDeadline(t.Context(), time.Unix(0, 0))
	defer cancel()
	_, err := Kept(gone, raw)
	assert.ErrorIs(t, err, context.DeadlineExceeded)
	_, err = Read(gone, bytes.NewReader(raw))
	assert.ErrorIs(t, err, context.DeadlineExceeded)
	close(s.on)
	require.NoError(t, <-done)
	kept, err := Kept(t.Context(), raw)
	require.NoError(t, err)
	_, _, err = image.Decode(bytes.NewReader(kept))
	require.NoError(t, err)
}
