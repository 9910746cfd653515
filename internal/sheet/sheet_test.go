package sheet

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

const full = `{
  "format": "thenar/sheet@1", "kind": "fingerless", "unit": "cm",
  "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10, "worked": "round", "washed": true, "counted_to": 0.5, "needle": "3 mm", "date": "2025-03-09"}], "hand_variation": 0.01},
  "hand": {"size": 7.5, "hand_breadth": 8, "reference": "women", "profile_above": [{"height": 2, "girth": 18.8}], "hand_circumference": 19.0, "wrist_circumference": "15,7", "thumb_circumference": 6.5,
    "hand_length": 18.0, "gusset_length": 5.9, "thumb_length": 6.4, "wrist_to_crotch": 6.3,
    "fingers": {"index": {"girth": 6.2, "length": 7}, "middle": {"girth": "6,3", "length": 7.8}, "ring": {"girth": 5.8, "length": "7 1/2"}, "little": {"girth": 5.1, "length": 5.8}},
    "crotches": {"index_middle": 10.1, "middle_ring": "10,2", "ring_little": 8.8}},
  "ease": {"hand": -0.05, "cuff": 0, "thumb_girth_added": 1.2},
  "length": {"cuff": 3, "cuff_plain": 3, "above_gusset": 3.8, "edging": 1, "thumb": 3.5, "thumb_edging": 1},
  "stitch": {"repeat": 2, "offset": 0, "rib": 2, "both_edges": true},
  "schedule": {"follows": "rhythm", "lambda": 0},
  "pins": {"gusset_base": 3, "first_increase": 2, "rhythm": [2, 3], "increase_rounds": [2, 4, 7]},
  "fit": {"tolerance": 0.6, "loose_below": -0.25, "snug_from": 0.02, "tight_above": 0.1},
  "yarn": {"length_unit": "yd", "ball_length": 200, "ball_mass": 50, "swatch_stitches": 30, "swatch_rounds": 40, "swatch_mass": 4.5, "swatch_length": 18, "swatch_kept": true}
}`

func TestReadsEveryKey(t *testing.T) {
	s, err := Parse([]byte(full))
	require.NoError(t, err)
	r, err := s.Request()
	require.NoError(t, err)
	assert.Equal(t, mitt.Fingerless, r.Kind)
	assert.InDelta(t, 0.24, r.Gauge.Stitches, 1e-12)
	assert.InDelta(t, 0.32, r.Gauge.Rounds, 1e-12)
	assert.True(t, r.Gauge.Treated)
	assert.Equal(t, 190*units.Millimetre, r.Hand.Circumference)
	assert.Equal(t, 157*units.Millimetre, r.Hand.Wrist)
	assert.Equal(t, 63*units.Millimetre, r.Hand.WristToCrotch)
	assert.Equal(t, hand.Fingers{
		Girth:  [4]units.Length{62_000, 63_000, 58_000, 51_000},
		Length: [4]units.Length{70_000, 78_000, 75_000, 58_000},
		Crotch: [3]units.Length{101_000, 102_000, 88_000},
	}, r.Hand.Fingers)
	assert.InDelta(t, -0.05, *r.Ease.Hand, 0)
	assert.Equal(t, 12*units.Millimetre, r.Ease.ThumbAdded)
	assert.Equal(t, 35*units.Millimetre, r.Lengths.Thumb)
	assert.Equal(t, mitt.Stitches{Repeat: 2, Rib: 2}, r.Stitch)
	assert.Equal(t, mitt.Fix(3), r.Pins.GussetBase)
	assert.Equal(t, []int{2, 3}, r.Pins.Rhythm)
	assert.Equal(t, mitt.Fix(2), r.Pins.FirstIncrease)
	assert.Equal(t, []int{2, 4, 7}, r.Pins.IncreaseRounds)
	assert.Equal(t, mitt.FollowRhythm, r.Follow)
	assert.Zero(t, *r.Lambda)
	assert.InDelta(t, 0.01, r.Gauge.StitchDoubt.Variation, 0)
	assert.InDelta(t, 7.5, r.Hand.Size, 0)
	assert.Equal(t, hand.Women, r.Hand.Reference)
	assert.Equal(t, []hand.Point{{Height: 20 * units.Millimetre, Girth: 188 * units.Millimetre}}, r.Hand.Above)

	more := s.Settings()
	assert.Equal(t, 6*units.Millimetre, more.Tolerance)
	assert.InDelta(t, -0.25, *more.Loose, 0)
	assert.InDelta(t, 0.1, *more.Tight, 0)
	assert.Equal(t, Yarn{
		BallLength: 182_880 * units.Millimetre, BallMass: 50, Stitches: 30, Rounds: 40, SwatchMass: 4.5,
		Unravelled: units.FromMM(16_459.2), Kept: true,
	}, more.Yarn, "a yard is 0.9144 m (International Yard and Pound Agreement, 1959)")
}

