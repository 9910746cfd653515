package written

// Does is what an item of a round tells to do.
type Does uint8

const (
	Stitch   Does = iota // a stitch, so many times
	Together             // what is in brackets, so many times
	Hold                 // stitches put aside
	CastOn               // new loops
	PickUp               // stitches picked up
	Waste                // knitted with waste yarn and again
	Place                // a marker is placed
	Pass                 // a marker is passed
	Remove               // a marker is taken off
	BindOff              // so many stitches are bound off
	TakeIn               // held stitches are knitted in
	Leave                // held stitches stay where they are
	Turn                 // the work is turned
	Unread               // what was not understood
)

// Reach is where something that is worked over and over ends.
type Reach uint8

const (
	NoReach  Reach = iota
	ToEnd          // the round's end
	ToMarker       // the next marker
	ToNeedle       // the end of the needle, where each takes a share of the round
	ToTheGap       // where the work was turned before
)

// Fabric is what stitches are worked in that are not told one by one.
type Fabric uint8

const (
	AsItLies  Fabric = iota // knit over knit, purl over purl
	Ribbed                  // in a ribbing that was told before
	Smooth                  // in stockinette
	Garter                  // in garter stitch
	Plainly                 // knitted as they face
	Purled                  // purled as they face
	Patterned               // in the pattern that was begun
	Untold                  // in a pattern whose stitches are not told here
)

// Item is one thing that a round tells to do.
type Item struct {
	Does    Does
	Reach   Reach
	Either  bool   // Times counts the first, or it does not: the text can be read either way
	Even    bool   // stitches are worked as they come, or in pattern
	As      Fabric // of Even: what they are in
	Some    bool   // it is only for some sizes
	For     []int  // these
	Name    string // of the stitch, as it is written for short; what a set of held stitches is for
	In, Out int    // what one such stitch takes and leaves
	Times   Number // how often; not written: once, or to where Reach says
	Before  Number // so many stitches before where Reach says
	Items   []Item // of Together
	Charted bool   // what they are is told elsewhere
	Word    string // the first of what was not understood
	At, To  Spot   // where it stands
}

// endless reports whether an item is worked to somewhere.
func (i Item) endless() bool { return i.Reach != NoReach }
