package view

import (
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/tryon"
)

// triesWith returns the page of a mitt's tries with a try in its form.
func triesWith(t *testing.T, try tryon.Try, faults fault.Fields) *goquery.Document {
	t.Helper()
	return triesOf(t, "fingerless", try, faults)
}

// triesOf is triesWith for a mitt of a kind.
func triesOf(t *testing.T, kind string, try tryon.Try, faults fault.Fields) *goquery.Document {
	t.Helper()
	d := project.New("Mitts")
	d.Sheet["kind"] = kind
	for path, text := range map[string]string{"hand.hand_circumference": "19", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"} {
		d.Sheet[path] = text
	}
	out, err := project.NewPlanner().Derive(d, chart.Marks{})
	require.NoError(t, err)
	try.Side = "right"
	return shown(t, TriesPage(NewTries(app.Tries{ID: 7, Doc: d, Plan: out.Plan, Places: tryon.Places(out.Mitt), Form: try}, faults)))
}

// Where the gusset sits is a length, and a choice between too high and too low:
// a sign is never asked for. One that was typed with a sign is shown in the new
// way, and so is what was refused.
func TestTryAsksTooHighOrTooLow(t *testing.T) {
	page := triesWith(t, tryon.Try{Section: "gusset", Round: "8", Base: "-3", Top: "5", TopWay: "up"}, fault.Fields{{Path: "top", Message: "choose one"}})
	for _, end := range []struct{ name, legend, length, way string }{{"base", "Its base", "3", "low"}, {"top", "Its top", "5", ""}} {
		group := page.Find("fieldset.end").Has("#try-" + end.name)
		require.Equal(t, 1, group.Length(), end.name)
		assert.Contains(t, group.Find("legend").Text(), end.legend)
		assert.Equal(t, end.length, group.Find("#try-"+end.name).AttrOr("value", ""))
		assert.Equal(t, end.legend+" is off by", group.Find("label[for=try-"+end.name+"]").Text(), "the field has a name")
		var ways []string
		group.Find(`[type="radio"][name="` + end.name + `_way"]`).Each(func(_ int, s *goquery.Selection) {
			ways = append(ways, s.Parent().Find("span").Text()+" "+s.AttrOr("value", ""))
		})
		assert.Equal(t, []string{"too high high", "too low low"}, ways)
		assert.Equal(t, end.way, group.Find("[checked]").AttrOr("value", ""))
	}
	assert.Equal(t, "choose one", page.Find(`[data-fault="top"]`).Text())
	assert.Equal(t, 1, page.Find(`input[name="ways"]`).Length(), "the form says that it asks so")
	assert.NotContains(t, page.Find("#try-form").Text(), "−", "no sign")
}

// Each zone that is knitted has its five stops in words, and a tape of the same
// name on the drawing; one that is not has neither in view.
func TestTapesGoWithTheWords(t *testing.T) {
	page := triesWith(t, tryon.Try{Section: "gusset", Round: "8", Feel: map[tryon.Zone]string{tryon.Gusset: "1"}}, nil)
	tapes := page.Find("svg .pull").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("data-name", "") })
	assert.Equal(t, []string{"cuff", "gusset", "parting", "hand"}, tapes, "from the cast-on up")
	for _, name := range tapes {
		scale := page.Find(`.feel[data-zone="` + name + `"]`)
		assert.Equal(t, 5, scale.Find(`[type="radio"]`).Length(), name)
		_, hidden := scale.Attr("hidden")
		assert.Equal(t, name == "parting" || name == "hand", hidden, name)
	}
	assert.Equal(t, "a little tight", page.Find("[checked]").Parent().Find("span").Text())
	assert.Equal(t, "img", page.Find(".pulling svg").AttrOr("role", ""))
	assert.Equal(t, 1, triesWith(t, tryon.Try{Section: "thumb", Round: "3"}, nil).Find(`svg .pull[data-name="thumb"]`).Length())
	order := page.Find("main").Find(".caution-first, .pulling, #try-form").Map(func(_ int, s *goquery.Selection) string { return goquery.NodeName(s) })
	assert.Equal(t, []string{"div", "div", "form"}, order, "caution before all")
}

// The tries of a glove ask about each finger once it is begun, how it feels and how long
// it is; the lengths of a mitten are not asked.
func TestTriesOfAGloveAskFingerByFinger(t *testing.T) {
	page := triesOf(t, "glove", tryon.Try{Section: "ring", Round: "4", Ends: map[tryon.Zone]string{tryon.Little: "-3"}}, nil)
	var felt, ends []string
	page.Find(".feel:not([hidden])").Each(func(_ int, s *goquery.Selection) { felt = append(felt, s.AttrOr("data-zone", "")) })
	assert.Equal(t, []string{"cuff", "gusset", "parting", "hand", "little", "upper_hand", "ring"}, felt)
	assert.Equal(t, "middle finger, index finger, thumb: not knitted yet", page.Find("[data-unfelt]").Text())
	page.Find("[data-end]:not([hidden])").Each(func(_ int, s *goquery.Selection) { ends = append(ends, s.AttrOr("data-end", "")) })
	assert.Equal(t, []string{"hand", "little", "upper_hand", "ring"}, ends)
	little := page.Find(`[data-end="little"]`)
	assert.Equal(t, "3", little.Find("#try-end\\.little").AttrOr("value", ""))
	assert.Equal(t, "short", little.Find("[checked]").AttrOr("value", ""))
	assert.Equal(t, "against its tip", little.Find(".help").Text(), "it is knitted")
	assert.Regexp(t, `^against its tip: [0-9]+ mm are still to be knitted$`, page.Find(`[data-end="ring"] .help`).Text())

	capped := map[string]string{"kind": "glove", "fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", mitt.PathCap: "true"}
	for at, left := range map[[2]string]string{{"thumb", "4"}: "", {"cap", "4"}: ": [0-9]+ mm are still to be knitted", {"cap_top", "1"}: ": [0-9]+ mm are still to be knitted", {"cap_top", "999"}: ""} {
		d, a := fitAnswer(t, capped)
		tries := Tries{Doc: d, Plan: a.Out.Plan, Places: tryon.Places(a.Out.Mitt), Form: TryForm{Try: tryon.Try{Side: "right", Section: at[0], Round: at[1]}}}
		page, begun := parsed(t, TriesPage(tries)), at[0] != "thumb"
		shown := map[bool]int{true: 1}[begun]
		assert.Equal(t, shown, page.Find(`.feel[data-zone="cap"]:not([hidden])`).Length(), "%v", at)
		assert.Equal(t, shown, page.Find(`[data-end="cap"]:not([hidden])`).Length(), "%v", at)
		assert.Equal(t, shown, page.Find(`svg .pull[data-name="cap"]`).Length(), "%v", at)
		assert.Regexp(t, "^against the tip of the middle finger"+left+"$", page.Find(`[data-end="cap"] .help`).Text(), "%v", at)
		assert.Equal(t, "cap cap_top", page.Find(`.feel[data-zone="cap"]`).AttrOr("data-felt", ""))
	}

	mitten := triesOf(t, "mitten", tryon.Try{Section: "thumb", Round: "4"}, nil)
	assert.Zero(t, mitten.Find("[data-end]").Length())
	assert.Zero(t, mitten.Find(`.feel[data-zone="ring"]`).Length())
}
