package woff2

import (
	"os"
	"os/exec"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"

	"thenar/internal/testenv"
)

// An independent reader, woff2_decompress of Debian's package woff2, makes the
// same font of what is committed; sfnt of golang.org/x/image reads both.
func TestDecompressedFontsAreTheSame(t *testing.T) {
	t.Parallel()
	program := testenv.Program(t, "woff2_decompress")
	for _, name := range faces {
		t.Run(name, func(t *testing.T) {
			t.Parallel()
			ttf, err := os.ReadFile(face(name + ".ttf"))
			require.NoError(t, err)
			packed, err := os.ReadFile(face(name + ".woff2"))
			require.NoError(t, err)
			got := decompress(t, program, packed)
			sameFont(t, ttf, got)
			sameTables(t, ttf, got)
		})
	}
}

// Instructions come back, too: of our faces no glyph has any, of Go's most do.
func TestInstructionsComeBack(t *testing.T) {
	t.Parallel()
	program := testenv.Program(t, "woff2_decompress")
	packed, err := Encode(goregular.TTF)
	require.NoError(t, err)
	got := decompress(t, program, packed)
	sameFont(t, goregular.TTF, got)
	sameTables(t, goregular.TTF, got)
}

// decompress returns a WOFF2 as TrueType.
func decompress(t *testing.T, program string, packed []byte) []byte {
	t.Helper()
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "face.woff2"), packed, 0o600))
	said, err := exec.Command(program, filepath.Join(dir, "face.woff2")).CombinedOutput()
	require.NoError(t, err, "%s", said)
	ttf, err := os.ReadFile(filepath.Join(dir, "face.ttf"))
	require.NoError(t, err)
	return ttf
}

// sameFont compares the outline and advance of every glyph, and the glyph of
// every rune of the basic plane.
func sameFont(t *testing.T, want, got []byte) {
	t.Helper()
	a, err := sfnt.Parse(want)
	require.NoError(t, err)
	b, err := sfnt.Parse(got)
	require.NoError(t, err)
	require.Equal(t, a.NumGlyphs(), b.NumGlyphs())
	require.Equal(t, a.UnitsPerEm(), b.UnitsPerEm())
	var bufA, bufB sfnt.Buffer
	size := fixed.I(int(a.UnitsPerEm())) // so nothing is rounded
	points := 0
	for i := range sfnt.GlyphIndex(a.NumGlyphs()) {
		outlineA, err := a.LoadGlyph(&bufA, i, size, nil)
		require.NoError(t, err)
		outlineB, err := b.LoadGlyph(&bufB, i, size, nil)
		require.NoError(t, err)
		require.Equal(t, outlineA, outlineB, "outline of glyph %d", i)
		points += len(outlineA)
		advanceA, err := a.GlyphAdvance(&bufA, i, size, font.HintingNone)
		require.NoError(t, err)
		advanceB, err := b.GlyphAdvance(&bufB, i, size, font.HintingNone)
		require.NoError(t, err)
		require.Equal(t, advanceA, advanceB, "advance of glyph %d", i)
	}
	assert.Greater(t, points, 10_000)
	for r := range rune(0x10000) {
		indexA, err := a.GlyphIndex(&bufA, r)
		require.NoError(t, err)
		indexB, err := b.GlyphIndex(&bufB, r)
		require.NoError(t, err)
		require.Equal(t, indexA, indexB, "glyph of %U", r)
	}
}

// sameTables compares what sfnt doesn't read: all other tables byte by byte,
// boxes and instructions of glyphs, and that head says that the font was packed.
func sameTables(t *testing.T, want, got []byte) {
	t.Helper()
	a, b := read(t, want), read(t, got)
	require.Len(t, b, len(a))
	for tag, data := range a {
		switch tag {
		case "glyf", "loca": // points may be written in another way
		case "head":
			assert.NotZero(t, b[tag][16]&8, "bit 11 of the flags")
			assert.Equal(t, data[18:50], b[tag][18:50])
		default:
			assert.Equal(t, data, b[tag], "table %s", tag)
		}
	}
	glyphsA, glyphsB := glyphs(t, want), glyphs(t, got)
	programs := 0
	for i := range glyphsA {
		glyphsA[i].overlap, glyphsB[i].overlap = false, false // Debian's reader, 1.0.2, is older than their bitmap
		require.Equal(t, glyphsA[i], glyphsB[i], "glyph %d", i)
		programs += len(glyphsA[i].program)
	}
	t.Logf("%d glyphs, %d bytes of instructions", len(glyphsA), programs)
}

func read(t *testing.T, ttf []byte) map[string][]byte {
	t.Helper()
	tables, err := readTables(ttf)
	require.NoError(t, err)
	m := map[string][]byte{}
	for _, table := range tables {
		m[table.tag] = table.data
	}
	return m
}

func glyphs(t *testing.T, ttf []byte) []glyph {
	t.Helper()
	tables, err := readTables(ttf)
	require.NoError(t, err)
	f, err := readOutlines(tables)
	require.NoError(t, err)
	return f.glyphs
}
