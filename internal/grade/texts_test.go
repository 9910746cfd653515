package grade

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

var plainSheet = sheet.Sheet{"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"}

// What is typed of the sizes means what the file of a design means.
func TestTextsAreADesign(t *testing.T) {
	texts := Texts{
		"sizes[0].name": " 6 ", "sizes[0].hand.size": "6", "sizes[1].name": "7", "sizes[1].hand.size": "7", "sizes[1].pins.gusset_base": "4",
		"pins.bridge": "4", "rules.length": "fixed", "rules.price_mm2": "12,5",
		"rules.multiples.hand_stitches": "6", "rules.multiples.hand_stitches.offset": "1", "rules.multiples.top_rounds": "4", "rules.multiples.thumb_rounds": " ",
		"sizes[1].gauge.swatches[0].stitches": "28",
	}
	d, err := FromTexts(plainSheet, texts)
	require.NoError(t, err)
	file, err := ParseDesign([]byte(`{"format": "thenar/design@1", "sheet": {"gauge": {"swatches": [{"stitches": 24, "width": 10}]}},
		"sizes": [{"name": "6", "hand": {"size": 6}}, {"name": "7", "hand": {"size": 7}, "gauge": {"swatches": [{"stitches": 28, "width": 10}]}}],
		"rules": {"length": "fixed", "price_mm2": 12.5, "multiples": {"hand_stitches": [6, 1], "top_rounds": 4}},
		"pins": {"all": {"bridge": 4}, "7": {"gusset_base": 4}}}`))
	require.NoError(t, err)
	require.Equal(t, file, d)
}

// The hand of every size keeps to its multiple and offset, whatever the mitt's own is; a
// size with a gauge of its own is knitted by it.
func TestSizesKeepToTheHandsMultiple(t *testing.T) {
	s := plainSheet.Clone()
	s["stitch.repeat"] = "4"
	texts := Texts{"rules.multiples.hand_stitches": "6", "rules.multiples.hand_stitches.offset": "1", "sizes[2].gauge.swatches[0].stitches": "32"}
	for i, n := range []string{"6", "7", "8"} {
		texts[SizePath(i, "name")], texts[SizePath(i, "hand.size")] = n, n
	}
	d, err := FromTexts(s, texts)
	require.NoError(t, err)
	g, err := Grade(t.Context(), d)
	require.NoError(t, err)
	for i, size := range g.Sizes {
		require.NoError(t, size.Err)
		require.Equal(t, 1, size.Plan.Body.Stitches.N%6, "%d", size.Plan.Body.Stitches.N)
		require.InDelta(t, map[bool]float64{false: 2.4, true: 3.2}[i == 2], size.Plan.Gauge.Stitches*10, 0.001)
	}
	require.Equal(t, "4", s["stitch.repeat"])
}

// Faults come back under the paths at which they were typed.
func TestFaultsOfFixedNumbers(t *testing.T) {
	texts := Texts{
		"sizes[0].name": "6.5", "sizes[0].hand.size": "6.5", "sizes[1].name": "8", "sizes[1].hand.size": "8", "sizes[1].gauge.swatches[0].stitches": "x",
		"sizes[0].pins.gusset_base": "40", "pins.bridge": "many",
	}
	d, err := FromTexts(plainSheet, texts)
	require.NoError(t, err)
	_, err = d.Sheets()
	var faults fault.Fields
	require.ErrorAs(t, err, &faults)
	require.True(t, faults.Has("pins.6.5.gusset_base") && faults.Has("pins.all.bridge"), "%v", faults)
	typed := texts.Typed(faults)
	require.Len(t, typed, 3, "one of a kind: %v", typed)
	for _, path := range []string{"sizes[0].pins.gusset_base", "pins.bridge", "sizes[1].gauge.swatches[0].stitches"} {
		require.True(t, typed.Has(path), "%s: %v", path, typed)
	}
	texts["rules.price_mm2"] = "dear"
	_, err = FromTexts(plainSheet, texts)
	require.ErrorAs(t, err, &faults)
	require.True(t, faults.Has("rules.price_mm2") && faults.Has("pins.all.bridge"), "all at once: %v", faults)
	wrong := plainSheet.Clone()
	wrong["ease.hand"] = "wide"
	_, err = (&Design{Sheet: wrong, Sizes: d.Sizes[:1]}).Sheets()
	require.ErrorContains(t, err, "sheet.ease.hand: ")
}

