package pattern

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/fault"
	"thenar/internal/project"
)

// wrote keeps what is typed for lines of a text.
func wrote(t *testing.T, text *Text, typed map[string]string) project.PatternTexts {
	t.Helper()
	var texts project.PatternTexts
	for key, sentence := range typed {
		var err error
		texts, _, err = text.Reword(texts, key, sentence)
		require.NoError(t, err, key)
	}
	var faults fault.Fields
	texts.Check(&faults)
	require.Empty(t, faults)
	return texts
}

// textOf returns the text of mittens.
func textOf(t *testing.T, style Style, more map[string]string, inches ...float64) *Text {
	t.Helper()
	all := map[string]string{"kind": "mitten", "pins.rhythm": "4"}
	for path, value := range more {
		all[path] = value
	}
	text, err := Of(design(t, all, inches...), style)
	require.NoError(t, err)
	return text
}

// told returns the lines of a text as they are read.
func toldOf(text *Text) string {
	var list []string
	for _, p := range append([]Passage{text.Head.Needs}, text.Passages...) {
		list = append(list, text.told(p)...)
	}
	return "\n" + strings.Join(list, "\n") + "\n"
}

// A sentence by hand stands in place of its line or after it, and its numbers follow the
// sizes; the designer's own numbers stay, and are told.
func TestASentenceFollowsItsNumbers(t *testing.T) {
	before := textOf(t, Style{}, nil, 7, 8)
	require.Contains(t, toldOf(before), "\nCast on 36 (42) stitches with a stretchy long-tail cast-on, leaving a tail of 65 (75) cm / 26 (30) in. Place a marker")
	var texts project.PatternTexts
	texts, stay, err := before.Reword(texts, "line cuff/cast-on-stitches-with-a/1", " Begin with 36(42)  stitches; leave 3 in {or so}, and 65 ( 75 ) cm once more. ")
	require.NoError(t, err)
	assert.Equal(t, []string{"3 in", "once more"}, stay)
	assert.Equal(t, "Begin with {1=36(42)} stitches; leave 3 in {{or so}, and {2=65 ( 75 )} cm once more.", texts.Given("line cuff/cast-on-stitches-with-a/1"))
	texts, stay, err = before.Reword(texts, "after gusset/increase/2", "Now there are 8 in the gusset (round 5).")
	require.NoError(t, err)
	assert.Empty(t, stay)
	texts, _, err = before.Reword(texts, "after gusset/title", "Take your time.")
	require.NoError(t, err)

	written, lost := before.ByHand(texts)
	require.Empty(t, lost)
	told := toldOf(written)
	assert.Contains(t, told, "\nBegin with 36 (42) stitches; leave 3 in {or so}, and 65 (75) cm once more.\n")
	assert.Contains(t, told, "8 in the gusset.\nNow there are 8 in the gusset (round 5).\n")
	assert.Contains(t, told, "\nTake your time.\nThe round begins with")
	assert.NotContains(t, toldOf(before), "Begin with", "the text by itself stays as it is")

	after := textOf(t, Style{Wording: Full}, map[string]string{"pins.rhythm": "3", "gauge.swatches[0].stitches": "28"}, 6, 7, 9)
	own := toldOf(after)
	require.Contains(t, own, "\nCast on 36 (42, 54) stitches with a stretchy long-tail cast-on, leaving a tail of 60 (65, 80) cm")
	written, lost = after.ByHand(texts)
	require.Empty(t, lost)
	told = toldOf(written)
	assert.Contains(t, told, "\nBegin with 36 (42, 54) stitches; leave 3 in {or so}, and 60 (65, 80) cm once more.\n")
	assert.Contains(t, told, "8 in the gusset.\nNow there are 8 in the gusset (round 4).\n")

	// What says what the program says, or nothing, is taken back.
	for _, typed := range []string{"", "  ", mustLine(t, after, "cuff/cast-on-stitches-with-a/1").Own()} {
		back, _, err := after.Reword(texts, "line cuff/cast-on-stitches-with-a/1", typed)
		require.NoError(t, err)
		assert.Len(t, back, len(texts)-2)
	}
	_, _, err = after.Reword(texts, "line cuff/nothing/1", "x")
	assert.Equal(t, fault.Conflict, fault.KindOf(err))
}

