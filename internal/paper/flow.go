package paper

import (
	"fmt"

	"thenar/internal/draw"
)

const ink = "#000000"

// flow fills pages from top to bottom; what does not fit goes on the next.
type flow struct {
	size  Size
	name  string
	pages []*draw.Scene
	y     float64
}

func newFlow(size Size, name string) *flow {
	f := &flow{size: size, name: name}
	f.turn()
	return f
}

// turn begins a page.
func (f *flow) turn() {
	f.pages = append(f.pages, &draw.Scene{Width: f.size.Width, Height: f.size.Height})
	f.y = margin
}

func (f *flow) page() *draw.Scene { return f.pages[len(f.pages)-1] }

// width is what is written on between the margins.
func (f *flow) width() float64 { return f.size.Width - 2*margin }

// left is the height that is left on the page.
func (f *flow) left() float64 { return f.size.Height - margin - footRoom - f.y }

// need turns the page unless so much height is left.
func (f *flow) need(height float64) {
	if f.left() < height {
		f.turn()
	}
}

// text writes a paragraph over a width from x, and moves on.
func (f *flow) text(x, width float64, text string, style draw.TextStyle) {
	line := style.Size * leading
	for _, t := range draw.Wrap(text, width, style.Size, style.Bold) {
		f.need(line)
		f.page().Text(x, f.y+style.Size, t, style)
		f.y += line
	}
}

// head writes a heading and keeps it with some lines of what follows.
func (f *flow) head(text string) {
	f.need(heading*leading + 4*body*leading)
	f.y += 2
	f.text(margin, f.width(), text, draw.TextStyle{Size: heading, Bold: true})
	f.y += 1
}

// put places a scene and moves on below it.
func (f *flow) put(s *draw.Scene, x, scale float64) {
	f.need(s.Height * scale)
	f.page().Add(s, x, f.y, scale)
	f.y += s.Height * scale
}

// foot numbers the pages and draws the ruler that tells whether the printer
// kept to scale: 50 mm, with a tick at every 10.
func (f *flow) foot() {
	for i, p := range f.pages {
		y := f.size.Height - margin
		style := draw.TextStyle{Size: 3.2}
		p.Text(margin, y, "50 mm", style)
		x := margin + 12
		var ticks draw.Pen
		ticks.Move(x, y).Line(x+50, y)
		for t := 0.0; t <= 50; t += 10 {
			ticks.Move(x+t, y).Line(x+t, y-2)
		}
		p.PathWith(ticks.String(), draw.Style{Class: "ruler", Stroke: ink, Width: 0.3}, draw.Attr{Name: "data-ruler", Value: "50"})
		style.Anchor = draw.End
		p.Text(f.size.Width-margin, y, fmt.Sprintf("%s · page %d of %d", shorten(f.name, f.size.Width-2*margin-100), i+1, len(f.pages)), style)
		p.Label = fmt.Sprintf("%s, page %d of %d", f.name, i+1, len(f.pages))
	}
}

// shorten keeps a name within a width of the foot's letters.
func shorten(name string, width float64) string {
	const size = 3.2
	lines := draw.Wrap(name, width, size, false)
	if len(lines) <= 1 {
		return name
	}
	return lines[0] + " …"
}
