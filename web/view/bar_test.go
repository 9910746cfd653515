package view

import (
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/project"
)

// The tape is a landmark with a name, and leads to the desks in the order of the
// work. It marks the page it stands on, and for a side room the desk that the
// room belongs to (WAI-ARIA 1.2, aria-current).
func TestTape(t *testing.T) {
	for _, present := range desks {
		for _, room := range []bool{false, true} {
			tape := parsed(t, tape(Bar{ID: 7, Desk: present.Desk, Room: room})).Find("nav")
			assert.Equal(t, "Desks", tape.AttrOr("aria-label", ""))
			marks := tape.Find("a")
			assert.Equal(t, []string{"Fit", "Chart", "Pattern", "Knit", "Try on"}, texts(marks))
			marks.Each(func(i int, a *goquery.Selection) {
				assert.Equal(t, desks[i].Desk.At(7), a.AttrOr("href", ""))
				want := ""
				if desks[i] == present && room {
					want = "true"
				} else if desks[i] == present {
					want = "page"
				}
				assert.Equal(t, want, a.AttrOr("aria-current", ""), "%s on the page of %s", desks[i].Desk, present.Desk)
				_, led := a.Attr("aria-keyshortcuts")
				assert.Equal(t, want != "", led, "F8 leads to the present desk")
				for _, attribute := range a.Nodes[0].Attr {
					assert.Contains(t, []string{"href", "aria-current", "aria-keyshortcuts"}, attribute.Key)
				}
			})
		}
	}
}

// The bar says, in this order: the way to the shelf, the mitt's name, the hands,
// the plan, and when it was saved.
func TestBarInOrder(t *testing.T) {
	b := Bar{ID: 7, Name: "Rust <b>", Desk: ChartDesk, Line: []planNumber{{"cast on ", "36", mitt.CastOn}}, Saved: "14:03", Sides: bothSides(project.Left, false)}
	doc := parsed(t, bar(b))
	head := doc.Find("header")
	assert.Equal(t, []string{"Shelf", "Rust <b>", "right hand", "left hand", "cast on 36", "saved 14:03"}, texts(head.Find(".home, h1, .sides > *, .plan-line, #saved")))
	assert.Equal(t, 1, doc.Find("h1").Length(), "the name is the heading of the page")
	assert.Equal(t, "status", head.Find("#saved").AttrOr("role", ""), "it is read out when it changes")
	assert.Equal(t, 1, head.NextFiltered("nav").Length(), "the tape hangs from the bar")

	hands := head.Find(`.sides[role="group"][aria-label="Hand"] button`)
	assert.Equal(t, []string{"false", "true"}, hands.Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("aria-pressed", "") }))
	assert.Equal(t, []string{"side=right", "side=left"}, hands.Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("value", "") }))
	assert.Equal(t, "measure-form", hands.AttrOr("form", ""), "a press saves with the mitt's form, also without a script")

	b.Sides, b.Desk = bothSides(project.Left, true), KnitDesk
	own := parsed(t, bar(b)).Find(`.sides form[action="/mitts/7/hand"]`)
	assert.Equal(t, []string{"false", "true"}, own.Find("button").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("aria-pressed", "") }))
	assert.Equal(t, []string{"right", "left"}, own.Find("button").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("value", "") }))
	assert.Equal(t, "knit", own.Find(`[name="to"]`).AttrOr("value", ""), "it comes back to its desk")

	room := parsed(t, bar(roomBar(7, "Rust", FitDesk)))
	assert.Zero(t, room.Find(".sides, #saved").Length(), "a side room shows no hand, and has nothing to save")
	assert.Empty(t, texts(room.Find(".plan-line"))[0])
}

// Behind the name lies what concerns the mitt as a whole: each act is reached by
// its words, and every form says where it goes without a script.
func TestBehindTheName(t *testing.T) {
	doc := parsed(t, bar(Bar{ID: 7, Name: "Rust", Desk: KnitDesk}))
	drop := doc.Find("header details.behind")
	assert.Equal(t, []string{"Rust"}, texts(drop.ChildrenFiltered("summary")))
	assert.Equal(t, []string{
		"Earlier", "Second thoughts: a change beside it", "Bring the yarns of another mitt", "Save it as a file, to keep or to move",
	}, texts(drop.Find("a")))
	assert.Equal(t, []string{"/mitts/7/history", "/mitts/7/what-if", "/mitts/7/yarns", "/mitts/7/export.json"},
		drop.Find("a").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("href", "") }))
	acts := map[string]string{}
	drop.Find(`form[method="post"]`).Each(func(_ int, f *goquery.Selection) {
		acts[texts(f.Find("button"))[0]] = f.AttrOr("action", "")
	})
	assert.Equal(t, map[string]string{
		"Keep the name": "/mitts/7/name", "Begin": "/mitts/7/begin", "Copy it": "/mitts/7/copy", "Put it away": "/mitts/7/archive",
	}, acts)
	assert.Equal(t, "Begin another from it", texts(drop.Find(`[action="/mitts/7/begin"]`).Parent().Find("summary"))[0])

	name := drop.Find(`.rename input[name="name"]`)
	assert.Equal(t, []string{"Rust", "120"}, []string{name.AttrOr("value", ""), name.AttrOr("maxlength", "")})
	assert.Equal(t, "Name", strings.TrimSpace(name.Closest("label").Text()))
	assert.Equal(t, "knit", drop.Find(`.rename [name="to"]`).AttrOr("value", ""), "it comes back to this desk")
	assert.NotEqual(t, "Rust", drop.Find(`[action="/mitts/7/begin"] [name="name"]`).AttrOr("value", ""), "another mitt has another name")
}

// An answer to the form brings each part of the bar that follows from it, to the
// place that the bar has for it.
func TestBarFollowsTheForm(t *testing.T) {
	b := Bar{ID: 7, Name: "Rust", Desk: FitDesk, Line: []planNumber{{"cast on ", "36", mitt.CastOn}}, Sides: bothSides(project.Right, false)}
	page, answer := parsed(t, bar(b)), parsed(t, barFragments(b))
	parts := answer.Find("[data-fragment]")
	require.Equal(t, 4, parts.Length())
	parts.Each(func(_ int, part *goquery.Selection) {
		place := page.Find(`[data-fragment="` + part.AttrOr("data-fragment", "") + `"]`)
		require.Equal(t, 1, place.Length())
		assert.Equal(t, texts(place), texts(part))
	})
}
