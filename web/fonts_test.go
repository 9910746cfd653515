package web

import (
	"io/fs"
	"net/http"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/static"
)

func fontFiles(t *testing.T, ending string) []string {
	t.Helper()
	names, err := fs.Glob(static.FS, "fonts/*"+ending)
	require.NoError(t, err)
	require.NotEmpty(t, names)
	return names
}

// Fonts are kept by the browser for good, and their licences can be read beside
// them, as the SIL Open Font License asks. The kind is that of RFC 8081.
func TestFontsAreServedWithTheirLicences(t *testing.T) {
	a := newApp(t)
	for _, name := range fontFiles(t, ".woff2") {
		r := a.get(static.URL(name))
		assert.Equal(t, http.StatusOK, r.status)
		assert.Equal(t, "font/woff2", r.header.Get("Content-Type"))
		assert.Contains(t, r.header.Get("Cache-Control"), "immutable")
		assert.True(t, strings.HasPrefix(r.body, "wOF2"))
	}
	for _, name := range fontFiles(t, ".txt") {
		r := a.get(static.URL(name))
		assert.Equal(t, "text/plain; charset=utf-8", r.header.Get("Content-Type"))
		assert.Contains(t, r.body, "SIL OPEN FONT LICENSE Version 1.1")
	}
	assert.Equal(t, http.StatusNotFound, a.get(static.URL("fonts/SourceSans3-Regular.ttf")).status, "no page needs it")
}

// The content policy lets pages load the fonts, and Chromium can read them.
func TestBrowserReadsTheFonts(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.open("/")
	for _, name := range fontFiles(t, ".woff2") {
		status := await[string](b, `new FontFace("face", 'url("`+static.URL(name)+`")').load().then(face => face.status, error => String(error))`)
		assert.Equal(t, "loaded", status, name)
	}
}
