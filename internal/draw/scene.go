// Package draw holds a page or a picture as a flat list of paths and texts in
// millimetres, measures text with a bundled face, and writes SVG. What is
// drawn once comes out alike on the screen and on paper.
package draw

// Style is how a mark looks. The attributes are defaults for a file that
// stands alone; a style sheet goes by the class and overrides them.
type Style struct {
	Class  string
	Fill   string // empty: none
	Stroke string // empty: none
	Width  float64
	Dash   string // as in "2 1"
	Round  bool   // ends and corners of the line
}

// Anchor says which part of a text stands at its place.
type Anchor int

// The anchors of a text.
const (
	Start Anchor = iota
	Middle
	End
)

// TextStyle is how a text looks; Size is the height of the letters in mm, as
// type sizes are given.
type TextStyle struct {
	Class  string
	Size   float64
	Anchor Anchor
	Bold   bool
	Halo   string // colour of a line round the letters that parts them from what lies behind; empty: none
}

// Attr is an attribute of a group: data-… or aria-….
type Attr struct{ Name, Value string }

// Item is one entry of the list.
type Item struct {
	Kind   Kind
	Style  Style
	Path   string
	X, Y   float64
	Scale  float64
	Text   string
	Letter TextStyle
	Attrs  []Attr
}

// Kind is what an item is.
type Kind int

// The kinds of items. A group is open until its end.
const (
	PathItem Kind = iota
	TextItem
	GroupItem
	MoveItem // a group that is moved by X, Y and scaled
	EndItem
)

// Scene is a picture of a size in mm; its origin is the upper left corner, y
// grows downwards.
type Scene struct {
	Width, Height float64
	Label         string // what it shows, for those who don't see it
	Root          []Attr // attributes of the whole
	Items         []Item
	Window        *Box // the part that an SVG or a PDF shows; nil: all
}

// Box is a rectangle in mm.
type Box struct{ X, Y, Width, Height float64 }

// Path adds a path of absolute path data.
func (s *Scene) Path(d string, style Style) {
	s.Items = append(s.Items, Item{Kind: PathItem, Path: d, Style: style})
}

// PathWith adds a path that carries attributes.
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

// Text adds a line of text with its base line at y.
func (s *Scene) Text(x, y float64, text string, style TextStyle) {
	s.Items = append(s.Items, Item{Kind: TextItem, X: x, Y: y, Text: text, Letter: style})
}

// Group opens a group; what is added until End belongs to it.
func (s *Scene) Group(class string, attrs ...Attr) {
	s.Items = append(s.Items, Item{Kind: GroupItem, Style: Style{Class: class}, Attrs: attrs})
}

// End closes the group that was opened last.
func (s *Scene) End() { s.Items = append(s.Items, Item{Kind: EndItem}) }

// Add puts another scene into this one, its corner at x, y, scaled.
func (s *Scene) Add(sub *Scene, x, y, scale float64) {
	s.Items = append(s.Items, Item{Kind: MoveItem, X: x, Y: y, Scale: scale})
	s.Items = append(s.Items, sub.Items...)
	s.End()
}
