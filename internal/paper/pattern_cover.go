package paper

import (
	"fmt"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/picture"
)

// The colours of the title page: those of the program's pages in light.
const (
	tissueColour = "#F4EEE1"
	tapeColour   = "#EBDCB4"
	softColour   = "#655D50"
	textColour   = "#26221C"
)

// Measures of the title page in mm.
const (
	coverLeft   = 24.0 // of all that stands on it
	coverTop    = 24.0
	tapeHigh    = 12.0
	belowTape   = 6.0
	mostTitle   = 17.0 // type size
	leastTitle  = 9.0
	storyLines  = 6    // a longer story stands on a page of its own
	storyShare  = 0.62 // of the page's width
	aboveDrawn  = 7.0
	mostDrawn   = 1.15 // times life
	aroundDrawn = 14.0
)

// cover is the title page: the name, what it is and whose; the mitt on its hand, or the
// designer's photograph, standing on a tape that is as long as it says; and the story.
func (p patternPages) cover() *draw.Scene {
	s := &draw.Scene{Width: p.size.Width, Height: p.size.Height}
	if !p.o.Grey {
		s.Rect(0, 0, s.Width, s.Height, draw.Style{Fill: tissueColour})
	}
	s.Heading(1, coverTop, p.Name)
	y := p.coverTitle(s)
	story := p.storyOnCover()
	tape := s.Height - margin - tapeHigh
	if len(story) > 0 {
		tape -= belowTape + float64(stack(story).Height)/10
	}
	p.shown(s, y+aboveDrawn, tape)
	p.tape(s, tape)
	stack(story).draw(s, coverLeft, tape+tapeHigh+belowTape)
	return s
}

// coverTitle sets the name as large as it fits in two lines, what it is, and whose. It
// returns where it ends.
func (p patternPages) coverTitle(s *draw.Scene) (y float64) {
	y = coverTop
	put := func(lines []string, style draw.TextStyle) {
		for _, line := range lines {
			s.Text(coverLeft, y+style.Size, line, style)
			y += 1.2 * style.Size
		}
	}
	name := draw.TextStyle{Size: mostTitle, Face: draw.Serif}
	lines := wrapped(p.Name, s.Width-coverLeft-margin, name)
	for len(lines) > 2 && name.Size > leastTitle {
		name.Size--
		lines = wrapped(p.Name, s.Width-coverLeft-margin, name)
	}
	put(lines, name)
	if p.About != "" {
		about := draw.TextStyle{Size: max(5.6, p.body)}
		y += 1.5
		put(wrapped(p.About, storyShare*s.Width, about), about)
	}
	if p.Designer != "" {
		whose := draw.TextStyle{Size: max(4.8, p.body), Face: draw.Semibold}
		y += 4
		put(wrapped(p.Designer, storyShare*s.Width, whose), whose)
	}
	return y
}

// storySet returns the lines of the story as the title page has it.
func (p patternPages) storySet() []part {
	var list []part
	for _, text := range paragraphsOf(p.Story) {
		if len(list) > 0 {
			list = append(list, space(12))
		}
		list = append(list, setLines(text, storyShare*p.size.Width, draw.TextStyle{Size: p.body})...)
	}
	return list
}

func (p patternPages) storyOnCover() []part {
	if list := p.storySet(); len(list) <= storyLines {
		return list
	}
	return nil
}

// longStory sets a story for which the title page has no room.
func (p patternPages) longStory() []block {
	if p.Story == "" || p.storyOnCover() != nil {
		return nil
	}
	return []block{one("story", aboveHeading, keptLines(p.paragraphs(paragraphsOf(p.Story))))}
}

// shown sets the photograph of the title page, or the mitt on its hand, between two heights.
func (p patternPages) shown(s *draw.Scene, top, bottom float64) {
	if len(p.Photos) > 0 {
		p.coverPhoto(s, p.Photos[0], top, bottom)
		return
	}
	out := p.middle()
	d := picture.NewDressed(out.Plan, picture.HandOptions{Left: p.Left, Worn: p.wornOf(out)})
	scale := min(mostDrawn, (bottom-top)/(d.Above()+d.Below()), (s.Width-2*aroundDrawn)/d.Width())
	d.Draw(s, (s.Width-d.Width()*scale)/2, bottom-d.Below()*scale, scale)
}

// coverPhoto sets a photograph as large as there is room, standing on the tape, with its
// caption above it.
func (p patternPages) coverPhoto(s *draw.Scene, of PatternPhoto, top, bottom float64) {
	w, h := of.Picture.Sized()
	if w == 0 || h == 0 {
		return
	}
	wide := s.Width - 2*coverLeft
	caption := setLines(of.Caption, wide, draw.TextStyle{Size: p.small})
	if of.Caption == "" {
		caption = nil
	}
	room := bottom - top - float64(stack(caption).Height)/10 - 2
	scale := min(wide/float64(w), room/float64(h))
	high := float64(h) * scale
	stack(caption).draw(s, coverLeft, bottom-high-float64(stack(caption).Height)/10-1)
	s.Photo(coverLeft, bottom-high, draw.Photo{Picture: of.Picture, Width: float64(w) * scale, Height: high, Label: of.Label(p.Name)})
}

// tape draws a measuring tape across the page, true in cm from the left edge of the texts.
func (p patternPages) tape(s *draw.Scene, y float64) {
	line := draw.Style{Stroke: softColour, Width: 0.25}
	s.Rect(0, y, s.Width, tapeHigh, draw.Style{Fill: tapeColour})
	s.Line(0, y, s.Width, y, draw.Style{Stroke: textColour, Width: 0.35})
	s.Line(0, y+tapeHigh, s.Width, y+tapeHigh, line)
	var ticks draw.Pen
	size := p.small
	for mm := 0; coverLeft+float64(mm) < s.Width; mm++ {
		x, long := coverLeft+float64(mm), 1.8
		switch {
		case mm%10 == 0:
			long = 4
		case mm%5 == 0:
			long = 2.8
		}
		ticks.Move(x, y).Line(x, y+long)
		if number := strconv.Itoa(mm / 10); mm%10 == 0 && mm > 0 && x+1+draw.Measure(number, size, draw.Regular) < s.Width-5 {
			s.Text(x+0.8, y+4.6+0.7*size, number, draw.TextStyle{Size: size})
		}
	}
	s.Path(ticks.String(), line)
	const unit = "cm"
	s.Text(coverLeft-2-draw.Measure(unit, size, draw.Regular), y+4.6+0.7*size, unit, draw.TextStyle{Size: size})
}

// coverLabel says what is to be seen on the title page.
func (p patternPages) coverLabel() string {
	if len(p.Photos) > 0 {
		return p.Photos[0].Label(p.Name)
	}
	side := "right"
	if p.Left {
		side = "left"
	}
	out := p.middle()
	return fmt.Sprintf("a %s hand in its %s, drawn in size %s", side, out.Plan.Kind.Words(), p.middleName())
}

// Label says what is to be seen on a photograph: its caption, or of what pattern it is.
func (f PatternPhoto) Label(name string) string {
	if f.Caption != "" {
		return f.Caption
	}
	return "Photograph of " + name
}
