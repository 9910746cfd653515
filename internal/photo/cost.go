package photo

import (
	"bytes"
	"errors"
	"image"
	"image/color"
	_ "image/jpeg" // measured
	_ "image/png"  // measured

	"thenar/internal/fault"
)

// The bounds of a picture: its sides in dots, and its bytes when decoded. A row
// of 50 million dots takes 48 KB as a PNG, and gigabytes to decode.
const (
	maxSide    = 12_000
	maxDecoded = 256 << 20
)

// maxScans is the largest number of scans of a JPEG. Each scan of a progressive
// JPEG passes over the whole picture and may take only 70 bytes, so a small
// file could take hours. Programs write about ten (common practice, no source).
const maxScans = 100

// size is what the header of a picture says of it.
type size struct {
	width, height int
	bytes         int64 // when decoded
	scans         int   // of a JPEG; an upper bound
}

// measure reads the header of a picture, and counts the scans of a JPEG.
func measure(raw []byte) (size, error) {
	config, kind, err := image.DecodeConfig(bytes.NewReader(raw))
	if err != nil {
		return size{}, err
	}
	s := size{width: config.Width, height: config.Height}
	if kind == "jpeg" {
		// After the header, 0xFF is followed by zero unless it begins a marker (ITU-T
		// T.81, F.1.2.3). A thumbnail in the header may add a few.
		s.scans = bytes.Count(raw, []byte{fill, startOfScan})
		s.bytes, err = jpegBytes(raw, config.ColorModel)
		return s, err
	}
	s.bytes = int64(s.width) * int64(s.height) * dotBytes(config.ColorModel)
	if interlaced(raw) {
		s.bytes *= 2 // each of its seven passes is decoded as a picture
	}
	return s, nil
}

// small reports whether a picture may be decoded.
func (s size) small() bool {
	return s.width <= maxSide && s.height <= maxSide && s.bytes <= maxDecoded && s.scans <= maxScans
}

// refusal returns the fault of a picture that is not small.
func (s size) refusal() fault.Fields {
	var faults fault.Fields
	switch {
	case s.scans > maxScans:
		faults.Add("photo", "is a JPEG of %d scans, %d are the most; save it as an ordinary JPEG, or leave it out", s.scans, maxScans)
	case s.width > maxSide || s.height > maxSide:
		faults.Add("photo", "has %d by %d dots; send one of at most 12,000 on a side, or leave it out", s.width, s.height)
	default:
		faults.Add("photo", "has %d by %d dots, %d MB; %d are the most: send a smaller one, or leave it out", s.width, s.height, s.bytes>>20, maxDecoded>>20)
	}
	return faults
}

// dotBytes returns the largest number of bytes of a decoded PNG dot. Grey dots
// take as many as coloured ones, since one shade may be transparent, which the
// header does not tell.
func dotBytes(m color.Model) int64 {
	switch m {
	case color.Gray16Model, color.RGBA64Model, color.NRGBA64Model:
		return 8
	case color.GrayModel, color.RGBAModel, color.NRGBAModel:
		return 4
	}
	return 1 // of a palette
}

// interlaced reports whether a PNG is interlaced: the last byte of its first
// chunk, which begins at byte 8, is not zero (PNG, third edition, 11.2.1).
func interlaced(raw []byte) bool {
	const at = 8 + 8 + 12
	return len(raw) > at && raw[at] != 0
}

// The markers of a JPEG (ITU-T T.81, table B.1).
const (
	fill             = 0xFF
	baselineFrame    = 0xC0
	progressiveFrame = 0xC2
	restart, last    = 0xD0, 0xD7
	startOfImage     = 0xD8
	endOfImage       = 0xD9
	startOfScan      = 0xDA
	applicationData  = 0xE1
)

var errNoFrame = errors.New("a JPEG without a frame")

// jpegBytes returns the size of a decoded JPEG in bytes: one for each sample;
// for a progressive JPEG also four for each coefficient, all kept until the
// last scan; and four for each dot if colours are converted. The frame is that
// of ITU-T T.81, B.2.2.
func jpegBytes(raw []byte, m color.Model) (int64, error) {
	var frame []byte
	var marker byte
	segments(raw, func(m byte, data []byte) bool {
		if m >= baselineFrame && m <= progressiveFrame {
			frame, marker = data, m
		}
		return frame == nil
	})
	if len(frame) < 6 || len(frame) < 6+3*int(frame[5]) {
		return 0, errNoFrame
	}
	height, width := int64(frame[1])<<8|int64(frame[2]), int64(frame[3])<<8|int64(frame[4])
	across, down, blocks := int64(1), int64(1), int64(0)
	for i := range int(frame[5]) {
		h, v := int64(frame[7+3*i]>>4), int64(frame[7+3*i]&15)
		across, down, blocks = max(across, h), max(down, v), blocks+h*v
	}
	units := ((width + 8*across - 1) / (8 * across)) * ((height + 8*down - 1) / (8 * down))
	sum := units * blocks * 64
	if marker == progressiveFrame {
		sum *= 1 + 4
	}
	if m == color.CMYKModel || m == color.RGBAModel || bytes.Contains(raw, []byte("Adobe")) {
		sum += 4 * width * height
	}
	return sum, nil
}

// segments calls visit for each segment of a JPEG before its first scan, until
// visit returns false. Like decoders, it skips bytes between segments.
func segments(raw []byte, visit func(marker byte, data []byte) bool) {
	for at := 2; at+4 <= len(raw); {
		marker := raw[at+1]
		switch {
		case raw[at] != 0xFF, marker == fill:
			at++
			continue
		case marker == 0, marker >= restart && marker <= last:
			at += 2
			continue
		case marker == endOfImage, marker == startOfScan:
			return
		}
		long := int(raw[at+2])<<8 | int(raw[at+3])
		if long < 2 || at+2+long > len(raw) || !visit(marker, raw[at+4:at+2+long]) {
			return
		}
		at += 2 + long
	}
}