func mustLine(t *testing.T, text *Text, key string) *Line {
	t.Helper()
	_, l := text.line(key)
	require.NotNil(t, l, key)
	return l
}

// Of numbers that read alike each stands for the line's own in the same order; typed again
// with other words, they stay what they were.
func TestAmbiguousNumbers(t *testing.T) {
	text := textOf(t, Style{}, nil, 7, 8)
	const key = "line gusset/increase/1"
	texts, stay, err := text.Reword(nil, key, "Round 1: k1, M1L, k2, M1R, k1; 6 between the markers, 46 (54) in all.")
	require.NoError(t, err)
	require.Empty(t, stay)
	require.Equal(t, "{label=Round 1}: k{1=1}, M1L, k{2=2}, M1R, k{3=1}; {gusset=6} between the markers, {stitches=46 (54)} in all.", texts.Given(key))
	texts, _, err = text.Reword(texts, key, "M1L and M1R, 2 between, 1 to the right and 1 to the left: in round 1.")
	require.NoError(t, err)
	assert.Equal(t, "M1L and M1R, {2=2} between, {3=1} to the right and {1=1} to the left: in round {rounds=1}.", texts.Given(key))

	written, lost := text.ByHand(texts)
	require.Empty(t, lost)
	shown := Plain(mustLine(t, written, "gusset/increase/1").Body)
	again, _, err := text.Reword(texts, key, strings.Replace(shown, "between", "in the middle", 1))
	require.NoError(t, err)
	assert.Equal(t, strings.Replace(texts.Given(key), "between", "in the middle", 1), again.Given(key))

	// More typed than the line has: the numbers may be told twice.
	texts, stay, err = text.Reword(nil, "line cuff/after-start/k-p-times/1", "Rounds 1–20 (23): rib 18 (21) times; yes, 18 (21) times, over 36 (42) stitches. 1 - 20 (23).")
	require.NoError(t, err)
	assert.Empty(t, stay)
	assert.Equal(t, "{label=Rounds 1–20 (23)}: rib {3=18 (21) times}; yes, {3=18 (21) times}, over {stitches=36 (42)} stitches. {rounds=1 - 20 (23)}.", texts.Given("line cuff/after-start/k-p-times/1"))
}

// A sentence whose line says something else, or is gone, is listed in full and told by the
// program itself; it is not told with numbers that are no longer the line's.
func TestASentenceThatLostItsPlace(t *testing.T) {
	before := textOf(t, Style{}, nil, 7, 8)
	texts := wrote(t, before, map[string]string{
		"line gusset/increase/5":              "Round 17: the fifth and last, to 14 between the markers.",
		"line cuff/cast-on-stitches-with-a/1": "Begin with 36 (42) stitches.",
		"after top/title":                     "Now the top.",
		"line gusset/increase/2":              "Round 5: make one on each side, to 8 in the gusset.",
	})
	standing, lost := before.ByHand(texts)
	require.Empty(t, lost, "%s", toldOf(standing))

	flat := textOf(t, Style{}, map[string]string{"piece.flat": "true", "kind": "fingerless"}, 7)
	written, lost := flat.ByHand(texts)
	told := toldOf(written)
	var keys []string
	for _, one := range lost {
		keys = append(keys, one.Key)
	}
	assert.Contains(t, keys, "after top/title")
	assert.Contains(t, keys, "line cuff/cast-on-stitches-with-a/1")
	for _, one := range lost {
		assert.NotContains(t, told, one.Text)
		if one.Key == "line cuff/cast-on-stitches-with-a/1" {
			assert.Equal(t, "Begin with 36 (42) stitches.", one.Text)
			assert.Equal(t, "cuff/cast-on-stitches-with-a/1", one.Place, "it may be put there again")
		}
		if one.Key == "after top/title" {
			assert.Empty(t, one.Place)
		}
	}
}

