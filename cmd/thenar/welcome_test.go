package main

import (
	"image"
	"image/color"
	"net"
	"strings"
	"testing"

	"github.com/makiuchi-d/gozxing"
	"github.com/makiuchi-d/gozxing/qrcode"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/web"
)

// The code that is printed at the start is the link, as an independent reader
// (gozxing) reads it from a terminal that writes light on dark.
func TestPrintedCodeIsTheLink(t *testing.T) {
	const link = "http://192.168.100.200:8420/?key=ABCDEFGHIJKLMNOPQRSTUVWXYZ"
	var out strings.Builder
	require.NoError(t, welcome(&out, &net.TCPAddr{}, web.Door{Key: "k", Link: link}))
	lines := strings.Split(strings.TrimSpace(out.String()), "\n")
	require.Equal(t, link, lines[0])
	lines = lines[3:]
	side := len([]rune(lines[0]))
	const dot = 4
	img := image.NewGray(image.Rect(0, 0, side*dot, 2*len(lines)*dot))
	light := map[rune][2]bool{'█': {true, true}, '▀': {true, false}, '▄': {false, true}, ' ': {}}
	for y, line := range lines {
		x := 0
		for _, block := range line {
			halves, ok := light[block]
			require.True(t, ok, "%q is no block", block)
			for half, lit := range halves {
				for i := range dot * dot {
					if lit {
						img.SetGray(x*dot+i%dot, (2*y+half)*dot+i/dot, color.Gray{255})
					}
				}
			}
			x++
		}
		require.Equal(t, side, x)
	}
	bits, err := gozxing.NewBinaryBitmapFromImage(img)
	require.NoError(t, err)
	read, err := qrcode.NewQRCodeReader().Decode(bits, nil)
	require.NoError(t, err)
	assert.Equal(t, link, read.GetText())
}
