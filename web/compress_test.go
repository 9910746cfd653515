package web

import (
	"compress/gzip"
	"io"
	"net/http"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// taking fetches a path as a client that takes these encodings, and reads the
// body as it came.
func (a *served) taking(encodings, path string) answer {
	a.t.Helper()
	req := a.request("GET", path, "", "")
	req.Header["Accept-Encoding"] = []string{encodings} // set by hand, it is not decoded either
	return a.do(req)
}

// zipped decodes a response that came as gzip.
func (r answer) zipped() string {
	r.t.Helper()
	require.Equal(r.t, "gzip", r.header.Get("Content-Encoding"))
	body, err := gzip.NewReader(strings.NewReader(r.body))
	require.NoError(r.t, err)
	plain, err := io.ReadAll(body)
	require.NoError(r.t, err)
	return string(plain)
}

// What is text comes compressed, and is the same text; a pattern, a picture and
// a face, which are compressed already, come as they are.
func TestCompressed(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	css := a.get(at).doc().Find(`link[rel="stylesheet"]`).First().AttrOr("href", "")
	for _, path := range []string{
		at, at + "/words.txt", at + "/chart.csv", at + "/chart.svg", at + "/sheet.json", at + "/chart", css,
		strings.Replace(css, "css/base.css", "js/mitt.js", 1), "/nowhere",
	} {
		plain, packed := a.taking("identity", path), a.taking("gzip, deflate, br", path)
		assert.Empty(t, plain.header.Get("Content-Encoding"), path)
		assert.Equal(t, plain.body, packed.zipped(), path)
		assert.Equal(t, plain.status, packed.status, path)
		assert.Equal(t, "Accept-Encoding", plain.header.Get("Vary"), path)
		assert.Equal(t, []string{"Accept-Encoding"}, packed.header["Vary"], path)
		assert.Equal(t, plain.header.Get("Content-Type"), packed.header.Get("Content-Type"), path)
		if len(plain.body) > 2000 {
			assert.Less(t, len(packed.body), len(plain.body)*2/3, path)
		}
	}
	font := strings.Replace(css, "css/base.css", "fonts/SourceSans3-Regular.woff2", 1)
	assert.Equal(t, "font/woff2", a.get(font).header.Get("Content-Type"))
	for path, kind := range map[string]string{at + "/print.pdf": "%PDF-", at + "/chart.png": "\x89PNG", font: "wOF2"} {
		got := a.taking("gzip", path)
		assert.Empty(t, got.header.Get("Content-Encoding"), path)
		assert.True(t, strings.HasPrefix(got.body, kind), path)
	}
}

// RFC 9110, 12.5.3: a client that names no encoding, or refuses gzip by a
// weight of 0, gets the plain text; so does one that asks for a part of it,
// since that is counted in the bytes of the file (14.2).
func TestNotCompressed(t *testing.T) {
	a := newApp(t)
	css := a.get("/").doc().Find(`link[rel="stylesheet"]`).First().AttrOr("href", "")
	want := a.taking("identity", css).body
	for takes, zipped := range map[string]bool{
		"": false, "br": false, "deflate": false, "gzip;q=0": false, "gzip; q=0.0, br": false, "xgzip": false, "*;q=0": false,
		"gzip": true, "GZIP": true, "br, gzip;q=0.5": true, "gzip;q=1": true,
	} {
		got := a.taking(takes, css)
		if zipped {
			assert.Equal(t, want, got.zipped(), takes)
			continue
		}
		assert.Empty(t, got.header.Get("Content-Encoding"), takes)
		assert.Equal(t, want, got.body, takes)
	}
	req := a.request("GET", css, "", "")
	req.Header.Set("Range", "bytes=5-14")
	req.Header.Set("Accept-Encoding", "gzip")
	part := a.do(req)
	assert.Equal(t, http.StatusPartialContent, part.status)
	assert.Empty(t, part.header.Get("Content-Encoding"))
	assert.Equal(t, want[5:15], part.body)
}

// The events of a mitt come as they are, and the first at once: the line stays
// open, so one held back would never come.
func TestListenComesUncompressed(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, http.StatusOK, a.stroke(at+"/chart", `{"after":1,"edits":[`+paintPurl+`]}`).status)
	req := a.request("GET", at+"/chart/events?after=1", "", "")
	req.Header.Set("Accept-Encoding", "gzip")
	resp, err := a.server.Client().Do(req)
	require.NoError(t, err)
	defer resp.Body.Close()
	assert.Empty(t, resp.Header.Get("Content-Encoding"))
	var first [6]byte
	_, err = io.ReadFull(resp.Body, first[:])
	require.NoError(t, err)
	assert.Equal(t, "data: ", string(first[:]))
}

// Several read compressed pages at the same time, each its own.
//
//thenar:race
func TestCompressedSideBySide(t *testing.T) {
	a := newApp(t)
	paths := []string{a.sample(), "/", "/paper/grid", "/classes"}
	var all sync.WaitGroup
	for range 8 {
		for _, path := range paths {
			all.Go(func() {
				want, got := a.taking("identity", path), a.taking("gzip", path)
				if assert.Equal(t, "gzip", got.header.Get("Content-Encoding"), path) {
					assert.Equal(t, want.body, got.zipped(), path)
				}
			})
		}
	}
	all.Wait()
}
