// Package stitch holds the table of all knitting operations and parts, and the
// ledger that checks that every round of a mitt eats what the round below left.
package stitch

import "fmt"

// Op is one operation of the table. The zero value is no stitch.
type Op uint8

// The operations. The table below says what each eats and leaves.
const (
	NoStitch Op = iota // a gap in the chart; nothing is worked
	Knit               // knit
	Purl               // purl
	KnitTBL            // knit through the back loop
	PurlTBL            // purl through the back loop
	Slip               // slip purlwise, yarn behind
	M1L                // make one leaning left
	M1R                // make one leaning right
	M1                 // make one, either way
	YarnOver           // yarn over
	CastOn             // backward-loop cast on
	LLI                // left lifted increase
	RLI                // right lifted increase
	KFB                // knit front and back
	K2tog              // knit two together
	SSK                // slip, slip, knit
	P2tog              // purl two together
	SSP                // slip, slip, purl
	K3tog              // knit three together
	SK2P               // slip 1, k2tog, pass over
	S2KP               // slip 2 together, k1, pass over
	BindOff            // bind off
	DrawUp             // draw the yarn through and pull tight
	Graft              // graft to the stitch opposite
	JoinHem            // knit together with the stitch's loop of the cast-on
	Hold               // keep aside on waste yarn
	PickUp             // pick up and knit
	Take               // knit a stitch that was kept aside
	GapK2tog           // gap strand, twisted, k2tog with the first held stitch
	GapSSK             // ssk of the last held stitch with the gap strand, twisted
	Marker             // a marker between stitches
	Waste              // knit with waste yarn, then again with the working yarn
	CornerM1           // make one of the strand and half a loop at the thumb's corner
	opCount
)

// info is one line of the table of operations.
type info struct {
	code    string // stable name in files and in the page
	abbr    string // abbreviation in the words and in the key
	words   string // the full words
	in, out int    // loops that it eats and leaves
	twin    Op     // the operation that it becomes on the other hand
	paint   bool   // may be painted in the chart
}

// table follows the published abbreviations of the Craft Yarn Council's list
// (from memory). The gap operations are ours: the strand at a corner of the
// thumb's gap makes a loop (0→1), which is at once worked together with the
// stitch beside it (2→1), so that in all one loop stays one (1→1). A stitch knitted
// with waste yarn, too: its loop of the round below waits on the waste yarn while the
// round goes on over it.
var table = [opCount]info{
	NoStitch: {"none", "", "no stitch", 0, 0, NoStitch, false},
	Knit:     {"k", "k", "knit", 1, 1, Knit, true},
	Purl:     {"p", "p", "purl", 1, 1, Purl, true},
	KnitTBL:  {"ktbl", "k tbl", "knit through the back loop", 1, 1, KnitTBL, true},
	PurlTBL:  {"ptbl", "p tbl", "purl through the back loop", 1, 1, PurlTBL, false},
	Slip:     {"sl", "sl", "slip purlwise with the yarn behind", 1, 1, Slip, true},
	M1L:      {"m1l", "M1L", "make one leaning left", 0, 1, M1R, true},
	M1R:      {"m1r", "M1R", "make one leaning right", 0, 1, M1L, true},
	M1:       {"m1", "M1", "make one", 0, 1, M1, true},
	YarnOver: {"yo", "yo", "yarn over", 0, 1, YarnOver, true},
	CastOn:   {"co", "CO", "cast on with a backward loop", 0, 1, CastOn, false},
	LLI:      {"lli", "LLI", "left lifted increase", 0, 1, RLI, true},
	RLI:      {"rli", "RLI", "right lifted increase", 0, 1, LLI, true},
	KFB:      {"kfb", "kfb", "knit into the front and the back", 1, 2, KFB, true},
	K2tog:    {"k2tog", "k2tog", "knit two together", 2, 1, SSK, true},
	SSK:      {"ssk", "ssk", "slip, slip, knit the two together through the back loops", 2, 1, K2tog, true},
	P2tog:    {"p2tog", "p2tog", "purl two together", 2, 1, SSP, true},
	SSP:      {"ssp", "ssp", "slip, slip, purl the two together through the back loops", 2, 1, P2tog, true},
	K3tog:    {"k3tog", "k3tog", "knit three together", 3, 1, SK2P, true},
	SK2P:     {"sk2p", "sk2p", "slip one, knit two together, pass the slipped stitch over", 3, 1, K3tog, true},
	S2KP:     {"s2kp", "s2kp", "slip two together knitwise, knit one, pass the slipped stitches over", 3, 1, S2KP, true},
	BindOff:  {"bo", "BO", "bind off", 1, 0, BindOff, false},
	DrawUp:   {"draw", "draw up", "draw the yarn through and pull tight", 1, 0, DrawUp, false},
	Graft:    {"graft", "graft", "graft to the stitch opposite", 1, 0, Graft, false},
	JoinHem:  {"joinhem", "k with its cast-on loop", "knit the stitch together with its loop of the cast-on", 1, 1, JoinHem, false},
	Hold:     {"hold", "hold", "keep aside on waste yarn", 1, 0, Hold, false},
	PickUp:   {"pick", "pick up", "pick up and knit", 0, 1, PickUp, false},
	Take:     {"take", "knit in", "knit a stitch that waits on waste yarn", 0, 1, Take, false},
	GapK2tog: {"gapk2tog", "k2tog with the gap strand", "twist the strand at the corner and knit it together with the stitch after it", 1, 1, GapSSK, false},
	GapSSK:   {"gapssk", "ssk with the gap strand", "slip, slip, knit the stitch together with the twisted strand at the corner", 1, 1, GapK2tog, false},
	Marker:   {"marker", "m", "marker", 0, 0, Marker, false},
	Waste:    {"waste", "k with waste yarn", "knit with waste yarn, slip back and knit again with the working yarn", 1, 1, Waste, false},
	CornerM1: {"cornerm1", "M1 at the corner", "twist the strand at the corner and knit it", 0, 1, CornerM1, false},
}

