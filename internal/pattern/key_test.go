package pattern

import (
	"fmt"
	"math/rand/v2"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/project"
	"thenar/internal/testenv"
)

var (
	nameOfStitch = regexp.MustCompile(`\b[A-Za-z]+\d+[A-Za-z]\w*|\bM1[LR]?\b`)
	nameOfYarn   = regexp.MustCompile(` in [^,.;:()]*\d[^,.;:()]*`)
	nthShaped    = regexp.MustCompile(`^(\w+)/(increase|decrease)/(\d+)$`)
)

// Every line has a key of its own, and every number of it is one with a value for each of
// its sizes, whether they differ or not. The line of the nth round that grows is that of
// most of its sizes by their plans.
func TestKeysAndNumbers(t *testing.T) {
	rng := rand.New(rand.NewPCG(2613, 1))
	pl := project.NewPlanner()
	shaped, lines, others := 0, 0, 0
	for i := 0; i < testenv.Cases(12, 300); {
		sizes, _ := drawn(rng, pl, false)
		if len(sizes) < 2 {
			continue
		}
		i++
		text, err := Of(sizes, Style{Rhythm: rng.IntN(2) == 0, Wording: Wording(rng.IntN(3))})
		require.NoError(t, err)
		known := map[string]bool{}
		for _, p := range text.Passages {
			for _, l := range p.Lines {
				require.False(t, known[l.Key], "%s twice in\n%s", l.Key, written(t, text))
				known[l.Key] = true
				lines++
				for _, piece := range append(append(append([]Piece{}, l.Label...), l.Body...), l.Count...) {
					if piece.Values != nil {
						require.Len(t, piece.Values, len(l.For), "%s", l.Key)
					} else if !strings.HasSuffix(l.Key, "/means") {
						words := nameOfYarn.ReplaceAllString(nameOfStitch.ReplaceAllString(piece.Text, ""), "")
						require.NotRegexp(t, `\d`, words, l.Key)
					}
				}
				found := nthShaped.FindStringSubmatch(l.Key)
				if found == nil {
					continue
				}
				number, _ := l.number(roundsNumber)
				right := 0
				for i, s := range l.For {
					nth, parting := 0, 0 // a round may part a section from the one before it, which is another kind
					for r, round := range sizes[s].Out.Mitt.Section(p.Part).Rounds {
						if grows := round.Out() > round.In(); round.In() == round.Out() || grows != (found[2] == "increase") {
							continue
						}
						if nth++; r == 0 {
							parting = 1
						}
						if fmt.Sprint(r+1) == number.pieces[0].Values[i] && (fmt.Sprint(nth) == found[3] || fmt.Sprint(nth-parting) == found[3]) {
							right++
						}
					}
				}
				if 2*right < len(l.For) {
					others++
					t.Logf("%s: %s", l.Key, text.Told(p, l))
				}
				shaped++
			}
		}
	}
	t.Logf("%d lines, %d of rounds that change the count, of which %d stand where most sizes have another", lines, shaped, others)
	assert.Less(t, 20*others, shaped, "only where a size's rounds are so unlike that they stand beside others")
}

// keysOf returns the key of each line of a text by what it says.
func keysOf(text *Text) map[string]string {
	keys := map[string]string{}
	for _, p := range text.Passages {
		for _, l := range p.Lines {
			if l.Table == nil {
				keys[strings.Join(l.says, "+")+string(p.Part)+Plain(l.Label)] = l.Key
			}
		}
	}
	return keys
}

// A key stays where lines before it come and go, where numbers and how many sizes there are
// change, and in whatever way stitches are written.
func TestKeysStay(t *testing.T) {
	more := map[string]string{"kind": "mitten", "pins.gusset_base": "3", "pins.rhythm": "4"}
	key := func(text *Text, begins string) string {
		for _, p := range text.Passages {
			for _, l := range p.Lines {
				if l.Table == nil && strings.Contains(Plain(l.Label)+": "+Plain(l.Body), begins) {
					return l.Key
				}
			}
		}
		t.Fatalf("no %q in\n%s", begins, written(t, text))
		return ""
	}
	of := func(style Style, more map[string]string, inches ...float64) *Text {
		text, err := Of(design(t, more, inches...), style)
		require.NoError(t, err)
		return text
	}
	text := of(Style{}, more, 7, 8)
	assert.Equal(t, "gusset/increase/2", key(text, "Round 5: k1, M1L, k3"))
	assert.Equal(t, "gusset/after-increase-1/knit/1", key(text, "Rounds 2–4: Knit"))
	for name, other := range map[string]*Text{
		"one size":          of(Style{}, more, 8),
		"more sizes":        of(Style{}, more, 6, 7, 8, 9, 10),
		"in full words":     of(Style{Wording: Full}, more, 7, 8),
		"in both":           of(Style{Wording: Both}, more, 7, 8),
		"another gauge":     of(Style{}, map[string]string{"kind": "mitten", "pins.gusset_base": "3", "pins.rhythm": "4", "gauge.swatches[0].stitches": "28"}, 7, 8),
		"other neighbours":  of(Style{}, map[string]string{"kind": "mitten", "pins.gusset_base": "3", "pins.rhythm": "4", "length.cuff": "9"}, 7, 8),
		"rounds before all": of(Style{}, map[string]string{"kind": "mitten", "pins.gusset_base": "3", "pins.increase_rounds": "3, 7, 11, 15, 17"}, 7, 8),
	} {
		keys := map[string]bool{}
		for _, k := range keysOf(other) {
			keys[k] = true
		}
		for _, k := range []string{"cuff/cast-on-stitches-with-a/1", "gusset/increase/1", "gusset/increase/2", "gusset/after-increase-2/knit/1", "gusset/place-the-second-marker-after/1", "hand/slip/1"} {
			assert.True(t, keys[k], "%s: %s is not in\n%v", name, k, keys)
		}
	}
}
