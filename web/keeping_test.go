package web

import (
	"io"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/store"
)

// A folder of backups that can't be one is told on the page, in the figures and
// by the button, each with a sentence that names it; the app starts all the same.
func TestMistakenBackupFolder(t *testing.T) {
	for name, c := range map[string]struct {
		make func(folder string) error
		says string
	}{
		"a file":           {func(folder string) error { return os.WriteFile(folder, []byte("x"), 0o600) }, "it is a file"},
		"a link to a file": {func(folder string) error { return os.Symlink("thenar.db", folder) }, "it is a file"},
		"a link nowhere":   {func(folder string) error { return os.Symlink("gone", folder) }, "it is a link that leads nowhere"},
		"a link to itself": {func(folder string) error { return os.Symlink("thenar-backups", folder) }, "it is a link that leads nowhere"},
	} {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			a := newApp(t)
			a.sample()
			a.server.Config.Handler = New(app.New(a.store), io.Discard, Door{}) // whose log has it
			st, err := a.store.State(t.Context())
			require.NoError(t, err)
			folder := strings.TrimSuffix(st.Path, ".db") + "-backups"
			require.NoError(t, c.make(folder))
			says := "No backup can be kept in " + folder + ": " + c.says + "."

			page := a.browse("/status")
			assert.Equal(t, http.StatusOK, page.status)
			assert.Contains(t, page.doc().Find("#backups .message").Text(), says)
			lines := a.get("/status")
			assert.Equal(t, http.StatusOK, lines.status)
			assert.Contains(t, lines.body, "whole true\nbackup unknown\n")
			made := a.post("/status/backup", nil)
			assert.Equal(t, http.StatusServiceUnavailable, made.status)
			assert.Contains(t, made.doc().Find(".message").Text(), says)
			_, err = a.store.BackupDaily(t.Context())
			assert.Equal(t, fault.Unavailable, fault.KindOf(err), "%v", err)

			again, err := store.Open(t.Context(), filepath.Clean(st.Path))
			require.NoError(t, err)
			require.NoError(t, again.Close())
		})
	}
}
