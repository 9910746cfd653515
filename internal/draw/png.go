package draw

import (
	"context"
	"fmt"
	"image"
	"image/color"
	"image/draw"
	"image/png"
	"io"
	"math"
	"strconv"
	"strings"

	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/math/fixed"
	"golang.org/x/image/vector"
)

// The bounds of a picture in dots: fine enough for print, no side longer than
// common programs open, and at most 96 MB in all, at four bytes a dot.
const (
	dotsPerMM = 300 / 25.4
	maxDots   = 8000
	maxInAll  = 24_000_000
)

// letterColour is the colour in which texts are written.
const letterColour = "#26221C"

// WritePNG writes a scene as a PNG on white at 300 dots an inch, or as fine as
// possible with no side longer than 8,000 dots and at most 24 million dots in
// all. It returns the errors of w and of ctx.
func WritePNG(ctx context.Context, w io.Writer, s *Scene) error {
	scale := min(dotsPerMM, maxDots/max(s.Width, s.Height, 1), math.Sqrt(maxInAll/max(s.Width*s.Height, 1)))
	dots := func(mm float64) int { return max(int(math.Ceil(mm*scale)), 1) }
	p := painter{image: image.NewRGBA(image.Rect(0, 0, dots(s.Width), dots(s.Height))), faces: map[faceKey]font.Face{}}
	draw.Draw(p.image, p.image.Rect, image.White, image.Point{}, draw.Src)
	var err error
	s.Each(Place{Scale: scale}, func(i *Item, at Place) {
		if err == nil {
			err = ctx.Err()
		}
		switch {
		case err != nil:
		case i.Kind == PathItem:
			p.path(i, at)
		case i.Kind == TextItem:
			err = p.text(i, at)
		case i.Kind == PhotoItem:
			p.photo(i, at)
		}
	})
	if err == nil {
		err = png.Encode(w, p.image)
	}
	if err != nil {
		return fmt.Errorf("draw.WritePNG: %w", err)
	}
	return nil
}

// painter draws the items of a scene in dots.
type painter struct {
	image  *image.RGBA
	raster vector.Rasterizer
	faces  map[faceKey]font.Face
}

type faceKey struct {
	size float64
	of   Face
}

func (p *painter) path(i *Item, at Place) {
	list := runs(i.Path, at)
	if i.Style.Under {
		p.stroke(i, list, at)
	}
	if i.Style.Fill != "" {
		shapes := make([][]point, len(list))
		for k, r := range list {
			shapes[k] = r.at
		}
		p.fill(shapes, i.Style.Fill)
	}
	if !i.Style.Under {
		p.stroke(i, list, at)
	}
}

func (p *painter) stroke(i *Item, list []run, at Place) {
	if i.Style.Stroke == "" || i.Style.Width <= 0 {
		return
	}
	dashes := Dashes(i.Style.Dash, at.Scale)
	for _, r := range list {
		for _, piece := range r.dashed(dashes) { // one by one: all together may lie far apart
			p.fill(piece.stroked(i.Style.Width*at.Scale, i.Style.Round), i.Style.Stroke)
		}
	}
}

// maxBand is the number of dots that are filled at a time: the rasterizer keeps
// eight bytes for each.
const maxBand = 1 << 16

// fill fills what lies inside of shapes, by the non-zero rule.
func (p *painter) fill(shapes [][]point, colour string) {
	low, high := point{math.Inf(1), math.Inf(1)}, point{math.Inf(-1), math.Inf(-1)}
	for _, shape := range shapes {
		for _, c := range shape {
			low, high = point{min(low.x, c.x), min(low.y, c.y)}, point{max(high.x, c.x), max(high.y, c.y)}
		}
	}
	box := p.image.Rect
	if !(low.x < float64(box.Max.X) && low.y < float64(box.Max.Y) && high.x > 0 && high.y > 0) {
		return
	}
	box.Min = image.Pt(int(max(low.x, 0)), int(max(low.y, 0)))
	box.Max = image.Pt(int(min(math.Ceil(high.x), float64(box.Max.X))), int(min(math.Ceil(high.y), float64(box.Max.Y))))
	ink := image.NewUniform(hex(colour))
	for y := box.Min.Y; y < box.Max.Y; {
		band := image.Rect(box.Min.X, y, box.Max.X, min(y+max(maxBand/box.Dx(), 1), box.Max.Y))
		p.raster.Reset(band.Dx(), band.Dy())
		for _, shape := range shapes {
			for k, c := range shape {
				x, y := float32(c.x-float64(band.Min.X)), float32(c.y-float64(band.Min.Y))
				if k == 0 {
					p.raster.MoveTo(x, y)
				} else {
					p.raster.LineTo(x, y)
				}
			}
			p.raster.ClosePath()
		}
		p.raster.Draw(p.image, band, ink, image.Point{})
		y = band.Max.Y
	}
}

// hex returns a colour as styles write it, #RRGGBB; black where it is none.
func hex(text string) color.RGBA {
	n, err := strconv.ParseUint(strings.TrimPrefix(text, "#"), 16, 24)
	if err != nil {
		n = 0
	}
	return color.RGBA{uint8(n >> 16), uint8(n >> 8), uint8(n), 255}
}

// text draws letters with the bundled face. A halo is the same letters in its
// colour, drawn all round.
func (p *painter) text(i *Item, at Place) error {
	size := i.Letter.Size * at.Scale
	face, err := p.face(size, i.Letter.Face)
	if err != nil {
		return err
	}
	x, y := at.At(i.X, i.Y)
	x -= [...]float64{Start: 0, Middle: 0.5, End: 1}[i.Letter.Anchor] * float64(font.MeasureString(face, i.Text).Floor())
	write := func(x, y float64, colour string) {
		d := font.Drawer{Dst: p.image, Src: image.NewUniform(hex(colour)), Face: face, Dot: fixed.Point26_6{X: fixed.Int26_6(math.Round(x * 64)), Y: fixed.Int26_6(math.Round(y * 64))}}
		d.DrawString(i.Text)
	}
	if i.Letter.Halo != "" {
		r := HaloWidth / 2 * size
		for k := range 8 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 4)
			write(x+r*cos, y+r*sin, i.Letter.Halo)
		}
	}
	write(x, y, letterColour)
	return nil
}

func (p *painter) face(dots float64, of Face) (font.Face, error) {
	key := faceKey{math.Round(dots*8) / 8, of}
	if f, ok := p.faces[key]; ok {
		return f, nil
	}
	f, err := opentype.NewFace(loaded[of]().font, &opentype.FaceOptions{Size: max(key.size, 1), DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return nil, err
	}
	p.faces[key] = f
	return f, nil
}
