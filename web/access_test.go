package web

import (
	"context"
	"io"
	"net/http"
	"net/http/httptest"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/store"
)

// An app with a key lets in who has it, and still no name that another owns.
func TestAccess(t *testing.T) {
	st, err := store.Open(context.Background(), filepath.Join(t.TempDir(), "thenar.db"))
	require.NoError(t, err)
	t.Cleanup(func() { require.NoError(t, st.Close()) })
	const key, token = "ABCDEFGHIJKLMNOPQRSTUVWXYZ", "ZYXWVUTSRQPONMLKJIHGFEDCBA"
	app := New(st, io.Discard, Door{Key: key, Token: token})
	for _, c := range []struct {
		what, method, host, path, cookie string
		want                             int
	}{
		{"without the key", "GET", "192.168.0.7:8420", "/", "", http.StatusForbidden},
		{"a script without it", "GET", "192.168.0.7:8420", "/static/x/js/mitt.js", "", http.StatusForbidden},
		{"another key", "GET", "192.168.0.7:8420", "/?key=ABC", "", http.StatusForbidden},
		{"the link", "GET", "192.168.0.7:8420", "/?key=" + key, "", http.StatusOK},
		{"a browser that is known", "GET", "192.168.0.7:8420", "/", token, http.StatusOK},
		{"the key is not the token", "GET", "192.168.0.7:8420", "/", key, http.StatusForbidden},
		{"the token is not the key", "GET", "192.168.0.7:8420", "/?key=" + token, "", http.StatusForbidden},
		{"this machine too has to know it", "GET", "127.0.0.1:8420", "/", "", http.StatusForbidden},
		{"a name with the key", "GET", "evil.example", "/", token, http.StatusMisdirectedRequest},
		{"a write by the link", "POST", "192.168.0.7:8420", "/mitts?key=" + key, "", http.StatusForbidden},
		{"a write that is known", "POST", "192.168.0.7:8420", "/mitts", token, http.StatusSeeOther},
	} {
		r := httptest.NewRequest(c.method, c.path, nil)
		r.Host = c.host
		if c.cookie != "" {
			r.AddCookie(&http.Cookie{Name: cookie, Value: c.cookie})
		}
		w := httptest.NewRecorder()
		app.ServeHTTP(w, r)
		assert.Equal(t, c.want, w.Code, c.what)
	}
}
