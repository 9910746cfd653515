package project

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/sheet"
	"thenar/internal/testenv"
)

// anyYarns names and colours some yarns of a palette.
func anyYarns(rng *rand.Rand) Document {
	d := New("any")
	for i := range chart.MaxYarns {
		at := fmt.Sprintf("chart.yarns[%d].", i)
		if rng.IntN(3) == 0 {
			d.Sheet[at+"name"] = []string{"oat", "moss", "sloe", "rust"}[rng.IntN(4)]
		}
		if rng.IntN(3) == 0 {
			d.Sheet[at+"colour"] = []string{"#DDD3BE", "#5B6B3A", "#2E2F4F", "#B9694A"}[rng.IntN(4)]
		}
		if rng.IntN(12) == 0 {
			d.Sheet[at+"held"] = "left"
		}
	}
	return d
}

// Whatever is brought, no yarn that is named here or painted with changes, no
// mark changes, each yarn keeps the name and colour that it had in the other
// mitt, and undoing it leaves the sheet as it was.
func TestBroughtYarnsChangeNothingPainted(t *testing.T) {
	t.Parallel()
	rng := rand.New(rand.NewPCG(21, 4))
	whole, some := 0, 0
	for range testenv.Cases(1500, 20000) {
		d, from := anyYarns(rng), anyYarns(rng)
		marks := chart.Marks{{Section: "gusset", Round: 1}: {Note: "here"}}
		for i := range rng.IntN(3) {
			marks[chart.Anchor{Section: "hand", Round: i + 1, Column: "A1"}] = chart.Mark{Colour: chart.ID(rng.IntN(chart.MaxYarns))}
		}
		brought := d.Brought(marks, from)
		raw, err := d.Encode()
		require.NoError(t, err)
		raw, inverse, err := Rewrite(raw, YarnEdits(brought))
		require.NoError(t, err)
		after, err := Decode(raw)
		require.NoError(t, err)
		assertLaid(t, d, after, marks, brought)
		for _, y := range brought {
			theirs, known := after.yarns().Named(y.ID)
			require.True(t, known)
			require.True(t, hasYarn(from.OwnYarns(), theirs), "%v is not a yarn of %v", theirs, from.OwnYarns())
		}
		if n := len(brought); n > 0 && n == len(from.OwnYarns()) {
			whole++
		} else if n > 0 {
			some++
		}
		raw, _, err = Rewrite(raw, inverse)
		require.NoError(t, err)
		back, err := Decode(raw)
		require.NoError(t, err)
		require.Equal(t, d.Sheet, back.Sheet)
	}
	assert.Positive(t, whole)
	assert.Positive(t, some)
}

// assertLaid checks that the yarns in use look as before.
func assertLaid(t *testing.T, before, after Document, marks chart.Marks, brought chart.Palette) {
	t.Helper()
	in := map[string]bool{}
	for _, m := range marks {
		if m.Colour != "" {
			in[m.Colour], in["a"] = true, true
		}
	}
	for i := range chart.MaxYarns {
		id := chart.ID(i)
		for _, key := range []string{"name", "colour", "held"} {
			if before.Sheet.Given(fmt.Sprintf("chart.yarns[%d].%s", i, key)) != "" {
				in[id] = true
			}
		}
		if in[id] {
			require.Equal(t, before.yarns().Or(id), after.yarns().Or(id), "%s in %v, brought %v", id, before.Sheet, brought)
		}
	}
}

// yarns returns the palette of a document.
func (d Document) yarns() chart.Palette {
	given := d.Sheet.Settings().Chart.Yarns
	return palette(given[:])
}

// hasYarn reports whether a palette has a yarn of this name and colour. A yarn
// without a name or a colour of its own may have got the usual one.
func hasYarn(p chart.Palette, y chart.Yarn) bool {
	for _, one := range p {
		name := one.Name == y.Name || one.Name == "" && y.Name == "yarn "+y.ID
		colour := one.Fill == y.Fill || one.Fill == "" && y.Fill == "#FFFFFF"
		if name && colour {
			return true
		}
	}
	return false
}

// The places that yarns are brought to, one by one.
func TestPlacesOfBroughtYarns(t *testing.T) {
	t.Parallel()
	painted := func(ids ...string) chart.Marks {
		marks := chart.Marks{}
		for i, id := range ids {
			marks[chart.Anchor{Section: "hand", Round: i + 1, Column: "A1"}] = chart.Mark{Colour: id}
		}
		return marks
	}
	oat, moss := chart.Yarn{ID: "a", Name: "oat", Fill: "#DDD3BE"}, chart.Yarn{ID: "b", Name: "moss", Fill: "#5B6B3A"}
	at := func(y chart.Yarn, id string) chart.Yarn { y.ID = id; return y }
	from := Document{Sheet: sheet.Sheet{
		"chart.yarns[0].name": "oat", "chart.yarns[0].colour": "#ddd3be", "chart.yarns[0].held": "left",
		"chart.yarns[1].name": "moss", "chart.yarns[1].colour": "#5B6B3A",
	}}
	for what, c := range map[string]struct {
		here  sheet.Sheet
		marks chart.Marks
		want  chart.Palette
	}{
		"into an untouched mitt": {nil, nil, chart.Palette{oat, moss}},
		"painted in rust":        {nil, painted("b"), chart.Palette{at(oat, "c"), at(moss, "d")}},
		"painted in blue":        {nil, painted("c"), chart.Palette{moss, at(oat, "d")}},
		"painted in a yarn that was taken out": {
			nil, painted("f", "c", "d", "b", "e", "g"), chart.Palette{at(oat, "h")},
		},
		"one is here": {sheet.Sheet{"chart.yarns[3].name": "moss", "chart.yarns[3].colour": "#5b6b3a"}, nil, chart.Palette{oat}},
		"held only":   {sheet.Sheet{"chart.yarns[0].held": "right"}, nil, chart.Palette{moss, at(oat, "c")}},
		"no place":    {nil, painted("b", "c", "d", "e", "f", "g", "h"), nil},
	} {
		assert.Equal(t, c.want, Document{Sheet: c.here}.Brought(c.marks, from), what)
	}
	nameless := Document{Sheet: sheet.Sheet{"chart.yarns[5].colour": "#5B6B3A"}}
	assert.Equal(t, chart.Palette{{ID: "c", Name: "yarn c", Fill: "#5B6B3A"}}, Document{}.Brought(painted("b", "f"), nameless), "not called blue")
	bare := Document{Sheet: sheet.Sheet{"chart.yarns[0].name": "undyed"}}
	assert.Equal(t, chart.Palette{{ID: "c", Name: "undyed", Fill: "#FFFFFF"}}, Document{}.Brought(painted("b"), bare), "not the blue of the place")
}
