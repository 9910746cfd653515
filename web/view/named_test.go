package view

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"

	"thenar/internal/mitt"
	"thenar/internal/tryon"
)

// ofRounds finds rounds that are worked, and not what is round a wrist or "in the round".
var ofRounds = regexp.MustCompile(`\b[Rr]ounds?\b`)

// A form speaks of a gusset only where the mitt has one, and a flat mitt's of rows, in all
// that can be fixed or measured; the choices of how it is made are left out.
func TestTheFormSpeaksOfTheMittThatIsMade(t *testing.T) {
	for name, sets := range map[string]map[string]string{
		"straight": {mitt.PathConstruction: "straight"},
		"slit":     {mitt.PathConstruction: "slit"},
		"none":     {mitt.PathConstruction: "none"},
		"flat":     {mitt.PathFlat: "true"},
		"down":     {mitt.PathDirection: "down"},
		"wristlet": {mitt.PathConstruction: "none", mitt.PathFlat: "true"},
		"usual":    {},
	} {
		d, a := fitAnswer(t, sets)
		form := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a})).Find("#measure-form")
		gusset := a.Out.Plan.Gusseted()
		said := map[string]bool{}
		form.Find(".field:not([hidden])").Each(func(_ int, field *goquery.Selection) {
			path, _ := field.Find("[name]").Attr("name")
			if _, made := makeField(path); made {
				return
			}
			text := strings.Join(strings.Fields(field.Find("label").Text()+" "+field.Find("[data-called-help]").Text()), " ")
			said[text] = true
			if !gusset {
				assert.NotContains(t, strings.ToLower(text), "gusset", "%s: %s", name, path)
			}
			if a.Out.Plan.Make.Flat && (pinned(path) || strings.Contains(path, "rounds") || path == "chart.colours") {
				assert.NotRegexp(t, ofRounds, text, "%s: %s", name, path)
			}
		})
		assert.Equal(t, gusset, said["Gusset base"], name)
		for _, n := range mitt.Ladder() {
			shown := form.Find(`.field:not([hidden]) [name="`+n.Path()+`"]`).Length() == 1
			assert.Equal(t, a.Out.Plan.Number(n) != "", shown, "%s: %s", name, n)
			assert.Equal(t, 1, form.Find(`[name="`+n.Path()+`"]`).Length(), "%s: %s is kept", name, n)
		}
	}
}

// A field that has no use but holds something stays, so that it can be cleared.
func TestWhatIsGivenStaysInSight(t *testing.T) {
	d, a := fitAnswer(t, map[string]string{mitt.PathConstruction: "straight", "pins.gusset_base": "3", "ease.gusset": "4 %"})
	form := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a})).Find("#measure-form")
	for path, hidden := range map[string]bool{"pins.gusset_base": false, "ease.gusset": false, "pins.bridge": true} {
		assert.Equal(t, hidden, form.Find(`[name="`+path+`"]`).Closest(".field").Is("[hidden]"), path)
	}
}

// The plan in one line, the numbers on the ladder and what a stroke fixes speak of what is
// there: rows of a flat piece and of an opening, and the stitches of the seam.
func TestLinesSpeakOfTheMittThatIsMade(t *testing.T) {
	for _, one := range []struct {
		sets             map[string]string
		line, sum, fixed string
	}{
		{nil, `^cast on \d+ · hand \d+ · gusset \d+→\d+ in \d+ · thumb \d+$`, `^Cast on \d+ · .* in \d+ rounds · hold \d+ · bridge \d+ · thumb \d+$`, "Fixed: gusset 12 rounds."},
		{map[string]string{mitt.PathFlat: "true"}, `^cast on \d+ \+ 2 · hand`, `^Cast on \d+ \+ 2 · .* in \d+ rows · hold`, "Fixed: gusset 12 rows."},
		{map[string]string{mitt.PathConstruction: "straight"}, `^cast on \d+ · hand \d+ · with waste yarn \d+ · thumb \d+$`, `to the thumb \d+ rounds · with waste yarn`, "Fixed: to the thumb 12 rounds."},
		{map[string]string{mitt.PathConstruction: "slit"}, `opening in \d+ rows$`, `opening in \d+ rows · above it \d+ rounds$`, "Fixed: opening 12 rows."},
		{map[string]string{mitt.PathConstruction: "none", mitt.PathFlat: "true"}, ` · \d+ rows$`, ` · \d+ rows$`, "Fixed: gusset 12 rows."},
		{map[string]string{mitt.PathDirection: "down"}, `^bind off \d+ · hand`, `^Bind off \d+ · .* into the hand \d+ · gap \d+`, "Fixed: gusset 12 rounds."},
	} {
		d, a := fitAnswer(t, one.sets)
		assert.Regexp(t, one.line, planLine(a.Out.Plan), "%v", one.sets)
		assert.Regexp(t, one.sum, a.summary(), "%v", one.sets)
		assert.Equal(t, one.fixed, "Fixed: "+fixedAs(d.Sheet.Names(), mitt.GussetRounds, "12")+".", "%v", one.sets)
	}
}

