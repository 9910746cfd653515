package web

import (
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

const slipping = `Sizes: S (M)
CO 42 (46) sts and join. Knit 5 rnds.
Rnd 6: *K2, p2; rep from * around.
Rnd 7: Knit. 42 (45) sts.
Rnd 8: K10, k2tgo, k to end.
BO all sts.`

// Without a script: pasted instructions are counted, and shown with their slips underlined and
// told beside them; what was typed stays; what is no text, or no gauge, is told at its field.
func TestCountCheckByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	require.Contains(t, a.get("/").doc().Find("nav").Text(), "Count check")
	require.Equal(t, "Count check", a.get("/check").doc().Find("h1").Text())

	got := a.post("/check", url.Values{"text": {slipping}, "stitches": {"24"}, "rounds": {"32"}})
	require.Equal(t, http.StatusOK, got.status)
	doc := got.doc()
	assert.Equal(t, slipping, strings.TrimPrefix(doc.Find("textarea").Text(), "\n"))
	lines := doc.Find(".check-text li")
	require.Equal(t, 6, lines.Length())
	assert.Equal(t, "Rnd 8: K10, k2tgo, k to end.", lines.Eq(4).Text(), "the text is there as it was pasted")
	assert.Equal(t, "k2tgo", lines.Eq(4).Find("a").Text())
	assert.Equal(t, "#found-4", lines.Eq(4).Find("a").AttrOr("href", ""))
	found := doc.Find(".check-found ol > li")
	require.Equal(t, 3, found.Length())
	assert.Contains(t, found.Eq(1).Text(), "Line 4 · size M · round 7")
	assert.Contains(t, found.Eq(1).Text(), "There are 46 stitches, not 45.")
	assert.Contains(t, found.Eq(2).Text(), "Is k2tog meant?")

	whole := a.post("/check", url.Values{"text": {"CO 40 sts.\nRnds 1–32: Knit.\nBO all 40 sts."}, "stitches": {"20"}, "rounds": {"32"}}).doc()
	assert.Equal(t, "All counts come out: 32 rounds.", whole.Find("#found-head").Text())
	assert.Contains(t, whole.Find(".check-found table").Text(), "20 cm / 7⅞ in round", "40 stitches at 2 a centimetre")
	assert.Contains(t, whole.Find(".check-found table").Text(), "10 cm / 3⅞ in long")

	rows := doc.Find(`.check-found [aria-label="Table of the yarn"] tbody tr`)
	require.Equal(t, 2, rows.Length())
	assert.Equal(t, "S, one", rows.Eq(0).Find("th").Text())
	assert.Equal(t, "open: not everything was counted", rows.Eq(0).Find("td").Text())
	ball := a.post("/check", url.Values{"text": {"CO 40 sts.\nRnds 1–32: Knit.\nBO all 40 sts."}, "stitches": {"24"}, "rounds": {"32"}, "ball_grams": {"50"}, "ball_metres": {"175"}}).doc()
	cells := ball.Find(`[aria-label="Table of the yarn"] tbody tr`).Eq(0).Find("td")
	// 1280 loops of √(21.6/0.0768) = 16.771 mm, 9 widths of 40/0.24 mm, two ends of 200 mm: 23.37 m; 6.7 g of 50 g / 175 m. Worked by hand.
	assert.Regexp(t, `^23 \(2[01] to 26\)$`, cells.Eq(0).Text())
	assert.Regexp(t, `^7 \([56] to 8\)$`, cells.Eq(2).Text())
	assert.Contains(t, ball.Find(".check-found").Text(), "From the gauge, by loop geometry")

	got = a.post("/check", url.Values{"text": {" "}})
	require.Equal(t, http.StatusUnprocessableEntity, got.status)
	assert.Contains(t, got.doc().Find("#fault-text").Text(), "is empty")
	got = a.post("/check", url.Values{"text": {slipping}, "stitches": {"tight"}})
	require.Equal(t, http.StatusUnprocessableEntity, got.status)
	assert.Contains(t, got.doc().Find("#fault-stitches").Text(), `is "tight"; write a number`)
	assert.Equal(t, slipping, strings.TrimPrefix(got.doc().Find("textarea").Text(), "\n"), "nothing typed is lost")
}

