package photo

import (
	"bytes"
	"encoding/binary"
	"image"
)

// upright returns a picture turned upright from its orientation, 1 to 8: which
// sides of the scene its first row and first column are (Exif 2.3, 4.6.4). It
// copies the picture, so the caller scales it down first.
func upright(picture *image.RGBA, held int) *image.RGBA {
	if held < 2 || held > 8 {
		return picture
	}
	lying := held >= 5 // its rows are columns
	fromRight := held == 2 || held == 3 || held == 7 || held == 8
	fromBelow := held == 3 || held == 4 || held == 6 || held == 7
	width, height := picture.Rect.Dx(), picture.Rect.Dy()
	out := image.NewRGBA(image.Rect(0, 0, width, height))
	if lying {
		out = image.NewRGBA(image.Rect(0, 0, height, width))
	}
	for y := range out.Rect.Dy() {
		for x := range out.Rect.Dx() {
			column, row := x, y
			if lying {
				column, row = y, x
			}
			if fromRight {
				column = width - 1 - column
			}
			if fromBelow {
				row = height - 1 - row
			}
			at := picture.PixOffset(column, row)
			copy(out.Pix[out.PixOffset(x, y):], picture.Pix[at:at+4])
		}
	}
	return out
}

// heldAs returns the orientation of a JPEG, 1 to 8: the tag Orientation
// (0x0112) of the first directory, a SHORT (Exif 2.3, 4.6.4). It is 1 if there
// is none.
func heldAs(raw []byte) int {
	held := 1
	segments(raw, func(marker byte, data []byte) bool {
		tiff, exif := bytes.CutPrefix(data, []byte("Exif\x00\x00"))
		if marker != applicationData || !exif {
			return true
		}
		held = orientation(tiff)
		return false
	})
	return held
}

func orientation(tiff []byte) int {
	const tag, short = 0x0112, 3
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if tiff[0] == 'I' {
		order = binary.LittleEndian
	}
	at := int64(order.Uint32(tiff[4:]))
	if at+2 > int64(len(tiff)) {
		return 1
	}
	list := tiff[at+2:]
	for range order.Uint16(tiff[at:]) {
		if len(list) < 12 {
			return 1
		}
		if order.Uint16(list) == tag && order.Uint16(list[2:]) == short {
			return int(order.Uint16(list[8:]))
		}
		list = list[12:]
	}
	return 1
}
