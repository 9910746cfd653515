package stitch

import "strings"

// Part names a section of a mitt.
type Part string

// The parts of a mitt.
const (
	Cuff       Part = "cuff"        // ribbing from the cast-on
	CuffPlain  Part = "cuff_plain"  // plain rounds between ribbing and gusset
	BelowThumb Part = "below_thumb" // without a gusset: from the base of the thumb to where it parts
	Opening    Part = "opening"     // to and fro beside the thumb, which comes out between the edges
	Gusset     Part = "gusset"      // first increase to the last round before the division
	Hand       Part = "hand"        // division to the last round, or to the top
	Top        Part = "top"         // decreases that close a mitten
	Little     Part = "little"      // the little finger of a glove, which is worked first
	UpperHand  Part = "upper_hand"  // from the little finger to where the others part
	Ring       Part = "ring"        // the ring finger
	Middle     Part = "middle"      // the middle finger
	Index      Part = "index"       // the index finger
	Thumb      Part = "thumb"       // from the held stitches to its end
	Cap        Part = "cap"         // over half fingers, picked up on the back
	CapTop     Part = "cap_top"     // decreases that close a cap
)

// Gap is the gap beside a thumb that was worked first: it has no rounds, so it has
// no place in the table of parts.
const Gap Part = "gap"

// Over is the region of the hand that a part lies on.
type Over uint8

// The regions of the hand, from the cast-on up.
const (
	OverWrist Over = iota
	OverHeel       // from the wrist to the base of the thumb
	OverMound      // the hand with the thumb laid in
	OverHand       // the hand above that; without a thumb all of it
	OverTips       // the ends of the fingers, together
	OverDigit      // the thumb or a finger by itself
	OverCap        // over the ends of half fingers, outside the rest
)

// partInfo is what is true of a part in every mitt.
type partInfo struct {
	part  Part
	words string // its name in a sentence
	title string // the heading of its instructions
	over  Over
	views []string // the charts that show it; the first shows it by itself
	grows bool     // its leading block is a gusset
}

// parts is the table of parts in the order in which they are worked. A new part
// needs a line here and a builder in package mitt.
var parts = []partInfo{
	{Cuff, "cuff", "Cuff", OverWrist, []string{"cuff"}, false},
	{CuffPlain, "plain cuff", "Plain rounds", OverHeel, []string{"cuff"}, false},
	{BelowThumb, "lower hand", "Hand, up to the thumb", OverMound, []string{"hand"}, false},
	{Opening, "opening", "Opening for the thumb", OverMound, []string{"hand"}, false},
	{Gusset, "gusset", "Thumb gusset", OverMound, []string{"gusset", "hand"}, true},
	{Hand, "hand", "Hand", OverHand, []string{"hand"}, false},
	{Top, "top", "Top", OverTips, []string{"top"}, false},
	{Little, "little finger", "Little finger", OverDigit, []string{"little"}, false},
	{UpperHand, "upper hand", "Upper hand", OverHand, []string{"upper_hand"}, false},
	{Ring, "ring finger", "Ring finger", OverDigit, []string{"ring"}, false},
	{Middle, "middle finger", "Middle finger", OverDigit, []string{"middle"}, false},
	{Index, "index finger", "Index finger", OverDigit, []string{"index"}, false},
	{Thumb, "thumb", "Thumb", OverDigit, []string{"thumb"}, false},
	{Cap, "cap", "Cap", OverCap, []string{"cap"}, false},
	{CapTop, "top of the cap", "Top of the cap", OverCap, []string{"cap_top"}, false},
}

var gap = partInfo{Gap, "gap beside the thumb", "Gap beside the thumb", OverDigit, []string{"thumb"}, false}

// Parts lists the parts in the order worked.
func Parts() []Part {
	list := make([]Part, len(parts))
	for i := range parts {
		list[i] = parts[i].part
	}
	return list
}

// Worked lists all that may be worked: the parts, and what has no rounds.
func Worked() []Part { return append(Parts(), Gap) }

// Order returns the part's place in the order worked, from 1, or 0 if the part is
// not in the table.
func (p Part) Order() int {
	for i := range parts {
		if parts[i].part == p {
			return i + 1
		}
	}
	return 0
}

// info returns the part's line of the table. A part that is not in the table
// counts as lying on the hand, with a chart of its own.
func (p Part) info() *partInfo {
	if i := p.Order(); i > 0 {
		return &parts[i-1]
	}
	if p == Gap {
		return &gap
	}
	name := string(p)
	first := min(1, len(name))
	return &partInfo{p, name, strings.ToUpper(name[:first]) + name[first:], OverHand, []string{name}, false}
}

// Words returns what the part is called in a sentence.
func (p Part) Words() string { return p.info().words }

// Title returns the heading of the part's instructions.
func (p Part) Title() string { return p.info().title }

// Over returns the region of the hand that the part lies on.
func (p Part) Over() Over { return p.info().over }

// OnThumb reports whether the part covers the thumb.
func (p Part) OnThumb() bool { return p == Thumb }

// BelowFingers reports whether the part lies between the little finger of a glove and where
// the others part.
func (p Part) BelowFingers() bool { return p == UpperHand }

// Views returns the charts that show the part; the first shows it by itself.
func (p Part) Views() []string { return p.info().views }

// Marked reports whether the leading block of the part's rounds is a gusset,
// which grows between markers and is counted by itself.
func (p Part) Marked() bool { return p.info().grows }

// Passing reports whether the part belongs to the cuff. Its count is not the
// hand's, so its chart columns are numbered by themselves and end with it.
func (p Part) Passing() bool { return p.Over() == OverWrist || p.Over() == OverHeel }

// Set names stitches that a section keeps aside until another takes them up.
// The stitches of one set come back together, in the order in which they were
// put aside.
type Set string

// The sets of the gap beside a thumb that is worked first: stitches of the thumb and
// as many of the hand wait there together, and are grafted at the end.
const (
	GapOfThumb Set = "gap, thumb"
	GapOfHand  Set = "gap, hand"
)

// ThumbSet names the stitches that are kept aside for the thumb.
const ThumbSet Set = "thumb"

// The sets of a glove: what waits while the little finger is worked, then while the
// ring finger is, then while the middle finger is.
const (
	OtherThree     Set = "other three fingers"
	IndexAndMiddle Set = "index and middle finger"
	IndexSet       Set = "index finger"
)

// Above names the loops that lie over those of the set: what is knitted with waste
// yarn leaves loops on both sides of it. Those above are fewer by one, since they lie
// between the others.
func (s Set) Above() Set { return s + over }

// Lies reports whether the loops of a set lie above the waste yarn.
func (s Set) Lies() bool { return strings.HasSuffix(string(s), over) }

const over = " above"

// For returns whom a set waits for, as the end of a phrase: " for the index". It
// returns "" for the thumb's set, which every mitt with a thumb keeps.
func (s Set) For() string {
	switch s {
	case ThumbSet, "":
		return ""
	case GapOfThumb, GapOfHand:
		return " for the gap"
	}
	return " for the " + string(s)
}
