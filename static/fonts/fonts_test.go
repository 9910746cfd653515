package fonts

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/sfnt"
)

// The name table of each face says which face, version and licence it is; the
// licence lies beside it. What the program carries unpacks to the face beside it.
func TestFacesAreWhatTheyAreCalled(t *testing.T) {
	for _, c := range []struct {
		ttf                          func() []byte
		file, full, version, licence string
	}{
		{SansRegular, "SourceSans3-Regular.ttf", "Source Sans 3 Regular", "Version 3.052;", "OFL-Source-Sans-3.txt"},
		{SansSemiBold, "SourceSans3-SemiBold.ttf", "Source Sans 3 SemiBold", "Version 3.052;", "OFL-Source-Sans-3.txt"},
		{SerifSemiBold, "SourceSerif4-SemiBold.ttf", "Source Serif 4 SemiBold", "Version 4.004;", "OFL-Source-Serif-4.txt"},
	} {
		whole, err := os.ReadFile(c.file)
		require.NoError(t, err)
		require.True(t, bytes.Equal(whole, c.ttf()), c.file)
		f, err := sfnt.Parse(c.ttf())
		require.NoError(t, err)
		name := func(id sfnt.NameID) string {
			s, err := f.Name(nil, id)
			require.NoError(t, err)
			return s
		}
		assert.Equal(t, c.full, name(sfnt.NameIDFull))
		assert.True(t, strings.HasPrefix(name(sfnt.NameIDVersion), c.version), name(sfnt.NameIDVersion))
		assert.Contains(t, name(sfnt.NameIDLicense), "SIL Open Font License, Version 1.1")
		text, err := os.ReadFile(c.licence)
		require.NoError(t, err)
		assert.Contains(t, string(text), "SIL OPEN FONT LICENSE Version 1.1")
	}
}
