package pdf

import (
	"math"
	"strings"
	"unicode/utf16"

	"thenar/internal/draw"
)

// minSize is the smallest size of text in points; the library rounds smaller ones
// to 0.
const minSize = 0.01

// text writes a line of text. A halo is drawn under it as the letters' outline,
// with an empty ActualText, so that searching and copying find the text once.
func (p *painter) text(i *draw.Item) {
	size := i.Letter.Size * p.at.Scale
	x, y := p.at.At(i.X, i.Y)
	if sum := size + x + y; i.Text == "" || size/point < minSize || math.IsNaN(sum) || math.IsInf(sum, 0) {
		return
	}
	text := p.known(i.Text, i.Letter.Face)
	switch wide := draw.Measure(text, size, i.Letter.Face); i.Letter.Anchor {
	case draw.Middle:
		x -= wide / 2
	case draw.End:
		x -= wide
	}
	p.f.SetFont(i.Letter.Face.Family(), style(i.Letter.Face), size/point)
	if i.Letter.Halo != "" {
		p.b = append(p.b[:0], "/Span <</ActualText ()>> BDC q "...)
		p.colour(i.Letter.Halo, "RG")
		p.number(draw.HaloWidth * size / point)
		p.b = append(p.b, "w 1 J 1 j 1 Tr"...)
		p.f.RawWriteStr(string(p.b))
		p.f.Text(x, y, text)
		p.f.RawWriteStr("Q EMC")
	}
	p.f.Text(x, y, text)
}

// style returns the library's name of a face within its family.
func style(face draw.Face) string {
	if face.Heavy() {
		return "B"
	}
	return ""
}

// box replaces a letter that the face lacks.
const box = '☐'

// known replaces letters that the face lacks by boxes, and notes them. Tabs, line
// ends and other control characters become spaces, as in an SVG.
func (p *painter) known(text string, face draw.Face) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r == 0x7F:
			return ' '
		case r < 0x80 || face.Has(r):
			return r
		}
		if !p.missing[r] {
			p.missing[r] = true
			p.order = append(p.order, r)
		}
		return box
	}, text)
}

// inUTF16 encodes a text as PDF wants it outside pages: big-endian UTF-16 after a
// byte-order mark. The library's own encoder knows no letter beyond U+FFFF and
// fails on invalid UTF-8.
func inUTF16(text string) string {
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(text)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}
