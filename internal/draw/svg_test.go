package draw

import (
	"encoding/xml"
	"errors"
	"io"
	"math"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/testenv"
)

func written(t *testing.T, s *Scene, sized bool) string {
	t.Helper()
	var b strings.Builder
	require.NoError(t, WriteSVG(&b, s, sized))
	strictXML(t, b.String())
	return b.String()
}

// strictXML reads a text to its end as strict XML.
func strictXML(t *testing.T, text string) {
	t.Helper()
	for d := xml.NewDecoder(strings.NewReader(text)); ; {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err, text)
	}
}

func TestNumbersAreShort(t *testing.T) {
	for n, want := range map[float64]string{
		0: "0", math.Copysign(0, -1): "0", -0.0004: "0", 0.0006: "0.001", 12: "12", -3.5: "-3.5", 1.23456: "1.235",
		1e7: "10000000", math.Inf(1): "0", math.Inf(-1): "0",
	} {
		assert.Equal(t, want, Number(n))
	}
	assert.Equal(t, "0", Number(math.NaN()))
}

// Numbers are the shortest that strconv finds for their thousandths.
func TestNumbersAgreeWithStrconv(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	same := func(n float64) {
		t.Helper()
		want := strconv.FormatFloat(math.Round(n*1000)/1000+0, 'f', -1, 64)
		require.Equal(t, want, Number(n), "%g", n)
	}
	for _, n := range []float64{0.0005, 0.9995, 999.9996, 1e11, 123456789012.345, 1e12, 1e15, 9007199254740993, 1e21, math.MaxInt64, -math.MaxInt64} {
		same(n)
		same(-n)
	}
	for range testenv.Cases(20_000, 1_000_000) {
		same((r.Float64() - 0.5) * 1000)
		same((r.Float64() - 0.5) * math.Pow(10, r.Float64()*20))
		same(float64(r.IntN(100_000)) / 100)
	}
	assert.Equal(t, "0", Number(math.MaxFloat64), "its thousandths are beyond all numbers")
}

// A page is written straight into memory that is there already, whatever its
// length: what is built is the text that somebody keeps.
func TestWritingAPageBuildsNothing(t *testing.T) {
	s := &Scene{Width: 210, Height: 297, Label: "a page"}
	for i := range 3000 {
		s.PathWith("M 1 2 L 3 4", Style{Class: "cell", Fill: "#FFFFFF", Stroke: "#000000", Width: 0.1}, Attr{"data-round", "7"})
		s.Text(float64(i)/10, 2.5, "k2tog", TextStyle{Size: 3.3, Halo: "#FFFFFF", Anchor: End})
	}
	pages := func() { require.NoError(t, WriteSVG(io.Discard, s, true)) }
	pages()
	assert.Less(t, testing.AllocsPerRun(20, pages), 20.0, "of 6000 items")
}

func TestPenWritesAbsolutePathData(t *testing.T) {
	assert.Empty(t, new(Pen).String())
	p := new(Pen).Move(1, 2).Line(3.25, 4).Curve(5, 6, 7, 8, 9, 10).Close()
	assert.Equal(t, "M 1 2 L 3.25 4 C 5 6 7 8 9 10 Z", p.String())
	assert.Equal(t, "M 1 2 L 4 2 L 4 6 L 1 6 Z", new(Pen).Rect(1, 2, 3, 4).String())
}

// What a person wrote can't leave its place.
func TestEverythingIsEscaped(t *testing.T) {
	bad := `</svg><script>"&'`
	s := &Scene{Width: 10, Height: 20, Label: bad, Root: []Attr{{"data-root", bad}}}
	s.Group(bad, Attr{"data-name", bad})
	s.Text(1, 2, bad, TextStyle{Class: bad, Size: 3})
	s.PathWith(bad, Style{Class: bad, Fill: bad, Stroke: bad, Dash: bad}, Attr{"data-x", bad})
	s.End()
	out := written(t, s, false)
	assert.NotContains(t, out, "<script")
	assert.Equal(t, 1, strings.Count(out, "</svg>"))
}

func TestTheRootSaysSizeAndMeaning(t *testing.T) {
	s := &Scene{Width: 10.5, Height: 20, Label: "A hand"}
	fluid, paper := written(t, s, false), written(t, s, true)
	assert.Contains(t, fluid, `viewBox="0 0 10.5 20"`)
	assert.Contains(t, fluid, `role="img" aria-label="A hand"`)
	assert.NotContains(t, fluid, `width=`)
	assert.Contains(t, paper, `width="10.5mm" height="20mm"`)
}

// A page that forbids style attributes still shows everything: looks are
// plain attributes, which a style sheet overrides by class.
func TestLooksAreAttributes(t *testing.T) {
	s := &Scene{Width: 10, Height: 10}
	s.Line(0, 0, 5, 5, Style{Class: "a", Stroke: "#000000", Width: 0.5, Dash: "1 2", Round: true})
	s.Rect(0, 0, 5, 5, Style{Fill: "#FFFFFF"})
	s.Text(1, 9, "x", TextStyle{Class: "b", Size: 3, Anchor: End, Face: Semibold, Halo: "#FFFFFF"})
	out := written(t, s, false)
	assert.NotContains(t, out, "style=")
	for _, part := range []string{
		`<path class="a" fill="none" stroke="#000000" stroke-width="0.5" stroke-dasharray="1 2" stroke-linecap="round" stroke-linejoin="round" d="M 0 0 L 5 5"/>`,
		`<path fill="#FFFFFF" d="M 0 0 L 5 0 L 5 5 L 0 5 Z"/>`,
		`font-weight="600" text-anchor="end" paint-order="stroke" stroke="#FFFFFF"`,
	} {
		assert.Contains(t, out, part)
	}
}

func TestASceneIsPutIntoAnother(t *testing.T) {
	inner := &Scene{Width: 5, Height: 5}
	inner.Text(1, 2, "inside", TextStyle{Size: 2})
	s := &Scene{Width: 20, Height: 20}
	s.Add(inner, 3, 4.5, 0.5)
	out := written(t, s, false)
	assert.Contains(t, out, `<g transform="translate(3 4.5) scale(0.5)"><text`)
	assert.Contains(t, out, `</text></g></svg>`)
	assert.Equal(t, out, written(t, s, false), "the same scene writes the same bytes")
}

// broken fails on every write.
type broken struct{}

func (broken) Write([]byte) (int, error) { return 0, io.ErrClosedPipe }

func TestAWriterThatFailsIsTold(t *testing.T) {
	require.ErrorIs(t, WriteSVG(broken{}, &Scene{}, false), io.ErrClosedPipe)
}

// A pruned scene draws the same, without what is empty.
func TestPrune(t *testing.T) {
	s := &Scene{Width: 10, Height: 10}
	s.Group("kept")
	s.Path("", Style{Class: "empty"})
	s.Group("hollow")
	s.Group("hollow")
	s.Path("", Style{Class: "empty"})
	s.End()
	s.End()
	s.Line(1, 2, 3, 4, Style{Class: "line"})
	s.End()
	s.Add(&Scene{}, 1, 1, 2)
	s.Text(1, 1, "word", TextStyle{Size: 4})
	s.Prune()
	got := written(t, s, false)
	assert.Equal(t, 1, strings.Count(got, "<g"))
	assert.Contains(t, got, `<g class="kept"><path class="line"`)
	assert.Contains(t, got, "word</text>")
	assert.NotContains(t, got, "empty")
}
