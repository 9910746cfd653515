// Package draw holds a page or picture as a flat list of paths and texts in
// millimetres, measures text with a bundled face, and writes SVG and PNG. One
// drawing serves screen and paper.
package draw

import (
	"strings"

	"golang.org/x/text/unicode/norm"
)

// Style is the look of a path. Its attributes serve a file that stands alone; a
// style sheet selects by the class and overrides them.
type Style struct {
	Class  string
	Fill   string // empty: none
	Stroke string // empty: none
	Width  float64
	Dash   string // as in "2 1"
	Round  bool   // ends and corners of the line
	Under  bool   // the line lies under the fill: half of its width shows, as an edge
}

// Anchor is the part of a text that is placed at its point.
type Anchor int

// The anchors of a text.
const (
	Start Anchor = iota
	Middle
	End
)

// TextStyle is the look of a text; Size is the type size in mm.
type TextStyle struct {
	Class  string
	Size   float64
	Anchor Anchor
	Face   Face
	Halo   string // colour of an outline that separates the letters from what is behind; empty: none
}

// Attr is an attribute of a group: data-… or aria-….
type Attr struct{ Name, Value string }

// Item is one entry of a scene.
type Item struct {
	Kind   Kind
	Style  Style
	Path   string
	X, Y   float64
	Scale  float64
	Text   string
	Letter TextStyle
	Attrs  []Attr
	Photo  *Photo
}

// Kind is a kind of item.
type Kind int

// The kinds of items. A group is open until its end.
const (
	PathItem Kind = iota
	TextItem
	GroupItem
	MoveItem // a group that is moved by X, Y and scaled
	EndItem
	PhotoItem // with its upper left corner at X, Y
)

// Scene is a picture with its size in mm. The origin is the upper left corner;
// y grows downwards.
type Scene struct {
	Width, Height float64
	Label         string // the text alternative
	Root          []Attr // attributes of the whole
	Items         []Item
	Window        *Box // the part that an SVG or a PDF shows; nil: all
	Headings      []Heading
}

// Heading is what a reader can go to from the outline of a document.
type Heading struct {
	Level int // 1: what a document is called; 2: a part of it
	Text  string
	Y     float64 // its upper edge, in mm from the top of the page
}

// Box is a rectangle in mm.
type Box struct{ X, Y, Width, Height float64 }

// Path adds a path.
func (s *Scene) Path(d string, style Style) {
	s.Items = append(s.Items, Item{Kind: PathItem, Path: d, Style: style})
}

// PathWith adds a path with attributes.
func (s *Scene) PathWith(d string, style Style, attrs ...Attr) {
	s.Items = append(s.Items, Item{Kind: PathItem, Path: d, Style: style, Attrs: attrs})
}

// Line adds a straight line.
func (s *Scene) Line(x1, y1, x2, y2 float64, style Style) {
	s.Path(new(Pen).Move(x1, y1).Line(x2, y2).String(), style)
}

// Rect adds a rectangle.
func (s *Scene) Rect(x, y, w, h float64, style Style) {
	s.Path(new(Pen).Rect(x, y, w, h).String(), style)
}

// Text adds a line of text with its baseline at y, in normal form C: the faces
// have a glyph for ế, and none that puts its accents together. Its hard spaces become
// plain ones, since lines are broken already.
func (s *Scene) Text(x, y float64, text string, style TextStyle) {
	s.Items = append(s.Items, Item{Kind: TextItem, X: x, Y: y, Text: strings.ReplaceAll(norm.NFC.String(text), Hard, " "), Letter: style})
}

// Heading notes that what begins at y has a heading; it draws nothing.
func (s *Scene) Heading(level int, y float64, text string) {
	s.Headings = append(s.Headings, Heading{level, norm.NFC.String(text), y})
}

// Group opens a group that holds what is added until End.
func (s *Scene) Group(class string, attrs ...Attr) {
	s.Items = append(s.Items, Item{Kind: GroupItem, Style: Style{Class: class}, Attrs: attrs})
}

// End closes the group that was opened last.
func (s *Scene) End() { s.Items = append(s.Items, Item{Kind: EndItem}) }

// Add draws another scene into this one, scaled, with its upper left corner at
// x, y.
func (s *Scene) Add(sub *Scene, x, y, scale float64) {
	s.Items = append(s.Items, Item{Kind: MoveItem, X: x, Y: y, Scale: scale})
	s.Items = append(s.Items, sub.Items...)
	s.End()
}

// Prune removes paths that draw nothing and groups that hold nothing. It is for
// pictures whose empty paths no script fills.
func (s *Scene) Prune() {
	var kept []Item
	for i := range s.Items {
		last := len(kept) - 1
		switch item := s.Items[i]; {
		case item.Kind == PathItem && item.Path == "":
		case item.Kind == EndItem && last >= 0 && (kept[last].Kind == GroupItem || kept[last].Kind == MoveItem):
			kept = kept[:last]
		default:
			kept = append(kept, item)
		}
	}
	s.Items = kept
}
