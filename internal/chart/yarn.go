package chart

// Held is the hand in which a yarn is held.
type Held string

// The hands that may hold a yarn; empty is not said.
const (
	InLeft  Held = "left"
	InRight Held = "right"
)

// Yarn is one of the yarns that a chart can be painted with. Fill is its
// colour on the page; the main colour of the palette that is there from the
// start is the ground itself. Each has a texture of its own in the chart, so
// that yarns are told apart without colour.
type Yarn struct {
	ID   string
	Name string
	Fill string // as #RRGGBB; empty for the ground
	Held Held
}

// Palette is the yarns of a chart, the main colour first.
type Palette []Yarn

// MaxYarns is how many yarns a palette may have: as many as there are
// textures.
const MaxYarns = 8

// Yarns is the palette as long as none was chosen; its colours differ in
// lightness, so that they are told apart in greyscale.
var Yarns = Palette{
	{"a", "main colour", "", InRight},
	{"b", "rust", "#B9694A", InLeft},
	{"c", "blue", "#7FA3C7", ""},
	{"d", "straw", "#E9D18B", ""},
}

// ID is the name of the yarn at a place of the palette: a, b …
func ID(i int) string { return string(rune('a' + i)) }

// place is that of a yarn in a palette, by its ID.
func place(id string) int {
	if !yarnID(id) {
		return 0
	}
	return int(id[0] - 'a')
}

// yarnID tells whether a palette can have a yarn of this name.
func yarnID(id string) bool { return len(id) == 1 && id[0] >= 'a' && id[0] < 'a'+MaxYarns }

// Named finds a yarn by its ID.
func (p Palette) Named(id string) (Yarn, bool) {
	for _, y := range p {
		if y.ID == id {
			return y, true
		}
	}
	return Yarn{}, false
}

// Or finds a yarn by its ID; a mark may speak of one that was taken off the
// palette since, which is then shown as itself without a colour.
func (p Palette) Or(id string) Yarn {
	if y, ok := p.Named(id); ok {
		return y
	}
	return Yarn{ID: id, Name: "yarn " + id}
}
