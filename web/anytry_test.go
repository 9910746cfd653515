package web

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"net/http"
	"net/url"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/require"

	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/tryon"
)

// knitter does what people do with a mitt, in any order: count, try on,
// answer, rip back, undo, go back, turn the pair, change the measures.
type knitter struct {
	*served
	rng  *rand.Rand
	at   string
	keys int
	down bool // the mitt is worked from the fingertips

	rounds int // about as many as it has
}

// Whatever is done in whatever order, every page can be opened, nothing fails
// inside, and no answer that a page offers is refused.
func TestAnyTries(t *testing.T) {
	for seed := range uint64(testenv.Cases(4, 25)) {
		t.Run(strconv.FormatUint(seed, 10), func(t *testing.T) {
			t.Parallel()
			k := &knitter{served: newApp(t), rng: rand.New(rand.NewPCG(seed, 9))}
			k.at = k.sample()
			if k.down = seed%3 > 0; k.down {
				form := k.form(k.at)
				form.Set("piece.direction", "down")
				form.Set("kind", []string{"fingerless", "mitten"}[seed/3%2])
				if seed%3 == 2 {
					form.Set("piece.flat", "true")
				}
				k.must(k.post(k.at, form))
			}
			if k.rounds = 70; seed%6 == 3 {
				form := k.form(k.at)
				form.Set("kind", "glove")
				k.must(k.post(k.at, form))
				k.rounds = 260
			}
			for range testenv.Cases(20, 60) {
				k.step()
				for _, page := range []string{"/desk/fit", "/desk/chart", "/desk/pattern", "/desk/knit?side=left", "/desk/knit?side=right", "/desk/try"} {
					got := k.get(k.at + page)
					if got.status != http.StatusOK {
						require.Fail(t, "the page can't be opened", "%s: %d %s", page, got.status, got.doc().Find(".message").Text())
					}
				}
			}
			require.Equal(t, http.StatusOK, k.get("/").status)
		})
	}
}

func (k *knitter) step() {
	k.t.Helper()
	switch k.rng.IntN(11) {
	case 0, 1:
		k.must(k.post(k.at+"/needles", url.Values{"side": {k.side()}, "nth": {strconv.Itoa(k.rng.IntN(k.rounds))}}))
	case 2, 3, 4, 5:
		k.tryOn()
	case 6:
		head := k.get(k.at + "/chart").doc().Text()
		_, revision, _ := strings.Cut(head, `"revision":`)
		revision, _, _ = strings.Cut(revision, ",")
		k.keeping(func() {
			got := k.stroke(k.at+"/chart", fmt.Sprintf(`{"after":%s,%q:true}`, revision, []string{"undo", "undo", "redo"}[k.rng.IntN(3)]))
			require.Contains(k.t, []int{http.StatusOK, http.StatusConflict}, got.status, got.body)
		})
	case 7:
		moments := k.get(k.at + "/history").doc().Find(".moment-tools > a")
		link := moments.Eq(k.rng.IntN(moments.Length())).AttrOr("href", "")
		k.keeping(func() { k.must(k.post(link, nil)) })
	case 8:
		form := k.form(k.at)
		form.Set("side", k.side())
		form.Set("second", []string{"", "anew"}[k.rng.IntN(2)])
		k.keeping(func() { k.must(k.post(k.at, form)) })
	case 10:
		k.takeBack()
	case 9:
		form := k.form(k.at)
		form.Set("hand.hand_circumference", fmt.Sprintf("%.1f", 17+4*k.rng.Float64()))
		k.keeping(func() { k.must(k.post(k.at, form)) })
		if k.rng.IntN(3) == 0 {
			form = k.form(k.at)
			form.Set("worked.section", "") // let go
			k.must(k.post(k.at, form))
		}
	}
}

func (k *knitter) side() string { return []string{"right", "left"}[k.rng.IntN(2)] }

func (k *knitter) must(got answer) {
	k.t.Helper()
	if got.status != http.StatusSeeOther {
		require.Fail(k.t, "it is not taken", "%d %s", got.status, got.doc().Find("main").Text())
	}
}