// A mitten as a leaflet may have it, of our own invention: 40 stitches, a gusset of 2 to 14
// stitches, a bridge of 2, a rounded top.
const leaflet = `A mitten for a walk
CO 40 sts and join.
Rnds 1–12: *K2, p2; rep from * around.
Rnds 13–16: Knit.
Rnd 17: M1, k2, m1, k to end. 42 sts.
Rnds 18–19: Knit.
Rnd 20: M1, k4, m1, k to end. 44 sts.
Rnds 21–22: Knit.
Rnd 23: M1, k6, m1, k to end. 46 sts.
Rnds 24–25: Knit.
Rnd 26: M1, k8, m1, k to end. 48 sts.
Rnds 27–28: Knit.
Rnd 29: M1, k10, m1, k to end. 50 sts.
Rnds 30–32: Knit.
Rnd 33: Place next 12 sts on waste yarn, CO 2 sts, k to end. 40 sts.
Rnds 34–50: Knit.
Rnd 51: (Ssk, k16, k2tog) twice. 36 sts.
Rnd 52: Knit.
Rnd 53: (Ssk, k14, k2tog) twice. 32 sts.
Rnd 54: Knit.
Rnd 55: (Ssk, k12, k2tog) twice. 28 sts.
Rnd 56: Knit.
Rnd 57: (Ssk, k10, k2tog) twice. 24 sts.
Rnd 58: (Ssk, k8, k2tog) twice. 20 sts.
Rnd 59: (Ssk, k6, k2tog) twice. 16 sts.
Rnd 60: (Ssk, k4, k2tog) twice. 12 sts.
Rnd 61: (Ssk, k2, k2tog) twice. 8 sts.
Cut yarn and draw through the 8 sts left.
Thumb
Return 12 held sts to needles.
Rnd 1: K12, pick up and knit 4. 16 sts.
Rnds 2–16: Knit.
Rnd 17: K2tog around. 8 sts.
Rnd 18: Knit.
Rnd 19: K2tog around. 4 sts.
Cut yarn and draw through the 4 sts left.
`

// What is a mitt is offered as one, with its numbers and their lines; opened, it has them as
// fixed numbers, its name from the text, and a hand that the fabric fits. What is none says
// why, and nothing typed is lost.
func TestCheckOpensAMitt(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	typed := url.Values{"text": {leaflet}, "stitches": {"22"}, "rounds": {"30"}}
	doc := a.post("/check", typed).doc()
	require.Equal(t, "All counts come out: 80 rounds.", doc.Find("#found-head").Text())
	assert.Contains(t, doc.Find(".check-found").Text(), "It is a mitten of ours: its plan has the same counts in all 80 rounds.")
	rows := doc.Find(`[aria-label="Table of the mitt’s numbers"] tbody tr`)
	text := rows.Text()
	for _, want := range []string{"Cast on", "Gusset base", "Held for the thumb", "Picked up", "from the fabric"} {
		assert.Contains(t, text, want)
	}
	assert.Equal(t, "#line-2", rows.First().Find("a").AttrOr("href", ""), "the cast-on’s line")
	opened := a.post("/check/mitt", typed)
	require.Equal(t, http.StatusSeeOther, opened.status)
	at := opened.header.Get("Location")
	sheet := a.get(at + "/sheet.json").body
	for _, want := range []string{`"cast_on": 40`, `"hand_stitches": 40`, `"held": 12`, `"bridge": 2`, `"picked_up": 4`, `"thumb_rounds": 19`, `"kind": "mitten"`} {
		assert.Contains(t, sheet, want)
	}
	assert.Contains(t, a.get(at).doc().Find("title").Text()+a.get("/").body, "A mitten for a walk")

	got := a.post("/check/mitt", url.Values{"text": {slipping}, "stitches": {"22"}})
	require.Equal(t, http.StatusUnprocessableEntity, got.status)
	assert.Contains(t, got.doc().Find(".check-found").Text(), "It can’t be opened as a mitt: not every round is told stitch by stitch")
	assert.Equal(t, slipping, strings.TrimPrefix(got.doc().Find("textarea").Text(), "\n"))
	sizes := a.post("/check", url.Values{"text": {slipping}, "stitches": {"22"}, "mitt_size": {"M"}}).doc().Find(`select[name="mitt_size"] option`)
	require.Equal(t, 2, sizes.Length())
	assert.Equal(t, "M", sizes.Filter("[selected]").Text(), "each size can be looked at")
	got = a.post("/check/mitt", url.Values{"text": {leaflet}})
	require.Equal(t, http.StatusUnprocessableEntity, got.status)
	assert.Contains(t, got.doc().Find(".check-found").Text(), "is missing; write stitches and rounds on 10 cm")
}