// Wrong texts are told at their paths; whatever was typed can be kept, but for paths
// that no design has.
func TestTextsAreChecked(t *testing.T) {
	_, err := FromTexts(plainSheet, Texts{"sizes[0].hand.size": "6"})
	require.ErrorContains(t, err, "sizes[0].name: is missing")
	_, err = FromTexts(plainSheet, Texts{"sizes[0].name": "6", "rules.price_mm2": "dear"})
	require.ErrorContains(t, err, `rules.price_mm2: is "dear"; write a number of mm²`)
	for _, c := range [][3]string{{"wide", "", "is \"wide\"; write a whole number such as 6"}, {"0", "", "is 0 and 0; write a multiple from 1 to 100"}, {"3", "3", "is 3 and 3; write"}} {
		_, err = FromTexts(plainSheet, Texts{"sizes[0].name": "6", "rules.multiples.top_rounds": c[0], "rules.multiples.top_rounds.offset": c[1]})
		require.ErrorContains(t, err, "rules.multiples.top_rounds: "+c[2])
	}
	_, err = FromTexts(plainSheet, Texts{"sizes[0].name": "6", "rules.multiples.top_rounds.offset": "3"})
	require.ErrorContains(t, err, "rules.multiples.top_rounds: is missing beside its offset")
	for _, name := range []string{"all", "S and M", "a:b", "a (b)"} {
		_, err = FromTexts(plainSheet, Texts{"sizes[0].name": name, "sizes[0].hand.size": "8"})
		require.ErrorContains(t, err, "sizes[0].name: is ")
	}
	for path, known := range map[string]bool{
		"sizes[0].name": true, "sizes[11].hand.thumb_circumference": true, "sizes[3].gauge.swatches[0].stitches": true, "sizes[0].pins.rhythm": true,
		"pins.gusset_base": true, "rules.length": true, "rules.multiples.hand_stitches": true, "rules.multiples.gusset_rounds.offset": true, "rules.multiples.held": false, "rules.multiples": false,
		"sizes[12].name": false, "sizes[01].name": false, "sizes[0].ease.hand": false, "rules.other": false, "hand.size": false, "sizes[0].pins.nothing": false,
	} {
		require.Equal(t, known, Known(path), path)
		var faults fault.Fields
		Texts{path: "x"}.Check(&faults)
		require.Equal(t, known, len(faults) == 0, path)
	}
	var faults fault.Fields
	Texts{"sizes[0].name": "a\x00b"}.Check(&faults)
	require.NotEmpty(t, faults)
}

// A set takes the place of the sizes and leaves everything else; a list is added; a
// size that is left out lets the later ones move up.
func TestFillPasteAndLeaveOut(t *testing.T) {
	start := Texts{"sizes[0].name": "mine", "sizes[0].hand.size": "8", "rules.length": "fixed"}
	filled, err := start.Fill(GloveSizes, 6, 8, 0.5, units.CM)
	require.NoError(t, err)
	require.Equal(t, 5, filled.Sizes())
	require.Equal(t, "6.5", filled["sizes[1].name"])
	require.Equal(t, "fixed", filled["rules.length"])
	require.Equal(t, "mine", start["sizes[0].name"], "the texts before are not changed")

	// Children of 5½ to 6½ years: hand 127.2 mm long and 59.2 wide, wrist 121.8 (Snyder
	// and others, UM-HSRI-77-17, 1977).
	filled, err = start.Fill(Children, 4, 12, 2, units.CM)
	require.NoError(t, err)
	require.Equal(t, 5, filled.Sizes())
	require.Equal(t, [...]string{"6 years", "12.72", "5.92", "12.18"},
		[...]string{filled["sizes[1].name"], filled["sizes[1].hand.hand_length"], filled["sizes[1].hand.hand_breadth"], filled["sizes[1].hand.wrist_circumference"]})
	d, err := FromTexts(plainSheet, filled)
	require.NoError(t, err)
	g, err := Grade(t.Context(), d)
	require.NoError(t, err)
	for _, s := range g.Sizes {
		require.NoError(t, s.Err)
	}

	for _, bad := range [][3]float64{{6, 5, 1}, {6, 8, 0}, {6, 30, 1}, {1, 1e9, 1e-9}} {
		_, err = start.Fill(GloveSizes, bad[0], bad[1], bad[2], units.CM)
		require.ErrorContains(t, err, "fill: ", "%v", bad)
	}
	_, err = start.Fill("giants", 6, 8, 1, units.CM)
	require.ErrorContains(t, err, "fill: finds no sizes there")

	pasted, err := start.Paste("Size;Hand;Length\r\nS ; 17,5 ; 17\n\nM\t19\nL 21 20\n", units.CM)
	require.NoError(t, err)
	require.Equal(t, 4, pasted.Sizes())
	require.Equal(t, [...]string{"mine", "S", "17,5", "17", "M", "19", "L", "20"}, [...]string{
		pasted["sizes[0].name"], pasted["sizes[1].name"], pasted["sizes[1].hand.hand_circumference"], pasted["sizes[1].hand.hand_length"],
		pasted["sizes[2].name"], pasted["sizes[2].hand.hand_circumference"], pasted["sizes[3].name"], pasted["sizes[3].hand.hand_length"],
	})
	for list, why := range map[string]string{"": "list: is empty", "S": "line 1 has 1 fields", "S 17 18 19": "line 1 has 4 fields", "S 17\nM wide": `line 2: "wide" is no circumference`} {
		_, err := start.Paste(list, units.CM)
		require.ErrorContains(t, err, why, list)
	}

	left := pasted.Without("1")
	require.Equal(t, 3, left.Sizes())
	require.Equal(t, [...]string{"mine", "M", "L", ""}, [...]string{left["sizes[0].name"], left["sizes[1].name"], left["sizes[2].name"], left["sizes[1].hand.hand_length"]})
}