// A hand may start from a size, a breadth, or a length with whose averages to
// take; else its circumference must be measured.
func TestCircumferenceMayBeLeftOut(t *testing.T) {
	for name, c := range map[string]struct {
		hand Sheet
		ok   bool
	}{
		"size":               {Sheet{"hand.size": "8"}, true},
		"breadth":            {Sheet{"hand.hand_breadth": "8"}, true},
		"length of a woman":  {Sheet{"hand.hand_length": "18", "hand.reference": "women"}, true},
		"length of anybody":  {Sheet{"hand.hand_length": "18", "hand.reference": "both"}, true},
		"length":             {Sheet{"hand.hand_length": "18"}, false},
		"averages of nobody": {Sheet{"hand.reference": "men"}, false},
	} {
		c.hand["gauge.swatches[0].stitches"], c.hand["gauge.swatches[0].width"] = "24", "10"
		_, err := c.hand.Request()
		if c.ok {
			assert.NoError(t, err, name)
		} else {
			assert.ErrorContains(t, err, "hand.hand_circumference: is missing", name)
		}
	}
}

// Rows that were left empty go, whatever their choices say; a first swatch with
// nothing in it stays, so that its fields can be named as missing.
func TestCompact(t *testing.T) {
	s := Sheet{
		"gauge.swatches[0].washed": "true", "gauge.swatches[1].washed": "true", "gauge.swatches[1].counted_to": "0.5",
		"gauge.swatches[3].stitches": "24", "gauge.swatches[3].worked": "flat", "hand.profile[2].girth": "19", "hand.profile[2].height": " ",
	}
	s.Compact()
	assert.Equal(t, Sheet{
		"gauge.swatches[0].washed": "true", "gauge.swatches[1].stitches": "24", "gauge.swatches[1].worked": "flat",
		"hand.profile[0].girth": "19", "hand.profile[0].height": " ",
	}, s)
}

// What was typed comes back as it was typed, and reads the same again.
func TestJSONRoundTrip(t *testing.T) {
	s, err := Parse([]byte(full))
	require.NoError(t, err)
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	assert.Equal(t, s, again)
	assert.Equal(t, "15,7", again["hand.wrist_circumference"])
	assert.Contains(t, string(s.JSON()), `"hand_circumference": 19.0`)
}

func TestTypedPercentBecomesANumber(t *testing.T) {
	s := Sheet{"ease.hand": "−5 %", "hand.hand_circumference": "7½", "unit": "in", "gauge.swatches[0].stitches": "5 1/2", "gauge.swatches[0].width": "1"}
	r, err := s.Request()
	require.NoError(t, err)
	assert.InDelta(t, -0.05, *r.Ease.Hand, 1e-12)
	assert.Equal(t, units.Length(190_500), r.Hand.Circumference)
	again, err := Parse(s.JSON())
	require.NoError(t, err)
	assert.Equal(t, "-0.05", again["ease.hand"])
	assert.Equal(t, "5.5", again["gauge.swatches[0].stitches"])
}

// A byte-order mark, with which some editors begin a file, says nothing.
func TestByteOrderMark(t *testing.T) {
	const doc = `{"hand":{"hand_circumference":19}}`
	plain, err := Parse([]byte(doc))
	require.NoError(t, err)
	marked, err := Parse([]byte("\ufeff" + doc))
	require.NoError(t, err)
	assert.Equal(t, plain, marked)
}

