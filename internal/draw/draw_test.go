package draw

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

func write(t *testing.T, s *Scene, sized bool) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, WriteSVG(&b, s, sized))
	return b.String()
}

func TestSVG(t *testing.T) {
	s := &Scene{Width: 210, Height: 297, Label: `a "page" <1>`, Root: []Attr{{"data-chart", "gusset"}}}
	s.Group("tape", Attr{"data-field", "hand.<b>"})
	s.Line(1, 2.00049, 3, -0.0001, Style{Class: "line", Stroke: "#000000", Width: 0.25, Dash: "1 2"})
	s.Text(5, 6, "½ & <more>", TextStyle{Size: 4, Anchor: End, Face: Semibold})
	s.End()
	sub := &Scene{Width: 10, Height: 10}
	sub.Rect(0, 0, 10, math.NaN(), Style{Fill: "#FFFFFF"})
	s.Add(sub, 7, 8, 0.5)

	got := write(t, s, true)
	for _, want := range []string{
		`viewBox="0 0 210 297" width="210mm" height="297mm"`, `data-chart="gusset"`, `M 1 2 L 3 0`, `stroke-dasharray="1 2"`,
		`data-field="hand.&lt;b&gt;"`, `½ &amp; &lt;more&gt;</text>`, `text-anchor="end"`, `translate(7 8) scale(0.5)`, `textLength="`,
	} {
		assert.Contains(t, got, want)
	}
	assert.NotContains(t, got, "NaN")
	assert.NotContains(t, got, "style=")
	assert.NotContains(t, write(t, s, false), "textLength")
	assert.NotContains(t, write(t, s, false), "mm\"")
	wellFormed(t, got)
}

func wellFormed(t *testing.T, svg string) {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(svg)); ; {
		if _, err := d.Token(); errors.Is(err, io.EOF) {
			return
		} else {
			require.NoError(t, err)
		}
	}
}

// Every digit of Source Sans 3 is 0.497 of the size wide in the regular face, as
// its horizontal metrics table says, so that columns of numbers stand in line;
// semibold is wider than regular.
func TestMeasure(t *testing.T) {
	assert.InDelta(t, 5*4*0.497, Measure("01234", 4, Regular), 1e-6)
	for _, digit := range "0123456789" {
		assert.InDelta(t, 0.497, Measure(string(digit), 1, Regular), 1e-6)
	}
	assert.Greater(t, Measure("gusset", 4, Semibold), Measure("gusset", 4, Regular))
	assert.InDelta(t, 2*Measure("gusset", 4, Regular), Measure("gusset", 8, Regular), 1e-9)
	assert.Zero(t, Measure("", 4, Regular))
}

// Wrapped lines fit, lose no word, and cut only words wider than a line.
func TestWrap(t *testing.T) {
	text := "Put the 15 held stitches back on the needles and join the yarn"
	lines := Wrap(text, 30, 4, Regular)
	assert.Greater(t, len(lines), 3)
	assert.Equal(t, text, strings.Join(lines, " "))
	for _, line := range lines {
		assert.LessOrEqual(t, Measure(line, 4, Regular), 30.0)
	}
	long := Wrap("a "+strings.Repeat("w", 40)+" b", 30, 4, Regular)
	assert.Equal(t, "a"+strings.Repeat("w", 40)+"b", strings.ReplaceAll(strings.Join(long, ""), " ", ""))
	for _, line := range long {
		assert.LessOrEqual(t, Measure(line, 4, Regular), 30.0)
	}
	assert.Empty(t, Wrap("  ", 30, 4, Regular))
	assert.NotEmpty(t, Wrap("narrow", 0.1, 4, Regular), "a letter a line at the least")
}

// A rough pen writes tenths, the others thousandths.
func TestRoughPen(t *testing.T) {
	var fine, rough Pen
	rough.Rough()
	for _, p := range []*Pen{&fine, &rough} {
		p.Move(1.04, -0.05).Line(2.25, 30.951)
	}
	assert.Equal(t, "M 1.04 -0.05 L 2.25 30.951", fine.String())
	assert.Equal(t, "M 1 -0.1 L 2.3 31", rough.String())
}
