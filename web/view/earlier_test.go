package view

import (
	"testing"
	"time"

	"github.com/stretchr/testify/assert"

	"thenar/internal/app"
	"thenar/internal/chart"
	"thenar/internal/project"
)

// A moment says when it was and what it changed, and has its name first; what
// can be done with it is named for it, and a name is given behind one press. It
// is looked at where it changed something.
func TestEarlierMoments(t *testing.T) {
	now := time.Date(2026, 3, 8, 20, 0, 0, 0, time.Local) // a Sunday
	moments := []Past{
		{Revision: 5, Time: now.Add(-6 * time.Hour), At: "14:00", What: "hand 18.6 → 18.9", Rest: []string{"thumb 6.3 → 6.5"}, Newest: true},
		{Revision: 4, Time: now.Add(-7 * time.Hour), At: "13:00", What: "14 stitches rust in the hand", View: chart.TubeView},
		{Revision: 2, Time: now.AddDate(0, 0, -1), At: "20:00", What: "begun", Name: "before the try"},
	}
	doc := parsed(t, HistoryPage(History{ID: 3, Doc: project.New("Hazel"), Sittings: sittings(moments, now), Named: namedMoments(moments, app.History{})}))
	assert.Equal(t, "Earlier", doc.Find("main h2").Text())
	assert.Equal(t, []string{"With a name", "This afternoon", "Yesterday evening"}, texts(doc.Find("main h3")), "what was named stands first")
	items := doc.Find("ol.moments > li")
	assert.Equal(t, []string{"14:00 hand 18.6 → 18.9 as it is now", "13:00 14 stitches rust in the hand", "20:00 begun"}, texts(items.Find("p")))
	assert.Equal(t, []string{"before the try"}, texts(items.Find(".moment-name")))
	assert.Equal(t, []string{"What else", "Give it a name", "Give it a name", "Change its name"}, texts(items.Find("summary")))
	assert.Equal(t, []string{"thumb 6.3 → 6.5"}, texts(items.Find("details li")))
	assert.Equal(t, "/mitts/3/history/4?view=hand", items.Eq(1).Find("a").AttrOr("href", ""))
	assert.Equal(t, "/mitts/3/history/2", items.Eq(2).Find(`a[aria-label="Look at it: 20:00, begun"]`).AttrOr("href", ""))
	assert.Equal(t, "before the try", items.Eq(2).Find("details input[name=name]").AttrOr("value", ""))
}

// The parts of a day are spoken of as a knitter would.
func TestPartsOfDays(t *testing.T) {
	now := time.Date(2026, 3, 8, 20, 0, 0, 0, time.Local)
	for _, c := range []struct {
		at         time.Time
		when, date string
	}{
		{now, "This evening", ""},
		{now.Add(-9 * time.Hour), "This morning", ""},
		{now.Add(-16 * time.Hour), "Tonight", ""},
		{now.AddDate(0, 0, -1).Add(-4 * time.Hour), "Yesterday afternoon", ""},
		{now.AddDate(0, 0, -7).Add(-4 * time.Hour), "Sunday afternoon", "1 March"},
		{now.AddDate(-1, 0, 0), "Saturday evening", "8 March 2025"},
	} {
		when, date := partOfDay(c.at, now)
		assert.Equal(t, c.when+"|"+c.date, when+"|"+date)
	}
}
