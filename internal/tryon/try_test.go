package tryon

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/units"
)

func TestReadNamesTheFieldsAtFault(t *testing.T) {
	_, p := adult(t)
	try := Try{
		Date: "yesterday", Side: "right", Section: "gusset", Round: "40", Rounds: "x", Height: "5",
		Base: "far", Top: "200", Feel: map[Zone]string{Hand: "9", Thumb: "1"},
	}
	_, err := try.Read(Places(p.Mitt()), 0, units.CM)
	var faults fault.Fields
	require.ErrorAs(t, err, &faults)
	for _, path := range []string{"date", "round", "rounds", "stitches", "base", "top", "feel.hand"} {
		assert.True(t, faults.Has(path), path)
	}
	assert.Contains(t, faults.Error(), "write the last round that is knitted, 1 to 19, or count the stitches")
	_, err = Try{
		Date: "2026-03-01", Side: "right", Section: "cuff", Round: "3", Stitches: "12", Width: "0.1", Feel: map[Zone]string{Thumb: "1"},
	}.Read(Places(p.Mitt()), 0, units.CM)
	require.ErrorContains(t, err, "stitches: makes 1200 stitches over 10 cm")
	seen, err := Try{Date: "2026-03-01", Side: "right", Section: "cuff", Round: "3", Feel: map[Zone]string{Thumb: "1"}}.Read(Places(p.Mitt()), 0, units.CM)
	require.NoError(t, err, "a kept try stays valid")
	require.ErrorContains(t, seen.CheckZones(Places(p.Mitt())), "feel.thumb: is not knitted yet, with the work in the cuff")
	_, err = Try{Date: "2026-03-01", Side: "right", Section: "gusset", Round: "9", Count: "48"}.Read(Places(p.Mitt()), 0, units.CM)
	require.ErrorContains(t, err, "count: is \"48\", but round 9 of the gusset leaves 50;")
	empty, err := Try{Date: "2026-03-01", Side: "right", Section: "gusset", Count: "50"}.Read(Places(p.Mitt()), 0, units.CM)
	require.NoError(t, err)
	assert.True(t, empty.IsEmpty())
	_, err = Try{Date: "2026-03-01", Side: "right", Section: "gusset", Count: "7"}.Read(Places(p.Mitt()), 0, units.CM)
	require.ErrorContains(t, err, "count: is \"7\"; no round of the gusset leaves that many: it has 46 to 56")
}
