package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
)

// fitAnswer returns what Fit answers to a sheet of a fingerless mitt at 24
// stitches and 32 rounds over 10 cm, with some texts changed.
func fitAnswer(t *testing.T, texts map[string]string) (project.Document, Answer) {
	t.Helper()
	d := project.New("Mitts")
	for path, text := range map[string]string{
		"hand.hand_circumference": "18.6", "hand.wrist_circumference": "15.4", "hand.thumb_circumference": "6.3",
		"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10", "gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
	} {
		d.Sheet[path] = text
	}
	for path, text := range texts {
		d.Sheet[path] = text
	}
	out, err := project.NewPlanner().Derive(d, chart.Marks{})
	return d, NewAnswer(d, out, FitDesk, ChartAsk{}, err)
}

// The ladder has a number for each height, the last knitted at the top, the
// cast-on at the foot; each is a fold with a slip, in which it can be typed over
// under its own name and fixed.
func TestTheLadderIsReadUpwards(t *testing.T) {
	_, a := fitAnswer(t, nil)
	doc := parsed(t, benchFragment(a))
	rungs := doc.Find("ol.numbers > li.number > details")
	names := texts(rungs.ChildrenFiltered("summary"))
	assert.Len(t, names, 14)
	assert.Equal(t, "cast on 36", names[len(names)-1])
	assert.Equal(t, "rib rounds 9", names[len(names)-2])
	assert.Contains(t, names, "hand 42")
	assert.Contains(t, names, "every 3rd")
	levels := a.Bench.Numbers
	for i := 1; i < len(levels); i++ {
		assert.GreaterOrEqual(t, levels[i].Wide-levels[i-1].Wide, apartWide-1e-9, names[i])
		assert.GreaterOrEqual(t, levels[i].Slim-levels[i-1].Slim, apartSlim-1e-9, names[i])
		assert.GreaterOrEqual(t, levels[i].Level, levels[i-1].Level, "elbows never cross: %s", names[i])
	}
	rungs.Each(func(i int, rung *goquery.Selection) {
		field := rung.Find(".slip > .typed input")
		label, _ := field.Attr("aria-labelledby")
		assert.NotEmpty(t, doc.Find(`[id="`+label+`"]`).Text(), names[i])
		assert.Equal(t, 1, rung.Find(".slip > .act button").Length(), names[i])
	})
}

// A slip tells what the neighbours make of the girth, in mm at the gauge: a
// stitch is 100 / 24 = 4.17 mm. 18.6 cm less 5 % (common practice for a
// fingerless mitt, no source) are 176.7 mm or 42.4 stitches; 42 are 175.0 mm, 40
// are 166.7 and 44 are 183.3. Worked out by hand.
func TestASlipTellsItsNeighboursInMM(t *testing.T) {
	_, a := fitAnswer(t, nil)
	slip := parsed(t, benchFragment(a)).Find(`.number[data-key="hand.stitches"] .slip`)
	assert.Equal(t, []string{"40 10 mm tighter", "42 2 mm tighter", "44 7 mm looser"}, texts(slip.Find(".ruler li")))
	assert.Contains(t, slip.Find(".why .term-says").Text(), "wider the mitt is than the hand")
	slip.Find(".term-says").Remove()
	assert.Equal(t, "18.6 cm of hand, 5\u00a0% negative ease: 42.4 stitches.", slip.Find(".why").First().Text())
	assert.Equal(t, []string{"Fix 42"}, texts(slip.Find(".act button")))
	assert.Contains(t, slip.Find(".cost").Text(), "Costs nothing")
}

