package web

import (
	"bytes"
	"image"
	"image/color"
	"image/png"
	"net/http"
	"net/url"
	"regexp"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// plainPicture is a picture in one colour, 30 dots wide and 20 high.
func plainPicture(t *testing.T, c color.Color) []byte {
	t.Helper()
	img := image.NewRGBA(image.Rect(0, 0, 30, 20))
	for i := range 600 {
		img.Set(i%30, i/30, c)
	}
	var b bytes.Buffer
	require.NoError(t, png.Encode(&b, img))
	return b.Bytes()
}

// Photographs of one's own and those of tries stand on the pages, in the PDF and in the file
// of HTML, the first on the title page, each with its caption; they move with the mitt to
// another computer, and with a copy of it.
func TestPhotographsOfAPatternByForms(t *testing.T) {
	t.Parallel()
	a := newApp(t)
	at := a.sixSizes()
	mitt := strings.TrimSuffix(at, "/design")
	require.Contains(t, a.get(at).doc().Find("#photographs ~ p").Text(), "drawn")
	red, blue := plainPicture(t, color.RGBA{0xC0, 0x10, 0x10, 0xFF}), plainPicture(t, color.RGBA{0x10, 0x10, 0xC0, 0xFF})
	require.Equal(t, http.StatusSeeOther, a.sendFile(at+"/photo", "red.png", red).status)
	require.Equal(t, http.StatusSeeOther, a.sendFile(at+"/photo", "blue.png", blue).status)
	require.Equal(t, http.StatusBadRequest, a.sendFile(at+"/photo", "red again.png", red).status)
	require.Equal(t, http.StatusBadRequest, a.sendFile(at+"/photo", "none.svg", []byte("<svg onload=alert(1)>")).status)
	require.Equal(t, http.StatusBadRequest, a.post(at+"/photo", nil).status)
	require.Equal(t, http.StatusNotFound, a.get(at+"/photo/0123456789abcdef").status)
	require.Equal(t, http.StatusSeeOther, a.upload(mitt, camera(t)).status)
	try := a.get(at).doc().Find(".tried-photos button").AttrOr("value", "")
	require.NotEmpty(t, try)
	require.Equal(t, http.StatusSeeOther, a.post(at+"/photo", url.Values{"try": {try}}).status)

	doc := a.get(at).doc()
	names := doc.Find(".pattern-photos input").Map(func(_ int, s *goquery.Selection) string { return s.AttrOr("value", "") })
	require.Len(t, names, 3)
	onPages := func() (list []string) {
		for _, m := range regexp.MustCompile(`href="`+at+`/photo/([0-9a-f]{16})"`).FindAllStringSubmatch(a.get(at).body, -1) {
			list = append(list, m[1])
		}
		return list
	}
	assert.Equal(t, names, onPages())
	got := a.get(at + "/photo/" + names[0])
	assert.Equal(t, "image/jpeg", got.header.Get("Content-Type"))
	assert.True(t, strings.HasPrefix(got.body, "\xff\xd8"))
	assert.NotContains(t, a.get(at+"/photo/"+names[2]).body, "59 23 N", "where it was taken stays with whoever took it")

	form := url.Values{"caption 1": {"Red as a rowan"}, "caption 2": {"Blue"}, "stamp": {doc.Find(`.pattern-texts [name="stamp"]`).AttrOr("value", "")}}
	require.Equal(t, http.StatusSeeOther, a.post(at+"/texts", form).status)
	require.Equal(t, http.StatusSeeOther, a.post(at+"/photo/move", url.Values{"name": {names[1]}, "to": {"first"}}).status)
	assert.Equal(t, []string{names[1], names[0], names[2]}, onPages())
	doc = a.get(at).doc()
	assert.Contains(t, doc.Find(".sheet svg").First().AttrOr("aria-label", ""), "Blue", "what stands on the title page is told")
	assert.Equal(t, "Red as a rowan", doc.Find(".pattern-photos img").Eq(1).AttrOr("alt", ""), "a caption goes with its photograph")
	pdf := a.get(at + "/print.pdf").body
	assert.Len(t, regexp.MustCompile(`(?m) image .* jpeg `).FindAllString(pdfText(t, pdf, "pdfimages", "-list", "FILE"), -1), 3)
	file := a.get(at + "/words.html").doc()
	assert.Equal(t, 3, file.Find(`figure img[src^="data:image/jpeg;base64,"][alt]`).Length())

	other := newApp(t)
	require.Equal(t, http.StatusOK, other.sendFile("/import", "mitt.json", []byte(a.get(mitt+"/export.json").body)).status)
	there := regexp.MustCompile(`/mitts/\d+`).FindString(other.get("/").body)
	assert.Equal(t, 3, strings.Count(other.get(there+"/design").body, `href="`+there+`/design/photo/`))
	assert.Equal(t, a.get(at+"/photo/"+names[0]).body, other.get(there+"/design/photo/"+names[0]).body)
	copied := a.post(mitt+"/copy", nil).header.Get("Location")
	copied = regexp.MustCompile(`/mitts/\d+`).FindString(copied)
	assert.Equal(t, 3, strings.Count(a.get(copied+"/design").body, `href="`+copied+`/design/photo/`))

	require.Equal(t, http.StatusSeeOther, a.post(at+"/photo/move", url.Values{"name": {names[1]}, "to": {"out"}}).status)
	assert.Equal(t, []string{names[0], names[2]}, onPages())
}
