package web

import (
	"fmt"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// many is a class of so many students, as its address.
func (a *served) many(n int) string {
	a.t.Helper()
	path := a.class()
	var table strings.Builder
	table.WriteString("name,hand,stitches,rounds\n")
	for i := range n {
		fmt.Fprintf(&table, "Student %d,%.1f,%d,%d\n", i+1, 16+float64(i%60)/10, 20+i%12, 28+i%14)
	}
	require.Less(a.t, a.table(path, table.String(), nil).status, http.StatusBadRequest)
	return path
}

// A large class is printed in parts: thirty on a page, a hundred in a PDF, each
// with its own summary; the page offers all of them, laid out as it is.
func TestClassSetInParts(t *testing.T) {
	a := newApp(t)
	path := a.many(130)
	const plain = "pieces=own&paper=letter"
	page := a.get(path + "/print?" + plain)
	require.Equal(t, http.StatusOK, page.status)
	text := page.doc().Find(".sheets").Text()
	assert.Contains(t, text, "Student 30 · page 1")
	assert.NotContains(t, text, "Student 31 · page 1")
	assert.Contains(t, text, "These are students 1–30 of 130.")
	var links []string
	for _, link := range page.doc().Find(".print-parts a").EachIter() {
		links = append(links, link.Text())
		got := a.get(link.AttrOr("href", ""))
		require.Equal(t, http.StatusOK, got.status)
		if strings.HasPrefix(link.AttrOr("href", ""), path+"/print?") {
			assert.Contains(t, got.doc().Find(".sheets").Text(), "These are "+link.Text()+" of 130.")
			assert.Contains(t, got.doc().Find(`[name="paper"][checked]`).AttrOr("value", ""), "letter")
			assert.Equal(t, got.doc().Find(`.print-parts [aria-current]`).Text(), link.Text())
		} else {
			assert.True(t, strings.HasPrefix(got.body, "%PDF-"))
		}
	}
	assert.Equal(t, []string{
		"students 1–100", "students 101–130",
		"students 1–30", "students 31–60", "students 61–90", "students 91–120", "students 121–130",
	}, links)
	for query, says := range map[string]string{
		"/print.pdf": "a PDF holds at most 100: ask for 1-100", "/print.pdf?students=20-130": "ask for 20-119", "/print?students=x": "write the first and the last place",
		"/print?students=131-140": "the list ends with 130",
	} {
		got := a.get(path + query)
		assert.Equal(t, http.StatusBadRequest, got.status, query)
		assert.Contains(t, got.doc().Text(), says, query)
	}
	small := a.class()
	a.table(small, tuesday, nil)
	assert.Zero(t, a.get(small+"/print").doc().Find(".print-parts").Length())
}