// A number that is fixed bears a pin, says what it costs and can be let go.
func TestAFixedNumberBearsAPin(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"pins.cast_on": "40", "pins.kept_on_hand": "0"})
	doc := parsed(t, benchFragment(a))
	castOn := doc.Find(`ol.numbers > .number[data-key="cuff.cast_on"]`)
	assert.Equal(t, 1, castOn.Find("summary > .pin-mark").Length())
	assert.Equal(t, "fixed: cast on 40", texts(castOn.Find("details > summary").First())[0])
	assert.Equal(t, "pins.cast_on=", castOn.Find(".act .set").AttrOr("value", ""))
	assert.Contains(t, castOn.Find(".cost").Text(), "Free, it would be 36")
	assert.Equal(t, 1, doc.Find(`ol.numbers > .number[data-key="gusset.kept_on_hand"]`).Length(), "what is fixed has a rung of its own")
}

// Numbers that go on the phone's one line lead to their fields; without a plan
// the desk says what is to go, each with a link.
func TestFitBeforeThereIsAPlan(t *testing.T) {
	d := project.New("Mitts")
	_, err := project.NewPlanner().Derive(d, chart.Marks{})
	a := NewAnswer(d, nil, FitDesk, ChartAsk{}, err)
	doc := parsed(t, FitPage(Mitt{ID: 1, Doc: d, Desk: FitDesk, Answer: a}))
	assert.Equal(t, "Two measurements to go:", doc.Find(".in-the-way h2").Text())
	assert.Equal(t, 2, doc.Find(`.in-the-way li > a[data-opens]:first-child`).Length())
	assert.NotContains(t, doc.Find(".in-the-way").Text(), "is missing")
	assert.Equal(t, 1, doc.Find("details#measure[open]").Length())
	assert.Equal(t, 0, doc.Find(".numbers").Length())
}

// With a plan Measure is folded to a line of what was measured, filled in and
// left to the usual, each leading to where it can be seen or changed.
func TestMeasureFoldsToALine(t *testing.T) {
	d, a := fitAnswer(t, nil)
	doc := parsed(t, FitPage(Mitt{ID: 1, Doc: d, Desk: FitDesk, Answer: a}))
	assert.Equal(t, 0, doc.Find("details#measure[open]").Length())
	chips := texts(doc.Find(".chips a"))
	assert.Equal(t, []string{"hand 18.6", "wrist 15.4", "thumb 6.3", "swatch 24 × 32"}, chips[:4])
	assert.True(t, strings.HasPrefix(chips[4], "filled in: "))
	doc.Find(".chips a").Each(func(_ int, chip *goquery.Selection) {
		to := strings.TrimPrefix(chip.AttrOr("href", ""), "#")
		assert.Equal(t, 1, doc.Find(`[id="`+to+`"]`).Length(), to)
	})
	assert.Equal(t, "Snug at wrist and hand, easy round palm and thumb.", doc.Find(".curves h2").Text())
	assert.Equal(t, []string{"How sure is the fit", "The increases, evenly spaced", "Yarn"}, texts(doc.Find(".plan h2")))
	sure := a.sure()
	for i := 1; i < len(sure); i++ {
		assert.LessOrEqual(t, sure[i-1].Chance, sure[i].Chance, "the least sure comes first")
	}
}

func TestWhereWords(t *testing.T) {
	assert.Equal(t, " at the wrist", whereWords([]string{"wrist"}))
	assert.Equal(t, " round the palm", whereWords([]string{"palm"}))
	assert.Equal(t, " at wrist, hand and thumb", whereWords([]string{"wrist", "hand", "thumb"}))
}

// Every slip leads to the numbers above and below it: on a phone the ladder's
// rungs are closer than a finger is broad.
func TestSlipsLeadFromNumberToNumber(t *testing.T) {
	_, a := fitAnswer(t, nil)
	doc := parsed(t, benchFragment(a))
	keys := []string{}
	doc.Find("ol.numbers > .number").Each(func(_ int, n *goquery.Selection) { keys = append(keys, n.AttrOr("data-key", "")) })
	for i, key := range keys {
		var want []string
		if i > 0 {
			want = append(want, keys[i-1])
		}
		if i+1 < len(keys) {
			want = append(want, keys[i+1])
		}
		var got []string
		doc.Find(`.number[data-key="` + key + `"] button[data-slip]`).Each(func(_ int, b *goquery.Selection) { got = append(got, b.AttrOr("data-slip", "")) })
		assert.Equal(t, want, got, key)
	}
}

