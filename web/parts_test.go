package web

import (
	"bytes"
	"io"
	"net/http"
	"net/http/httptest"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// when does something at its place in a body.
type when func()

func (w when) Read([]byte) (int, error) {
	w()
	return 0, io.EOF
}

// A large file that is still on its way is kept on the disk, not in memory, at
// each door that takes one; and nothing of it stays there.
func TestFilesOnTheirWayAreOnTheDisk(t *testing.T) {
	a := newApp(t)
	mitt, class := a.sample(), a.class()
	temporary := t.TempDir()
	t.Setenv("TMPDIR", temporary)
	for path, field := range map[string]string{"/import": "file", class + "/table": "file", mitt + "/tries": "photo"} {
		size := 3 * inMemory
		if field == "file" && path != "/import" {
			size = inMemory + 1<<17
		}
		kept := 0
		body := io.MultiReader(
			strings.NewReader("--B\r\nContent-Disposition: form-data; name=\""+field+"\"; filename=\"a\"\r\n\r\n"),
			bytes.NewReader(make([]byte, size)),
			when(func() {
				list, err := os.ReadDir(temporary)
				require.NoError(t, err)
				kept = len(list)
			}),
			strings.NewReader("\r\n--B--\r\n"),
		)
		req := httptest.NewRequest(http.MethodPost, "http://127.0.0.1"+path, body)
		req.Header.Set("Content-Type", "multipart/form-data; boundary=B")
		w := httptest.NewRecorder()
		a.handler.ServeHTTP(w, req)
		assert.Equal(t, http.StatusBadRequest, w.Code, path)
		assert.NotContains(t, w.Body.String(), "larger than", path)
		assert.Equal(t, 1, kept, path)
		list, err := os.ReadDir(temporary)
		require.NoError(t, err)
		assert.Empty(t, list, path)
	}
}
