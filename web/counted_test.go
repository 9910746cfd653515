package web

import (
	"fmt"
	"net/http"
	"net/url"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// taken is what requests took of the file, and how many plans they made.
type taken struct{ reads, writes, plans, searched int }

func (a *served) taken(ask func()) taken {
	read, wrote := a.store.Transactions()
	made := a.handler.app.Plans()
	ask()
	reads, writes := a.store.Transactions()
	now := a.handler.app.Plans()
	return taken{int(reads - read), int(writes - wrote), now.Plans - made.Plans, now.Searched - made.Searched}
}

// What a person does costs one read and one write at most, and no more plans
// than it needs: each bound is what the thing takes, and one more would be a
// read, a write or a plan made twice.
func TestWhatARequestTakes(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	revision := func() string { return a.form(at).Get("after") }
	form := a.form(at)
	typed := func(hand string) url.Values {
		form.Set("after", revision())
		form.Set("hand.hand_circumference", hand)
		return form
	}
	fine := func(got answer) {
		t.Helper()
		require.Less(t, got.status, http.StatusBadRequest, got.body)
	}
	check := func(what string, most taken, ask func()) {
		t.Helper()
		is := a.taken(ask)
		t.Logf("%-44s %d reads %d writes %d plans %d searched", what, is.reads, is.writes, is.plans, is.searched)
		assert.LessOrEqual(t, is.reads, most.reads, "%s: reads", what)
		assert.LessOrEqual(t, is.writes, most.writes, "%s: writes", what)
		assert.LessOrEqual(t, is.plans, most.plans, "%s: plans", what)
	}
	edit := func(key, value string) string {
		return fmt.Sprintf(`{"after":1,"key":%q,"edits":[{"section":"gusset","round":3,"column":"A1","layer":"stitch","value":%q}]}`, key, value)
	}
	save := func(hand string) func() {
		form := typed(hand)
		return func() { fine(a.post(at, form)) }
	}
	for _, of := range []struct {
		what, key           string
		begin               func()
		try, save           string // sizes of the hand
		page, preview, kept taken
	}{
		{
			"nothing is knitted", "a", func() {}, "19.3", "19.4",
			taken{reads: 1, plans: 1},
			taken{reads: 1, plans: 1},
			taken{reads: 1, writes: 1},
		},
		{
			"a hand is on the needles", "b",
			func() { fine(a.post(at+"/needles", url.Values{"side": {"right"}, "nth": {"50"}})) },
			"21", "22",
			taken{reads: 1, plans: 1},
			taken{reads: 1, plans: 2}, // as typed, and with what is knitted in it
			taken{reads: 1, writes: 1, plans: 1},
		},
	} {
		of.begin()
		check(of.what+": which desk", of.page, func() { fine(a.do(a.request("GET", at, "", ""))) })
		for _, name := range deskNames {
			check(of.what+": at "+name, of.page, func() { fine(a.desk(at, name)) })
		}
		body := typed(of.try)
		check(of.what+": a typed number", of.preview, func() { fine(a.post(at+"/preview", body)) })
		check(of.what+": saving it", of.kept, save(of.save))
		check(of.what+": a stroke of cells", taken{writes: 1}, func() { fine(a.stroke(at+"/chart", edit(of.key, "p"))) })
		check(of.what+": undoing it", taken{reads: 1, writes: 1}, func() { fine(a.stroke(at+"/chart", `{"after":1,"undo":true}`)) })
		check(of.what+": a count by a script", taken{writes: 1}, func() {
			fine(a.stroke(at+"/needles", fmt.Sprintf(`{"key":%q,"side":"left","section":"","round":0}`, of.key)))
		})
		check(of.what+": a note at the needles", taken{writes: 1}, func() {
			fine(a.stroke(at+"/needles", fmt.Sprintf(`{"key":"n%s","side":"right","section":"gusset","round":3,"note":"x"}`, of.key)))
		})
	}
	check("a count by a form", taken{reads: 1, writes: 1, plans: 1}, func() {
		fine(a.post(at+"/needles", url.Values{"side": {"right"}, "nth": {"51"}}))
	})
	// The marks of mitts whose picture is not drawn yet are read for themselves.
	check("the shelf", taken{reads: 2, plans: 1}, func() { fine(a.get("/")) })
	check("the needles", taken{reads: 1}, func() { fine(a.desk(at, "knit")) })
	check("the tries", taken{reads: 1}, func() { fine(a.desk(at, "try")) })
	var try string
	check("noting a try", taken{reads: 1, writes: 1}, func() {
		made := a.post(at+"/tries", tryOn(map[string]string{"section": "hand", "round": "8", "feel.hand": "1", "feel.gusset": "1"}))
		fine(made)
		try = made.header.Get("Location")
	})
	var answer url.Values
	check("opening a try", taken{reads: 1, plans: 4}, func() {
		page := a.get(try)
		fine(page)
		answer = page.fields("#answer-form")
	})
	answer.Set("how", "on")
	answer.Del("keep")
	check("answering a try", taken{reads: 1, writes: 1, plans: 5}, func() { fine(a.post(try, answer)) })
	check("an answered try's mitt", taken{reads: 1, plans: 1}, func() { fine(a.desk(at, "fit")) })
	check("its pattern", taken{reads: 1, plans: 1}, func() { fine(a.desk(at, "pattern")) })
	body := typed("23")
	check("a number typed after it", taken{reads: 1, plans: 2}, func() { fine(a.post(at+"/preview", body)) })
	check("taking it back", taken{reads: 1, writes: 1}, func() { fine(a.post(try+"/back", nil)) })
	check("setting it aside", taken{reads: 1, writes: 1}, func() { fine(a.post(try+"/aside", nil)) })
	check("bringing a moment back", taken{reads: 1, writes: 1, plans: 2}, func() { fine(a.post(at+"/history/2", nil)) })
	check("the history", taken{reads: 1}, func() { fine(a.get(at + "/history")) })
	check("what if", taken{reads: 1, plans: 1}, func() { fine(a.get(at + "/what-if")) })
	check("renaming", taken{reads: 1, writes: 1}, func() { fine(a.post(at+"/name", url.Values{"name": {"Grey"}})) })
	check("beginning from it", taken{reads: 1, writes: 1}, func() { fine(a.post(at+"/begin", nil)) })
	check("others' yarns", taken{reads: 1}, func() { fine(a.get(at + "/yarns")) })
	check("copying", taken{reads: 1, writes: 1}, func() { fine(a.post(at+"/copy", nil)) })
}
