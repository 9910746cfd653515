// Package repeat lays motifs again and again on the columns of a mitt. A repeat is a
// decision, as a fixed number is: which motif, where, and how it is set. It is laid anew on
// every plan, so another gauge gives more or fewer of them instead of holes.
package repeat

import (
	"fmt"
	"regexp"
	"strings"

	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Most is the greatest number of repeats of a mitt.
const Most = 20

// Whole is the section of a repeat that goes from the plain cuff to the top.
const Whole stitch.Part = "whole"

// Over says across what a repeat is laid.
type Over string

// What a repeat may be laid across. Columns are those from one to another, both named.
const (
	Round   Over = "round"
	Palm    Over = "palm"
	Back    Over = "back"
	Gusset  Over = "gusset"
	Columns Over = "columns"
)

// Overs lists them.
var Overs = []Over{Round, Palm, Back, Gusset, Columns}

// Set says where the motifs stand in what they are laid across.
type Set string

// The ways to set a repeat: from the beginning of the round; with the middle of the back
// or of the palm in the middle of a motif, or between two if that leaves fewer plain
// stitches; with the plain stitches shared by both ends, an odd one first; or from the
// beginning on a hand that is kept to a multiple of the motif. Over the back alone, centred
// on the back is shared by both ends, and so with the palm. Where motifs fit exactly round
// the hand none is lost: one goes on over the beginning of the round.
const (
	Begin        Set = "begin"
	CentredBack  Set = "centred_back"
	CentredPalm  Set = "centred_palm"
	Centred      Set = "centred"
	KeptMultiple Set = "multiple"
)

// Sets lists them.
var Sets = []Set{Begin, CentredBack, CentredPalm, Centred, KeptMultiple}

// InGusset says what becomes of a repeat in the gusset that it meets: of one over the round,
// or in the gusset alone. Over the palm, the back or some columns a gusset stays plain, as a
// knitter expects of a motif that lies beside it.
type InGusset string

// The gusset stays plain; or the motif is counted from the middle of its base outwards, so
// that it grows by one column after the other; or so on both sides, mirrored; or from its
// two edges inwards, so that it follows them.
const (
	StaysOut InGusset = "out"
	Grows    InGusset = "grow"
	Mirrored InGusset = "mirror"
	Follows  InGusset = "edge"
)

// InGussets lists them.
var InGussets = []InGusset{StaysOut, Grows, Mirrored, Follows}

// OnLeft says how the left hand has the motif.
type OnLeft string

// On the left hand the motif is the mirror image, or as it was drawn.
const (
	LeftMirrored OnLeft = "mirror"
	AsDrawn      OnLeft = "as_drawn"
)

// OnLefts lists them.
var OnLefts = []OnLeft{LeftMirrored, AsDrawn}

// Repeat is one motif and where it is laid. Rounds are counted from 1 as they are worked,
// in the section or, over the whole hand, from its first round on; a negative To counts
// from the last, which is −1. Offset moves the motif on by stitches within what it covers.
type Repeat struct {
	Name    string
	Motif   Motif
	Section stitch.Part
	From    int
	To      int
	Over    Over
	Between [2]string // the two columns, the one worked first before the other
	Set     Set
	Offset  int
	Gusset  InGusset
	OnLeft  OnLeft
	Cut     bool // the uppermost may be cut off; else only whole heights are laid
	Off     bool // it is kept, but not laid
}

// Usual returns a repeat of a motif as it is laid if nothing is said of it.
func Usual(m Motif) Repeat {
	return Repeat{Motif: m, Section: Whole, From: 1, To: -1, Over: Round, Set: Begin, Gusset: StaysOut, OnLeft: LeftMirrored}
}

// MeetsGusset reports whether a gusset may have a part of the repeat.
func (r *Repeat) MeetsGusset() bool {
	return r.Over == Gusset || r.Over == Round && (r.Section == Whole || r.Section.Marked())
}

// ByHand reports whether the repeat goes round the hand, so that the hand's count says how often.
func (r *Repeat) ByHand() bool { return r.Over == Round && r.OnHand() }

// OnHand reports whether the repeat lies on the hand, and not on a part with a count of its own.
func (r *Repeat) OnHand() bool { return r.Section == Whole || roundHand(r.Section) }

// Called returns what a repeat is called: its name, or else its place in the list, from 0, as
// the written rounds count it.
func (r *Repeat) Called(place int) string {
	if name := strings.TrimSpace(r.Name); name != "" {
		return name
	}
	return fmt.Sprintf("motif %d", place+1)
}

// Came is what became of a repeat on a plan.
type Came struct {
	Stitches int    // across which it is laid
	Across   int    // how often it stands whole across them
	Before   int    // plain stitches before the first, as the right hand works them
	After    int    // and after the last
	Rounds   int    // in which it may lie
	Up       int    // how often it stands whole in them
	Left     int    // rounds that are left over; with Cut they have a part of it
	Fewer    int    // how many fewer stand across than find room between the ends
	Beside   bool   // alike on both sides, it stands half a stitch off the middle of a gusset
	Nowhere  string // why it lies nowhere, in words; empty: it does
}

// Plain returns how many stitches of each round stay plain.
func (c Came) Plain() int { return c.Before + c.After }

var column = regexp.MustCompile(`^[` + wale.Families + `][1-9][0-9]{0,3}$`)

// Column reports whether a text names a column.
func Column(name string) bool { return column.MatchString(name) }
