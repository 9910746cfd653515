package chart

// Yarn is one of the yarns that a chart can be painted with. Fill is its
// colour on the page; the main colour is the ground itself. The colours
// differ in lightness, so that they are told apart in greyscale, and each has
// a texture of its own in the chart (none, level, upright, slanting lines).
type Yarn struct {
	ID   string
	Name string
	Fill string // as #RRGGBB; empty for the ground
}

// Yarns is the palette.
var Yarns = []Yarn{
	{"a", "main colour", ""},
	{"b", "rust", "#B9694A"},
	{"c", "blue", "#7FA3C7"},
	{"d", "straw", "#E9D18B"},
}

// YarnNamed finds a yarn by its ID.
func YarnNamed(id string) (Yarn, bool) {
	for _, y := range Yarns {
		if y.ID == id {
			return y, true
		}
	}
	return Yarn{}, false
}
