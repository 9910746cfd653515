package chart

// Held is the hand in which a yarn is held.
type Held string

// The hands that may hold a yarn; empty is unknown.
const (
	InLeft  Held = "left"
	InRight Held = "right"
)

// Yarn is a yarn that a chart can be painted with. Fill is its colour on the
// page; the main colour of the default palette has none and shows the ground.
// Each yarn also has a texture in the chart, so that yarns can be told apart
// without colour.
type Yarn struct {
	ID   string
	Name string
	Fill string // as #RRGGBB; empty for the ground
	Held Held
}

// Palette is the yarns of a chart, the main colour first.
type Palette []Yarn

// MaxYarns is the largest number of yarns in a palette, which is the number of
// textures.
const MaxYarns = 8

// Yarns is the default palette. Its colours differ in lightness, so that they
// can be told apart in greyscale.
var Yarns = Palette{
	{"a", "main colour", "", ""},
	{"b", "rust", "#B9694A", ""},
	{"c", "blue", "#7FA3C7", ""},
	{"d", "straw", "#E9D18B", ""},
}

// ID returns the ID of the yarn at an index of the palette: a, b …
func ID(i int) string { return string(rune('a' + i)) }

// place returns the index of a yarn in a palette by its ID; 0 for an invalid
// ID.
func place(id string) int {
	if !yarnID(id) {
		return 0
	}
	return int(id[0] - 'a')
}

// yarnID reports whether id is a valid ID of a yarn.
func yarnID(id string) bool { return len(id) == 1 && id[0] >= 'a' && id[0] < 'a'+MaxYarns }

// Named returns a yarn by its ID.
func (p Palette) Named(id string) (Yarn, bool) {
	for _, y := range p {
		if y.ID == id {
			return y, true
		}
	}
	return Yarn{}, false
}

// Or returns a yarn by its ID. A mark may have one that was since removed from
// the palette, which is returned under its ID without a colour.
func (p Palette) Or(id string) Yarn {
	if y, ok := p.Named(id); ok {
		return y
	}
	return Yarn{ID: id, Name: "yarn " + id}
}