// Each bad document is refused at the field, with what would be right.
func TestRefused(t *testing.T) {
	valid := func(part string) string {
		return `{"gauge":{"swatches":[{"stitches":24,"width":10}]},"hand":{"hand_circumference":19}` + part + `}`
	}
	for name, c := range map[string]struct{ doc, want string }{
		"empty":              {"", "sheet: is empty"},
		"finger":             {`{"hand": {"fingers": {"pinkie": {"girth": 5}}}}`, `hand.fingers.pinkie: is not known here; known keys are index, middle, ring, little`},
		"girth of a finger":  {`{"hand": {"fingers": {"ring": {"girt": 5}}}}`, `hand.fingers.ring.girt: is not known here; the nearest known key is "girth"`},
		"finger as a number": {`{"hand": {"fingers": {"ring": 5}}}`, "hand.fingers.ring: is 5; write an object in braces"},
		"wide finger":        {`{"hand": {"hand_circumference": 19, "fingers": {"ring": {"length": "long"}}}}`, "hand.fingers.ring.length: "},
		"crotch":             {`{"hand": {"hand_circumference": 19, "crotches": {"index_middle": 0}}}`, "hand.crotches.index_middle: is zero; write a length above 0"},
		"a long finger":      {valid(`,"fingers":{"index":"long"}`), `fingers.index: is "long"; write one of: full, half, open`},
		"a finger measured":  {valid(`,"fingers":{"index":{"girth":6}}`), `fingers.index: is {"girth":6}; write one of: full, half, open`},
		"a thumb of 3":       {valid(`,"fingers":{"thumb":3}`), `fingers.thumb: is 3; write one of: full, half, open`},
		"a lower finger":     {valid(`,"fingers":{"little_low":true}`), `fingers.little_low: is not known here; the nearest known key is "little_lower"`},
		"a cap in words":     {valid(`,"fingers":{"cap":"yes"}`), `fingers.cap: is "yes"; write true or false`},
		"palm of a finger":   {valid(`,"pins":{"fingers":{"ring":{"palm":0}}}`), "pins.fingers.ring.palm: is 0; write a whole number from 1 to 1000"},
		"stitches of one":    {valid(`,"pins":{"fingers":{"little":{"stitches":5}}}`), "pins.fingers.little.stitches: is 5; write a whole number from 6 to 1000"},
		"five decreases":     {valid(`,"pins":{"fingers":{"little":{"decreases":5}}}`), "pins.fingers.little.decreases: is 5; write a whole number from 0 to 4"},
		"pins of a finger":   {valid(`,"pins":{"fingers":{"ring":6}}`), "pins.fingers.ring: is 6; write an object in braces"},
		"strange pin":        {valid(`,"pins":{"fingers":{"ring":{"stiches":14}}}`), `pins.fingers.ring.stiches: is not known here; the nearest known key is "stitches"`},
		"finger's pin twice": {valid(`,"pins":{"fingers":{"ring":{"palm":6,"palm":7}}}`), "a key stands twice"},
		"a wide bridge":      {valid(`,"pins":{"bridges":{"index_middle":13}}`), "pins.bridges.index_middle: is 13; write a whole number from 1 to 12"},
		"no such bridge":     {valid(`,"pins":{"bridges":{"index_ring":3}}`), `pins.bridges.index_ring: is not known here; the nearest known key is "`},
		"lower by a half":    {valid(`,"pins":{"little_lower_rounds":4.5}`), "pins.little_lower_rounds: is 4.5; write a whole number from 0 to 1500"},
		"spaces":             {" \n", "sheet: is empty"},
		"not JSON":           {"cast on 38", "sheet: is not JSON"},
		"cut short":          {`{"gauge":`, "ends too early"},
		"list":               {"[]", "sheet: is []; write an object"},
		"nothing in it":      {"{}", "hand.hand_circumference: is missing"},
		"no gauge":           {`{"hand":{"hand_circumference":19}}`, "gauge.swatches: is empty"},
		"twice":              {valid(`,"unit":"cm","unit":"mm"`), "a key stands twice"},
		"after":              {valid("") + "{}", "goes on after the document"},
		"unknown":            {valid(`,"pin":{}`), `pin: is not known here; the nearest known key is "pins"`},
		"unknown inside":     {valid(`,"pins":{"gusset_bse":3}`), `pins.gusset_bse: is not known here; the nearest known key is "gusset_base"`},
		"case":               {valid(`,"Unit":"cm"`), `Unit: is not known here; the nearest known key is "unit"`},
		"capitals":           {valid(`,"UNIT":"cm"`), `UNIT: is not known here; the nearest known key is "unit"`},
		"capitals inside":    {valid(`,"pins":{"CAST_ON":44}`), `pins.CAST_ON: is not known here; the nearest known key is "cast_on"`},
		"capitals in a row":  {`{"gauge":{"swatches":[{"STITCHES":24,"stitches":24,"width":10}]},"hand":{"hand_circumference":19}}`, `gauge.swatches[0].STITCHES: is not known here; the nearest known key is "stitches"`},
		"camel case":         {valid(`,"pins":{"CuffPlainRounds":4}`), `pins.CuffPlainRounds: is not known here; the nearest known key is "cuff_plain_rounds"`},
		"null":               {valid(`,"ease":{"hand":null}`), "ease.hand: is null; write a number"},
		"text for a number":  {valid(`,"ease":{"hand":"-0.05"}`), "ease.hand: is \"-0.05\"; write a number"},
		"NaN":                {valid(`,"ease":{"hand":NaN}`), "sheet: is not JSON"},
		"exponent":           {valid(`,"length":{"cuff":1e1}`), "length.cuff: is not a number"},
		"negative":           {valid(`,"length":{"cuff":-3}`), "length.cuff: is -3, below zero; write a length above 0"},
		"unlike any":         {valid(`,"stitch":{"lace":1}`), "stitch.lace: is not known here; known keys are repeat, "},
		"zero":               {valid(`,"length":{"cuff":0}`), "length.cuff: is zero"},
		"gigantic":           {valid(`,"length":{"cuff":99999999999999999999999}`), "length.cuff: is above 2 m"},
		"gigantic count":     {valid(`,"pins":{"held":99999999999999999999999}`), "pins.held: is 99999999999999999999999; write a whole number from"},
		"base of 9":          {valid(`,"pins":{"gusset_base":9}`), "pins.gusset_base: is 9; write a whole number from 1 to 8"},
		"rhythm of 1":        {valid(`,"pins":{"rhythm":1}`), "pins.rhythm: is 1"},
		"list in a list":     {valid(`,"pins":{"rhythm":[[2]]}`), "pins.rhythm: is [[2]]; write a whole number such as 3, or a list such as [2, 3]"},
		"round 0":            {valid(`,"pins":{"increase_rounds":[0,3]}`), "pins.increase_rounds: is 0, 3; write the rounds, from the first to the last"},
		"first in no round":  {valid(`,"pins":{"first_increase":0}`), "pins.first_increase: is 0; write a whole number from 1 to 1500"},
		"format":             {valid(`,"format":"thenar/sheet@2"`), "format: is \"thenar/sheet@2\""},
		"kind":               {valid(`,"kind":"sock"`), "kind: is \"sock\"; write one of: fingerless, mitten, mitten_without_thumb"},
		"unit":               {valid(`,"unit":"ell"`), "unit: is \"ell\"; write one of: mm, cm, in"},
		"swatch":             {`{"gauge":{"swatches":[{"stitches":"24","width":10}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].stitches: is \"24\"; write a number"},
		"swatch of nothing":  {`{"gauge":{"swatches":[{"stitches":0,"width":10}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].stitches: is 0"},
		"flat or round":      {`{"gauge":{"swatches":[{"stitches":24,"width":10,"worked":"square"}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].worked"},
		"no height":          {`{"gauge":{"swatches":[{"stitches":24,"width":10,"rounds":30}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].height: is missing"},
		"variation":          {`{"gauge":{"swatches":[{"stitches":24,"width":10}],"hand_variation":0.5},"hand":{"hand_circumference":19}}`, "gauge.hand_variation: is 0.5; write a share from 0 to 0.2"},
		"no such day":        {`{"gauge":{"swatches":[{"stitches":24,"width":10,"date":"2025-02-30"}]},"hand":{"hand_circumference":19}}`, `gauge.swatches[0].date: is "2025-02-30"; write a day`},
		"a dear rhythm":      {valid(`,"schedule":{"lambda":1001}`), "schedule.lambda: is 1001; write a number from 0 to 1000"},
		"follows":            {valid(`,"schedule":{"follows":"me"}`), "schedule.follows: is \"me\"; write one of: profile, rhythm"},
		"yarn in ells":       {valid(`,"yarn":{"length_unit":"ell"}`), "yarn.length_unit: is \"ell\"; write one of: m, yd"},
		"a way to grow":      {valid(`,"thumb":{"increase":"make one"}`), `thumb.increase: is "make one"; write one of: m1, lifted, yo_closed, kfb, centre`},
		"an inset of 501":    {valid(`,"thumb":{"inset":501}`), "thumb.inset: is 501; write a whole number from 0 to 500"},
		"flat in words":      {valid(`,"piece":{"flat":"yes"}`), `piece.flat: is "yes"; write true or false`},
		"a band of 7":        {valid(`,"top":{"kind":"banded","band":7}`), "top.band: is 7; write a whole number from 1 to 6"},
		"two wedges":         {valid(`,"top":{"wedges":2}`), "top.wedges: is 2; write a whole number from 3 to 8"},
		"a cuff of lace":     {valid(`,"cuff":{"kind":"lace"}`), `cuff.kind: is "lace"; write one of: rib, hem, garter, rolled, gauntlet`},
		"no knits":           {valid(`,"cuff":{"knits":0,"purls":2}`), "cuff.knits: is 0; write a whole number from 1 to 20"},
		"knits alone":        {valid(`,"cuff":{"knits":2}`), "cuff.purls: is missing; a rib is knits and purls in turn"},
		"purls alone":        {valid(`,"cuff":{"purls":2}`), "cuff.knits: is missing; a rib is knits and purls in turn"},
		"repeat":             {valid(`,"stitch":{"repeat":0}`), "stitch.repeat: is 0; write a whole number from 1"},
	} {
		t.Run(name, func(t *testing.T) {
			s, err := Parse([]byte(c.doc))
			if err == nil {
				_, err = s.Request()
			}
			require.Error(t, err)
			var fields fault.Fields
			require.True(t, errors.As(err, &fields), "%v", err)
			assert.Contains(t, err.Error(), c.want)
		})
	}
}

// Every fault is told at once, not the first alone.
func TestAllFaultsAtOnce(t *testing.T) {
	s := Sheet{"hand.hand_circumference": "wide", "length.cuff": "0", "stitch.rib": "x", "gauge.swatches[0].width": "10"}
	_, err := s.Request()
	var fields fault.Fields
	require.True(t, errors.As(err, &fields))
	for _, path := range []string{"hand.hand_circumference", "length.cuff", "stitch.rib", "gauge.swatches[0].stitches"} {
		assert.True(t, fields.Has(path), path)
	}
}

func TestKnown(t *testing.T) {
	for path, want := range map[string]bool{
		"hand.thumb_circumference": true, "gauge.swatches[0].stitches": true, "gauge.swatches[19].width": true,
		"gauge.swatches[20].width": false, "gauge.swatches[00].width": false, "gauge.swatches": false, "hand": false,
		"pins.rhythm": true, "pins.nothing": false, "hand.profile[3].girth": true, "hand[0].thumb": false, "": false,
	} {
		assert.Equal(t, want, Known(path), path)
	}
}

func TestProfileRows(t *testing.T) {
	s := Sheet{
		"hand.profile[0].height": "0", "hand.profile[0].girth": "19", "hand.profile[1].height": "6", "hand.profile[1].girth": "22,5",
		"hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
	}
	r, err := s.Request()
	require.NoError(t, err)
	require.Len(t, r.Hand.Profile, 2)
	assert.Equal(t, units.Length(0), r.Hand.Profile[0].Height)
	assert.Equal(t, 225*units.Millimetre, r.Hand.Profile[1].Girth)
}

func FuzzParse(f *testing.F) {
	f.Add([]byte(full))
	f.Add([]byte(`{"gauge":{"swatches":[{"stitches":24,"width":10}]},"hand":{"hand_circumference":19}}`))
	f.Add([]byte(gloves))
	f.Add([]byte(`{"hand":{"profile":[{"height":0,"girth":"7½"}]}}`))
	f.Fuzz(func(t *testing.T, data []byte) {
		s, err := Parse(data)
		if err != nil {
			return
		}
		for path := range s {
			if !Known(path) {
				t.Fatalf("%q is kept, but no path of a sheet", path)
			}
		}
		r, err := s.Request()
		if err != nil {
			return
		}
		again, err := Parse(s.JSON())
		if err != nil {
			t.Fatalf("what was read can't be read again: %v\n%s", err, s.JSON())
		}
		if _, err := again.Request(); err != nil {
			t.Fatalf("what was good is bad after a round trip: %v", err)
		}
		if h, _ := r.Hand.Fill(); h.Circumference <= 0 {
			t.Fatal("a hand without a circumference was let pass")
		}
	})
}

func TestLargest(t *testing.T) {
	_, err := Parse([]byte(strings.Repeat(" ", Largest+1)))
	require.ErrorContains(t, err, "at most")
}
