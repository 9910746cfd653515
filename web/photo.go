package web

import (
	"bytes"
	"image"
	"image/jpeg"
	_ "image/png" // read
	"io"
	"net/http"

	"github.com/disintegration/imaging"

	"thenar/internal/fault"
)

// The bounds of a photograph: its bytes as it is sent, its pixels, and the
// longer side to which it is made smaller.
const (
	mostPhoto  = 24 << 20
	mostPixels = 50_000_000
	photoSide  = 1600
	photoGrade = 80
)

// photo reads a photograph and writes it anew, upright and smaller: so nothing
// is kept of where and with what it was taken. Nothing sent gives none.
func photo(r io.Reader) ([]byte, error) {
	raw, err := io.ReadAll(io.LimitReader(r, mostPhoto+1))
	if err != nil || len(raw) == 0 {
		return nil, err
	}
	const advice = "send a JPEG or PNG picture of at most 24 MB, or leave it out"
	if kind := http.DetectContentType(raw); len(raw) > mostPhoto || kind != "image/jpeg" && kind != "image/png" {
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
	err = jpeg.Encode(&b, imaging.Fit(picture, photoSide, photoSide, imaging.CatmullRom), &jpeg.Options{Quality: photoGrade})
	return b.Bytes(), err
}
