package pdf

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
	"golang.org/x/text/unicode/norm"

	"thenar/internal/draw"
)

// Names in many languages come out in every face, put together or taken apart:
// the letters that CLDR lists for each as its main ones (from memory).
func TestNamesOfManyLanguages(t *testing.T) {
	names := []string{
		"Nguyễn Thị Hồng Ngọc, Đặng Ưng Phượng",  // Vietnamese
		"Żółć gęślą jaźń, Małgorzata Wąsik",      // Polish
		"Işıl Çağlayan, İpek Öğüş",               // Turkish
		"Ελένη Παπαδοπούλου, Ωραία ϊϋΐΰ",         // Greek
		"Людмила Щёкина, Їжакевич Ґанна, Ђорђе",  // Russian, Ukrainian, Serbian
		"Björk Þórðardóttir, Łukasz Říha, Žďár",  // Icelandic, Czech
		"Anna Õunapuu, Šarūnė Ķēniņa, Győző Űri", // Estonian, Lithuanian, Latvian, Hungarian
	}
	for _, face := range draw.Faces {
		page := &draw.Scene{Width: 210, Height: 297}
		for i, name := range names {
			page.Text(20, 20+20*float64(i), name, draw.TextStyle{Size: 5, Face: face})
			page.Text(20, 30+20*float64(i), norm.NFD.String(name), draw.TextStyle{Size: 5, Face: face})
		}
		var b bytes.Buffer
		missing, err := Write(t.Context(), &b, About{Title: "names"}, slices.Values([]*draw.Scene{page}))
		require.NoError(t, err)
		assert.Empty(t, missing)
		text := run(t, b.Bytes(), "pdftotext", "-layout", "FILE", "-")
		for _, name := range names {
			assert.Equal(t, 2, strings.Count(text, name), name)
		}
	}
}
