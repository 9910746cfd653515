package main

import (
	"bufio"
	"context"
	"io"
	"net/http"
	"net/url"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// served runs the app at an address until the test ends, and gives the first
// line that it prints.
func served(t *testing.T, db, listen string, more ...string) string {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	out, in := io.Pipe()
	done := make(chan int, 1)
	go func() {
		done <- run(ctx, append([]string{"serve", "-db", db, "-listen", listen}, more...), stdio{nil, in, io.Discard})
	}()
	t.Cleanup(func() {
		stop()
		assert.Equal(t, exitDone, <-done)
	})
	lines := bufio.NewReader(out)
	line, err := lines.ReadString('\n')
	require.NoError(t, err)
	go func() { _, _ = io.Copy(io.Discard, lines) }() // the code for a camera
	return strings.TrimSpace(line)
}

// For this machine the link is bare; beyond it, it has a key of 128 bits or
// more, without which nothing is shown, and with which a browser is known.
//
//thenar:race
func TestLinkHasAKeyBeyondThisMachine(t *testing.T) {
	db := filepath.Join(t.TempDir(), "thenar.db")
	assert.Regexp(t, `^http://127\.0\.0\.1:\d+/$`, served(t, db, "127.0.0.1:0"))

	link := served(t, db, "0.0.0.0:0")
	require.Regexp(t, regexp.MustCompile(`^http://[0-9.]+:\d+/\?key=[A-Z2-7]{26,}$`), link)
	at, err := url.Parse(link)
	require.NoError(t, err)
	bare := "http://" + at.Host + "/"
	get := func(address string, cookies []*http.Cookie) *http.Response {
		t.Helper()
		req, err := http.NewRequestWithContext(t.Context(), http.MethodGet, address, nil)
		require.NoError(t, err)
		for _, c := range cookies {
			req.AddCookie(c)
		}
		resp, err := http.DefaultClient.Do(req)
		require.NoError(t, err)
		require.NoError(t, resp.Body.Close())
		return resp
	}
	assert.Equal(t, http.StatusForbidden, get(bare, nil).StatusCode)
	assert.Equal(t, http.StatusForbidden, get(bare+"?key=AAAAAAAAAAAAAAAAAAAAAAAAAA", nil).StatusCode)
	known := get(link, nil)
	require.Equal(t, http.StatusOK, known.StatusCode)
	require.Len(t, known.Cookies(), 1)
	c := known.Cookies()[0]
	assert.True(t, c.HttpOnly)
	assert.Equal(t, http.SameSiteStrictMode, c.SameSite)
	assert.Equal(t, http.StatusOK, get(bare, known.Cookies()).StatusCode)

	next, err := url.Parse(served(t, db, "0.0.0.0:0"))
	require.NoError(t, err)
	assert.NotEqual(t, at.Query().Get("key"), next.Query().Get("key"), "each start has a link of its own")
	assert.Equal(t, http.StatusForbidden, get("http://"+next.Host+"/?key="+at.Query().Get("key"), nil).StatusCode)
	assert.Equal(t, http.StatusOK, get("http://"+next.Host+"/", known.Cookies()).StatusCode, "a browser stays known")

	anew, err := url.Parse(served(t, db, "0.0.0.0:0", "-new-key"))
	require.NoError(t, err)
	for _, host := range []string{at.Host, next.Host, anew.Host} {
		assert.Equal(t, http.StatusForbidden, get("http://"+host+"/", known.Cookies()).StatusCode, "let out, of all that have the file")
	}
	again := get(anew.String(), known.Cookies())
	require.Equal(t, http.StatusOK, again.StatusCode)
	assert.Equal(t, http.StatusOK, get("http://"+anew.Host+"/", again.Cookies()).StatusCode)
}