// The pattern's own words come out, in all sizes.
func TestOwnPatternIsCounted(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	mitt := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(mitt+"/design/fill", glove("6", "11")).status)
	require.NotEmpty(t, a.get(mitt+"/design").doc().Find(`a[href="`+mitt+`/design/check"]`).Text())
	doc := a.get(mitt + "/design/check").doc()
	assert.Regexp(t, `^All counts come out: 6 sizes, \d{2,} to \d{2,} rounds each\.$`, doc.Find("#found-head").Text())
}

// In a browser, on a desk and a phone: a text is pasted and counted, axe-core finds nothing,
// nothing is wider than the phone, and each finding leads to its line.
func TestCountCheckInABrowser(t *testing.T) {
	t.Parallel()
	axe, err := os.ReadFile(testenv.File(t, "THENAR_AXE"))
	require.NoError(t, err)
	b := newBrowser(t)
	check(b, string(axe), "check", "/check")
	b.asBegun()
	b.open("/check")
	b.do(chromedp.SetValue(chromedp.CSS(`.check textarea`), slipping))
	b.follow(`.check-form .main-action`)
	b.until(`document.querySelectorAll(".slipped").length === 3`)
	b.shot("check-found")
	b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
	assert.Empty(t, await[[]string](b, strings.Replace(violations, "%t", "false", 1)))
	b.do(chromedp.Click(chromedp.CSS(`#found-3 a`)))
	b.until(`location.hash === "#line-4"`)
	b.phone()
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	assert.Empty(t, eval[[]string](b, lowTargets))
	b.shot("check-found-phone")

	b.asBegun()
	b.open("/check")
	b.do(chromedp.SetValue(chromedp.CSS(`.check textarea`), leaflet), chromedp.SetValue(chromedp.CSS(`[name="stitches"]`), "22"), chromedp.SetValue(chromedp.CSS(`[name="rounds"]`), "30"))
	b.follow(`.check-form .main-action`)
	b.until(`!!document.querySelector(".check-open .main-action")`)
	b.shot("check-mitt")
	b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
	assert.Empty(t, await[[]string](b, strings.Replace(violations, "%t", "false", 1)))
	b.phone()
	assert.LessOrEqual(t, eval[int](b, `document.documentElement.scrollWidth`), 360)
	assert.Empty(t, eval[[]string](b, lowTargets))
	b.shot("check-mitt-phone")
	b.scheme("dark")
	b.do(chromedp.Evaluate[chromedp.Void](string(axe)))
	assert.Empty(t, await[[]string](b, strings.Replace(violations, "%t", "false", 1)))
	b.shot("check-mitt-dark")
	b.follow(`.check-open .main-action`)
	b.until(`location.pathname.startsWith("/mitts/")`)
}
