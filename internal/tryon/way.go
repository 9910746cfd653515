package tryon

import (
	"strings"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Way is the side of its place on which an end of the gusset sits.
type Way string

// The ways. An end that sits too high is above its place, so its length is
// positive.
const (
	TooHigh Way = "high"
	TooLow  Way = "low"
)

// The ways of a length. What is too long has a positive length.
const (
	TooLong  Way = "long"
	TooShort Way = "short"
)

// Words returns the way as it is shown to people.
func (w Way) Words() string { return "too " + string(w) }

// signs may stand before a length that says its way by itself.
const signs = "-−+"

// Sided returns the try with signed lengths in place of the ways that were
// chosen for Base, Top and Ends. What does not go together stands in the faults, and
// stays as it was typed. If the form asks for a way, a length needs one; else a
// length without a sign is above, as in a form that knows only signs.
func (t Try) Sided(asks bool) (Try, fault.Fields) {
	var faults fault.Fields
	t.Base, t.BaseWay = heights.sided("base", t.Base, t.BaseWay, asks, &faults)
	t.Top, t.TopWay = heights.sided("top", t.Top, t.TopWay, asks, &faults)
	ends, ways := map[Zone]string{}, map[Zone]Way{}
	for _, zone := range measured {
		text, way := lengths.sided(zone.endField(), t.Ends[zone], t.EndsWays[zone], asks, &faults)
		if text != "" {
			ends[zone] = text
		}
		if way != "" {
			ways[zone] = way
		}
	}
	t.Ends, t.EndsWays = nil, nil
	if len(ends) > 0 {
		t.Ends = ends
	}
	if len(ways) > 0 {
		t.EndsWays = ways
	}
	return t, faults
}

// ways are the two sides on which something can be off. The length of the first is
// positive.
type ways struct{ more, less Way }

var (
	heights = ways{TooHigh, TooLow}
	lengths = ways{TooLong, TooShort}
)

func (w ways) sided(name, text string, way Way, asks bool, faults *fault.Fields) (string, Way) {
	signed := strings.IndexAny(text, signs) == 0
	length, err := sheet.ParseSigned(text, units.MM)
	switch {
	case way != "" && way != w.more && way != w.less:
		faults.Add(name, "is too %.20q; choose %s or %s", way, w.more.Words(), w.less.Words())
	case text == "" && way != "":
		faults.Add(name, "is %s, but by how much? Write the length, or 0 if it sits right", way.Words())
	case text == "" || err != nil: // read and refused with the rest
	case way != "" && signed:
		faults.Add(name, "is %.20q and %s; leave the sign out", text, way.Words())
	case way == "" && asks && !signed && length != 0:
		faults.Add(name, "is %.20q; choose %s or %s, too", text, w.more.Words(), w.less.Words())
	case way == w.less && length != 0:
		return "-" + text, ""
	case way != "":
		return text, ""
	}
	return text, way
}

// Unsided returns a signed length as a length and a way, to be shown.
func Unsided(text string, way Way) (string, Way) { return heights.unsided(text, way) }

// UnsidedEnd is Unsided for how much too long a zone is.
func UnsidedEnd(text string, way Way) (string, Way) { return lengths.unsided(text, way) }

func (w ways) unsided(text string, way Way) (string, Way) {
	rest := strings.TrimSpace(strings.TrimLeft(text, signs))
	length, err := sheet.ParseSigned(text, units.MM)
	switch {
	case way != "" || err != nil || length == 0:
		return text, way
	case length < 0:
		return rest, w.less
	}
	return rest, w.more
}
