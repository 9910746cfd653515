package draw

import (
	"fmt"
	"image/color"

	"github.com/boombuler/barcode/qr"
)

// quiet is the width of the light margin of a QR code, in squares (ISO/IEC
// 18004).
const quiet = 4

// QR returns the modules of a text's QR code row by row, true if dark,
// including the margin that readers need. Error correction level M recovers
// from the loss of about 15 % of the code words.
func QR(text string) ([][]bool, error) {
	code, err := qr.Encode(text, qr.M, qr.Auto)
	if err != nil {
		return nil, fmt.Errorf("draw.QR: %w", err)
	}
	side := code.Bounds().Dx()
	rows := make([][]bool, side+2*quiet)
	for y := range rows {
		rows[y] = make([]bool, len(rows))
	}
	for y := range side {
		for x := range side {
			rows[y+quiet][x+quiet] = code.At(x, y) == color.Black
		}
	}
	return rows, nil
}