// Slips name what a number counts, and its neighbours are those that are possible.
func TestSlipsCountInPairsOfRows(t *testing.T) {
	for _, one := range []struct {
		sets map[string]string
		unit string
		step int
	}{
		{nil, "rounds", 1},
		{map[string]string{mitt.PathFlat: "true"}, "rows", 2},
		{map[string]string{mitt.PathConstruction: "slit"}, "rows", 2},
	} {
		_, a := fitAnswer(t, one.sets)
		for _, r := range a.Out.Reasons {
			if r.Of != mitt.GussetRounds {
				continue
			}
			assert.Equal(t, one.unit, unitWords(a.Names, r.Of), "%v", one.sets)
			assert.Contains(t, r.Value, " "+one.unit, "%v", one.sets)
			list := a.nearby(r)
			assert.Len(t, list, 3)
			assert.Equal(t, one.step, list[1].Value-list[0].Value, "%v", one.sets)
		}
	}
}

// A try asks of what the mitt has: how the palm lies over the thumb's base also where no
// gusset grows, and where an opening's ends sit.
func TestATryAsksOfWhatTheMittHas(t *testing.T) {
	for _, one := range []struct {
		sets  map[string]string
		part  string
		zones []tryon.Zone
		sits  string
		words []string
	}{
		{nil, "gusset", []tryon.Zone{tryon.Cuff, tryon.Gusset, tryon.Parting, tryon.Hand, tryon.Thumb}, "Where the gusset sits", []string{"Last round knitted", "half-way up the gusset"}},
		{map[string]string{mitt.PathConstruction: "straight"}, "below_thumb", []tryon.Zone{tryon.Cuff, tryon.Parting, tryon.Hand, tryon.Thumb}, "Where the thumb’s base sits", []string{"over the base of the thumb"}},
		{map[string]string{mitt.PathConstruction: "slit"}, "opening", []tryon.Zone{tryon.Cuff, tryon.Parting, tryon.Hand}, "Where the opening sits", []string{"after row 4 of the opening"}},
		{map[string]string{mitt.PathConstruction: "none"}, "hand", []tryon.Zone{tryon.Cuff, tryon.Hand}, "", []string{"once it lies round the knuckles"}},
		{map[string]string{"kind": "glove"}, "index", slices.DeleteFunc(tryon.Zones(), func(zone tryon.Zone) bool { return zone == tryon.Cap }), "Where the gusset sits", []string{"Last round knitted", "after round 4 of the index finger"}},
		{map[string]string{"kind": "glove", "fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", mitt.PathCap: "true"}, "cap", tryon.Zones(), "Where the gusset sits", []string{"after round 4 of the cap"}},
		{map[string]string{mitt.PathFlat: "true"}, "gusset", []tryon.Zone{tryon.Cuff, tryon.Gusset, tryon.Parting, tryon.Hand, tryon.Thumb}, "Where the gusset sits", []string{"Last row knitted", "how high so many rows?", "after row 4 of the gusset"}},
	} {
		d, a := fitAnswer(t, one.sets)
		page := Tries{Doc: d, Plan: a.Out.Plan, Places: tryon.Places(a.Out.Mitt), Form: TryForm{Try: tryon.Try{Side: "right", Section: one.part, Round: "4"}}}
		doc := parsed(t, TriesPage(page))
		assert.Equal(t, one.zones, page.zones(), one.part)
		legends := strings.Join(texts(doc.Find("legend")), "|")
		assert.Equal(t, one.sits != "", strings.Contains(legends, one.sits) && strings.Contains(legends, " sits"), legends)
		for _, said := range one.words {
			assert.Contains(t, strings.Join(strings.Fields(doc.Text()), " "), said, one.part)
		}
		if one.sits != "Where the gusset sits" {
			assert.NotContains(t, strings.ToLower(doc.Text()), "gusset", one.part)
		}
		if one.sits != "" {
			assert.Equal(t, fmt.Sprintf("%s %d", a.Out.Plan.Mound(), a.Out.Plan.Gusset.Rounds.N), page.wholeIn(tryon.Parting), one.part)
		}
	}
}

