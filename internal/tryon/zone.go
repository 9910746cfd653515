package tryon

import (
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Zone is a part of the mitt that feels tight or loose by itself.
type Zone string

// The zones, from the cast-on up.
const (
	Cuff    Zone = "cuff"
	Gusset  Zone = "gusset"
	Parting Zone = "parting" // where the thumb parts
	Hand    Zone = "hand"
	Thumb   Zone = "thumb"

	// Those that only a glove has: its fingers, the hand from the little finger to where
	// the others part, and a cap.
	Little    Zone = "little"
	UpperHand Zone = "upper_hand"
	Ring      Zone = "ring"
	Middle    Zone = "middle"
	Index     Zone = "index"
	Cap       Zone = "cap" // over half fingers
)

// zones is the table of zones: the part in which each can be felt first, and
// whether that part has to be whole.
var zones = []struct {
	zone  Zone
	from  stitch.Part
	whole bool
}{
	{Cuff, stitch.Cuff, false},
	{Gusset, stitch.BelowThumb, false}, // or what lies in its place, see KnittedZones
	{Parting, stitch.BelowThumb, true},
	{Hand, stitch.Hand, false},
	{Little, stitch.Little, false},
	{UpperHand, stitch.UpperHand, false},
	{Ring, stitch.Ring, false},
	{Middle, stitch.Middle, false},
	{Index, stitch.Index, false},
	{Thumb, stitch.Thumb, false},
	{Cap, stitch.Cap, false},
}

// Zones returns all zones, from the cast-on up.
func Zones() []Zone {
	list := make([]Zone, len(zones))
	for i, z := range zones {
		list[i] = z.zone
	}
	return list
}

// KnittedZones returns the zones that can be felt while the work is in part p.
// Once all rounds of the part are knitted (whole), what needs that is among
// them; where a mitt is worked down from the fingertips, it is there at once. A part
// that is not known is taken for the hand.
func KnittedZones(p stitch.Part, whole, down bool) []Zone {
	if p.Over() == stitch.OverMound {
		p = stitch.BelowThumb
	}
	order := stitch.Order(p, down)
	if order == 0 {
		order = stitch.Order(stitch.Hand, down)
	}
	var list []Zone
	for _, z := range zones {
		if from := stitch.Order(z.from, down); from < order || from == order && (whole || down || !z.whole) {
			list = append(list, z.zone)
		}
	}
	return list
}

// Words returns the zone's name as it is shown to people.
func (z Zone) Words() string {
	switch z {
	case Gusset:
		return "palm at the gusset"
	case Parting:
		return "palm at the thumb"
	}
	if z.Fingered() {
		return stitch.Part(z).Words()
	}
	return string(z)
}

// Fingered reports whether only a glove has the zone.
func (z Zone) Fingered() bool {
	return z == UpperHand || z == Cap || z.finger()
}

// finger reports whether the zone is one of the four fingers. The zone is named like the
// part that covers it.
func (z Zone) finger() bool {
	_, ok := mitt.FingerOf(stitch.Part(z))
	return ok
}

// measured are the zones of a glove whose ends are looked at.
var measured = []Zone{Hand, Little, UpperHand, Ring, Middle, Index, Thumb, Cap}

// Measured returns the zones of a glove whose lengths can be looked at, from the cast-on
// up.
func Measured() []Zone { return slices.Clone(measured) }

// endField is the field of a form that holds how much too long a zone is.
func (z Zone) endField() string { return "end." + string(z) }

// EndField returns the names of the fields of a form that hold how much too long or too
// short the zone is, and which of the two.
func (z Zone) EndField() (length, way string) { return z.endField(), z.endField() + "_way" }
