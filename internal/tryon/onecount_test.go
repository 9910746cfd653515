package tryon

import (
	"maps"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// made is adult, made in another way.
func made(t *testing.T, sets map[string]string) (sheet.Sheet, *mitt.Plan) {
	t.Helper()
	s, _ := adult(t)
	maps.Copy(s, sets)
	req, err := s.Request()
	require.NoError(t, err)
	p, err := mitt.New().Plan(req)
	require.NoError(t, err)
	return s, p
}

// tried returns the corrections after the last round of a part.
func tried(t *testing.T, sets map[string]string, section, round string, try Try) []Correction {
	t.Helper()
	s, p := made(t, sets)
	try.Section, try.Round, try.Date, try.Side = section, round, "2026-03-01", "right"
	seen, err := try.Read(Places(p.Mitt()), 0, units.CM)
	require.NoError(t, err)
	require.NoError(t, seen.CheckZones(Places(p.Mitt())))
	list, err := Correct(seen, s, p)
	require.NoError(t, err)
	return list
}

// Without a gusset one count goes over the base of the thumb and on. What is felt there
// widens or narrows the hand, by the stronger of what was felt; where the two pull apart
// nothing is changed. 48 stitches are 200 mm on a hand of 190.
func TestOneCountSettlesBaseAndHand(t *testing.T) {
	straight := map[string]string{mitt.PathConstruction: "straight"}
	_, p := made(t, straight)
	last := p.Gusset.Rounds.N
	require.Equal(t, 19, last)
	for _, one := range []struct {
		at, above string
		ease      string // empty: nothing is changed
		says      string
	}{
		{"1", "", "7.8 %", "one count: a gusset would give room at the thumb alone"},
		{"2", "1", "10.3 %", "much too tight"},
		{"1", "2", "10.3 %", "felt much too tight"},
		{"-1", "0", "2.8 %", "the hand loses it all the way up"},
		{"1", "-1", "", "One count serves both, so it stays"},
		{"0", "0", "none", ""},
	} {
		try := Try{Feel: map[Zone]string{Parting: one.at, Hand: one.above}}
		section, round := "hand", "3"
		if one.above == "" {
			section, round = "below_thumb", "19"
			delete(try.Feel, Hand)
		}
		list := tried(t, straight, section, round, try)
		if one.ease == "none" {
			assert.Empty(t, list)
			continue
		}
		require.Len(t, list, 1, "%v", one)
		c := list[0]
		assert.Equal(t, "hand", c.Key)
		assert.Contains(t, c.Because, one.says)
		if one.ease == "" {
			assert.Empty(t, c.Edits)
			continue
		}
		assert.Equal(t, []Edit{{"ease.hand", one.ease}}, c.Edits, "%v", one)
		assert.True(t, c.Later, "the count is on the needles")
	}
	early := Try{Feel: map[Zone]string{Parting: "1"}, Section: "below_thumb", Round: "18", Date: "2026-03-01", Side: "right"}
	seen, err := early.Read(Places(p.Mitt()), 0, units.CM)
	require.NoError(t, err)
	assert.Error(t, seen.CheckZones(Places(p.Mitt())), "it can be felt once all of it is there")
}

// An opening whose top comes too high gets fewer rows, in pairs: 1 cm at 32 rounds over
// 10 cm is 3.2 rows of 16. Once it is joined again only later ones are shorter.
func TestAnOpeningIsMadeShorterOrLonger(t *testing.T) {
	slit := map[string]string{mitt.PathConstruction: "slit"}
	_, p := made(t, slit)
	require.Equal(t, 16, p.OpeningRows())
	for _, one := range []struct {
		top, is, says string
		section       string
		later         bool
	}{
		{"10", "12", "its top comes 10 mm above", "opening", false},
		{"-10", "20", "its top comes 10 mm below", "opening", false},
		{"2", "", "less than a pair of rows", "opening", false},
		{"10", "12", "its top comes 10 mm above", "hand", true},
	} {
		list := tried(t, slit, one.section, "4", Try{Top: one.top})
		require.Len(t, list, 1)
		c := list[0]
		assert.Equal(t, "opening", c.Name)
		assert.Contains(t, c.Because, one.says)
		assert.Equal(t, one.later, c.Later)
		if one.is == "" {
			assert.Empty(t, c.Edits)
			continue
		}
		assert.Equal(t, []Edit{{"pins.gusset_rounds", one.is}}, c.Edits)
		assert.Equal(t, []string{"16 rows", one.is + " rows"}, []string{c.Was, c.Is})
	}
	base := tried(t, slit, "opening", "4", Try{Base: "6"})
	require.Len(t, base, 1)
	assert.Equal(t, "base of the opening", base[0].Name)
	assert.Contains(t, base[0].Edits, Edit{"worked.base_above", "0.6"})
}

// A base that sits higher leaves an opening less to cover: 6 mm are 1.9 rows.
func TestAnOpeningThatBeginsHigherIsShorter(t *testing.T) {
	_, p := made(t, map[string]string{mitt.PathConstruction: "slit"})
	at, ok := At(Places(p.Mitt()), "opening", 4)
	require.True(t, ok)
	s, _ := made(t, map[string]string{mitt.PathConstruction: "slit"})
	s.SetProgress(at.Progress(p), "right")
	s.Put("worked.base_above", "0.6")
	req, err := s.Request()
	require.NoError(t, err)
	now, err := mitt.New().Plan(req)
	require.NoError(t, err)
	assert.Equal(t, p.OpeningRows()-2, now.OpeningRows())
}

// A flat mitt's fabric is measured flat.
func TestFabricOfAFlatMittIsWorkedFlat(t *testing.T) {
	for flat, worked := range map[string]string{"true": "flat", "false": "round"} {
		list := tried(t, map[string]string{mitt.PathFlat: flat}, "gusset", "4", Try{Stitches: "20", Width: "8"})
		require.NotEmpty(t, list)
		assert.Contains(t, list[0].Edits, Edit{"gauge.swatches[1].worked", worked})
	}
}
