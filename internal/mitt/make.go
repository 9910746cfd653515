package mitt

import (
	"thenar/internal/division"
	"thenar/internal/units"
)

// Construction is how a mitt is made round the thumb.
type Construction string

// The constructions. The empty one is that by a gusset.
const (
	ByGusset Construction = "gusset"
	Straight Construction = "straight" // on waste yarn, without a gusset
	Slit     Construction = "slit"     // an opening, without a thumb
	NoThumb  Construction = "none"
)

// ThumbPlace is where the thumb sits.
type ThumbPlace string

// The places. The empty one is the side.
const (
	AtSide ThumbPlace = "side"
	InPalm ThumbPlace = "palm"
)

// Increase is how a gusset grows.
type Increase string

// The increases. The empty one is a pair of make ones.
const (
	MakeOne  Increase = "m1"
	Lifted   Increase = "lifted"
	YoClosed Increase = "yo_closed" // yarn overs, knitted through the back loop in the next round
	FrontAnd Increase = "kfb"       // knit front and back
	InCentre Increase = "centre"    // make ones on both sides of the middle stitch
)

// Direction is the end from which a mitt is begun.
type Direction string

// The directions. The empty one is up.
const (
	Up   Direction = "up"   // from the cuff
	Down Direction = "down" // from the fingertips
)

// CuffKind is how a cuff is worked.
type CuffKind string

// The cuffs. The empty one is a rib.
const (
	RibCuff    CuffKind = "rib"
	HemCuff    CuffKind = "hem"
	GarterCuff CuffKind = "garter"
	RolledCuff CuffKind = "rolled"
	Gauntlet   CuffKind = "gauntlet"
)

// TopKind is how a top is closed.
type TopKind string

// The tops. The empty one is rounded.
const (
	RoundedTop  TopKind = "rounded"
	PointedTop  TopKind = "pointed"
	BandedTop   TopKind = "banded"
	WedgesTop   TopKind = "wedges"
	GatheredTop TopKind = "gathered"
)

// Make is how a mitt is made. The zero value is the usual way: a gusset at the
// side, grown by make ones, in the round from a ribbed cuff to a rounded top.
type Make struct {
	Construction Construction
	Place        ThumbPlace
	Inset        Pin // stitches of the palm between the side line and the thumb
	Increase     Increase
	Direction    Direction
	Flat         bool // to and fro, with a seam
	Cuff         CuffKind
	UpperGirth   units.Length // of a gauntlet; 0: by default
	CuffDepth    units.Length // of a gauntlet or a hem; 0: by default
	Top          TopKind
	Band         Pin                         // stitches between the two decreases of a side
	Wedges       Pin                         // how many
	Fingers      [division.Fingers]FingerEnd // of a glove, from the index on
	ThumbEnd     FingerEnd                   // of a glove
	Level        bool                        // all four fingers of a glove part at one height
	Cap          bool                        // a mitten's cap over the half fingers of a glove
}

// The paths in a sheet of how a mitt is made.
const (
	PathConstruction = "thumb.construction"
	PathPlace        = "thumb.place"
	PathInset        = "thumb.inset"
	PathIncrease     = "thumb.increase"
	PathDirection    = "piece.direction"
	PathFlat         = "piece.flat"
	PathCuff         = "cuff.kind"
	PathKnits        = "cuff.knits"
	PathPurls        = "cuff.purls"
	PathUpperGirth   = "cuff.upper_girth"
	PathCuffDepth    = "cuff.depth"
	PathTop          = "top.kind"
	PathBand         = "top.band"
	PathWedges       = "top.wedges"
	PathThumbEnd     = "fingers.thumb"
	PathLower        = "fingers.little_lower"
	PathCap          = "fingers.cap"
)

// The bounds of the numbers of a Make.
const (
	MaxInset               = maxStitches / 2
	MaxRibStitches         = 20
	MaxBand                = 6
	FewestWedges, MaxWedge = 3, 8
)

// or returns the choice, or the usual one where none is made.
func or[T ~string](choice, usual T) T {
	if choice == "" {
		return usual
	}
	return choice
}