// loops holds how many loops each operation eats and leaves, as table says, in a few
// bytes: every round is counted many times.
var loops = func() (l struct{ in, out [opCount]uint8 }) {
	for o := range table {
		l.in[o], l.out[o] = uint8(table[o].in), uint8(table[o].out)
	}
	return l
}()

// All lists every operation in the order of the table.
func All() []Op {
	all := make([]Op, opCount)
	for i := range all {
		all[i] = Op(i)
	}
	return all
}

// Valid reports whether o is in the table.
func (o Op) Valid() bool { return o < opCount }

// In returns the number of loops of the round below that o eats: 0 to 3.
func (o Op) In() int { return int(loops.in[o]) }

// Out returns the number of loops that o leaves for the round above: 0 to 2.
func (o Op) Out() int { return int(loops.out[o]) }

// Twin returns the operation that o becomes on the other hand.
func (o Op) Twin() Op { return table[o].twin }

// FromLeft returns the operation that a person who knits from left to right
// reads for o. Such a person works every motion as in a mirror. A make one or a
// lifted increase is named after the way it leans in the fabric, so left and
// right change places; a decrease is named after how it is worked and keeps its
// name.
func (o Op) FromLeft() Op {
	switch o {
	case M1L, M1R, LLI, RLI:
		return o.Twin()
	}
	return o
}

// Keeps reports whether o puts a loop aside, under the name of a set.
func (o Op) Keeps() bool { return o == Hold || o == Waste }

func (o Op) comesBack() bool { return o == Take }

// Purled reports whether an operation leaves its stitch with the purl side out.
func (o Op) Purled() bool { return o == Purl || o == PurlTBL || o == P2tog || o == SSP }

// Paintable reports whether o may be painted in the chart.
func (o Op) Paintable() bool { return table[o].paint }

// Abbr returns the abbreviation of o in instructions and in the key.
func (o Op) Abbr() string { return table[o].abbr }

// Words returns what o means in full.
func (o Op) Words() string { return table[o].words }

// Code returns the stable name of o in files and pages.
func (o Op) Code() string { return table[o].code }

// String returns the code, so that failed tests can be read.
func (o Op) String() string {
	if !o.Valid() {
		return fmt.Sprintf("Op(%d)", uint8(o))
	}
	return table[o].code
}

// ByCode returns the operation with a stable name.
func ByCode(code string) (Op, bool) {
	for o := range table {
		if table[o].code == code {
			return Op(o), true
		}
	}
	return NoStitch, false
}
