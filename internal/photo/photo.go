// Package photo takes photographs in: it reads what was sent, and keeps
// nothing of where and with what it was taken.
package photo

import (
	"bytes"
	"errors"
	"image"
	"image/jpeg"
	_ "image/png" // read
	"io"
	"net/http"

	"github.com/disintegration/imaging"

	"thenar/internal/fault"
)

// The bounds of a photograph: its bytes as it is sent, its dots, and the
// longer side to which it is made smaller.
const (
	Most       = 24 << 20
	mostPixels = 50_000_000
	side       = 1600
	grade      = 80
)

const advice = "send a JPEG or PNG picture of at most 24 MB, or leave it out"

// Read reads a photograph and writes it anew as a JPEG, upright and at most
// 1600 dots wide or high. Nothing sent gives none. What is no such picture is
// a fault of the field photo.
func Read(r io.Reader) ([]byte, error) {
	raw, err := io.ReadAll(io.LimitReader(r, Most+1))
	if err != nil || len(raw) == 0 {
		return nil, err
	}
	if kind := http.DetectContentType(raw); len(raw) > Most || kind != "image/jpeg" && kind != "image/png" {
		return nil, fault.Fields{{Path: "photo", Message: "is no picture that can be read; " + advice}}
	}
	size, _, err := image.DecodeConfig(bytes.NewReader(raw))
	if err != nil || size.Width*size.Height > mostPixels {
		return nil, fault.Fields{{Path: "photo", Message: "is damaged, or larger than 50 million dots; " + advice}}
	}
	picture, err := imaging.Decode(bytes.NewReader(raw), imaging.AutoOrientation(true))
	if err != nil {
		return nil, fault.Fields{{Path: "photo", Message: "is damaged; " + advice}}
	}
	var b bytes.Buffer
	err = jpeg.Encode(&b, imaging.Fit(picture, side, side, imaging.CatmullRom), &jpeg.Options{Quality: grade})
	return b.Bytes(), err
}

// Kept gives a photograph as it is kept: as it is where it was written by Read,
// so that it loses nothing from one move to the next, else written anew.
func Kept(raw []byte) ([]byte, error) {
	if bare(raw) {
		if size, _, err := image.DecodeConfig(bytes.NewReader(raw)); err == nil && max(size.Width, size.Height) <= side {
			if _, err := jpeg.Decode(bytes.NewReader(raw)); err == nil {
				return raw, nil
			}
		}
	}
	kept, err := Read(bytes.NewReader(raw))
	if err == nil && kept == nil {
		err = errors.New("an empty photograph")
	}
	return kept, err
}

// The markers of a JPEG that holds a picture and nothing else (ITU-T T.81,
// table B.1): tables, the frame and the scan.
var plain = map[byte]bool{0xDB: true, 0xC0: true, 0xC4: true}

const (
	startOfImage = 0xD8
	startOfScan  = 0xDA
	endOfImage   = 0xD9
)

// bare tells whether a JPEG has no segment beside those of the picture, and
// nothing after its end: no place, no camera, no comment.
func bare(raw []byte) bool {
	if len(raw) < 4 || raw[0] != 0xFF || raw[1] != startOfImage {
		return false
	}
	for at := 2; at+4 <= len(raw) && raw[at] == 0xFF; {
		if raw[at+1] == startOfScan {
			end := bytes.Index(raw[at:], []byte{0xFF, endOfImage})
			return end >= 0 && at+end+2 == len(raw)
		}
		if !plain[raw[at+1]] {
			return false
		}
		at += 2 + int(raw[at+2])<<8 + int(raw[at+3])
	}
	return false
}
