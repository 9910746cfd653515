package paper

import (
	"fmt"

	"thenar/internal/draw"
)

const ink = "#000000"

// flow fills pages from top to bottom; what does not fit goes on the next page.
type flow struct {
	letters
	size  Size
	name  string // in the foot of every page
	at    string // where the knitter was when it was printed, above every page; may be empty
	pages []*draw.Scene
	y     float64 // where the next item goes, in mm from the top
	above float64 // room in mm below the upper margin, for what stands above every page
}

func newFlow(o Options, name string) *flow {
	f := &flow{letters: o.letters(), size: o.page(), name: name}
	f.addPage()
	return f
}

// addPage adds an empty page.
func (f *flow) addPage() {
	f.pages = append(f.pages, &draw.Scene{Width: f.size.Width, Height: f.size.Height})
	f.y = margin
}

// freshPage begins a page for a new piece, unless this one is still empty.
func (f *flow) freshPage() {
	if f.y > margin {
		f.addPage()
	}
}

func (f *flow) page() *draw.Scene { return f.pages[len(f.pages)-1] }

// width returns the width between the margins.
func (f *flow) width() float64 { return f.size.Width - 2*margin }

// heightLeft returns the height that is left on the page.
func (f *flow) heightLeft() float64 { return f.size.Height - margin - footRoom - f.y }

// need turns the page unless so much height is left. What is higher than a page
// begins on a new one.
func (f *flow) need(height float64) {
	if f.heightLeft() < min(height, f.size.Height-2*margin-footRoom) {
		f.addPage()
	}
}

// text writes a paragraph of a width from x, and moves below it.
func (f *flow) text(x, width float64, text string, style draw.TextStyle) {
	line := lineOf(style.Size)
	for _, t := range draw.Wrap(text, width, style.Size, style.Face) {
		f.need(line)
		f.page().Text(x, f.y+style.Size, t, style)
		f.y += line
	}
}

// say writes a paragraph over the whole width.
func (f *flow) say(text string, size float64) {
	f.text(margin, f.width(), text, draw.TextStyle{Size: size})
}

// textHeight returns the height of a paragraph.
func (f *flow) textHeight(text string, width, size float64) float64 {
	return float64(len(draw.Wrap(text, width, size, draw.Regular))) * lineOf(size)
}

// put places a scene and moves below it.
func (f *flow) put(s *draw.Scene, x, scale float64) {
	f.need(s.Height * scale)
	f.page().Add(s, x, f.y, scale)
	f.y += s.Height * scale
}

// line draws a thin horizontal line.
func (f *flow) line(x1, x2, y float64) {
	f.page().Line(x1, y, x2, y, draw.Style{Stroke: ink, Width: 0.25})
}

// footLetter returns the size of the letters of a foot in mm: 9 pt, or as large as the
// text in large print.
func (f *flow) footLetter() float64 {
	if f.body > ordinary.body {
		return f.body
	}
	return 3.2
}

// aboveHead is how far what stands in the upper margin is above the type area, in
// mm. Large print then is 7 mm from the paper's edge, which printers reach.
const aboveHead = 2.5

// foot numbers the pages and draws a ruler of 50 mm, with a tick every 10, which
// shows whether the printer kept to scale. In the upper margin it says where the
// knitter was.
func (f *flow) foot() {
	for i, p := range f.pages {
		y := f.size.Height - margin
		style := draw.TextStyle{Size: f.footLetter()}
		ruler, name := f.footTexts(i)
		x := margin
		if ruler != "" {
			p.Text(margin, y, ruler, style)
			x += draw.Measure(ruler, style.Size, draw.Regular) + 3
		}
		var ticks draw.Pen
		ticks.Move(x, y).Line(x+50, y)
		for t := 0.0; t <= 50; t += 10 {
			ticks.Move(x+t, y).Line(x+t, y-2)
		}
		p.PathWith(ticks.String(), draw.Style{Stroke: ink, Width: 0.3}, draw.Attr{Name: "data-ruler", Value: "50"})
		style.Anchor = draw.End
		p.Text(f.size.Width-margin, y, name, style)
		if f.at != "" {
			p.Text(f.size.Width-margin, margin-aboveHead, "You were at "+f.at, style)
		}
		p.Label = fmt.Sprintf("%s, page %d of %d", f.name, i+1, len(f.pages))
	}
}

// footTexts returns what stands before the ruler of a page, and its name and number at the
// right. Where the name finds no room, the first page, which bears it as its title, has
// only its number, and the others name the ruler no more.
func (f *flow) footTexts(i int) (ruler, name string) {
	const unit, told = "50 mm", "This bar is 50 mm long when printed true."
	page := fmt.Sprintf("page %d of %d", i+1, len(f.pages))
	wide := func(text string) float64 { return draw.Measure(text, f.footLetter(), draw.Regular) }
	room := f.width() - 50 - 4 - wide(" · "+page)
	switch short := fmt.Sprintf("%d of %d", i+1, len(f.pages)); {
	case i == 0 && wide(f.name) <= room-wide(told)-3:
		return told, f.name + " · " + page
	case i == 0 && wide(told) <= room-3:
		return told, page
	case wide(f.name) <= room-wide(unit)-3:
		return unit, f.name + " · " + page
	case i == 0:
		return unit, page
	case wide(f.name+" · "+short) <= f.width()-50-4: // rather than cut the name
		return "", f.name + " · " + short
	}
	return "", shorten(f.name, room, f.footLetter()) + " · " + page
}

// shorten cuts a text to a width, with "…" if anything is cut.
func shorten(text string, width, size float64) string {
	lines := draw.Wrap(text, width, size, draw.Regular)
	if len(lines) <= 1 {
		return text
	}
	return draw.Wrap(text, width-draw.Measure(" …", size, draw.Regular), size, draw.Regular)[0] + " …"
}
