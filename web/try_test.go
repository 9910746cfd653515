package web

import (
	"bytes"
	"encoding/json"
	"fmt"
	"image"
	"image/color"
	"image/jpeg"
	"mime/multipart"
	"net/http"
	"net/url"
	"os"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// tryOn is a try as the form sends it.
func tryOn(more map[string]string) url.Values {
	form := url.Values{"key": {"k1"}, "date": {"2026-03-01"}, "side": {"right"}, "section": {"gusset"}, "round": {"8"}}
	for name, text := range more {
		form.Set(name, text)
	}
	return form
}

// A try, its corrections with one declined, the mitt going on from there, and
// all of it taken back by one undo.
func TestTryIsAnswered(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	made := a.post(at+"/tries", tryOn(map[string]string{"stitches": "18", "width": "8", "feel.gusset": "1", "feel.cuff": "2", "top": "-4", "note": "pulls"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	try := made.header.Get("Location")
	page := a.get(try).doc()
	assert.Equal(t, 4, page.Find(".correction input[checked]").Length())
	assert.Contains(t, page.Find(".correction").First().Text(), "24.0 stitches × 32.0 rounds over 10 cm")
	assert.NotEmpty(t, page.Find(".onward").Text())

	form := url.Values{"how": {"on"}, "key": {"v1"}, "after": {page.Find(`[name="after"]`).AttrOr("value", "")}}
	for _, key := range []string{"fabric", "gusset", "cuff", "top"} {
		form.Add("offered", key)
		if key != "cuff" {
			form.Add("keep", key)
		}
	}
	for _, contour := range []string{"as-planned", "as-it-will-be"} {
		assert.Equal(t, 1, page.Find(".onward-drawing path."+contour).Length(), contour)
	}
	weighed := a.get(try + "?" + form.Encode()).doc()
	assert.Equal(t, 3, weighed.Find(".correction input[checked]").Length())
	done := a.post(try, form)
	require.Equal(t, http.StatusSeeOther, done.status, done.body)
	assert.Equal(t, at+"/desk/knit?side=right", done.header.Get("Location"))
	require.Equal(t, http.StatusSeeOther, a.post(try, form).status, "sent again, since its answer was lost")

	sheet := a.get(at + "/sheet.json").body
	assert.Contains(t, sheet, `"ease": {`)
	assert.NotContains(t, sheet, `"cuff": -0.`, "it was declined")
	assert.Contains(t, sheet, `"on_needles": true`)
	assert.Contains(t, sheet, `"section": "gusset"`)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 9")
	assert.Contains(t, a.get(at+"/needles").doc().Find("#ahead").Text(), "eplanned after the last try, from round")
	assert.Contains(t, a.desk(at, "fit").doc().Find(".knitted").Text(), "round 8 of the gusset")
	printed := a.desk(at, "pattern").doc()
	assert.Positive(t, printed.Find(".step.changed").Length(), "the changed rounds are marked in the words")
	assert.Positive(t, a.desk(at, "chart").doc().Find("svg[data-chart] path.changed").Length(), "and in the chart")
	said := strings.ReplaceAll(printed.Find(".sheets").Text(), " ", "") // lines of the paper follow on each other
	assert.Contains(t, said, strings.ReplaceAll("A star marks the rounds that the last try changed", " ", ""))
	assert.Positive(t, printed.Find(`.sheet path[stroke="#97331F"]`).Length(), "and on paper")
	tries := a.get(at + "/tries").doc()
	assert.Equal(t, 1, tries.Find(".moments li > p").Length())
	assert.Contains(t, tries.Find(".seen").Text(), "led to: ")
	assert.Contains(t, a.get(try).doc().Find("main").Text(), "3 corrections accepted, 1 declined")

	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":3,"undo":true}`).status)
	assert.NotContains(t, a.get(at+"/sheet.json").body, "on_needles\": true")
	assert.Equal(t, 4, a.get(try).doc().Find(".correction").Length(), "it may be answered again")
}

// Where ripping back is advised it can be followed: the count goes back too.
func TestTryLeadsBack(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	made := a.post(at+"/tries", tryOn(map[string]string{"round": "19", "top": "14"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	page := a.get(made.header.Get("Location")).doc()
	assert.Contains(t, page.Find("main").Text(), "Rip back")
	assert.Contains(t, page.Find("main").Text(), "The time is for a usual pace")
	roads := page.Find(".roads .road").Map(func(_ int, road *goquery.Selection) string {
		return road.Find("h3").Text() + ": " + road.Find(".road-ladder").AttrOr("aria-label", "") + ". " + road.Find(".again").Text()
	})
	require.Len(t, roads, 2, "going on, and ripping back")
	assert.Regexp(t, `^Go on: 19 rounds stay, 0 to come\. Nothing to knit again\.$`, roads[0])
	assert.Regexp(t, `^Rip back \d+ rounds: \d+ rounds? stays?, \d+ ripped, \d+ to come\. To knit again: \d+ rounds of \d+ stitches in all, about \d+ minutes$`, roads[1])
	told := page.Find("ul.leaves")
	require.Equal(t, 2, told.Length(), "what going on leaves off, and what ripping back does")
	assert.Regexp(t, `((narrower|wider) in \d+ of \d+ rounds?|(shorter|longer), \d+ rounds?)`, told.First().Text())
	assert.Regexp(t, `\d+ mm`, told.Last().Text())
	assert.NotEqual(t, told.First().Text(), told.Last().Text())
	form := url.Values{"how": {"rip"}, "key": {"v"}, "after": {"1"}, "keep": {"top"}, "offered": {"top"}}
	require.Equal(t, http.StatusSeeOther, a.post(made.header.Get("Location"), form).status)
	assert.NotContains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 20")
}

// Whoever answers a try later has knitted on: the rest is planned from where
// the count is by then, and a try by itself moves no count.
func TestTryIsAnsweredLater(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"gusset","round":10}`).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"feel.gusset": "1"}))
	require.Equal(t, http.StatusSeeOther, made.status)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 11", "the count is as it was")
	assert.NotContains(t, a.get(made.header.Get("Location")).doc().Find("main").Text(), "Since the try you have knitted")
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"b","side":"right","section":"gusset","round":12}`).status)
	assert.Contains(t, a.get(made.header.Get("Location")).doc().Find("main").Text(), "knitted to round 12 of the gusset")
	form := url.Values{"how": {"on"}, "key": {"v"}, "after": {"1"}}
	require.Equal(t, http.StatusSeeOther, a.post(made.header.Get("Location"), form).status)
	assert.Contains(t, a.get(at+"/sheet.json").body, `"round": 12`)
	assert.Contains(t, a.get(at+"/needles").doc().Find("h2").Text(), "Round 13")
}

// What is knitted of one hand stays, whatever a try of the other one leads to:
// going on, or ripping back to the cast-on.
func TestOtherHandIsKept(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	knitted := func(side string, n int) []any {
		t.Helper()
		req := a.request("GET", at+"/needles?side="+side, "", "")
		req.Header.Set("Accept", "application/json")
		var got struct {
			Nth   int              `json:"nth"`
			Tasks []map[string]any `json:"tasks"`
		}
		require.NoError(t, json.Unmarshal([]byte(a.do(req).body), &got))
		require.Equal(t, n, got.Nth)
		var rounds []any
		for _, r := range got.Tasks[:n] {
			rounds = append(rounds, []any{r["section"], r["before"], r["after"], r["words"], r["changed"]})
		}
		return rounds
	}
	try := func(key, side, section, round, how string, more map[string]string) {
		t.Helper()
		form := tryOn(more)
		form.Set("key", key)
		form.Set("side", side)
		form.Set("section", section)
		form.Set("round", round)
		made := a.post(at+"/tries", form)
		require.Equal(t, http.StatusSeeOther, made.status, made.body)
		page := a.get(made.header.Get("Location")).doc()
		after := page.Find(`[name="after"]`).AttrOr("value", "")
		answered := a.post(made.header.Get("Location"), url.Values{"how": {how}, "key": {"v" + key}, "after": {after}})
		require.Equal(t, http.StatusSeeOther, answered.status, answered.body)
	}
	count := func(key, side, section string, round int) {
		t.Helper()
		body := fmt.Sprintf(`{"key":%q,"side":%q,"section":%q,"round":%d}`, key, side, section, round)
		require.Equal(t, http.StatusOK, a.stroke(at+"/needles", body).status)
	}
	count("a", "right", "gusset", 12)
	count("b", "left", "gusset", 5)
	right := knitted("right", 31)
	try("1", "left", "gusset", "5", "on", map[string]string{"feel.gusset": "2", "stitches": "20", "width": "8.2"})
	assert.Equal(t, right, knitted("right", 31))
	left := knitted("left", 24)
	try("2", "right", "gusset", "12", "on", map[string]string{"feel.gusset": "-2", "top": "6"})
	assert.Equal(t, left, knitted("left", 24))
	right = knitted("right", 31)
	try("3", "left", "gusset", "5", "rip", map[string]string{"feel.cuff": "2"})
	assert.Equal(t, right, knitted("right", 31))
	knitted("left", 0)
}

// What can't be used comes back at its field, with all that was typed.
func TestTryThatIsRefused(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	refused := a.post(at+"/tries", tryOn(map[string]string{"round": "99", "rounds": "12", "note": "kept all the same", "feel.hand": "1"}))
	require.Equal(t, http.StatusBadRequest, refused.status)
	page := refused.doc()
	assert.Contains(t, page.Find(`[data-fault="round"]`).Text(), "write the last round that is knitted")
	assert.Contains(t, page.Find(`[data-fault="stitches"]`).Text(), "count stitches too")
	assert.Equal(t, "kept all the same", page.Find("textarea").Text())
	assert.Equal(t, 1, page.Find(`[name="feel.hand"][value="1"][checked]`).Length())
	assert.Zero(t, page.Find(".moments li").Length())
	silent := a.post(at+"/tries", tryOn(nil))
	require.Equal(t, http.StatusBadRequest, silent.status)
	assert.Contains(t, silent.doc().Find(`[data-fault="feel"]`).Text(), "says nothing yet")
	for _, path := range []string{"/tries/7", "/tries/7/photo", "/tries/x"} {
		assert.Equal(t, http.StatusNotFound, a.get(at+path).status, path)
	}
}

// A count finds the round: the one that is nearest to the count at the needles.
func TestTryByCount(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"gusset","round":8}`).status)
	made := a.post(at+"/tries", tryOn(map[string]string{"round": "", "count": "48", "note": "by count"}))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	assert.Contains(t, a.get(made.header.Get("Location")).doc().Find("h2").Text(), "after round 8 of the gusset")
}

// A photograph is kept upright and without what a camera adds.
func TestPhotoOfATry(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	made := a.upload(at, camera(t))
	require.Equal(t, http.StatusSeeOther, made.status, made.body)
	kept := a.get(made.header.Get("Location") + "/photo")
	require.Equal(t, http.StatusOK, kept.status)
	assert.Equal(t, "image/jpeg", kept.header.Get("Content-Type"))
	assert.NotContains(t, kept.body, "Exif")
	assert.NotContains(t, kept.body, "59 23")
	size, _, err := image.DecodeConfig(strings.NewReader(kept.body))
	require.NoError(t, err)
	assert.Equal(t, []int{20, 40}, []int{size.Width, size.Height}, "turned upright")
	assert.Contains(t, a.get(at+"/tries").doc().Find("img.photo").AttrOr("alt", ""), "2026-03-01")

	refused := a.upload(at, []byte("<svg onload=alert(1)>"))
	require.Equal(t, http.StatusBadRequest, refused.status)
	assert.Contains(t, refused.doc().Find(`[data-fault="photo"]`).Text(), "JPEG or PNG")
	temporary := t.TempDir()
	t.Setenv("TMPDIR", temporary)
	require.Equal(t, http.StatusBadRequest, a.upload(at, make([]byte, 12<<20)).status)
	left, err := os.ReadDir(temporary)
	require.NoError(t, err)
	assert.Empty(t, left, "nothing of a large one stays on the disk")
}

// camera is a picture that lies on its side, with the tag that says so (Exif
// 2.3, orientation 6: the camera was turned) and a place in its text.
func camera(t *testing.T) []byte {
	t.Helper()
	picture := image.NewRGBA(image.Rect(0, 0, 40, 20))
	picture.Set(3, 3, color.White)
	var b bytes.Buffer
	require.NoError(t, jpeg.Encode(&b, picture, nil))
	exif := []byte("Exif\x00\x00MM\x00*\x00\x00\x00\x08\x00\x01\x01\x12\x00\x03\x00\x00\x00\x01\x00\x06\x00\x00\x00\x00\x00\x00 59 23 N")
	head := append([]byte{0xff, 0xd8, 0xff, 0xe1, 0, byte(len(exif) + 2)}, exif...)
	return append(head, b.Bytes()[2:]...)
}

// upload sends a try with a photograph.
func (a *served) upload(at string, picture []byte) answer {
	a.t.Helper()
	var b bytes.Buffer
	form := multipart.NewWriter(&b)
	for name, text := range map[string]string{"key": fmt.Sprintf("p%x", picture[:1]), "date": "2026-03-01", "side": "right", "section": "gusset", "round": "8"} {
		require.NoError(a.t, form.WriteField(name, text))
	}
	part, err := form.CreateFormFile("photo", "mitt.jpg")
	require.NoError(a.t, err)
	_, err = part.Write(picture)
	require.NoError(a.t, err)
	require.NoError(a.t, form.Close())
	return a.do(a.request("POST", at+"/tries", form.FormDataContentType(), b.String()))
}

// Two accepted tries make a habit, which another mitt may use, and which can
// be taken off.
func TestHabitsOnThePage(t *testing.T) {
	a := newApp(t)
	for range 2 {
		at := a.sample()
		made := a.post(at+"/tries", tryOn(map[string]string{"section": "hand", "round": "2", "feel.hand": "1"}))
		require.Equal(t, http.StatusSeeOther, made.status)
		require.Equal(t, http.StatusSeeOther, a.post(made.header.Get("Location"), url.Values{"how": {"on"}, "key": {"v"}, "after": {"1"}}).status)
	}
	undone := a.sample()
	made := a.post(undone+"/tries", tryOn(map[string]string{"section": "hand", "round": "2", "feel.hand": "2"}))
	require.Equal(t, http.StatusSeeOther, a.post(made.header.Get("Location"), url.Values{"how": {"on"}, "key": {"v"}, "after": {"1"}}).status)
	back := a.post(made.header.Get("Location")+"/back", nil)
	assert.Equal(t, undone+"/desk/try?back=1#line", back.header.Get("Location"))
	list := a.get(undone + "/tries?back=1").doc()
	assert.Contains(t, list.Find("[role=status]").Text(), "planned as it was before that try")
	assert.Contains(t, list.Find(".moments").Text(), "taken back")

	next := a.sample()
	page := a.get(next + "/tries").doc()
	assert.Contains(t, page.Find(".habits").Text(), "You wear hands 1.6\u00a0% looser than the usual: learned from 2 accepted tries")
	require.Equal(t, http.StatusSeeOther, a.post(next+"/habits", nil).status)
	assert.Contains(t, a.get(next+"/sheet.json").body, `"hand": -0.034`)
	assert.Contains(t, a.get(next+"/tries").doc().Find("main").Text(), "has its own eases there already")
	require.Equal(t, http.StatusSeeOther, a.post(next+"/habits/hand/remove", nil).status)
	assert.Zero(t, a.get(next+"/tries").doc().Find(".habits").Length())
	assert.Equal(t, http.StatusNotFound, a.post(next+"/habits/heel/remove", nil).status)
}

// A try that was noted by mistake is put out of the way, and taken out again;
// one whose corrections are in the mitt is not.
func TestTryIsSetAside(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	made := a.post(at+"/tries", tryOn(map[string]string{"feel.gusset": "1"})).header.Get("Location")
	require.Equal(t, http.StatusSeeOther, a.post(made+"/aside", nil).status)
	assert.Contains(t, a.get(at+"/tries").doc().Find("details summary").Text(), "Put away (1)")
	require.Equal(t, http.StatusSeeOther, a.post(made+"/aside", url.Values{"aside": {"false"}}).status)
	assert.NotContains(t, a.get(at+"/tries").doc().Find("details summary").Text(), "Put away")
	require.Equal(t, http.StatusSeeOther, a.post(made, url.Values{"how": {"on"}, "key": {"v"}, "after": {"1"}}).status)
	assert.Equal(t, http.StatusConflict, a.post(made+"/aside", nil).status)
}

// A try asks only about what is knitted, and names what is not.
func TestTryAsksAboutWhatIsKnitted(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	for count, want := range map[string]struct{ asked, unfelt string }{
		`"section":"cuff","round":3`:     {"cuff", "palm at the gusset, palm at the thumb, hand, thumb: not knitted yet"},
		`"section":"gusset","round":8`:   {"cuff gusset", "palm at the thumb, hand, thumb: not knitted yet"},
		`"section":"gusset","round":20`:  {"cuff gusset parting", "hand, thumb: not knitted yet"},
		`"section":"hand","round":12`:    {"cuff gusset parting hand", "thumb: not knitted yet"},
		`"section":"hand","round":2000`:  {"cuff gusset parting hand", "thumb: not knitted yet"},
		`"section":"thumb","round":1`:    {"cuff gusset parting hand thumb", ""},
		`"section":"thumb","round":2000`: {"cuff gusset parting hand thumb", ""},
	} {
		require.Equal(t, http.StatusOK, a.stroke(at+"/needles", fmt.Sprintf(`{"key":%q,"side":"right",%s}`, strings.NewReplacer(`"`, "", ":", "", ",", "").Replace(count), count)).status)
		page := a.get(at + "/tries").doc()
		var asked []string
		page.Find(".feel:not([hidden]) input[value='0']").Each(func(_ int, field *goquery.Selection) {
			asked = append(asked, strings.TrimPrefix(field.AttrOr("name", ""), "feel."))
		})
		assert.Equal(t, want.asked, strings.Join(asked, " "), count)
		assert.Equal(t, want.unfelt, page.Find("[data-unfelt]").Text(), count)
		sits := page.Find("fieldset[data-felt]:not(.feel)")
		_, hidden := sits.Attr("hidden")
		assert.Equal(t, want.asked == "cuff", hidden, "where the gusset sits, %s", count)
	}
	refused := a.post(at+"/tries", tryOn(map[string]string{"feel.hand": "1"}))
	require.Equal(t, http.StatusBadRequest, refused.status)
	assert.Contains(t, refused.doc().Find(`[data-fault="feel.hand"]`).Text(), "is not knitted yet, with the work in the gusset")
}

// Two tries stand side by side, what differs marked.
func TestTriesSideBySide(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusSeeOther, a.post(at+"/tries", tryOn(map[string]string{"note": "first"})).status)
	require.Equal(t, http.StatusSeeOther, a.post(at+"/tries", tryOn(map[string]string{"key": "k2", "note": "second", "feel.cuff": "0"})).status)
	page := a.get(at + "/tries?beside=1&beside=2").doc()
	assert.Contains(t, page.Find("tr.differs").Text(), "first")
	assert.Contains(t, page.Find("tr.differs").Text(), "second")
	assert.Contains(t, page.Find("tr.differs").Text(), "right")
}

// The drawing is of the round that is asked for, which need not be the one that
// is counted.
func TestTheDrawingFollowsTheRound(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	cuff := a.get(at + "/desk/try").doc()
	hand := a.get(at + "/desk/try?section=hand&round=12").doc()
	assert.Equal(t, 0, cuff.Find("svg .seat").Length(), "the gusset is not begun")
	assert.Equal(t, 2, hand.Find("svg .seat").Length())
	assert.Equal(t, "Right hand, after round 12 of the hand", hand.Find("[data-stands]").Text())
	assert.True(t, cuff.Find("details.stands").Is("[open]"), "asked where the work is not known")
	assert.False(t, hand.Find("details.stands").Is("[open]"))
	order := func(side string) (list []string) {
		a.get(at + "/desk/try?side=" + side).doc().Find(`.feel[data-zone="cuff"] input`).Each(func(_ int, s *goquery.Selection) { list = append(list, s.AttrOr("value", "")) })
		return list
	}
	assert.Equal(t, []string{"2", "1", "0", "-1", "-2"}, order("right"), "tight is at the left, as on the drawing")
	assert.Equal(t, []string{"-2", "-1", "0", "1", "2"}, order("left"))
}
