package mitt

import (
	"slices"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// Number names one number of the plan. All that is known of it stands in the
// table of numbers: a new number is a constant here and a row there.
type Number uint8

// The numbers, in the order in which the search keeps to them: those that are
// knitted first come first.
const (
	Rib Number = iota
	CastOn
	CuffRounds
	CuffPlainRounds
	HandStitches
	GussetBase
	Increases
	FirstIncrease
	GussetRounds
	Rhythm
	IncreaseRounds
	KeptOnHand
	Held
	BridgeStitches
	RoundsAboveGusset
	EdgingRounds
	EdgingStitches
	TopRounds
	DecreaseRounds
	PickedUp
	ThumbDecreases
	ThumbStitches
	ThumbRounds
	ThumbEdgingRounds
	ThumbEdgingStitches
	ThumbDecreaseRounds
	CuffRib
	EdgingRib
	ThumbEdgingRib
	RibKnits
	CuffFacing
	CuffEdge
	CuffStep
	CuffDecreases
	TopBand
	TopWedges
	PalmInset
	firstOfFingers // see OfFinger
)

// Measure is what a number counts.
type Measure uint8

// What numbers count.
const (
	InStitches Measure = iota
	InRounds
	InTimes  // how often something is done
	AtRounds // the round or rounds in which something is done
	Between  // rounds from one increase round to the next
)

// presence says which kinds of mitt have a number.
type presence uint8

const (
	always presence = iota
	whereParted
	withGusset
	withThumb
	withTop
	withFingers
	withCap
	withAnyTop // of a mitten, or of a cap
)

// company says with which other fixed numbers a number is tried when they
// contradict each other.
type company uint8

const (
	byItself    company = iota // with none: a check of its own compares it with its neighbours
	beside                     // with all others of the gusset and the thumb
	besideInTop                // the same, but only in a kind with a top
)

// ranks are a number's places, from 1, in the lists that have another order than
// the table. Numbers with equal places keep the table's order; 0 leaves the
// number out of the list.
type ranks struct{ ladder, class, sheet int }

// info is what the table knows of a number. A number that can be fixed has pin,
// or pinned if it is a list; one that is recorded of what is knitted has worked,
// or listed if it is a list.
type info struct {
	key    string // its name in a sheet, under pins or worked
	path   string // "pins." and the key
	label  string // its name on every page; empty: it can't be fixed
	said   string // its name in reasons, before the value
	rung   string // its name on the ladder, before the bare number
	help   string // what may be written; empty: a whole number
	reason string // the name of its reason; for a count also its place in the plan's JSON

	measure   Measure
	low, high int
	at        ranks
	part      stitch.Part // the section with which pages show it
	rounds    stitch.Part // the section whose rounds it counts; a gusset’s number also counts those in its place
	needs     presence
	company   company
	everyHand bool // the same value makes sense for hands of any size (common practice, no source)
	student   bool // one student of a class may have another value

	girth func(*Plan) Place // if it says how many stitches go round its section: the place whose width that is

	with Number // the number in whose slip it stands while it is not fixed; Rib: none, it has a rung of its own

	pin    func(*Pins) *Pin
	pinned func(*Pins) *[]int
	count  func(*Plan) int
	list   func(*Plan) []int
	worked func(*Progress) *int
	listed func(*Progress) *[]int
}

// row is a number with what the table knows of it.
type row struct {
	Number
	info
}

// tableOf makes the table from sets of rows, one for each part of a mitt.
func tableOf(sets ...[]row) (table [numberCount]info) {
	for _, set := range sets {
		for _, r := range set {
			r.info.path = PathPins + "." + r.info.key
			table[r.Number] = r.info
		}
	}
	return table
}

var table = tableOf(cuffNumbers, gussetNumbers, divisionNumbers, topNumbers, thumbNumbers, fingersNumbers(), capNumbers)

func (r *info) fixable() bool { return r.pin != nil || r.pinned != nil }

// Key returns the stable name of n in files.
func (n Number) Key() string { return table[n].key }

// Path returns the field of a sheet that fixes n: "pins.cast_on".
func (n Number) Path() string { return table[n].path }

// Label returns what pages call n.
func (n Number) Label() string { return table[n].label }

// Said returns what reasons call n, before its value.
func (n Number) Said() string { return table[n].said }

// Rung returns the short name of n on the ladder, before the bare number.
func (n Number) Rung() string { return table[n].rung }

// With returns the number in whose slip n stands while it is not fixed; ok is false if n always
// has a place of its own.
func (n Number) With() (of Number, ok bool) { return table[n].with, table[n].with != Rib }

// Help returns what may be written for n; it is empty for a single whole number.
func (n Number) Help() string { return table[n].help }

// Reason returns the stable name of the sentence that says where n comes from.
// For a count it is also the count's place in the plan's JSON: "cuff.cast_on".
func (n Number) Reason() string { return table[n].reason }

// Words returns the key of n as it stands within a sentence: "cast on".
func (n Number) Words() string {
	if n >= firstOfFingers {
		return table[n].said
	}
	return strings.ReplaceAll(table[n].key, "_", " ")
}

// Measure returns what n counts.
func (n Number) Measure() Measure { return table[n].measure }

// Range returns the least and greatest value of n, or of each number of a list,
// whatever else is fixed.
func (n Number) Range() (low, high int) { return table[n].low, table[n].high }

// Part returns the section with which pages show n.
func (n Number) Part() stitch.Part { return table[n].part }

// CountRound returns the number that says how many stitches go round a section which has a
// count of its own; ok is false if none does, as of what goes round the hand.
func CountRound(part stitch.Part) (n Number, ok bool) {
	at := slices.IndexFunc(table[:], func(r info) bool { return r.girth != nil && r.part == part })
	return Number(max(at, 0)), at >= 0
}

// OffRound returns how far the plan is off the wish where a number of CountRound says how
// many stitches go round, in mm.
func (p *Plan) OffRound(n Number) float64 { return p.Off[table[n].girth(p)] }

// List reports whether n is a list of numbers.
func (n Number) List() bool { return table[n].pinned != nil || table[n].listed != nil }

// EveryHand reports whether the same value of n makes sense for hands of any
// size.
func (n Number) EveryHand() bool { return table[n].everyHand }

// String returns the key, so that failed tests can be read.
func (n Number) String() string {
	if n >= numberCount {
		return "Number(" + strconv.Itoa(int(n)) + ")"
	}
	return table[n].key
}

// without reports whether the plan lacks n because of how it is made round the thumb.
func (p *Plan) without(n Number) bool { return !p.has(n) && table[n].needs != withTop }

// Count returns the plan's value of n, or 0 if n is a list or the plan does not
// have it.
func (p *Plan) Count(n Number) int {
	if count := table[n].count; count != nil && p.has(n) {
		return count(p)
	}
	return 0
}

// Number returns the plan's value of n as a person would write it to fix it, or
// "" if n can't be fixed or the plan does not have it. The rhythm is one
// interval if all are alike, else all in turn.
func (p *Plan) Number(n Number) string {
	switch r := &table[n]; {
	case !r.fixable() || !p.has(n):
		return ""
	case r.list != nil:
		return commas(r.list(p))
	default:
		return strconv.Itoa(r.count(p))
	}
}
