package pdf

import (
	"math"
	"strings"
	"unicode/utf16"

	"thenar/internal/draw"
)

// least is the smallest size in points that is written; the library rounds
// what is less to nothing.
const least = 0.01

// text writes a line of text; a halo is a line round the letters, under them,
// and is no text to who searches or copies.
func (p *painter) text(i *draw.Item) {
	size := i.Letter.Size * p.at.Scale
	x, y := p.at.At(i.X, i.Y)
	if sum := size + x + y; i.Text == "" || size/point < least || math.IsNaN(sum) || math.IsInf(sum, 0) {
		return
	}
	text := p.known(i.Text, i.Letter.Bold)
	switch wide := draw.Measure(text, size, i.Letter.Bold); i.Letter.Anchor {
	case draw.Middle:
		x -= wide / 2
	case draw.End:
		x -= wide
	}
	style := ""
	if i.Letter.Bold {
		style = "B"
	}
	p.f.SetFont(face, style, size/point)
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

// instead stands for a letter that the face lacks.
const instead = '□'

// known is a text of letters that the face has; those that it lacks are noted.
// Tabs, line ends and other controls are spaces, as in an SVG.
func (p *painter) known(text string, bold bool) string {
	return strings.Map(func(r rune) rune {
		switch {
		case r < ' ' || r == 0x7F:
			return ' '
		case r < 0x80 || draw.Has(r, bold):
			return r
		}
		if !p.missing[r] {
			p.missing[r] = true
			p.order = append(p.order, r)
		}
		return instead
	}, text)
}

// inUTF16 is a text as a PDF has it outside its pages: UTF-16, the higher byte
// first, after a mark that says so. The library's own way knows no letter
// beyond U+FFFF, and breaks on bytes that are no UTF-8.
func inUTF16(text string) string {
	b := []byte{0xFE, 0xFF}
	for _, u := range utf16.Encode([]rune(text)) {
		b = append(b, byte(u>>8), byte(u))
	}
	return string(b)
}
