package view

import (
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/project"
)

// A moment says when it was and what it changed, and has its name first; what
// can be done with it is named for it, and a name is given behind one press.
func TestEarlierMoments(t *testing.T) {
	doc := parsed(t, HistoryPage(History{ID: 3, Doc: project.New("Hazel"), Moments: []Past{
		{Revision: 5, At: "14:03", What: "hand 18.6 → 18.9", Newest: true},
		{Revision: 2, At: "yesterday, 9:12", What: "begun", Name: "before the try"},
	}}))
	assert.Equal(t, "Earlier", doc.Find("main h2").Text())
	items := doc.Find("ol.moments > li")
	assert.Equal(t, []string{"14:03 hand 18.6 → 18.9 as it is now", "yesterday, 9:12 begun"}, texts(items.Find("p")))
	assert.Equal(t, []string{"before the try"}, texts(items.Find(".moment-name")))
	assert.Equal(t, []string{"Give it a name", "Name it otherwise"}, texts(items.Find("summary")))
	assert.Equal(t, "/mitts/3/history/2", items.Eq(1).Find(`a[aria-label="Look at it: yesterday, 9:12, begun"]`).AttrOr("href", ""))
	assert.Equal(t, "before the try", items.Eq(1).Find("details input[name=name]").AttrOr("value", ""))
}
