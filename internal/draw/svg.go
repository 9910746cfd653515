package draw

import (
	"encoding/xml"
	"io"
	"sync"
)

// WriteSVG writes a scene as an svg element. If sized, it has its size in mm,
// for paper, and every text is held to its measured width, so that no other
// face can make texts overlap. Otherwise it fills the element around it.
func WriteSVG(w io.Writer, s *Scene, sized bool) error {
	e := encoders.Get().(*encoder)
	defer encoders.Put(e)
	e.b, e.sized = e.b[:0], sized
	e.head(s)
	for i := range s.Items {
		e.item(&s.Items[i])
		if len(e.b) < writeAt {
			continue
		}
		if _, err := w.Write(e.b); err != nil {
			return err
		}
		e.b = e.b[:0]
	}
	e.text("</svg>")
	_, err := w.Write(e.b)
	return err
}

// writeAt is the number of bytes that are written at once. A page is shorter, so
// that whoever keeps it takes memory for it once.
const writeAt = 128 << 10

// encoders are for reuse, with the memory that they took.
var encoders = sync.Pool{New: func() any { return new(encoder) }}

// encoder appends elements to b.
type encoder struct {
	b     []byte
	sized bool
}

// Write implements io.Writer, for texts that are escaped; it never fails.
func (e *encoder) Write(p []byte) (int, error) {
	e.b = append(e.b, p...)
	return len(p), nil
}

// text appends what is written as it stands.
func (e *encoder) text(text string) { e.b = append(e.b, text...) }

// name begins an attribute, up to its value; quote ends it.
func (e *encoder) name(name string) {
	e.b = append(append(append(e.b, ' '), name...), '=', '"')
}

func (e *encoder) quote() { e.b = append(e.b, '"') }

func (e *encoder) attr(name, value string) {
	e.name(name)
	e.escaped(value)
	e.quote()
}

func (e *encoder) attrs(attrs []Attr) {
	for _, a := range attrs {
		e.attr(a.Name, a.Value)
	}
}

func (e *encoder) number(name string, n float64) {
	e.name(name)
	e.b = AppendNumber(e.b, n)
	e.quote()
}

// escaped appends a text that a person may have written.
func (e *encoder) escaped(text string) {
	for i := range len(text) {
		switch text[i] {
		case '<', '>', '&', '\'', '"', '\t', '\n', '\r':
			_ = xml.EscapeText(e, []byte(text)) // an encoder does not fail
			return
		}
	}
	e.text(text)
}

// head opens the svg element.
func (e *encoder) head(s *Scene) {
	box := Box{Width: s.Width, Height: s.Height}
	if s.Window != nil {
		box = *s.Window
	}
	e.text(`<svg xmlns="http://www.w3.org/2000/svg" viewBox="`)
	for i, n := range [...]float64{box.X, box.Y, box.Width, box.Height} {
		if i > 0 {
			e.text(" ")
		}
		e.b = AppendNumber(e.b, n)
	}
	e.quote()
	if e.sized {
		e.attr("width", Number(s.Width)+"mm")
		e.attr("height", Number(s.Height)+"mm")
	}
	e.attr("role", "img")
	e.attr("aria-label", s.Label)
	e.attrs(s.Root)
	e.text(">")
}

func (e *encoder) item(i *Item) {
	switch i.Kind {
	case PathItem:
		e.text("<path")
		e.style(&i.Style)
		e.attrs(i.Attrs)
		e.attr("d", i.Path)
		e.text("/>")
	case TextItem:
		e.letters(i)
	case GroupItem:
		e.text("<g")
		if i.Style.Class != "" {
			e.attr("class", i.Style.Class)
		}
		e.attrs(i.Attrs)
		e.text(">")
	case MoveItem:
		e.text(`<g transform="translate(`)
		e.b = AppendNumber(e.b, i.X)
		e.text(" ")
		e.b = AppendNumber(e.b, i.Y)
		e.text(") scale(")
		e.b = AppendNumber(e.b, i.Scale)
		e.text(`)">`)
	case EndItem:
		e.text("</g>")
	case PhotoItem:
		e.photo(i)
	}
}

func (e *encoder) style(s *Style) {
	if s.Class != "" {
		e.attr("class", s.Class)
	}
	fill := s.Fill
	if fill == "" {
		fill = "none"
	}
	e.attr("fill", fill)
	if s.Stroke != "" {
		e.attr("stroke", s.Stroke)
		e.number("stroke-width", s.Width)
	}
	if s.Under {
		e.attr("paint-order", "stroke")
	}
	if s.Dash != "" {
		e.attr("stroke-dasharray", s.Dash)
	}
	if s.Round {
		e.attr("stroke-linecap", "round")
		e.attr("stroke-linejoin", "round")
	}
}

// HaloWidth is the width of a halo's outline as a share of the type size; half
// of it lies outside the letters.
const HaloWidth = 0.4

func (e *encoder) letters(i *Item) {
	e.text("<text")
	if i.Letter.Class != "" {
		e.attr("class", i.Letter.Class)
	}
	e.number("x", i.X)
	e.number("y", i.Y)
	e.number("font-size", i.Letter.Size)
	e.text(` font-family="&#39;`)
	e.text(i.Letter.Face.Family())
	e.text(`&#39;, sans-serif"`)
	if i.Letter.Face.Heavy() {
		e.attr("font-weight", "600")
	}
	if i.Letter.Anchor != Start {
		e.attr("text-anchor", [...]string{"start", "middle", "end"}[i.Letter.Anchor])
	}
	if i.Letter.Halo != "" {
		e.attr("paint-order", "stroke")
		e.attr("stroke", i.Letter.Halo)
		e.number("stroke-width", HaloWidth*i.Letter.Size)
		e.attr("stroke-linejoin", "round")
	}
	if e.sized && i.Text != "" {
		e.number("textLength", Measure(i.Text, i.Letter.Size, i.Letter.Face))
		e.attr("lengthAdjust", "spacingAndGlyphs")
	}
	e.text(">")
	e.escaped(i.Text)
	e.text("</text>")
}
