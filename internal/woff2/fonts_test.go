package woff2

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font/gofont/goregular"

	"thenar/internal/testenv"
)

// faces are the fonts under static/fonts.
var faces = []string{"SourceSans3-Regular", "SourceSans3-SemiBold", "SourceSerif4-SemiBold"}

func face(name string) string { return filepath.Join("..", "..", "static", "fonts", name) }

// What the pages load is what is made here of the TrueType fonts beside it;
// -update makes it anew. A phone by a slow link loads all three, so together
// they stay below 330 KB.
func TestFontsArePacked(t *testing.T) {
	t.Parallel()
	for _, name := range faces {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			ttf, err := os.ReadFile(face(name + ".ttf"))
			require.NoError(t, err)
			packed, err := Encode(ttf)
			require.NoError(t, err)
			testenv.Golden(t, face(name+".woff2"), packed)
		})
	}
	total := int64(0)
	for _, name := range faces {
		info, err := os.Stat(face(name + ".woff2"))
		require.NoError(t, err)
		total += info.Size()
	}
	assert.Less(t, total, int64(330_000))
}

// Every glyph of contours in our faces says that they may overlap, which a
// browser then fills as one; the bits stand at the end of the packed outlines.
func TestOverlapsAreKept(t *testing.T) {
	t.Parallel()
	ttf, err := os.ReadFile(face(faces[0] + ".ttf"))
	require.NoError(t, err)
	tables, err := readTables(ttf)
	require.NoError(t, err)
	o, err := readOutlines(tables)
	require.NoError(t, err)
	packed := o.glyf()
	assert.Equal(t, []byte{0, 1}, packed[2:4], "the option")
	bits := packed[len(packed)-(len(o.glyphs)+7)/8:]
	marked := 0
	for i, g := range o.glyphs {
		bit := bits[i/8]>>(7-i%8)&1 == 1
		require.Equal(t, len(g.contours) > 0, bit, "glyph %d", i)
		if bit {
			marked++
		}
	}
	assert.Greater(t, marked, 1000)
}

// What is no TrueType font, or only the beginning of one, is refused with what
// is wrong about it; nothing panics.
func TestBrokenFontsAreRefused(t *testing.T) {
	t.Parallel()
	_, err := Encode([]byte("OTTO, which holds no glyf"))
	require.ErrorContains(t, err, "not a TrueType font")
	whole := goregular.TTF
	for cut := 0; cut < len(whole)-1; cut += 1 + len(whole)/500 {
		_, err := Encode(whole[:cut])
		require.Error(t, err, "%d bytes", cut)
	}
	for _, tag := range []string{"head", "hhea", "maxp", "hmtx", "loca", "glyf"} {
		_, err := Encode([]byte(strings.Replace(string(whole), tag, "none", 1)))
		require.ErrorContains(t, err, tag)
	}
}
