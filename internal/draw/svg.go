package draw

import (
	"bufio"
	"encoding/xml"
	"io"
	"strings"
)

// WriteSVG writes a scene as an svg element. If sized, it has its size in mm,
// for paper, and every text is held to its measured width, so that no other
// face can make texts overlap. Otherwise it fills the element around it.
func WriteSVG(w io.Writer, s *Scene, sized bool) error {
	b := bufio.NewWriter(w)
	e := encoder{b, sized}
	e.open("svg", Attr{"xmlns", "http://www.w3.org/2000/svg"})
	box := Box{Width: s.Width, Height: s.Height}
	if s.Window != nil {
		box = *s.Window
	}
	e.attr("viewBox", Number(box.X)+" "+Number(box.Y)+" "+Number(box.Width)+" "+Number(box.Height))
	if sized {
		e.attr("width", Number(s.Width)+"mm")
		e.attr("height", Number(s.Height)+"mm")
	}
	e.attr("role", "img")
	e.attr("aria-label", s.Label)
	e.attrs(s.Root)
	e.end()
	for i := range s.Items {
		e.item(&s.Items[i])
	}
	b.WriteString("</svg>")
	return b.Flush()
}

type encoder struct {
	*bufio.Writer
	sized bool
}

func (e encoder) open(name string, attrs ...Attr) {
	e.WriteString("<" + name)
	e.attrs(attrs)
}

func (e encoder) end() { e.WriteString(">") }

func (e encoder) attrs(attrs []Attr) {
	for _, a := range attrs {
		e.attr(a.Name, a.Value)
	}
}

func (e encoder) attr(name, value string) {
	e.WriteString(" " + name + `="` + escape(value) + `"`)
}

func escape(text string) string {
	if !strings.ContainsAny(text, "<>&'\"\t\n\r") {
		return text
	}
	var b strings.Builder
	_ = xml.EscapeText(&b, []byte(text)) // a strings.Builder does not fail
	return b.String()
}

func (e encoder) item(i *Item) {
	switch i.Kind {
	case PathItem:
		e.open("path")
		e.style(i.Style)
		e.attrs(i.Attrs)
		e.attr("d", i.Path)
		e.WriteString("/>")
	case TextItem:
		e.text(i)
	case GroupItem:
		e.open("g")
		if i.Style.Class != "" {
			e.attr("class", i.Style.Class)
		}
		e.attrs(i.Attrs)
		e.end()
	case MoveItem:
		e.open("g", Attr{"transform", "translate(" + Number(i.X) + " " + Number(i.Y) + ") scale(" + Number(i.Scale) + ")"})
		e.end()
	case EndItem:
		e.WriteString("</g>")
	}
}

func (e encoder) style(s Style) {
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
		e.attr("stroke-width", Number(s.Width))
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

func (e encoder) text(i *Item) {
	e.open("text")
	if i.Letter.Class != "" {
		e.attr("class", i.Letter.Class)
	}
	e.attr("x", Number(i.X))
	e.attr("y", Number(i.Y))
	e.attr("font-size", Number(i.Letter.Size))
	e.attr("font-family", "'"+i.Letter.Face.Family()+"', sans-serif")
	if i.Letter.Face.Heavy() {
		e.attr("font-weight", "600")
	}
	if i.Letter.Anchor != Start {
		e.attr("text-anchor", [...]string{"start", "middle", "end"}[i.Letter.Anchor])
	}
	if i.Letter.Halo != "" {
		e.attr("paint-order", "stroke")
		e.attr("stroke", i.Letter.Halo)
		e.attr("stroke-width", Number(HaloWidth*i.Letter.Size))
		e.attr("stroke-linejoin", "round")
	}
	if e.sized && i.Text != "" {
		e.attr("textLength", Number(Measure(i.Text, i.Letter.Size, i.Letter.Face)))
		e.attr("lengthAdjust", "spacingAndGlyphs")
	}
	e.end()
	e.WriteString(escape(i.Text) + "</text>")
}
