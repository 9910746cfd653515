package pattern

import (
	"fmt"
	"io"
	"maps"
	"math"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/readback"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
)

// sheetOf is a sheet for a hand of so many inches round.
func sheetOf(more map[string]string, inches float64) sheet.Sheet {
	s := sheet.Sheet{
		"unit": "cm", "gauge.swatches[0].stitches": "24", "gauge.swatches[0].width": "10",
		"gauge.swatches[0].rounds": "32", "gauge.swatches[0].height": "10",
		"hand.hand_circumference": fmt.Sprint(math.Round(25.4*inches) / 10),
	}
	maps.Copy(s, more)
	return s
}

// design returns the sizes of one sheet for hands of so many inches round.
func design(t testing.TB, more map[string]string, inches ...float64) []Size {
	t.Helper()
	sizes := make([]Size, len(inches))
	for i, inch := range inches {
		d := project.New("design")
		d.Sheet = sheetOf(more, inch)
		out, err := project.NewPlanner().Derive(d, nil)
		require.NoError(t, err)
		sizes[i] = Size{fmt.Sprint(inch), out}
	}
	return sizes
}

// designs are three that a designer may sell: fingerless mitts in six sizes of which the
// larger ones grow faster, mittens in four and gloves in three.
func designs(t *testing.T) map[string][]Size {
	fingerless := design(t, map[string]string{"pins.rhythm": "4"}, 6, 7, 8)
	fingerless = append(fingerless, design(t, map[string]string{"pins.rhythm": "3"}, 9, 10, 11)...)
	return map[string][]Size{
		"fingerless": fingerless,
		"mitten":     design(t, map[string]string{"kind": "mitten"}, 6, 7, 8, 9),
		"glove":      design(t, map[string]string{"kind": "glove"}, 7, 8, 9),
	}
}

// readsBack checks that each size read back from a text is its mitt.
func readsBack(t *testing.T, all string, names []string, sizes []Size) {
	t.Helper()
	for at, s := range sizes {
		its, err := readback.OfSize(all, names, at)
		require.NoError(t, err, all)
		got, err := knitted(its)
		require.NoError(t, err, all)
		want, err := knitted(own(t, s.Out))
		require.NoError(t, err)
		require.NoError(t, differs(got, want, s.Out), "%s\n%s", its, all)
	}
}

// The common designs read as they always did, and each size reads back. The words of the
// fingerless mitt fit on two pages of A4: 50 lines of 85 characters each, measured on a page
// of the handout's type.
func TestCommonDesigns(t *testing.T) {
	for name, sizes := range designs(t) {
		text, err := Of(sizes, Style{Rhythm: name == "fingerless", Wording: map[string]Wording{"mitten": Full, "glove": Both}[name]})
		require.NoError(t, err)
		testenv.Golden(t, filepath.Join("testdata", name+".txt"), []byte(written(t, text)))
		var b strings.Builder
		require.NoError(t, Markdown(&b, Front{Title: "A design"}, text))
		testenv.Golden(t, filepath.Join("testdata", name+".md"), []byte(b.String()))
		readsBack(t, written(t, text), text.Sizes, sizes)
		if name != "fingerless" {
			continue
		}
		lines := 0
		for _, p := range text.Passages {
			lines += 2
			for _, told := range text.told(p) {
				lines += 1 + utf8.RuneCountInString(told)/85
			}
		}
		assert.LessOrEqual(t, lines, 100)
	}
}

// Gussets are told by rhythm in rows and from the fingertips, too, and where one edge grows.
func TestRhythmOfEveryGusset(t *testing.T) {
	for _, more := range []map[string]string{
		{"piece.flat": "true"}, {"piece.direction": "down", "pins.gusset_base": "4"}, {"stitch.both_edges": "false"}, {"thumb.place": "palm"}, {"thumb.increase": "lifted"},
	} {
		more["kind"] = "mitten"
		sizes := design(t, more, 6, 7, 8, 9)
		text, err := Of(sizes, Style{Rhythm: true})
		require.NoError(t, err)
		at := slices.IndexFunc(text.Passages, func(p Passage) bool { return p.Part == stitch.Gusset })
		table := slices.IndexFunc(text.Passages[at].Lines, func(l Line) bool { return l.Table != nil })
		require.Positive(t, table, "%v: %s", more, written(t, text))
		readsBack(t, written(t, text), text.Sizes, sizes)
	}
}

