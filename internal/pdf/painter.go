package pdf

import (
	"strconv"

	"codeberg.org/go-pdf/fpdf"

	"thenar/internal/draw"
)

// painter writes the items of a page. It writes paths straight into the page's
// content, since a chart has thousands of them. Texts go through the library,
// which embeds only the letters used.
type painter struct {
	f       *fpdf.Fpdf
	height  float64       // of the page in mm
	at      draw.Place    // of the present item
	b       []byte        // operators of the present item
	missing map[rune]bool // letters that the face lacks
	order   []rune        // the same, in the order of their first use
	heads   []bookmark
}

// page writes a scene. A window of other proportions than the page is centred
// and as large as fits, as in an SVG.
func (p *painter) page(s *draw.Scene) {
	box := draw.Box{Width: s.Width, Height: s.Height}
	if s.Window != nil {
		box = *s.Window
	}
	p.f.AddPageFormat("P", fpdf.SizeType{Wd: s.Width, Ht: s.Height})
	p.f.RawWriteStr("4 M") // the mitre limit of SVG; the default of PDF is 10
	p.height = s.Height
	for _, h := range s.Headings {
		p.heads = append(p.heads, bookmark{h, p.f.PageNo(), s.Height})
	}
	scale := min(s.Width/box.Width, s.Height/box.Height)
	start := draw.Place{X: s.Width/2 - (box.X+box.Width/2)*scale, Y: s.Height/2 - (box.Y+box.Height/2)*scale, Scale: scale}
	s.Each(start, func(i *draw.Item, at draw.Place) {
		p.at = at
		switch i.Kind {
		case draw.PathItem:
			p.path(i)
		case draw.PhotoItem:
			p.photo(i)
		default:
			p.text(i)
		}
	})
}

// number appends a number with at most three decimals, and a space.
func (p *painter) number(n float64) {
	p.b = draw.AppendNumber(p.b, n)
	p.b = append(p.b, ' ')
}

// points appends pairs of coordinates in points from the lower left corner.
func (p *painter) points(list []float64) {
	for i := 0; i+1 < len(list); i += 2 {
		x, y := p.at.At(list[i], list[i+1])
		p.number(x / point)
		p.number((p.height - y) / point)
	}
}

func (p *painter) path(i *draw.Item) {
	fill, stroke := i.Style.Fill != "", i.Style.Stroke != "" && i.Style.Width > 0
	if i.Path == "" || !fill && !stroke {
		return
	}
	p.b = p.b[:0]
	if fill {
		p.colour(i.Style.Fill, "rg")
	}
	if stroke {
		p.stroke(&i.Style)
	}
	if fill && stroke && i.Style.Under {
		p.contour(i.Path)
		p.b = append(p.b, "S "...)
		stroke = false
	}
	p.contour(i.Path)
	switch {
	case fill && stroke:
		p.b = append(p.b, 'B')
	case fill:
		p.b = append(p.b, 'f')
	default:
		p.b = append(p.b, 'S')
	}
	p.f.RawWriteStr("q " + string(p.b) + " Q")
}

// contour appends the operators that build a path.
func (p *painter) contour(path string) {
	draw.Walk(path, func(op byte, list []float64) {
		p.points(list)
		switch op {
		case 'M':
			p.b = append(p.b, "m "...)
		case 'L':
			p.b = append(p.b, "l "...)
		case 'C':
			p.b = append(p.b, "c "...)
		case 'Z':
			p.b = append(p.b, "h "...)
		}
	})
}

// stroke appends the operators for a line's colour, width, ends, corners and
// dashes.
func (p *painter) stroke(s *draw.Style) {
	scale := p.at.Scale / point
	p.colour(s.Stroke, "RG")
	p.number(s.Width * scale)
	p.b = append(p.b, "w "...)
	if s.Round {
		p.b = append(p.b, "1 J 1 j "...)
	}
	if dashes := draw.Dashes(s.Dash, scale); len(dashes) > 0 {
		p.b = append(p.b, '[')
		for _, n := range dashes {
			p.number(n)
		}
		p.b = append(p.b, "] 0 d "...)
	}
}

// colour appends a colour #RRGGBB and its operator.
func (p *painter) colour(text, operator string) {
	r, g, b := rgb(text)
	for _, n := range []int{r, g, b} {
		p.number(float64(n) / 255)
	}
	p.b = append(p.b, operator...)
	p.b = append(p.b, ' ')
}

// rgb parses #RRGGBB; anything else is black.
func rgb(text string) (r, g, b int) {
	if len(text) != 7 || text[0] != '#' {
		return 0, 0, 0
	}
	n, err := strconv.ParseUint(text[1:], 16, 32)
	if err != nil {
		return 0, 0, 0
	}
	return int(n >> 16), int(n >> 8 & 0xFF), int(n & 0xFF)
}