// A cuff that the hand doesn't pass says so where it is chosen, with the count that would
// let it, and no other does.
func TestACuffSaysWhetherTheHandPasses(t *testing.T) {
	for cuff, says := range map[string]string{"": "", "hem": "and a hem gives about 25\u00a0%", "gauntlet": "at the wrist would pass the hand", "garter": "garter stitch gives"} {
		d, a := fitAnswer(t, map[string]string{mitt.PathCuff: cuff})
		help := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a})).Find(`[data-called-help="` + mitt.PathCuff + `"]`).Text()
		if says == "" {
			assert.Empty(t, help)
			continue
		}
		assert.Regexp(t, `^\d+ stitches`, help)
		assert.Contains(t, help, says)
		assert.Equal(t, help, a.allCalled()[mitt.PathCuff].Help, "the script says the same")
		count, _, _ := strings.Cut(help, " ")
		_, wider := fitAnswer(t, map[string]string{mitt.PathCuff: cuff, "pins.cast_on": count})
		if cuff != "gauntlet" { // whose cast-on is on the arm
			assert.Empty(t, wider.Out.Plan.Passes(), "with %s the hand passes through a %s", count, cuff)
		}
	}
}

// What stands beside the ladder speaks of the mitt, too: rows of a flat one, decreases of
// one from the fingertips, in the rounds in which they are worked.
func TestFitSpeaksOfTheMittThatIsMade(t *testing.T) {
	text := func(sets map[string]string) string {
		d, a := fitAnswer(t, sets)
		page := parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a}))
		page.Find("script, style, svg, #measure-form").Remove()
		return strings.Join(strings.Fields(page.Find("main").Text()), " ")
	}
	flat := text(map[string]string{mitt.PathFlat: "true"})
	assert.Regexp(t, `Increase \w+ times, in rows 1, `, flat)
	assert.Contains(t, flat, "plain rows, easy")
	assert.NotRegexp(t, `\b\d+ rounds?\b`, flat)
	down := text(map[string]string{mitt.PathDirection: "down"})
	assert.Contains(t, down, "The decreases, evenly spaced")
	assert.NotContains(t, down, "Increase ")
	_, a := fitAnswer(t, map[string]string{mitt.PathDirection: "down", "pins.increase_rounds": "1, 4, 9"})
	if a.Out != nil {
		p := a.Out.Plan
		assert.Contains(t, a.increaseWords(), fmt.Sprintf("Decrease three times, in rounds %d, ", p.Gusset.Rounds.N+1-9))
	}
	d, _ := fitAnswer(t, map[string]string{"hand.gusset_length": "6.2", mitt.PathConstruction: "straight"})
	var names []string
	for _, c := range (Mitt{Doc: d, Answer: Answer{Names: d.Sheet.Names()}}).chips() {
		names = append(names, c.Name)
	}
	assert.Contains(t, names, "bone to thumb")
	assert.NotContains(t, names, "gusset")
}
