package draw

import (
	"bytes"
	"encoding/base64"
	"image"
	"image/color"
	"image/jpeg"

	"golang.org/x/image/draw"
)

// Picture is a photograph: a JPEG, and the address at which a page finds it; empty: an SVG
// holds it itself.
type Picture struct {
	JPEG    []byte
	Address string
}

// Sized returns the width and height of a picture in dots; 0, 0 if it can't be read.
func (p Picture) Sized() (width, height int) {
	c, err := jpeg.DecodeConfig(bytes.NewReader(p.JPEG))
	if err != nil {
		return 0, 0
	}
	return c.Width, c.Height
}

// Grey returns the picture in greys, without an address, which would show its colours. One
// that can't be read stays as it is.
func (p Picture) Grey() Picture {
	from, err := jpeg.Decode(bytes.NewReader(p.JPEG))
	if err != nil {
		return p
	}
	grey := image.NewGray(from.Bounds())
	draw.Draw(grey, grey.Rect, from, grey.Rect.Min, draw.Src)
	var b bytes.Buffer
	if err := jpeg.Encode(&b, grey, &jpeg.Options{Quality: greyQuality}); err != nil {
		return p
	}
	return Picture{JPEG: b.Bytes()}
}

const greyQuality = 80

// Photo is a picture in its size on a page, in mm.
type Photo struct {
	Picture
	Width, Height float64
	Label         string // what is to be seen, for who doesn't see it
}

// Photo adds a photograph with its upper left corner at x, y.
func (s *Scene) Photo(x, y float64, p Photo) {
	s.Items = append(s.Items, Item{Kind: PhotoItem, X: x, Y: y, Photo: &p})
}

// photo appends a photograph.
func (e *encoder) photo(i *Item) {
	e.text("<image")
	for _, n := range []struct {
		name  string
		value float64
	}{{"x", i.X}, {"y", i.Y}, {"width", i.Photo.Width}, {"height", i.Photo.Height}} {
		e.number(n.name, n.value)
	}
	e.attr("preserveAspectRatio", "none")
	address := i.Photo.Address
	if address == "" {
		address = "data:image/jpeg;base64," + base64.StdEncoding.EncodeToString(i.Photo.JPEG)
	}
	e.attr("href", address)
	e.text("/>")
}

// photo draws a photograph; one that can't be read is left a grey field.
func (p *painter) photo(i *Item, at Place) {
	x, y := at.At(i.X, i.Y)
	to := image.Rect(int(x), int(y), int(x+i.Photo.Width*at.Scale), int(y+i.Photo.Height*at.Scale))
	from, err := jpeg.Decode(bytes.NewReader(i.Photo.JPEG))
	if err != nil {
		draw.Draw(p.image, to, image.NewUniform(color.Gray{0xC4}), image.Point{}, draw.Src)
		return
	}
	draw.ApproxBiLinear.Scale(p.image, to, from, from.Bounds(), draw.Src, nil)
}
