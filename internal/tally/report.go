// Package tally works written instructions stitch by stitch, every size by itself, and tells
// where a count does not come out.
package tally

import "thenar/internal/written"

// Kind is what was found.
type Kind uint8

const (
	Miscounted  Kind = iota // a stated count is not what the stitches come to
	LeftOver                // stitches of a round are left over, or a repeat doesn't divide
	Short                   // more stitches are worked than there are
	Unread                  // it was not understood
	Forgotten               // held stitches, or a piece, come to no end
	Misplaced               // a marker is not where it is told, or was never placed
	Misnumbered             // rounds are numbered twice, or left out
	Listed                  // a list, total or length doesn't agree with the rounds
)

// Finding is one thing that was found.
type Finding struct {
	Kind            Kind
	At, To          written.Spot
	Sizes           []string // those that it was found in; none: there is one without a name
	Section         string
	Round           string       // "round 4" or "row 4"; empty: in no round
	Number          int          // of that round; 0: in none
	Found, Expected int          // counts, where there are two
	Look            written.Spot // where else to look: what it follows from; zero: nowhere
	Message         string       // a sentence
	Cure            string       // the smallest change that would make it come out; may be empty
}

// Round is one round as it was worked.
type Round struct {
	Section       string
	Number        int  // in its section, from 1
	Before, After int  // stitches
	Inside        int  // between the markers; -1 without
	Line          int  // of the text
	Row           bool // the work was turned after it
}

// Size is what was worked of one size.
type Size struct {
	Name   string
	Hand   string // "right" or "left", where sections stand for either; else empty
	Rounds []Round
	Open   bool // not all could be counted
	Last   int  // stitches on the needles when the last piece was finished, or at the end
	Edges  Edges
	Long   []Long // what is worked as long as it is told in a measure, in its order
}

// Long is rounds that are worked until something is so long. Nobody counted them.
type Long struct {
	At, Since int          // rounds of the text that were counted before, and of those in its piece
	Stitches  int          // in each; -1: nobody knows
	Again     int          // it is so many rounds over and over
	Place     int          // of this size among those that the sentence is for
	From, To  written.Spot // where it is told
}

// Edges are what takes yarn beside the stitches of the rounds.
type Edges struct {
	CastOn, CastOff int  // stitches
	Ends            int  // where the yarn is joined, and where it is cut
	Rows            bool // something is worked to and fro, and may be sewn
}

// Report is what a text comes to.
type Report struct {
	Sizes    []Size
	Findings []Finding
}

// Sound reports whether every count comes out.
func (r *Report) Sound() bool { return len(r.Findings) == 0 }
