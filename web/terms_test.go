package web

import (
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

// read returns everything that a page says: its text, and what its attributes
// say to those who can't see it. The choice of the terms themselves is left out.
func (r answer) read() string {
	r.t.Helper()
	doc := r.doc()
	doc.Find(`script, style, [name="terms"], svg [data-op]`).Remove()
	said := []string{doc.Find("body").Text()}
	for _, name := range []string{"aria-label", "title", "placeholder"} {
		doc.Find("[" + name + "]").Each(func(_ int, s *goquery.Selection) { said = append(said, s.AttrOr(name, "")) })
	}
	return strings.Join(strings.Fields(strings.Join(said, " ")), " ")
}

// TestPagesSpeakOneSidesTerms opens the desks, the words and the tasks of three
// kinds of mitt in the terms of either side, and looks for words of the other.
func TestPagesSpeakOneSidesTerms(t *testing.T) {
	t.Parallel()
	for _, kind := range []string{"fingerless", "mitten", "mitten_without_thumb"} {
		for _, side := range []struct {
			terms        string
			own, foreign *regexp.Regexp
		}{{"us", testenv.OfUS, testenv.OfUK}, {"uk", testenv.OfUK, testenv.OfUS}} {
			a := newApp(t)
			at := a.sample()
			form := a.get(at + "/desk/fit").form()
			form.Set("kind", kind)
			form.Set("terms", side.terms)
			form.Set("stitch.rib", "1")
			form.Set("pins.cast_on", "28")
			form.Set("gauge.swatches[0].washed", "false")
			require.Equal(t, http.StatusSeeOther, a.post(at, form).status)
			said := map[string]string{}
			for _, desk := range []string{"fit", "chart", "pattern", "knit", "try"} {
				said[desk] = a.get(at + "/desk/" + desk).read()
			}
			said["words"], said["shelf"] = a.get(at+"/words.txt").body, a.get("/").read()
			for _, nth := range []string{"39", "51", "52", "63"} { // where the parts begin and end
				a.post(at+"/needles", url.Values{"side": {"right"}, "nth": {nth}})
				said["needles"] += a.get(at+"/desk/knit?side=right").read() + a.get("/").read()
			}
			var all string
			for where, text := range said {
				assert.Empty(t, side.foreign.FindAllString(text, -1), "%s: %s in %s", where, kind, side.terms)
				all += text
			}
			assert.Regexp(t, side.own, all)
			if kind == "fingerless" {
				assert.Regexp(t, side.own, said["needles"], "the edges")
			}
			assert.Contains(t, a.get(at+"/sheet.json").body, `"terms": "`+side.terms+`"`)
		}
	}
}
