package static

import (
	"io/fs"
	"testing"
	"testing/fstest"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A browser keeps a file by its address: whatever changes in a file, its name
// or the number of files must change the address, and nothing else may.
func TestAddressFollowsContent(t *testing.T) {
	of := func(files map[string]string) string {
		m := fstest.MapFS{}
		for name, content := range files {
			m[name] = &fstest.MapFile{Data: []byte(content)}
		}
		return address(version(m), "css/a.css")
	}
	first := of(map[string]string{"css/a.css": "a", "js/b.js": "b"})
	assert.Regexp(t, `^/static/[0-9a-f]{12}/css/a\.css$`, first)
	assert.Equal(t, first, of(map[string]string{"js/b.js": "b", "css/a.css": "a"}), "same files")
	seen := map[string]string{first: "the first"}
	for what, files := range map[string]map[string]string{
		"content":          {"css/a.css": "a ", "js/b.js": "b"},
		"another file":     {"css/a.css": "a", "js/b.js": "c"},
		"name":             {"css/a.css": "a", "js/c.js": "b"},
		"contents swapped": {"css/a.css": "b", "js/b.js": "a"},
		"one file less":    {"css/a.css": "a"},
		"moved border":     {"css/a.css": "ab", "js/b.js": ""},
	} {
		url := of(files)
		assert.NotContains(t, seen, url, what)
		seen[url] = what
	}
}

// Every file is there, in a directory that pages know, and none is empty.
func TestFilesAreEmbedded(t *testing.T) {
	count := 0
	require.NoError(t, fs.WalkDir(FS, ".", func(name string, entry fs.DirEntry, err error) error {
		if err != nil || entry.IsDir() {
			return err
		}
		count++
		info, err := entry.Info()
		assert.Regexp(t, `^(css/.+\.css|js/.+\.js|img/.+\.svg|fonts/.+\.(woff2|txt))$`, name)
		assert.NotZero(t, info.Size(), name)
		return err
	}))
	assert.NotZero(t, count)
	assert.Equal(t, "/static/"+Version+"/css/base.css", URL("css/base.css"))
}
