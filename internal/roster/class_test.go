package roster

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

func begun(t *testing.T, marks ...chart.Edit) Class {
	t.Helper()
	doc := project.Samples()[0]
	doc.Sheet = doc.Sheet.Clone()
	doc.Sheet["pins.bridge"], doc.Sheet["pins.cast_on"], doc.Sheet["pins.rhythm"] = "4", "36", "now and then"
	c := New("Tuesday")
	c.SetPattern(Pattern{Mitt: 1, Revision: 2, Name: doc.Name, Side: doc.Side, Sheet: doc.Sheet, Marks: marks})
	require.NoError(t, c.Check())
	return c
}

func add(t *testing.T, c *Class, s Student) Line {
	t.Helper()
	require.Empty(t, s.Check(c.Unit))
	ids, err := c.Add(s)
	require.NoError(t, err)
	return c.Line(project.NewPlanner(), c.Students[c.At(ids[0])])
}

// The first pattern brings the fixed numbers that suit every hand, not those of
// its own hand and not invalid ones.
func TestFirstPatternBringsFixedNumbers(t *testing.T) {
	c := begun(t)
	assert.Equal(t, map[string]string{"bridge": "4"}, c.Fixed)
	assert.Equal(t, units.CM, c.Unit)
	c.Fix("bridge", "")
	c.SetPattern(Pattern{Mitt: 2, Sheet: sheet.Sheet{"unit": "in", "pins.bridge": "3"}})
	assert.Empty(t, c.Fixed, "a later pattern leaves the fixed numbers and the unit alone")
	assert.Equal(t, units.CM, c.Unit)
}

// A student's mitt is the pattern with their own hand and gauge. Numbers fixed for
// all hold unless the student has their own; the pattern's hand and cast-on
// don't count.
func TestLineIsThePatternWithTheStudentsHand(t *testing.T) {
	c := begun(t)
	own := sheet.Sheet{"hand.hand_circumference": "21", "gauge.swatches[0].stitches": "22", "gauge.swatches[0].rounds": "30"}
	s := Student{Name: "Ada", Sheet: own}
	s.OverGauge(c.Unit)
	l := add(t, &c, s)
	require.NotNil(t, l.Out, "%v", l.Missing)
	p := l.Out.Plan
	assert.InDelta(t, 210, p.Hand.Circumference.MM(), 0)
	assert.InDelta(t, 0.22, p.Gauge.Stitches, 1e-12)
	assert.Equal(t, 4, p.Bridge.CastOn)
	assert.False(t, p.Pins.CastOn.On)
	assert.Empty(t, l.Doc.Sheet.Given("hand.thumb_circumference"), "the pattern's thumb is not theirs")
	assert.Equal(t, "2", l.Doc.Sheet.Given("stitch.rib"))
	assert.Empty(t, l.Doubts)

	s.Sheet = s.Sheet.Clone()
	s.Sheet["pins.bridge"], s.Sheet["pins.cast_on"], s.Gauge = "2", "40", FromCuff
	l = add(t, &c, s)
	assert.Equal(t, 2, l.Out.Plan.Bridge.CastOn)
	assert.Equal(t, 40, l.Out.Plan.Cuff.CastOn.N)
	assert.Contains(t, strings.Join(l.Doubts, " "), "Stitches counted on the cuff")
}

