package web

import (
	"encoding/csv"
	"encoding/xml"
	"image/png"
	"net/http"
	"net/url"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// Chart and words as files: they hold what was painted, and a mitt that can't
// be planned says so.
func TestFiles(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sample()
	for desk, link := range map[string]string{"chart": `[formaction="` + at + `/chart.csv"]`, "pattern": `a[href^="` + at + `/words.txt"]`} {
		assert.Equal(t, 1, a.desk(at, desk).doc().Find(link).Length(), link)
	}
	svg := a.get(at + "/chart.svg")
	require.Equal(t, http.StatusOK, svg.status)
	assert.Contains(t, svg.header.Get("Content-Disposition"), "attachment")
	var root struct {
		XMLName xml.Name
		Width   string `xml:"width,attr"`
	}
	require.NoError(t, xml.Unmarshal([]byte(svg.body), &root))
	assert.True(t, strings.HasSuffix(root.Width, "mm"))

	lines, err := csv.NewReader(strings.NewReader(a.get(at + "/chart.csv").body)).ReadAll()
	require.NoError(t, err)
	assert.Len(t, lines, 20, "a line for each round of the gusset")
	assert.Contains(t, a.get(at+"/words.txt").body, "Thumb gusset\n")
	some := a.get(at + "/words.txt?section=gusset&from=2&to=3")
	assert.Equal(t, "Thumb gusset\n", some.body[:len("Thumb gusset\n")])
	assert.Contains(t, some.body, "Rounds 2–3")
	assert.NotContains(t, some.body, "Round 1")
	assert.Equal(t, http.StatusBadRequest, a.get(at+"/words.txt?section=gusset&from=900&to=901").status)

	picture, err := png.Decode(strings.NewReader(a.get(at + "/chart.png?view=hand&layout=columns").body))
	require.NoError(t, err)
	assert.Greater(t, picture.Bounds().Dx(), picture.Bounds().Dy(), "all round it is wider than high")
	hand, err := csv.NewReader(strings.NewReader(a.get(at + "/chart.csv?view=hand").body)).ReadAll()
	require.NoError(t, err)
	assert.Greater(t, len(hand), len(lines), "the hand stands on the gusset")

	after := a.form(at).Get("after")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "kind": {"mitten_without_thumb"}}).status)
	assert.Equal(t, http.StatusOK, a.get(at+"/chart.csv").status, "the hand, where there is no gusset")
	assert.Equal(t, http.StatusOK, a.get(at+"/words.txt").status)
	after = a.form(at).Get("after")
	require.Equal(t, http.StatusSeeOther, a.post(at, url.Values{"after": {after}, "hand.hand_circumference": {"wide"}}).status)
	assert.Equal(t, http.StatusBadRequest, a.get(at+"/words.txt").status)
}