var lists = regexp.MustCompile(` \([^()a-z]*\)`)

// Every sentence is short, whatever its lists of numbers; what is worked in a round is a list.
func TestSentencesAreShort(t *testing.T) {
	for name, sizes := range designs(t) {
		text, err := Of(sizes, Style{Rhythm: true, Wording: Both})
		require.NoError(t, err)
		for _, p := range text.Passages {
			for _, l := range p.Lines {
				if l.Label != nil || l.Under || l.Table != nil || strings.HasSuffix(l.Key, "/means") {
					continue
				}
				for _, one := range testenv.Sentences(lists.ReplaceAllString(Plain(l.Body), "")) {
					assert.LessOrEqual(t, testenv.WordCount(one), testenv.LongestSentence, "%s: %s", name, one)
				}
			}
		}
	}
}

// A number in the name of a yarn is not read as one of a size.
func TestNamesWithNumbers(t *testing.T) {
	sizes := design(t, map[string]string{
		"repeats[0].motif": "ba/ab", "repeats[0].section": "hand", "chart.yarns[0].name": "grey 3", "chart.yarns[1].name": "petrol 5",
	}, 7, 8)
	text, err := Of(sizes, Style{})
	require.NoError(t, err)
	all := written(t, text)
	require.Contains(t, all, "k1 petrol 5] 20 (23) times")
	readsBack(t, all, text.Sizes, sizes)
}

// What both hands do alike is told once, the rest for each.
func TestBothHands(t *testing.T) {
	more := map[string]string{"kind": "mitten", "thumb.place": "palm"}
	right := design(t, more, 7, 8)
	var left []Size
	for i, s := range design(t, more, 7, 8) {
		d := project.Document{Side: project.Left, Sheet: sheet.Sheet{}}
		d.Sheet = sheetOf(more, []float64{7, 8}[i])
		out, err := project.NewPlanner().Derive(d, nil)
		require.NoError(t, err)
		left = append(left, Size{s.Name, out})
	}
	r, err := Of(right, Style{})
	require.NoError(t, err)
	l, err := Of(left, Style{})
	require.NoError(t, err)
	both := Hands(r, l)
	var titles []string
	for _, p := range both.Passages {
		titles = append(titles, both.Titled(p))
	}
	assert.Equal(t, []string{"Cuff", "Plain rounds", "Thumb gusset, right hand", "Thumb gusset, left hand"}, titles[:4])
	all := written(t, both)
	readsBack(t, readback.OfHand(all, "right"), both.Sizes, right)
	readsBack(t, readback.OfHand(all, "left"), both.Sizes, left)
}

// Each size has a name that lists can be read by, and there are not too many of them.
func TestSizesThatAreRefused(t *testing.T) {
	one := design(t, nil, 8)[0]
	for _, names := range [][]string{{}, {"8", "8"}, {""}, {"8, 9"}, {"s and m"}, {"a: b"}, strings.Split(strings.Repeat("x", Most+1), "")} {
		var sizes []Size
		for _, name := range names {
			sizes = append(sizes, Size{name, one.Out})
		}
		_, err := Of(sizes, Style{})
		require.Error(t, err, "%q", names)
	}
	text, err := Of([]Size{one}, Style{})
	require.NoError(t, err)
	require.NotContains(t, written(t, text), "\nSize ", "one size by itself needs no name")
}

// Writing six sizes that are planned takes a few milliseconds.
func BenchmarkOf(b *testing.B) {
	sizes := design(b, map[string]string{"kind": "glove"}, 6, 7, 8, 9, 10, 11)
	b.ResetTimer()
	for range b.N {
		text, err := Of(sizes, Style{Rhythm: true})
		if err != nil {
			b.Fatal(err)
		}
		if err := Write(io.Discard, text); err != nil {
			b.Fatal(err)
		}
	}
}
