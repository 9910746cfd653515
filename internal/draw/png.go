package draw

import (
	"context"
	"fmt"
	"image"
	"image/png"
	"io"
	"math"

	"github.com/fogleman/gg"
	"golang.org/x/image/font"
	"golang.org/x/image/font/opentype"
)

// The size of a picture in dots: as fine as print asks for, but no side longer
// than what every program opens, and no more in all than 96 MB hold, at four
// bytes each.
const (
	dotsPerMM  = 300 / 25.4
	maxDots    = 8000
	maxInAll   = 24_000_000
	paperWhite = "#FFFFFF"
)

// WritePNG writes a scene as a picture of dots on white, at 300 dots an inch
// or, where a side would be longer than 8,000 dots, or all of it more than 24
// million, as fine as that allows. It fails with what w fails with, and with
// ctx.
func WritePNG(ctx context.Context, w io.Writer, s *Scene) error {
	scale := min(dotsPerMM, maxDots/max(s.Width, s.Height, 1), math.Sqrt(maxInAll/max(s.Width*s.Height, 1)))
	dots := func(mm float64) int { return max(int(math.Ceil(mm*scale)), 1) }
	p := painter{Context: gg.NewContextForRGBA(image.NewRGBA(image.Rect(0, 0, dots(s.Width), dots(s.Height)))), scale: []float64{scale}, faces: map[faceKey]font.Face{}}
	p.SetHexColor(paperWhite)
	p.Clear()
	p.Scale(scale, scale)
	for i := range s.Items {
		if err := ctx.Err(); err != nil {
			return err
		}
		if err := p.item(&s.Items[i]); err != nil {
			return fmt.Errorf("draw.WritePNG: %w", err)
		}
	}
	if err := png.Encode(w, p.Image()); err != nil {
		return fmt.Errorf("draw.WritePNG: %w", err)
	}
	return nil
}

// painter paints items; scale is the dots of a mm within each group that is
// open.
type painter struct {
	*gg.Context
	scale []float64
	faces map[faceKey]font.Face
}

type faceKey struct {
	size float64
	bold bool
}

func (p *painter) now() float64 { return p.scale[len(p.scale)-1] }

func (p *painter) item(i *Item) error {
	switch i.Kind {
	case PathItem:
		p.path(i)
	case TextItem:
		return p.text(i)
	case GroupItem:
		p.Push()
		p.scale = append(p.scale, p.now())
	case MoveItem:
		p.Push()
		p.Translate(i.X, i.Y)
		p.Scale(i.Scale, i.Scale)
		p.scale = append(p.scale, p.now()*i.Scale)
	case EndItem:
		p.Pop()
		p.scale = p.scale[:len(p.scale)-1]
	}
	return nil
}

func (p *painter) path(i *Item) {
	if i.Path == "" || (i.Style.Fill == "" && i.Style.Stroke == "") {
		return
	}
	p.trace(i.Path)
	if i.Style.Fill != "" {
		p.SetHexColor(i.Style.Fill)
		p.FillPreserve()
	}
	if i.Style.Stroke != "" && i.Style.Width > 0 {
		p.SetHexColor(i.Style.Stroke)
		p.SetLineWidth(i.Style.Width * p.now()) // the library's lines don't scale
		p.SetDash(Dashes(i.Style.Dash, p.now())...)
		p.SetLineCap(gg.LineCapButt)
		if i.Style.Round {
			p.SetLineCap(gg.LineCapRound)
		}
		p.StrokePreserve()
	}
	p.ClearPath()
}

// trace follows path data as a Pen writes them.
func (p *painter) trace(d string) {
	Walk(d, func(op byte, at []float64) {
		switch op {
		case 'M':
			p.MoveTo(at[0], at[1])
		case 'L':
			p.LineTo(at[0], at[1])
		case 'C':
			p.CubicTo(at[0], at[1], at[2], at[3], at[4], at[5])
		case 'Z':
			p.ClosePath()
		}
	})
}

// text writes letters with the bundled face; a halo is the same letters all
// round, in its colour.
func (p *painter) text(i *Item) error {
	face, err := p.face(i.Letter.Size*p.now(), i.Letter.Bold)
	if err != nil {
		return err
	}
	p.SetFontFace(face)
	anchor := [...]float64{Start: 0, Middle: 0.5, End: 1}[i.Letter.Anchor]
	x, y := p.TransformPoint(i.X, i.Y)
	p.Push()
	defer p.Pop()
	p.Identity() // letters are set in dots: the face is scaled, not the picture
	if i.Letter.Halo != "" {
		p.SetHexColor(i.Letter.Halo)
		r := HaloWidth / 2 * i.Letter.Size * p.now()
		for k := range 8 {
			sin, cos := math.Sincos(float64(k) * math.Pi / 4)
			p.DrawStringAnchored(i.Text, x+r*cos, y+r*sin, anchor, 0)
		}
	}
	p.SetHexColor("#23272E")
	p.DrawStringAnchored(i.Text, x, y, anchor, 0)
	return nil
}

func (p *painter) face(dots float64, bold bool) (font.Face, error) {
	key := faceKey{math.Round(dots*8) / 8, bold}
	if f, ok := p.faces[key]; ok {
		return f, nil
	}
	of := faces[0]()
	if bold {
		of = faces[1]()
	}
	f, err := opentype.NewFace(of.font, &opentype.FaceOptions{Size: max(key.size, 1), DPI: 72, Hinting: font.HintingNone})
	if err != nil {
		return nil, err
	}
	p.faces[key] = f
	return f, nil
}