// A list is read as people write it: with commas, fractions, units, names of two words; the
// number of a line that can't be read is told, and so is how many sizes are too many.
func TestPastedLists(t *testing.T) {
	for line, want := range map[string][3]string{
		"S, 17.5, 18": {"S", "17.5", "18"}, "S,17.5,18": {"S", "17.5", "18"}, "S, 17,5, 18,5": {"S", "17,5", "18,5"}, "7 17,8": {"7", "17,8", ""}, "7, 17,8,": {"7", "17,8", ""},
		"6½ 17": {"6½", "17", ""}, "6 years 15 16.5": {"6 years", "15", "16.5"}, "M | 20 cm": {"M", "20", ""}, "M 7 7/8 in 8 1/4 in": {"M", "20.0025", "20.955"},
		"M 7⅞\"": {"M", "20.0025", ""}, "7 1/2 20": {"7 1/2", "20", ""}, "M\t190 mm\t 7 1/2″": {"M", "19", "19.05"}, "6 years, 15": {"6 years", "15", ""},
	} {
		got, err := Texts{}.Paste(line+"\n", units.CM)
		require.NoError(t, err, line)
		require.Equal(t, want, [3]string{got["sizes[0].name"], got["sizes[0].hand.hand_circumference"], got["sizes[0].hand.hand_length"]}, line)
	}
	got, err := Texts{}.Paste("S 6 3/4 7 1/2\nM 18 cm\n", units.IN)
	require.NoError(t, err)
	require.Equal(t, [3]string{"6 3/4", "7 1/2", "7.0866"}, [3]string{got["sizes[0].hand.hand_circumference"], got["sizes[0].hand.hand_length"], got["sizes[1].hand.hand_circumference"]})

	_, err = Texts{}.Paste("M 20 ell\nL 20 mmm", units.CM)
	require.ErrorContains(t, err, "line 2")
	var many strings.Builder
	for i := range 13 {
		fmt.Fprintf(&many, "n%d %d\n", i, 14+i)
	}
	_, err = Texts{}.Paste(many.String(), units.CM)
	require.ErrorContains(t, err, "list: makes 13 sizes with those that stand there; 12 are the most. Leave 1 out")
}

// Names that somebody has become names that sizes can have, each its own.
func TestNamesOfTakenSizes(t *testing.T) {
	var sizes []Size
	for _, name := range []string{"Anna", "Anna", "Maximiliana Theodora", "Maximiliana Theophil", "Ada and Bob (twins)", "all", "", ":"} {
		sizes = append(sizes, Size{name, sheet.Sheet{"hand.size": "7"}})
	}
	got := Texts{"rules.length": "fixed", "sizes[11].name": "old"}.Take(sizes)
	require.Equal(t, "fixed", got["rules.length"])
	require.Equal(t, len(sizes), got.Sizes())
	d, err := FromTexts(plainSheet, got)
	require.NoError(t, err, "all names can be used")
	require.Equal(t, []string{"Anna", "Anna 2", "Maximiliana", "Maximilian 2", "Ada Bob twin", "all 2", "2", "3"}, d.Names())
}
