package draw

import (
	"image"
	"image/color"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A code of any length is read by an independent reader (gozxing), has the
// error correction that it should, and four light squares all round.
func TestQRIsRead(t *testing.T) {
	const link = "http://192.168.100.200:8420/?key=ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	for n := 1; n <= 300; n += 13 {
		text := strings.Repeat(link, 6)[:n]
		rows, err := QR(text)
		require.NoError(t, err)
		const dot = 3
		img := image.NewGray(image.Rect(0, 0, len(rows)*dot, len(rows)*dot))
		for y, row := range rows {
			require.Len(t, row, len(rows))
			for x, dark := range row {
				if dark {
					edge := len(rows) - quiet
					require.True(t, x >= 4 && y >= 4 && x < edge && y < edge, "the margin is light")
					continue
				}
				for i := range dot * dot {
					img.SetGray(x*dot+i%dot, y*dot+i/dot, color.Gray{255})
				}
			}
		}
		require.True(t, rows[4][4], "and no wider")
		bits, err := gozxing.NewBinaryBitmapFromImage(img)
		require.NoError(t, err)
		read, err := qrcode.NewQRCodeReader().Decode(bits, nil)
		require.NoError(t, err, text)
		assert.Equal(t, text, read.GetText())
		assert.Equal(t, "M", read.GetResultMetadata()[gozxing.ResultMetadataType_ERROR_CORRECTION_LEVEL])
	}
	_, err := QR(strings.Repeat(link, 60))
	assert.Error(t, err, "longer than the largest code holds")
}
