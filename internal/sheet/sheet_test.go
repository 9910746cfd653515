package sheet

import (
	"errors"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

const full = `{
  "format": "thenar/sheet@1", "kind": "fingerless", "unit": "cm",
  "gauge": {"swatches": [{"stitches": 24, "width": 10, "rounds": 32, "height": 10, "worked": "round", "washed": true, "counted_to": 0.5}]},
  "hand": {"hand_circumference": 19.0, "wrist_circumference": "15,7", "thumb_circumference": 6.5,
    "hand_length": 18.0, "gusset_length": 5.9, "thumb_length": 6.4, "wrist_to_crotch": 6.3},
  "ease": {"hand": -0.05, "cuff": 0, "thumb_girth_added": 1.2},
  "length": {"cuff": 3, "cuff_plain": 3, "above_gusset": 3.8, "edging": 1, "thumb": 3.5, "thumb_edging": 1},
  "stitch": {"repeat": 2, "offset": 0, "rib": 2, "both_edges": true},
  "pins": {"gusset_base": 3, "rhythm": [2, 3]}
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
	assert.InDelta(t, -0.05, *r.Ease.Hand, 0)
	assert.Equal(t, 12*units.Millimetre, r.Ease.ThumbAdded)
	assert.Equal(t, 35*units.Millimetre, r.Lengths.Thumb)
	assert.Equal(t, mitt.Stitches{Repeat: 2, Rib: 2}, r.Stitch)
	assert.Equal(t, mitt.Fix(3), r.Pins.GussetBase)
	assert.Equal(t, []int{2, 3}, r.Pins.Rhythm)
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

// Each bad document is refused at the field, with what would be right.
func TestRefused(t *testing.T) {
	valid := func(part string) string {
		return `{"gauge":{"swatches":[{"stitches":24,"width":10}]},"hand":{"hand_circumference":19}` + part + `}`
	}
	for name, c := range map[string]struct{ doc, want string }{
		"empty":             {"", "sheet: is empty"},
		"spaces":            {" \n", "sheet: is empty"},
		"not JSON":          {"cast on 38", "sheet: is not JSON"},
		"cut short":         {`{"gauge":`, "ends too early"},
		"list":              {"[]", "sheet: is []; write an object"},
		"nothing in it":     {"{}", "hand.hand_circumference: is missing"},
		"no gauge":          {`{"hand":{"hand_circumference":19}}`, "gauge.swatches: is empty"},
		"twice":             {valid(`,"unit":"cm","unit":"mm"`), "a key stands twice"},
		"after":             {valid("") + "{}", "goes on after the document"},
		"unknown":           {valid(`,"pin":{}`), `pin: is not known here; the nearest known key is "pins"`},
		"unknown inside":    {valid(`,"pins":{"gusset_bse":3}`), `pins.gusset_bse: is not known here; the nearest known key is "gusset_base"`},
		"case":              {valid(`,"Unit":"cm"`), `Unit: is not known here; the nearest known key is "unit"`},
		"null":              {valid(`,"ease":{"hand":null}`), "ease.hand: is null; write a number"},
		"text for a number": {valid(`,"ease":{"hand":"-0.05"}`), "ease.hand: is \"-0.05\"; write a number"},
		"NaN":               {valid(`,"ease":{"hand":NaN}`), "sheet: is not JSON"},
		"exponent":          {valid(`,"length":{"cuff":1e1}`), "length.cuff: is not a number"},
		"negative":          {valid(`,"length":{"cuff":-3}`), "length.cuff: is not a number"},
		"zero":              {valid(`,"length":{"cuff":0}`), "length.cuff: is zero"},
		"gigantic":          {valid(`,"length":{"cuff":99999999999999999999999}`), "length.cuff: is above 2 m"},
		"gigantic count":    {valid(`,"pins":{"held":99999999999999999999999}`), "pins.held: is 99999999999999999999999; write a whole number from"},
		"base of 9":         {valid(`,"pins":{"gusset_base":9}`), "pins.gusset_base: is 9; write a whole number from 1 to 8"},
		"rhythm of 1":       {valid(`,"pins":{"rhythm":1}`), "pins.rhythm: is 1"},
		"format":            {valid(`,"format":"thenar/sheet@2"`), "format: is \"thenar/sheet@2\""},
		"glove":             {valid(`,"kind":"glove"`), "kind: is glove, which can't be planned yet"},
		"unit":              {valid(`,"unit":"ell"`), "unit: is \"ell\"; write one of: mm, cm, in"},
		"swatch":            {`{"gauge":{"swatches":[{"stitches":"24","width":10}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].stitches: is \"24\"; write a number"},
		"swatch of nothing": {`{"gauge":{"swatches":[{"stitches":0,"width":10}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].stitches: is 0"},
		"flat or round":     {`{"gauge":{"swatches":[{"stitches":24,"width":10,"worked":"square"}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].worked"},
		"no height":         {`{"gauge":{"swatches":[{"stitches":24,"width":10,"rounds":30}]},"hand":{"hand_circumference":19}}`, "gauge.swatches[0].height: is missing"},
		"repeat":            {valid(`,"stitch":{"repeat":0}`), "stitch.repeat: is 0; write a whole number from 1"},
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
		if r.Hand.Circumference <= 0 {
			t.Fatal("a hand without a circumference was let pass")
		}
	})
}

func TestLargest(t *testing.T) {
	_, err := Parse([]byte(strings.Repeat(" ", Largest+1)))
	require.ErrorContains(t, err, "at most")
}