// The form saves where what is needed ends, before all that is folded away.
func TestSaveStandsBeforeTheFolds(t *testing.T) {
	d, a := fitAnswer(t, nil)
	doc := parsed(t, FitPage(Mitt{ID: 1, Doc: d, Desk: FitDesk, Answer: a}))
	form := doc.Find("#measure-form")
	assert.Equal(t, "Save", form.Find("fieldset.group + button.save").Text())
	assert.True(t, form.Find("button.save").Eq(0).Next().Is("details.group"))
	assert.Equal(t, 1, form.Find("button.save.unscripted").Length())
}

// What is fixed is said above the ladder and in the bar, with a press that
// leads to the slip of each number.
func TestFixedNumbersAreReached(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"pins.gusset_rounds": "20", "pins.increase_rounds": "1, 4, 7, 10, 13, 16"})
	doc := parsed(t, benchFragment(a))
	assert.Equal(t, "2 numbers are fixed:", doc.Find("#fixed p").Text())
	doc.Find("#fixed a").Each(func(_ int, link *goquery.Selection) {
		slip := doc.Find(`details[name="slip"]` + link.AttrOr("href", ""))
		assert.Equal(t, 1, slip.Length(), link.Text())
		assert.Equal(t, 1, slip.Find("summary .pin-mark").Length(), link.Text())
	})
	assert.Equal(t, "increases in", doc.Find("#at-increase_rounds summary .what").Text())
	assert.Equal(t, "1…16", doc.Find("#at-increase_rounds summary b").Text())
	bar := parsed(t, bar(Bar{ID: 3, Fixed: []mitt.Number{mitt.GussetRounds}}))
	assert.Equal(t, "/mitts/3/desk/fit#at-gusset_rounds", bar.Find(".plan-fixed a").AttrOr("href", ""))
}

// A fixed number that brings the whole nearer says which places come nearer,
// which farther, and why the plan chooses otherwise: the hand's count comes
// first. At 25 stitches over 10 cm, 42 stitches are 168 mm and 44 are 176, where
// 18.2 cm less 5 % are 172.9 (worked out by hand).
func TestWhatAFixedNumberMovesIsToldByPlace(t *testing.T) {
	texts := map[string]string{
		"hand.hand_circumference": "18.2", "hand.wrist_circumference": "", "hand.thumb_circumference": "",
		"gauge.swatches[0].stitches": "25", "gauge.swatches[0].rounds": "34", "pins.hand_stitches": "42",
	}
	_, a := fitAnswer(t, texts)
	cost := parsed(t, benchFragment(a)).Find("#cost-hand\\.stitches").Text()
	assert.Contains(t, cost, "Free, it would be 44; fixed, it comes about 13 mm nearer in all.")
	assert.Regexp(t, `Nearer: .*palm with thumb \(as wanted; free: 8 mm looser\).*\. Farther: hand \(5 mm tighter; free: 3 mm looser\)\.`, cost)
	assert.Contains(t, cost, "settles the hand first")
}

// The chance of the whole is said together with why it is low, and every tape
// on the hand bears its name, with a number or without.
func TestTheChanceOfTheWholeIsSaidKindly(t *testing.T) {
	_, a := fitAnswer(t, nil)
	assert.Regexp(t, `^Each place has its chance below\. All of them within 0\.5 cm at once is rarer, \d+\x{a0}%`, a.fitWords())
	hand := parsed(t, benchFragment(a)).Find(".hand")
	assert.Equal(t, "hand 18.6 cm", hand.Find(`.tape[data-field="hand.hand_circumference"] text`).Text())
	assert.Contains(t, hand.Find(`.tape[data-field="hand.palm_and_thumb_circumference"] text`).Text(), "with thumb ≈ ")
}

