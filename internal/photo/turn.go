package photo

import (
	"bytes"
	"encoding/binary"
	"image"

	"github.com/disintegration/imaging"
)

// upright turns a picture as the camera was held. It is made small before: a
// turned picture is a second one.
func upright(picture *image.NRGBA, held int) *image.NRGBA {
	switch held {
	case 2:
		return imaging.FlipH(picture)
	case 3:
		return imaging.Rotate180(picture)
	case 4:
		return imaging.FlipV(picture)
	case 5:
		return imaging.Transpose(picture)
	case 6:
		return imaging.Rotate270(picture)
	case 7:
		return imaging.Transverse(picture)
	case 8:
		return imaging.Rotate90(picture)
	}
	return picture
}

// heldAs is how the camera was held when a JPEG was taken, 1 to 8: the tag
// Orientation (0x0112) of the first directory, a SHORT (Exif 2.3, 4.6.4). 1
// where it is not told.
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