// A round that is told without any stitches stands however they are spread; one that names
// stitches doesn't. What sentences use is among the abbreviations.
func TestASentenceWithoutStitchesStands(t *testing.T) {
	before := textOf(t, Style{}, nil, 7)
	const key = "line cuff_plain/increase/1"
	require.Contains(t, mustLine(t, before, "cuff_plain/increase/1").Own(), "Round 1: k3, (M1, k4, M1, k5) 3 times, M1, k4, M1, k2. 44 stitches.")
	plain := wrote(t, before, map[string]string{key: "Increase evenly to 44 stitches."})
	named := wrote(t, before, map[string]string{key: "Increase by kfb evenly to 44 stitches."})
	written, lost := before.ByHand(named)
	require.Empty(t, lost)
	assert.Contains(t, signed(written.Head.Signs), "kfb: knit into the front and the back")
	assert.NotContains(t, strings.Join(signed(before.Head.Signs), "\n"), "kfb:")

	after := textOf(t, Style{}, nil, 8)
	require.NotEqual(t, mustLine(t, before, "cuff_plain/increase/1").says, mustLine(t, after, "cuff_plain/increase/1").says)
	written, lost = after.ByHand(plain)
	require.Empty(t, lost)
	assert.Contains(t, toldOf(written), "\nIncrease evenly to 52 stitches.\n")
	written, lost = after.ByHand(named)
	require.Len(t, lost, 1)
	assert.Contains(t, toldOf(written), "\n"+mustLine(t, after, "cuff_plain/increase/1").Own()+"\n")
}

// Where sizes are told in ways of their own, a sentence stands for its way, whichever sizes
// there are beside it.
func TestASentenceForSomeSizes(t *testing.T) {
	before := textOf(t, Style{}, nil, 7, 8, 9)
	var list []Line
	for _, p := range before.Passages {
		for _, l := range p.Lines {
			if l.Under && placeOf(l.Key) == "cuff_plain/increase/1" {
				list = append(list, l)
			}
		}
	}
	require.Len(t, list, 3)
	key := "line " + list[1].Key
	texts := wrote(t, before, map[string]string{key: list[1].Own() + " Mine.", "after cuff_plain/increase/1/ways": "All have it now."})
	written, lost := before.ByHand(texts)
	require.Empty(t, lost)
	assert.Contains(t, toldOf(written), "\nSize 8: "+list[1].Own()+" Mine.\nSize 9: "+list[2].Own()+"\nAll have it now.\n")

	after := textOf(t, Style{}, nil, 8)
	l := mustLine(t, after, "cuff_plain/increase/1")
	require.False(t, l.Under)
	written, lost = after.ByHand(texts)
	require.Len(t, lost, 2, "it doesn't name its round, which the line has to do now")
	assert.NotContains(t, toldOf(written), "Mine.")
	assert.Equal(t, "after cuff_plain/increase/1/ways", lost[0].Key)
	assert.Equal(t, "", lost[0].Place)
	assert.Equal(t, key, lost[1].Key)
	assert.Equal(t, l.Key, lost[1].Place)

	other := textOf(t, Style{}, nil, 8, 9, 10, 11)
	written, lost = other.ByHand(texts)
	require.Empty(t, lost, "the way has the same name whichever sizes go it")
	assert.Contains(t, toldOf(written), list[1].Own()+" Mine.\n")
}

// A noun goes with its number; a number that isn't told in figures can't be told otherwise, so
// that its sentence is looked at.
func TestANounGoesWithItsNumber(t *testing.T) {
	base := func(n string) *Text { return textOf(t, Style{}, map[string]string{"pins.gusset_base": n}, 7) }
	one, three := base("1"), base("3")
	from, first := "line gusset/from-stitches-to-in-increase/1", "line gusset/place-the-second-marker-after/1"
	require.Contains(t, mustLine(t, one, "gusset/from-stitches-to-in-increase/1").Own(), "From 1 stitch to")
	require.Contains(t, mustLine(t, one, "gusset/place-the-second-marker-after/1").Own(), "after the first stitch:")
	texts := wrote(t, one, map[string]string{from: "Begin with 1 stitch.", first: "Mark the first stitch."})
	written, lost := three.ByHand(texts)
	assert.Contains(t, toldOf(written), "\nBegin with 3 stitches.\n")
	require.Len(t, lost, 1)
	assert.Equal(t, first, lost[0].Key)
	written, lost = one.ByHand(wrote(t, three, map[string]string{from: "Begin with 3 stitches."}))
	require.Empty(t, lost)
	assert.Contains(t, toldOf(written), "\nBegin with 1 stitch.\n")
}