// tryOn notes a try as the page's own form offers it, and answers it as the
// page that follows does.
func (k *knitter) tryOn() {
	k.t.Helper()
	side := k.side()
	page := k.get(k.at + "/desk/try?side=" + side).doc()
	parts := page.Find("#try-section option")
	if parts.Length() == 0 {
		require.Fail(k.t, "there is always a plan", k.desk(k.at, "fit").doc().Find(".in-the-way").Text())
	}
	part := parts.Eq(k.rng.IntN(parts.Length()))
	_, most, _ := strings.Cut(part.Text(), ", ")
	most, _, _ = strings.Cut(most, " ") // rounds, or rows
	rounds, err := strconv.Atoi(most)
	require.NoError(k.t, err)
	k.keys++
	form := url.Values{
		"key": {fmt.Sprint("t", k.keys)}, "date": {"2026-03-01"}, "side": {side}, "section": {part.AttrOr("value", "")},
		"round": {strconv.Itoa(1 + k.rng.IntN(rounds))}, "note": {"as it is"},
	}
	for _, zone := range tryon.KnittedZones(stitch.Part(part.AttrOr("value", "")), false, k.down) {
		asked := page.Find(`[name="feel.`+string(zone)+`"]`).Length() > 0 // a mitten has no fingers
		if asked && k.rng.IntN(2) == 0 {
			form.Set("feel."+string(zone), strconv.Itoa(k.rng.IntN(5)-2))
		}
		length, _ := zone.EndField()
		if page.Find(`[name="`+length+`"]`).Length() > 0 && k.rng.IntN(3) == 0 {
			form.Set(length, strconv.Itoa(k.rng.IntN(13)-6))
		}
	}
	if k.rng.IntN(2) == 0 {
		form.Set("stitches", "18")
		form.Set("width", fmt.Sprintf("%.1f", 7+k.rng.Float64()))
	}
	for _, end := range []string{"base", "top"} {
		if k.rng.IntN(3) == 0 {
			form.Set(end, strconv.Itoa(k.rng.IntN(13)-6))
		}
	}
	made := k.post(k.at+"/tries", form)
	if made.status == http.StatusBadRequest { // the other hand, begun anew, may have fewer rounds
		require.NotEmpty(k.t, made.doc().Find(`[data-fault="round"]`).Text(), made.doc().Find("main").Text())
		return
	}
	k.must(made)
	k.answer(made.header.Get("Location"))
}

func (k *knitter) answer(try string) {
	k.t.Helper()
	page := k.get(try)
	require.Equal(k.t, http.StatusOK, page.status)
	form := url.Values{}
	page.doc().Find("#answer-form input").Each(func(_ int, field *goquery.Selection) {
		name, kind := field.AttrOr("name", ""), field.AttrOr("type", "")
		if kind == "hidden" || k.rng.IntN(4) > 0 {
			form.Add(name, field.AttrOr("value", ""))
		}
	})
	weighed := k.get(try + "?" + form.Encode()).doc()
	ways := weighed.Find(`button[name="how"]`)
	if ways.Length() == 0 || k.rng.IntN(5) == 0 {
		return // left for later
	}
	form.Set("how", ways.Eq(k.rng.IntN(ways.Length())).AttrOr("value", ""))
	k.keeping(func() { k.must(k.post(try, form)) })
}

// takeBack goes back to before a try, as the page offers it.
func (k *knitter) takeBack() {
	k.t.Helper()
	ways := k.get(k.at + "/desk/try").doc().Find(`form[action$="/back"]`)
	if ways.Length() == 0 {
		return
	}
	to := ways.Eq(k.rng.IntN(ways.Length())).AttrOr("action", "")
	k.keeping(func() { k.must(k.post(to, nil)) })
}

// keeping holds a step to change no round that is knitted, of either hand, as
// far as it is not ripped back by it.
func (k *knitter) keeping(step func()) {
	k.t.Helper()
	before := map[string][]string{"right": k.knitted("right"), "left": k.knitted("left")}
	step()
	for side, was := range before {
		is, nth := k.reached(side)
		n := min(len(was), nth)
		require.Equal(k.t, was[:n], is[:n], "%s hand: what is knitted stays", side)
	}
}

// yarnTaken is the length of yarn that an edge takes, an estimate which follows the
// fabric as it is measured, and no stitch that is knitted.
var yarnTaken = regexp.MustCompile(`, leaving a tail of [^.;]*| It takes about [^;]*`)

// knitted are the rounds of a hand that are on the needles.
func (k *knitter) knitted(side string) []string {
	k.t.Helper()
	list, nth := k.reached(side)
	return list[:nth]
}

// reached are all rounds of a hand, and how many are knitted.
func (k *knitter) reached(side string) (list []string, nth int) {
	k.t.Helper()
	req := k.request("GET", k.at+"/desk/knit?side="+side, "", "")
	req.Header.Set("Accept", "application/json")
	var got struct {
		Nth   int `json:"nth"`
		Tasks []struct {
			Section, Words string
			Before, After  int
		} `json:"tasks"`
	}
	require.NoError(k.t, json.Unmarshal([]byte(k.do(req).body), &got))
	for _, r := range got.Tasks {
		list = append(list, fmt.Sprint(r.Section, r.Before, r.After, yarnTaken.ReplaceAllString(r.Words, "")))
	}
	return list, got.Nth
}
