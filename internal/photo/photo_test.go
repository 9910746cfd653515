package photo

import (
	"bytes"
	"image"
	"image/color"
	"image/jpeg"
	"image/png"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
)

func picture(width, height int) image.Image {
	im := image.NewRGBA(image.Rect(0, 0, width, height))
	for i := range width * height {
		im.Set(i%width, i/width, color.RGBA{uint8(i), uint8(i / width), 90, 255})
	}
	return im
}

func encoded(t *testing.T, width, height int) []byte {
	t.Helper()
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, picture(width, height), nil))
	return b.Bytes()
}

// located is a photograph as a camera writes it: with a segment that says
// where it was taken (Exif 2.3, APP1) and one with a comment.
func located(t *testing.T) []byte {
	t.Helper()
	raw := encoded(t, 40, 30)
	segment := func(marker byte, text string) []byte {
		n := len(text) + 2
		return append([]byte{0xFF, marker, byte(n >> 8), byte(n)}, text...)
	}
	with := append([]byte{0xFF, 0xD8}, segment(0xE1, "Exif\x00\x00GPSLatitude 59.91 N")...)
	with = append(with, segment(0xFE, "by Marit")...)
	return append(with, raw[2:]...)
}

// Nothing of where, when and with what a photograph was taken is kept.
func TestReadStripsWhereItWasTaken(t *testing.T) {
	raw := located(t)
	require.Contains(t, string(raw), "GPSLatitude")
	for _, read := range []func([]byte) ([]byte, error){
		func(raw []byte) ([]byte, error) { return Read(t.Context(), bytes.NewReader(raw)) },
		func(raw []byte) ([]byte, error) { return Kept(t.Context(), raw) },
	} {
		kept, err := read(raw)
		require.NoError(t, err)
		assert.NotContains(t, string(kept), "GPSLatitude")
		assert.NotContains(t, string(kept), "Marit")
		assert.True(t, bare(kept))
	}
	trailing := append(encoded(t, 8, 8), "taken at home"...)
	kept, err := Kept(t.Context(), trailing)
	require.NoError(t, err)
	assert.NotContains(t, string(kept), "home", "nor behind the picture's end")
}

// A photograph is at most 1600 dots wide or high, and what was written once is
// kept to the byte.
func TestKeptIsTheSame(t *testing.T) {
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, picture(3000, 1000)))
	kept, err := Read(t.Context(), &b)
	require.NoError(t, err)
	size, kind, err := image.DecodeConfig(bytes.NewReader(kept))
	require.NoError(t, err)
	assert.Equal(t, "jpeg", kind)
	assert.Equal(t, 1600, size.Width)
	again, err := Kept(t.Context(), kept)
	require.NoError(t, err)
	assert.Equal(t, kept, again)
	large := encoded(t, 1700, 20)
	smaller, err := Kept(t.Context(), large)
	require.NoError(t, err)
	assert.NotEqual(t, large, smaller)
}

// What is no picture is refused, and says what would be right.
func TestReadRefuses(t *testing.T) {
	cut := encoded(t, 60, 60)
	for what, raw := range map[string]string{
		"a page": "<html><script>alert(1)</script>", "a drawing": `<svg xmlns="http://www.w3.org/2000/svg"/>`, "half a picture": string(cut[:len(cut)/2]),
		"a picture's beginning": "\xff\xd8\xff\xe0", "too much": strings.Repeat("x", MaxBytes+1),
		"more dots than a wall": "\x89PNG\r\n\x1a\n\x00\x00\x00\rIHDR\x00\x01\x00\x00\x00\x01\x00\x00\x08\x06\x00\x00\x00\x00\x00\x00\x00",
	} {
		_, err := Read(t.Context(), strings.NewReader(raw))
		require.Error(t, err, what)
		assert.Equal(t, fault.Invalid, fault.KindOf(err), what)
		assert.Contains(t, err.Error(), "photo: ", what)
		_, err = Kept(t.Context(), []byte(raw))
		assert.Error(t, err, what)
	}
	none, err := Read(t.Context(), strings.NewReader(""))
	require.NoError(t, err)
	assert.Nil(t, none)
	_, err = Kept(t.Context(), nil)
	assert.Error(t, err)
}

// Any bytes at all are a picture that was written anew, or refused.
func FuzzKept(f *testing.F) {
	var b bytes.Buffer
	_ = jpeg.Encode(&b, picture(9, 7), nil)
	f.Add(b.Bytes())
	f.Add([]byte("\xff\xd8\xff\xe1\x00\x04ab\xff\xda\xff\xd9"))
	f.Fuzz(func(t *testing.T, raw []byte) {
		kept, err := Kept(t.Context(), raw)
		if err == nil {
			require.True(t, bare(kept))
		}
	})
}
