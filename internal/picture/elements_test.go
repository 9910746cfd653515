package picture

import (
	"encoding/xml"
	"errors"
	"io"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/draw"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

const mm = units.Millimetre

func planned(t *testing.T, kind mitt.Kind, stitches, rounds float64, h hand.Hand) *mitt.Plan {
	t.Helper()
	p, err := mitt.New().Plan(&mitt.Request{
		Kind: kind, Hand: h, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
		Gauge: gauge.Gauge{Stitches: stitches / 100, Rounds: rounds / 100, Treated: true, Used: 1},
	})
	require.NoError(t, err)
	return p
}

func adult(t *testing.T) *mitt.Plan {
	t.Helper()
	return planned(t, mitt.Fingerless, 24, 32, hand.Hand{Circumference: 190 * mm, Length: 180 * mm, Thumb: 65 * mm})
}

func child(t *testing.T) *mitt.Plan {
	t.Helper()
	return planned(t, mitt.Mitten, 20, 28, hand.Hand{Circumference: 142 * mm, Length: 127 * mm, Thumb: 48 * mm})
}

// element is an element of a written picture, with its place in the tree.
type element struct {
	name  string
	attr  map[string]string
	in    []string // classes and layers of its ancestors
	chars string
}

// elements writes a scene and reads it back as strict XML.
func elements(t *testing.T, s *draw.Scene) []element {
	t.Helper()
	var b strings.Builder
	require.NoError(t, draw.WriteSVG(&b, s, false))
	assert.NotContains(t, b.String(), "style=")
	assert.NotContains(t, b.String(), "NaN")
	var list []element
	var open []string
	for d := xml.NewDecoder(strings.NewReader(b.String())); ; {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			assert.Empty(t, open)
			return list
		}
		require.NoError(t, err)
		switch token := token.(type) {
		case xml.StartElement:
			e := element{name: token.Name.Local, attr: map[string]string{}, in: append([]string(nil), open...)}
			for _, a := range token.Attr {
				e.attr[a.Name.Local] = a.Value
			}
			list = append(list, e)
			open = append(open, e.attr["class"]+e.attr["data-layer"])
		case xml.EndElement:
			open = open[:len(open)-1]
		case xml.CharData:
			list[len(list)-1].chars += string(token)
		}
	}
}

// having returns the elements with this value of an attribute.
func having(list []element, name, value string) []element {
	var out []element
	for _, e := range list {
		if e.attr[name] == value {
			out = append(out, e)
		}
	}
	return out
}

func num(t *testing.T, text string) float64 {
	t.Helper()
	n, err := strconv.ParseFloat(text, 64)
	require.NoError(t, err)
	return n
}

var numbers = regexp.MustCompile(`-?[0-9.]+`)

// extent returns the rectangle round all points of path data.
func extent(t *testing.T, d string) area {
	t.Helper()
	const far = 1e9
	a := area{far, far, -far, -far}
	all := numbers.FindAllString(d, -1)
	require.NotEmpty(t, all)
	for i := 0; i+1 < len(all); i += 2 {
		x, y := num(t, all[i]), num(t, all[i+1])
		a = a.with(area{x, y, x, y})
	}
	return a
}

// textAreas returns the areas of all texts.
func textAreas(s *draw.Scene) map[string]area {
	out := map[string]area{}
	for i, item := range s.Items {
		if item.Kind != draw.TextItem {
			continue
		}
		width := draw.Measure(item.Text, item.Letter.Size, item.Letter.Face)
		x := item.X
		switch item.Letter.Anchor {
		case draw.Middle:
			x -= width / 2
		case draw.End:
			x -= width
		}
		out[item.Text+" #"+strconv.Itoa(i)] = area{x, item.Y - 0.75*item.Letter.Size, x + width, item.Y + 0.2*item.Letter.Size}
	}
	return out
}

// readable asserts that no text leaves the page or covers another.
func readable(t *testing.T, s *draw.Scene) {
	t.Helper()
	areas := textAreas(s)
	for name, a := range areas {
		assert.True(t, a.left >= 0 && a.top >= 0 && a.right <= s.Width && a.bottom <= s.Height, "%s %v leaves the page of %g by %g", name, a, s.Width, s.Height)
		for other, b := range areas {
			assert.False(t, name < other && a.meets(b), "%s covers %s", name, other)
		}
	}
}
