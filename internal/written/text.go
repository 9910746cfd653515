package written

// Text is written instructions, taken apart.
type Text struct {
	Sizes      []string // what the sizes are called; one without a name if none is told
	Statements []Statement
}

// Kind is what a statement is.
type Kind uint8

const (
	Note      Kind = iota // it changes no count
	Heading               // a new section; its rounds are counted anew
	Begin                 // stitches are cast on, and a piece begins
	Rounds                // rounds or rows are worked
	Again                 // earlier rounds are worked again
	Finish                // all stitches are bound off, drawn up or grafted
	Back                  // held stitches come back to the needles
	Onward                // part of a round is worked, and the round begins there
	Says                  // a count is stated
	Pace                  // in which rounds a named one comes
	Plan                  // what shaping comes to is stated
	Grows                 // stitches are increased or decreased, as often as it is told
	Comes                 // the number of the next round is told
	Markers               // markers are placed or taken off
	Tabled                // a table tells in which rounds the count changes, or what it is then
	Elsewhere             // what is worked is told at another place
	Unknown               // it was not understood
	Excess                // here a text goes on for so long that the rest is not read
)

// Statement is one sentence of a text, or one labelled line.
type Statement struct {
	Kind     Kind
	Side     Side
	Unsure   bool  // how many rounds is told by length only
	All      bool  // Finish: all stitches
	Less     bool  // of By: stitches are taken
	Further  bool  // the round begins anew where it ends
	Where    Where // of Grows
	For      []int // the sizes that it is for, by their places
	At, To   Spot
	Title    string // Heading: what it says
	Hand     string // "right" or "left", if it, or of a heading what follows, is for that hand
	Label    Label
	Items    []Item
	Many     Number // how many rounds; not written: one, or as many as its label names
	Counts   []Count
	Repeat   *Repeat   // of Again and Grows
	Name     string    // of a set of held stitches; Finish: "graft", "draw" or else nothing
	Stars    int       // asterisks before it, from which rounds are repeated
	Ends     int       // and those at its end
	By       Number    // so many stitches are made at a time, or taken if Less
	Schedule *Schedule // of Plan
	Table    []Column  // of Tabled
	Steps    []Step    // of Pace and Grows
	Odd      *Odd      // numbers that are not one for each size
	Over     Number    // so many stitches are worked, and the others wait
}

// Step is rounds that come at the same distance: in every 4th, so many times.
type Step struct {
	Every, Times Number
	More         bool // beyond the first
}

// Side is the side of the fabric that faces the knitter.
type Side uint8

const (
	NoSide Side = iota
	Right
	Wrong
)

// Label names the rounds of a statement.
type Label struct {
	From, To Number   // rounds From to To
	List     []Number // or these
	Named    string   // "increase": what such a round is called
	Row      bool     // they are rows
	Two      bool     // both ends are told, "4–6"
	Next     bool     // "next round"
	Others   bool     // all rounds between that nothing else is told of
	Also     bool     // and such as well
	Alike    int      // those are the even ones (1) or the odd ones (2); 0: any
}

// Written reports whether there is a label.
func (l *Label) Written() bool {
	return l.From.Written() || len(l.List) > 0 || l.Named != "" || l.Next || l.Others
}

// Count is a count that is stated.
type Count struct {
	Number
	Inside bool // between the markers, in the gusset
	Change int  // 1: so many were increased, -1: decreased
	At, To Spot
}

// Repeat tells which rounds are worked again, and how often.
type Repeat struct {
	From, To Number // by their numbers
	Last     Number // or so many last ones
	Named    string // or the round of that name
	Stars    int    // or those since so many asterisks
	Times    Number
	More     bool   // beyond the first
	Every    Number // it comes in every nth round
	Then     Number // and then the rounds Then to ThenTo once
	ThenTo   Number
	Until    []Count
	All      bool   // as often as it takes for all stitches to be worked
	Open     bool   // as often as it takes, by length
	Shaping  bool   // the last round that changed the count
	Varied   bool   // each time with some stitches more or fewer between
	InAll    bool   // Times counts those that are worked already
	Of       string // the section in which those of From to To stand
}

// Tells is what a column of a table tells.
type Tells uint8

const (
	InRounds Tells = iota // the rounds in which the count changes
	Stitches              // what there are after them
	InGusset              // and between the markers
	HowOften              // how many such rounds there are
)

// Column is a column of a table, or a row where each is for a size.
type Column struct {
	Tells Tells
	For   []int // sizes
	Cells []Cell
}

// Cell is a number of a table; None where a size has nothing.
type Cell struct {
	N      int
	At, To Spot
}

// Schedule is what shaping is said to come to.
type Schedule struct {
	Rounds   Number   // shaping rounds
	Total    Number   // all rounds of the section
	From, To Number   // stitches before and after
	List     []Number // which rounds
}
