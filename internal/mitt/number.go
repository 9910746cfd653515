package mitt

import (
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// Number is one number of the plan. What is known of each stands in the table
// of numbers; a new one is a constant and a row there.
type Number uint8

// The numbers, in the order in which the search keeps to them: what is knitted
// first comes first.
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
	numberCount
)

// Measure is what a number counts.
type Measure uint8

// What numbers count.
const (
	InStitches Measure = iota
	InRounds
	InTimes  // how often something is done
	AtRounds // the round, or the rounds, in which something is done
	Between  // rounds from one to the next
)

// presence says which mitts have a number.
type presence uint8

const (
	always presence = iota
	withThumb
	withTop
)

// company says beside which other numbers a fixed one is tried when they
// contradict each other.
type company uint8

const (
	byItself    company = iota // held against its neighbours by a check of its own
	beside                     // with all others of the gusset and the thumb
	besideInTop                // the same, in a mitten, where thumb and top end together
)

// ranks are where a number stands in lists that people know in another order
// than the table's, from 1 on; of equal places the table's order holds, and 0
// is not in the list.
type ranks struct{ ladder, class, sheet int }

// info is a row of the table. A number has pin or pinned if it can be fixed,
// and worked or listed if it is kept of what is knitted.
type info struct {
	key    string // in a sheet, under pins or worked
	path   string // the same under pins, made of it
	label  string // on every page; empty: it can't be fixed
	said   string // in reasons, with the value behind it
	help   string // what may be written; empty: a whole number
	reason string // the name of its reason; its place in the plan's JSON where it is there

	measure   Measure
	low, high int
	at        ranks
	part      stitch.Part // with which it is told
	rounds    stitch.Part // the section whose rounds it counts
	needs     presence
	company   company
	everyHand bool // fixed for one mitt, it makes sense for hands of any size (common practice, no source)
	student   bool // one student of a class may have it otherwise

	pin    func(*Pins) *Pin
	pinned func(*Pins) *[]int
	count  func(*Plan) int
	list   func(*Plan) []int
	worked func(*Progress) *int
	listed func(*Progress) *[]int
}

// row is an info with the number that it is about.
type row struct {
	Number
	info
}

// tableOf puts sets of rows, one for each part of a mitt, in order.
func tableOf(sets ...[]row) (table [numberCount]info) {
	for _, set := range sets {
		for _, r := range set {
			r.info.path = PathPins + "." + r.info.key
			table[r.Number] = r.info
		}
	}
	return table
}

var table = tableOf(cuffNumbers, gussetNumbers, divisionNumbers, topNumbers, thumbNumbers)

func (r *info) fixable() bool { return r.pin != nil || r.pinned != nil }

// Key is the stable name of n in files.
func (n Number) Key() string { return table[n].key }

// Path is where a sheet holds n when it is fixed: "pins.cast_on".
func (n Number) Path() string { return table[n].path }

// Label is what pages call n.
func (n Number) Label() string { return table[n].label }

// Said is what reasons call n, before its value.
func (n Number) Said() string { return table[n].said }

// Help says what may be written for n, where that is not a whole number alone.
func (n Number) Help() string { return table[n].help }

// Reason is the stable name of the sentence that says where n comes from. For
// a count it is also its place in the plan's JSON: "cuff.cast_on".
func (n Number) Reason() string { return table[n].reason }

// Words is the key of n as it stands within a sentence: "cast on".
func (n Number) Words() string { return strings.ReplaceAll(table[n].key, "_", " ") }

// Measure is what n counts.
func (n Number) Measure() Measure { return table[n].measure }

// Range is what n may be by itself; of a list, each of its numbers.
func (n Number) Range() (low, high int) { return table[n].low, table[n].high }

// Part is the section with which n is told.
func (n Number) Part() stitch.Part { return table[n].part }

// List reports whether n is several numbers.
func (n Number) List() bool { return table[n].pinned != nil || table[n].listed != nil }

// EveryHand reports whether n makes sense for hands of any size.
func (n Number) EveryHand() bool { return table[n].everyHand }

// String is the key, so that failed tests can be read.
func (n Number) String() string {
	if n >= numberCount {
		return "Number(" + strconv.Itoa(int(n)) + ")"
	}
	return table[n].key
}

// had reports whether a plan has n.
func (p *Plan) had(n Number) bool {
	switch table[n].needs {
	case withThumb:
		return p.Gusset.Rounds.N > 0
	case withTop:
		return p.Top != nil
	}
	return true
}

// Count is a number of the plan; 0 for a list, and where the plan does not have
// it.
func (p *Plan) Count(n Number) int {
	if count := table[n].count; count != nil && p.had(n) {
		return count(p)
	}
	return 0
}

// Number writes a number of the plan as it would be fixed; empty where the plan
// does not have it. The rhythm is one interval, or all in turn.
func (p *Plan) Number(n Number) string {
	switch r := &table[n]; {
	case !r.fixable() || !p.had(n):
		return ""
	case r.list != nil:
		return commas(r.list(p))
	default:
		return strconv.Itoa(r.count(p))
	}
}
