package project

import (
	"maps"
	"math/rand/v2"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/chart"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/wale"
	"thenar/internal/words"
)

// Every abbreviation and sign that the words and the chart use is listed once with
// its line, and none that they do not use; for any mitt, as planned and as painted,
// of either hand and direction, in the terms of either side.
func TestEverySignIsListedAndUsed(t *testing.T) {
	rng := rand.New(rand.NewPCG(22, 2))
	pl := NewPlanner()
	for i := range testenv.Cases(80, 1500) {
		d, p := anyMitt(rng, pl)
		d.FromLeft = rng.IntN(4) == 0
		d.Sheet["terms"] = []string{"us", "uk"}[rng.IntN(2)]
		var marks chart.Marks
		if rng.IntN(2) == 0 {
			m := p.Plan.Mitt()
			marks = anyMarks(rng, m, wale.Mitt(m, p.UnderThumb()))
		}
		out, err := pl.Derive(d, marks)
		require.NoError(t, err)
		var texts []string
		for _, passage := range out.Words {
			if i%3 == 0 && passage.Part == stitch.Thumb {
				continue // a part of the words has a part of their signs
			}
			for _, s := range passage.Steps {
				texts = append(texts, s.Text)
			}
		}
		want := map[string]bool{}
		var charted []stitch.Op
		if views := out.Charts.Views(); i%2 == 0 && len(views) > 0 {
			for _, op := range out.Grid(chart.Options{View: views[rng.IntN(len(views))]}).Used() {
				if d.FromLeft {
					op = op.FromLeft()
				}
				charted = append(charted, op)
				want[spelledSign(op)] = true
			}
		}
		for _, text := range texts {
			scanSigns(text, want)
		}
		var listed []string
		for _, s := range out.Terms.Signs(texts, charted, d.FromLeft) {
			require.NotEmpty(t, s.Line, s.Sign)
			require.LessOrEqual(t, testenv.WordCount(s.Line), testenv.LongestSentence)
			require.NotContains(t, s.Line, "gauge")
			require.Equal(t, s.Op != stitch.NoStitch && slices.Contains(charted, s.Op), s.Charted, s.Sign)
			name := s.Sign
			switch {
			case s.Op != stitch.NoStitch:
			case regexp.MustCompile(`^\(\d+\)$`).MatchString(name):
				name = "(count)"
			case strings.HasPrefix(name, "("):
				name = "(again)"
			}
			listed = append(listed, name)
		}
		slices.Sort(listed)
		require.Equal(t, slices.Sorted(maps.Keys(want)), listed, "%v\n%s", d.Sheet, strings.Join(texts, "\n"))
	}
}

// spelledSign is how an operation is listed: as it is written, casting on and the
// like by what they are called.
func spelledSign(op stitch.Op) string {
	if op == stitch.Marker {
		return "m"
	}
	return spelled[op]
}

var (
	token    = regexp.MustCompile(`[\pL\d’']+`)
	ordinary = regexp.MustCompile(`^\d|^(?i:in|cm|mm)$|^[A-H]$`) // a yarn's letter, too
)

// scanSigns collects the signs of a sentence by their shapes: an abbreviation has a
// digit after its letters, no vowel, or capitals within. It knows nothing of the
// table of operations.
func scanSigns(text string, into map[string]bool) {
	for _, word := range token.FindAllString(text, -1) {
		small := strings.ToLower(word)
		name := ""
		switch {
		case ordinary.MatchString(word):
		case small == "tbl":
			name = "k tbl"
		case small == "k":
		case regexp.MustCompile(`^(k|p|sl)\d+$`).MatchString(small):
			name = strings.TrimRight(small, "0123456789")
		case regexp.MustCompile(`^[A-Z]+\d?[A-Z]*$`).MatchString(word) && len(word) > 1:
			name = word
		case strings.ContainsAny(word, "0123456789"), !strings.ContainsAny(small, "aeiouy"), small == "yo":
			name = small
		}
		if name != "" {
			into[name] = true
		}
	}
	if strings.HasPrefix(text, "Catching ") {
		into["catching"] = true
	}
	for mark, name := range map[string]string{"|": "|", "→": "→"} {
		if strings.Contains(text, mark) {
			into[name] = true
		}
	}
	for i := range text {
		rest := text[i:]
		end := strings.IndexByte(rest, ')')
		if rest[0] != '(' || end < 0 {
			continue
		}
		inside := strings.Trim(rest[1:end], "0123456789")
		switch {
		case inside == "":
			into["(count)"] = true
		case !strings.Contains(inside, " of which "):
			into["(again)"] = true
		}
	}
}

// The signs of a mitt that was worked out by hand from its words: what the chart of
// its gusset shows stands first.
func TestSignsOfTheSample(t *testing.T) {
	out, err := NewPlanner().Derive(Samples()[0], nil)
	require.NoError(t, err)
	var texts, got []string
	for _, passage := range out.Words {
		for _, s := range passage.Steps {
			texts = append(texts, s.Text)
		}
	}
	for _, s := range words.US.Signs(texts, []stitch.Op{stitch.Knit, stitch.M1L, stitch.M1R}, false) {
		got = append(got, s.Sign)
	}
	assert.Equal(t, []string{"k", "M1L", "M1R", "p", "M1", "k2tog", "ssk", "|", "( )", "(36)", "→"}, got)
	assert.Empty(t, words.US.Signs(nil, nil, false))
	assert.Len(t, words.US.Signs([]string{"Ssk, yo, K tbl."}, nil, false), 3, "a capital begins a sentence")
}
