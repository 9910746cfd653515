package pdf

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
)

// headed is a page with a heading and its text.
func headed(height float64, level int, text string, y float64) *draw.Scene {
	p := &draw.Scene{Width: 210, Height: height}
	p.Heading(level, y, text)
	p.Text(20, y+5, text, draw.TextStyle{Size: 5})
	return p
}

// An outline leads to every heading, in order; below the name of its document where a file
// has several. Poppler reads it.
func TestOutlineLeadsToHeadings(t *testing.T) {
	single := made(t, headed(297, 1, "Barley", 20), headed(297, 2, "Cuff (rib)", 40), headed(297, 2, "Žď 🧶", 60))
	assert.Equal(t, []string{"1 Barley", "2 Cuff (rib)", "3 Žď ☐"}, outlined(t, single))
	several := made(t, headed(297, 2, "Table", 20), headed(297, 1, "Ann", 20), headed(297, 2, "Cuff", 40), headed(297, 1, "Ben", 20), headed(297, 2, "Cuff", 40))
	assert.Equal(t, []string{"1 Table", "2 Ann", ">3 Cuff", "4 Ben", ">5 Cuff"}, outlined(t, several))
	assert.Empty(t, outlined(t, made(t, &draw.Scene{Width: 210, Height: 297})))
	// Where each heading is, in points from the lower edge of a page of its own height.
	mixed := made(t, headed(297, 1, "High", 20), headed(210, 2, "Low", 50), headed(250, 2, "End", 10))
	for i, mm := range []float64{297 - 20, 210 - 50, 250 - 10} {
		assert.Contains(t, string(mixed), fmt.Sprintf("/Dest [%d 0 R /XYZ 0 %.2f null]", 3+2*i, mm/point))
	}
	assert.Equal(t, mixed, made(t, headed(297, 1, "High", 20), headed(210, 2, "Low", 50), headed(250, 2, "End", 10)))
}

// outlined returns the outline as pdftohtml reads it: the page and the text of each entry,
// after a > for each level.
func outlined(t testing.TB, raw []byte) (list []string) {
	t.Helper()
	read := xml.NewDecoder(strings.NewReader(run(t, raw, "pdftohtml", "-xml", "-i", "-enc", "UTF-8", "-stdout", "FILE")))
	read.Strict = false
	level := -1
	for {
		token, err := read.Token()
		if err != nil {
			return list
		}
		switch token := token.(type) {
		case xml.StartElement:
			switch token.Name.Local {
			case "outline":
				level++
			case "item":
				var text string
				require.NoError(t, read.DecodeElement(&text, &token))
				list = append(list, strings.Repeat(">", level)+token.Attr[0].Value+" "+text)
			}
		case xml.EndElement:
			if token.Name.Local == "outline" {
				level--
			}
		}
	}
}

// Who wrote it and its language are told; the file is sound. qpdf reads it.
func TestAuthorAndLanguage(t *testing.T) {
	var b bytes.Buffer
	_, err := Write(t.Context(), &b, About{Title: "Barley", Author: "Åse (née Ž)", Language: "en-GB"}, slices.Values([]*draw.Scene{headed(297, 1, "Barley", 20)}))
	require.NoError(t, err)
	assert.Regexp(t, `Author: +Åse \(née Ž\)\n`, run(t, b.Bytes(), "pdfinfo", "-enc", "UTF-8", "FILE"))
	assert.Contains(t, run(t, b.Bytes(), "qpdf", "--check", "FILE"), "No syntax or stream encoding errors")
	var of struct {
		QPDF []json.RawMessage `json:"qpdf"`
	}
	require.NoError(t, json.Unmarshal([]byte(run(t, b.Bytes(), "qpdf", "--json", "FILE")), &of))
	var objects map[string]struct {
		Value json.RawMessage `json:"value"`
	}
	require.Len(t, of.QPDF, 2)
	require.NoError(t, json.Unmarshal(of.QPDF[1], &objects))
	var languages []string
	for _, o := range objects {
		var catalog struct {
			Type string `json:"/Type"`
			Lang string `json:"/Lang"`
		}
		if json.Unmarshal(o.Value, &catalog) == nil && catalog.Type == "/Catalog" {
			languages = append(languages, strings.TrimPrefix(catalog.Lang, "u:"))
		}
	}
	assert.Equal(t, []string{"en-GB"}, languages)
}
