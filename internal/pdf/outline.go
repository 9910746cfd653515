package pdf

import (
	"strings"

	"thenar/internal/draw"
)

// bookmark is a heading, with its page and the height of that in mm.
type bookmark struct {
	draw.Heading
	page   int
	height float64
}

// outline writes the headings as the document's outline, after all pages. Where only one
// thing has a title, as a single handout, its parts are not hidden below that.
func (p *painter) outline() {
	titles := 0
	for _, h := range p.heads {
		if h.Level == 1 {
			titles++
		}
	}
	last, below := p.f.PageNo(), false
	for _, h := range p.heads {
		level := 0
		if h.Level > 1 && titles > 1 && below {
			level = 1
		}
		below = below || h.Level == 1
		p.f.SetPage(h.page)
		// The library measures all from the upper edge of the last page.
		p.f.Bookmark(inPlane(h.Text), level, h.Y+p.height-h.height)
	}
	p.f.SetPage(last)
}

// inPlane replaces letters beyond U+FFFF, for which the library has no code.
func inPlane(text string) string {
	return strings.Map(func(r rune) rune {
		if r > 0xFFFF {
			return box
		}
		return r
	}, strings.ToValidUTF8(text, "\uFFFD"))
}