func TestReasonsForAttention(t *testing.T) {
	c := begun(t)
	for says, s := range map[string]Student{
		"No hand yet": {Name: "a", Sheet: sheet.Sheet{"gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10"}},
		"No swatch of their own: planned by the pattern’s":                               {Name: "b", Sheet: sheet.Sheet{"hand.size": "7"}},
		"Stitches from the ball band are a guess":                                        {Name: "c", Gauge: FromBand, Sheet: sheet.Sheet{"hand.size": "7", "gauge.swatches[0].stitches": "22", "gauge.swatches[0].width": "10"}},
		"Far from the pattern’s swatch: 18.0 stitches over 10 cm, not 24.0 (−25\u00a0%)": {Name: "d", Sheet: sheet.Sheet{"hand.size": "7", "gauge.swatches[0].stitches": "18", "gauge.swatches[0].width": "10"}},
		"Hand smaller than the chart’s: 12 cm is glove size 4.7":                         {Name: "e", Sheet: sheet.Sheet{"hand.hand_circumference": "12"}},
		"Hand larger than the chart’s":                                                   {Name: "f", Sheet: sheet.Sheet{"hand.hand_circumference": "30"}, Sure: map[string]string{"hand.hand_circumference": "30"}},
		"the cuff must stretch":                                                          {Name: "g", Sheet: sheet.Sheet{"hand.size": "9", "pins.cast_on": "28"}},
	} {
		l := add(t, &c, s)
		assert.True(t, l.NeedsAttention(), says)
		assert.Contains(t, strings.Join(append(l.Doubts, l.Missing...), " "), says)
	}
	glove := begun(t)
	glove.Pattern.Sheet["kind"] = "glove"
	small := add(t, &glove, Student{Name: "j", Sheet: sheet.Sheet{"hand.hand_circumference": "11", "hand.hand_length": "9.2"}})
	assert.Equal(t, []string{"The kind is glove, but so small a hand (92 mm) gets no fingers. Better: a mitten without a thumb."}, small.Missing)
	c.Fix("cast_on", "12")
	l := add(t, &c, Student{Name: "h", Sheet: sheet.Sheet{"hand.size": "11"}})
	assert.Nil(t, l.Out, "a cast-on of 12 can't reach a hand of size 11")
	assert.NotEmpty(t, l.Missing)
	l = (&Class{Unit: units.CM}).Line(project.NewPlanner(), Student{Name: "i"})
	assert.Contains(t, l.Missing[0], "no pattern")
}

// Marks on the pattern's chart go to every student whose mitt has those rounds;
// for the others they are left out, with a doubt.
func TestMarksOfThePattern(t *testing.T) {
	c := begun(t, chart.Edit{Section: stitch.Gusset, Round: 16, Column: "B1", Layer: chart.Colours, Value: "b"})
	large := add(t, &c, Student{Name: "a", Sheet: sheet.Sheet{"hand.size": "9"}})
	require.NotNil(t, large.Out)
	assert.NotEmpty(t, large.Out.Charts.Marks)
	small := add(t, &c, Student{Name: "b", Sheet: sheet.Sheet{"hand.hand_circumference": "9"}, Sure: map[string]string{"hand.hand_circumference": "9"}})
	require.NotNil(t, small.Out, "%v", small.Missing)
	assert.Empty(t, small.Out.Charts.Marks)
	assert.Contains(t, strings.Join(small.Doubts, " "), "left out")
}

func TestStudentsAreAddedAndMoved(t *testing.T) {
	c := begun(t)
	for _, name := range []string{"a", "b", "c"} {
		_, err := c.Add(Student{Name: name})
		require.NoError(t, err)
	}
	names := func() (all string) {
		for _, s := range c.Students {
			all += s.Name
		}
		return all
	}
	before := c.Students
	for _, move := range []struct {
		id, before int
		want       string
	}{{3, 2, "acb"}, {1, 0, "cba"}, {3, 1, "bca"}, {3, 1, "bca"}, {3, 3, "bca"}, {1, 1, "bca"}, {1, 0, "bca"}, {2, 1, "cba"}, {1, 3, "acb"}} {
		require.NoError(t, c.MoveBefore(move.id, move.before))
		assert.Equal(t, move.want, names(), "%d before %d", move.id, move.before)
	}
	assert.Equal(t, "a", before[0].Name, "a list that was handed out stays as it is")
	require.ErrorContains(t, c.MoveBefore(99, 1), "move: names nobody on the list")
	require.ErrorContains(t, c.MoveBefore(1, 99), "before: names nobody on the list")
	assert.Equal(t, "acb", names())
	_, err := c.Add(make([]Student, MaxStudents)...)
	require.Error(t, err)
	assert.Len(t, c.Students, 3)
	raw, err := c.Encode()
	require.NoError(t, err)
	back, err := Decode(raw)
	require.NoError(t, err)
	assert.Equal(t, c, back)
}