// Where the other hand of the pair is on the needles by a plan of its own, Fit says in what it
// differs, and leads there.
func TestFitSaysInWhatTheOtherHandDiffers(t *testing.T) {
	d, a := fitAnswer(t, nil)
	d.Sheet.SetProgress(a.Out.Plan.ProgressAt(stitch.Hand, 1), "right")
	d.Sheet["second"] = sheet.Anew
	d.Sheet["hand.gusset_length"] = "8.4"
	d.Side = project.Left
	out, err := project.NewPlanner().Derive(d, chart.Marks{})
	require.NoError(t, err)
	other := parsed(t, planFragment(NewAnswer(d, out, FitDesk, ChartAsk{}, nil))).Find(".other")
	assert.Regexp(t, `^These are the left hand’s numbers. The right hand is on the needles, planned on from round 1 of the hand. It has \d+ rounds of gusset instead of \d+, and more. To the right hand$`, strings.Join(strings.Fields(other.Text()), " "))
	assert.Equal(t, "side=right", other.Find("button").AttrOr("value", ""))
}

// What a plain rhythm costs is said by how far it misses the hand, and never by a miss of
// nothing; the hand's own shape has one name everywhere.
func TestWhatARhythmCostsIsSaidPlainly(t *testing.T) {
	_, a := fitAnswer(t, nil)
	a.Unit = "cm"
	g := &a.Out.Plan.Gusset
	way := func(f mitt.Follow, mean, worst float64) mitt.Way {
		return mitt.Way{Follows: f, Mean: mean, Worst: worst}
	}
	for want, shape := range map[string]mitt.Way{
		"A plain rhythm is easier to remember, but misses your hand by up to 1.3 cm. The hand’s own shape misses it nowhere.": way(mitt.FollowProfile, 0, 0.2),
		"A plain rhythm is easier to remember, but misses your hand by up to 1.3 cm; the hand’s shape by 0.3 cm.":             way(mitt.FollowProfile, 1, 3),
	} {
		g.Ways = []mitt.Way{shape, way(mitt.FollowRhythm, 5, 13)}
		assert.Equal(t, want, a.rhythmCost())
	}
	g.Way = g.Ways[0]
	page := parsed(t, ways(a))
	assert.Equal(t, "The increases, by the hand’s own shape", page.Find("h2").Text())
	assert.Contains(t, page.Find("table").Text(), "the hand’s own shape")
	g.Ways = g.Ways[:1]
	assert.Contains(t, parsed(t, ways(a)).Text(), "They go by your hand as far as it is measured. Measure more of its own shape")
}

// Fit says in one line what became of the motifs, and leads to them; without any it says
// nothing of them. One that came out otherwise than when somebody last looked is to be looked at.
func TestFitSaysWhatBecameOfTheMotifs(t *testing.T) {
	_, a := fitAnswer(t, nil)
	assert.Zero(t, parsed(t, planFragment(a)).Find(".fit-motifs").Length())
	laid := map[string]string{"repeats[0].motif": "bb.", "repeats[0].name": "Flag"}
	_, a = fitAnswer(t, laid)
	a.Fit = "/mitts/4/desk/fit"
	line := parsed(t, planFragment(a)).Find(".fit-motifs")
	assert.Contains(t, line.Text(), "“Flag” lies as it did.")
	assert.NotContains(t, line.Text(), "Look here")
	assert.Equal(t, "/mitts/4/desk/chart#chart-laid", line.Find("a").AttrOr("href", ""))
	laid["repeats[0].was"] = "3 across, 1 up, 0 plain, 0 left"
	_, a = fitAnswer(t, laid)
	assert.Regexp(t, `Look here:\s+a motif lies differently now\.`, parsed(t, planFragment(a)).Find(".fit-motifs").Text())
	laid["repeats[0].off"] = "true"
	_, a = fitAnswer(t, laid)
	assert.Zero(t, parsed(t, planFragment(a)).Find(".fit-motifs").Length())
}
