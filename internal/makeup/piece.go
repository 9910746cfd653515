package makeup

// Area is the height of the pages between head and foot, in tenths of a
// millimetre, and how they lie.
type Area struct {
	First     int  // height of the first page; 0: as the others
	Page      int  // height of a page
	BothSides bool // printed on both sides: pages 2 and 3 face each other, then 4 and 5
}

// room returns the height of the page that begins at a place.
func (a Area) room(place int) int {
	if place == 0 && a.First > 0 {
		return a.First
	}
	return a.Page
}

// Piece is what belongs together in a handout, such as a section of its words, a
// chart, a table.
type Piece struct {
	Name     string // for messages
	Above    int    // space above it, dropped at the head of a page
	WithNext bool   // its end stays on the page on which the next piece begins
	Ways     []Way  // in which it may be set, at least one
}

// Way is one of the ways in which a piece may be set.
type Way struct {
	Shrunk int // how far it is below its wished size, in steps of 5 %
	Parts  []Part
}

// Part is what is never divided: a line, a row of a table, a drawing. Heights
// are in tenths of a millimetre.
type Part struct {
	Height int
	Above  int  // space above it within its piece, dropped at the head of a page
	Again  int  // height of what is repeated above it where it begins a page
	Keep   bool // stays on the page on which the next part begins

	// A chart and the words of the same number, from 1 to 8, should lie open
	// beside each other. 0 is no chart, and no words that have one.
	Chart, Words int
}

// Layout is a handout made up in pages.
type Layout struct {
	Pages    []Page
	Cost     Cost
	Troubles []Trouble // where a rule could not be kept
}

// Page is one page. Heights are in tenths of a millimetre.
type Page struct {
	Height int // of its area
	Filled int // from its head to the foot of its last part; more than Height if that sticks out
	Placed []Placed
}

// Empty returns the height that is left at the foot.
func (p Page) Empty() int { return max(p.Height-p.Filled, 0) }

// Placed is a part with its place on a page. Piece, Way and Part count from 0.
type Placed struct {
	Piece, Way, Part int
	Top              int // of the part, in tenths of a millimetre below the head of the area
	Again            int // height of what is repeated right above it; 0: nothing is
}
