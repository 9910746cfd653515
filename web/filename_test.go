package web

import (
	"mime"
	"net/http/httptest"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A file is named after what it holds, and its name is no path, no formula of
// a shell and no second header. The letters that Windows refuses are from
// https://learn.microsoft.com/windows/win32/fileio/naming-a-file.
func TestFileNames(t *testing.T) {
	for title, want := range map[string]string{
		"Marit’s mitts": "Marit’s mitts.json", "../../etc/passwd": "etc passwd.json", `a:b*c?"<d>|e\f`: "a b c d e f.json",
		"Ménard": "Ménard.json", " . ": "thenar.json", "": "thenar.json", "a\r\nSet-Cookie: b": "a Set-Cookie b.json",
		strings.Repeat("a", 300): strings.Repeat("a", maxName) + ".json",
	} {
		w := httptest.NewRecorder()
		keepAs(w, "attachment", title, ".json")
		how, with, err := mime.ParseMediaType(w.Header().Get("Content-Disposition"))
		require.NoError(t, err, title)
		assert.Equal(t, "attachment", how)
		assert.Equal(t, want, with["filename"])
	}
}
