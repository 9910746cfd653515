package mitt

import (
	"thenar/internal/division"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// Plan is every number of a mitt. Counts are in stitches; a field in mm says so.
type Plan struct {
	Kind    Kind
	Make    Make // as asked for, or as it is knitted
	Gauge   gauge.Gauge
	Hand    hand.Hand // filled
	Stitch  Stitches
	Ease    Eases
	Cuff    Cuff
	Body    Body
	Gusset  Gusset
	Bridge  Bridge
	Thumb   Thumb
	Top     *Top     // nil if it ends without one
	Fingers *Fingers // of a glove; nil for others
	Pins    Pins     // the numbers that the person fixed

	Progress  *Progress    // what is knitted already; nil: nothing
	BaseAbove units.Length // how far the gusset's base sits above its place on the hand

	Residual     Residuals
	Off          Offs
	MoundStretch float64       // by how much a hand without a gusset stretches over the thumb's base; else 0
	Filled       []hand.Filled // measurements that the person did not take
	Defaults     []Default     // decisions that the person left open
	Warnings     []Warning
	Unused       []string `json:"-"` // choices of how it is made that have no use here, by what they are called
}

// Eases are the eases that the plan used.
type Eases struct {
	Hand, Cuff   float64 // fabric over body minus one
	Gusset, Palm float64 // the same half-way up the gusset, and where the thumb parts
	Cap          float64 // the same in a cap over half fingers
	ThumbAdded   float64 // mm
}

// Count is a whole number chosen near an exact target, with the next allowed
// number on each side.
type Count struct {
	N       int
	Exact   float64
	Below   int // the next allowed number under N
	Above   int // the next allowed number over N
	Pinned  bool
	Knitted bool // it is on the needles already
}

// Cuff is the part from the cast-on to the gusset.
type Cuff struct {
	CastOn      Count
	Wrist       Count  // where it ends; the cast-on, but for a gauntlet
	Flare       *Flare // of a gauntlet; nil for others
	Rounds      int    // of ribbing, or of another cuff
	PlainRounds int
	Facing      int     // those of Rounds that a hem folds inside
	PerMM       float64 // of Rounds, over a mm that they reach up
	Rib         int     // the multiple of the rib: the sheet's, or 2 where that doesn't fit
	Change      int     // stitches made (negative: decreased) to reach the hand's count
	JoinsAbove  bool    // no plain round of its own: the hand's first round makes the change
	Passage     float64 // the girth that lets the hand through, divided by the cuff's girth
}

// Body is the hand: its count before the gusset, and what lies above.
type Body struct {
	Stitches       Count // N
	RoundsAbove    int   // from the division to the last round, edging included, top not
	EdgingRounds   int   // those of them that are edging
	EdgingStitches int   // the edging's count, a multiple of its rib
	EdgingRib      int   // the sheet's, or 2 where that would draw in too much
}

// Gusset is the thumb's mound. Without a gusset it has only its rounds, which the
// hand then has beside the base of the thumb, and the place of the thumb.
type Gusset struct {
	Base           int   // b
	Step           int   // s, stitches made in an increase round
	Increases      int   // K
	Kept           int   // o, gusset stitches that stay on the hand
	Inset          int   // in the palm: the palm's stitches between the side line and the gusset, or the thumb
	Stitches       int   // G = b + sK
	Rounds         Count // R
	IncreaseRounds []int
	Cost           float64 // of the schedule, in stitches², the price of its rhythm included
	Way            Way     // the schedule, measured against the hand
	Ways           []Way   // all schedules that could be chosen
}

// Count returns the gusset's count after round r (1 … R), base included.
func (g *Gusset) Count(r int) int {
	n := g.Base
	for _, at := range g.IncreaseRounds {
		if at > r {
			break
		}
		n += g.Step
	}
	return n
}

// Bridge is what is cast on over the gap.
type Bridge struct {
	CastOn    int // c
	HandAfter int // N − b + o + c
}

// Thumb is the part worked on the held stitches.
type Thumb struct {
	Held    int // m
	OnWaste int // those of them over which the hand goes on: w of a straight thumb, else 0
	Tube
}

// Tube is what covers a thumb or a finger.
type Tube struct {
	PickedUp       int   // p; of a thumb c if it is worked first
	FirstRound     int   // t0 = m + p, those with which a thumb that is worked first ends; n of a finger
	Decreased      int   // d; negative: made
	DecreaseRounds []int // two decreases each, one at each corner; an odd last one at the second
	Stitches       Count // t, after the decreases
	Rounds         int   // from the first full round to the last
	Closing        int   // those of them that open the tip of a closed thumb that is worked first, or close a finger
	Closed         bool  // halved towards its tip and drawn up; else open, with an edging
	EdgingRounds   int   // those of Rounds that are edging
	EdgingStitches int   // the edging's count, a multiple of its rib
	EdgingRib      int   // the sheet's, or 2 where that would draw in too much
}

// Top closes a mitten.
type Top struct {
	Stitches       int // the count before its first round
	Odd            int // stitches that the round before takes off
	Step           int // stitches that a decrease round takes off; 0: it halves them
	Rounds         int
	DecreaseRounds []int
	End            int // stitches left to draw up or graft
	Cost           float64
}

// Residuals are fabric minus wish in mm.
type Residuals struct {
	Hand, Thumb, GussetLength, Crotch float64
	Fingers                           [division.Fingers]float64 // of a glove
}

// Warning is something that the person should look at; the plan can be knitted
// all the same.
type Warning struct {
	Code    string
	Message string
}
