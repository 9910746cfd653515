package view

import (
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/tryon"
)

// onShelf returns a planned mitt as it stands on the shelf, on the needles if a
// round of its gusset is next.
func onShelf(t *testing.T, id int64, name string, gusset int) app.Shelved {
	t.Helper()
	doc := project.Samples()[0]
	doc.Name = name
	out, err := project.NewPlanner().Derive(doc, chart.Marks{})
	require.NoError(t, err)
	m := app.Shelved{ID: id, Doc: doc, Plan: out.Plan, Changed: time.Now()}
	for _, task := range tryon.Tasks(out.Mitt) {
		if task.Part == "gusset" && task.Round == gusset {
			m.Next = &app.NextTask{Task: task, Side: project.Right, Mitt: out.Mitt}
		}
	}
	return m
}

// Those on the needles come first, then the others as they were changed; each
// has its name, where its knitting is, what it is and its plan, and one press
// leads to it.
func TestShelfPutsTheNeedlesFirst(t *testing.T) {
	away := onShelf(t, 4, "Old ones", 0)
	away.Doc.Archived = true
	bare := app.Shelved{ID: 3, Doc: project.New("Not measured"), Changed: time.Now()}
	doc := parsed(t, ShelfPage(NewShelf([]app.Shelved{onShelf(t, 1, "Hazel", 0), away, bare, onShelf(t, 2, "Bus stop", 5)})))
	items := doc.Find("main > .mitts > .mitt-item:not(.anew)")
	assert.Equal(t, []string{"Bus stop", "Hazel", "Not measured"}, texts(items.Find("h2")))
	for i, want := range []string{"/mitts/2", "/mitts/1", "/mitts/3"} {
		assert.Equal(t, want, items.Eq(i).Find("h2 a").AttrOr("href", ""))
		assert.Equal(t, want, items.Eq(i).Find("a.picture").AttrOr("href", ""))
	}
	next := items.Eq(0).Find(".next a")
	assert.Equal(t, "round 23 of 60, gusset, right hand", next.Text())
	assert.Equal(t, "/mitts/2/desk/knit", next.AttrOr("href", ""))
	assert.Zero(t, items.Eq(1).Find(".next").Length())
	assert.Equal(t, 1, items.Find("svg .to-come").Length(), "what is not knitted yet is dashed")
	assert.Contains(t, items.Eq(1).Text(), "cast on 36 · hand 42 · gusset 3→15 in 20 · thumb 18")
	assert.Equal(t, []string{"Old ones"}, texts(doc.Find("details.archive h2")))
	assert.Equal(t, []string{"Shelf", "Classes", "Blank sheets", "Count check", "This computer"}, texts(doc.Find(`nav[aria-label="House"] a`)))
}

// What can be done with a mitt is behind one press, and named for it; a form that
// opens there stands below what opened it.
func TestShelfActsAreBehindOnePress(t *testing.T) {
	doc := parsed(t, ShelfPage(NewShelf([]app.Shelved{onShelf(t, 1, "Hazel", 0)})))
	item := doc.Find(".mitt-item:not(.anew)")
	assert.Zero(t, item.Find("button, input").Not("details button, details input").Length())
	more := item.Find("details.acts")
	assert.Equal(t, "More for Hazel", more.Find("summary").First().AttrOr("aria-label", ""))
	assert.Equal(t, []string{"Keep the name", "Begin", "Copy it", "Put it away"}, texts(more.Find("button")))
	begin := more.Find(`summary[aria-label="Begin another from Hazel"]`)
	assert.Equal(t, "/mitts/1/begin", begin.NextAllFiltered("form").AttrOr("action", ""))
}

// An empty shelf has a hand, life-size, and the ways to begin.
func TestEmptyShelf(t *testing.T) {
	doc := parsed(t, ShelfPage(NewShelf(nil)))
	assert.Equal(t, "Lay your hand here.", doc.Find("h1").Text())
	assert.True(t, strings.HasSuffix(doc.Find(".life-size svg").AttrOr("width", ""), "mm"))
	assert.Equal(t, []string{"Start with a hand", "Look at a sample mitt"}, texts(doc.Find(".begin button")))
}

// Mitts of one name are told apart by when they were saved.
func TestMittsOfOneNameAreToldApart(t *testing.T) {
	doc := parsed(t, ShelfPage(NewShelf([]app.Shelved{onShelf(t, 1, "Hazel", 0), onShelf(t, 2, "Hazel", 0), onShelf(t, 3, "Bus stop", 0)})))
	items := doc.Find("main > .mitts > .mitt-item:not(.anew)")
	for i, told := range []bool{true, true, false} {
		assert.Equal(t, told, strings.Contains(items.Eq(i).Find(".about > p").First().Text(), ", saved "), i)
	}
}
