package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/units"
)

// tradeWords are words of the trade that stand in the Craft Yarn Council's list
// of abbreviations and terms (from memory), or that this program uses itself
// (common practice, no source). Everybody knows yarn, needle, knit and stitch.
var tradeWords = []Term{
	TermBackLoop, TermBindOff, TermBridge, TermCastOn, TermClosed, TermDecrease, TermEase, TermFingers, TermGarter, TermGauge, TermGauntlet, TermGraft, TermGusset, TermHeld, TermHeldFor, TermHem, TermIncrease, TermK2tog, TermK3tog, TermKfb, TermLLI, TermLongTail, TermM1, TermM1L, TermM1R, TermMarker, TermMattress, TermNotch, TermOpening, TermPickUp, TermPurl, TermRLI, TermRib, TermRightSide, TermRipBack, TermRound, TermRow, TermS2kp, TermSeam, TermSk2p, TermSsk, TermStockinette, TermStraight, TermStrand, TermSwatch, TermTBL, TermTail, TermThird, TermTurn, TermWasteYarn, TermWrongSide, TermYarnOver,
	"slip marker", "place marker", "stranded", "float", "selvedge", "selvage", "frog", "block", "blocking", "kitchener", "provisional cast-on",
	"psso", "skp", "wyif", "wyib", "live stitches", "provisional", "negative ease", "repeat", "steek", "motif", "slip knot", "three-needle", "afterthought",
}

// TestEveryTermIsExplained checks that a term has one line of plain words that
// can be taken in at a glance, and that the line uses no word of the trade that
// is not explained in its turn, without going round in a ring.
func TestEveryTermIsExplained(t *testing.T) {
	uses := map[Term][]Term{}
	for term, line := range says {
		assert.LessOrEqual(t, len(strings.Fields(line)), longest, "%s: %s", term, line)
		assert.NotContains(t, line, ".", "%s is one line", term)
		for _, other := range tradeWords {
			for _, form := range append([]string{string(other)}, otherForms[other]...) {
				if at, _ := findWord(line, form); at >= 0 {
					assert.Contains(t, says, other, "%s is explained by %q, which is not", term, other)
					uses[term] = append(uses[term], other)
				}
			}
		}
	}
	for _, term := range tradeWords[:len(says)] {
		assert.Contains(t, says, term)
		assert.False(t, leansOn(uses, term, term, map[Term]bool{}), "%s is explained by itself", term)
	}
}

// plainWords are words of the trade that everybody reads as they stand there (common
// practice, no source).
var plainWords = map[Term]bool{"repeat": true}

// TestWordsOfEveryWayAreExplained knits every way to make a mitt from its words: each word
// of the trade in them is explained, and a page of instructions explains it in its place.
func TestWordsOfEveryWayAreExplained(t *testing.T) {
	everywhere := []Term{TermRound, TermRow, TermStockinette, TermGauge, TermEase}
	met := map[Term]bool{}
	for _, w := range []mitt.Make{
		{},
		{Place: mitt.InPalm, Increase: mitt.Lifted},
		{Increase: mitt.YoClosed, Cuff: mitt.HemCuff},
		{Increase: mitt.FrontAnd, Cuff: mitt.GarterCuff},
		{Increase: mitt.InCentre, Cuff: mitt.RolledCuff},
		{Construction: mitt.Straight, Cuff: mitt.Gauntlet},
		{Construction: mitt.Slit},
		{Construction: mitt.NoThumb},
		{Flat: true},
		{Flat: true, Increase: mitt.YoClosed},
		{Direction: mitt.Down},
	} {
		for _, kind := range []mitt.Kind{mitt.Fingerless, mitt.Mitten, mitt.Glove} {
			if kind == mitt.Mitten && w.Construction == mitt.Slit {
				continue // which is refused
			}
			if kind == mitt.Glove && (w.Construction == mitt.Slit || w.Construction == mitt.NoThumb || w.Flat || w.Direction == mitt.Down) {
				continue // so are these
			}
			p, err := mitt.New().Plan(&mitt.Request{
				Kind: kind.By(w.Construction), Gauge: gauge.Gauge{Stitches: 0.24, Rounds: 0.32, Treated: true}, Make: w,
				Hand: hand.Hand{Circumference: 190 * units.Millimetre}, Stitch: mitt.Stitches{Repeat: 2, Rib: 2},
			})
			require.NoError(t, err, "%+v", w)
			var texts []string
			for _, passage := range Instructions(p.Mitt(), Hands{}) {
				texts = append(texts, passage.Title)
				for _, s := range passage.Steps {
					texts = append(texts, s.Text)
				}
			}
			for _, text := range texts {
				for _, term := range tradeWords {
					for _, form := range append([]string{string(term)}, otherForms[term]...) {
						if at, _ := findWord(text, form); at < 0 || plainWords[term] {
							continue
						}
						met[term] = true
						assert.Contains(t, append(InInstructions(), everywhere...), term, "%s", text)
					}
				}
			}
		}
	}
	for _, term := range []Term{TermClosed, TermBackLoop, TermWasteYarn, TermOpening, TermSeam, TermThird, TermMattress, TermGraft, TermHem, TermFingers, TermHeldFor} {
		assert.True(t, met[term], "no words use %s", term)
	}
	for _, term := range InInstructions() {
		assert.Contains(t, says, term)
	}
}

// leansOn reports whether a term's line, or that of a term in it, uses another.
func leansOn(uses map[Term][]Term, term, other Term, seen map[Term]bool) bool {
	for _, next := range uses[term] {
		if next == other {
			return true
		}
		if !seen[next] {
			seen[next] = true
			if leansOn(uses, next, other, seen) {
				return true
			}
		}
	}
	return false
}

// TestTermsAreExplainedOnEitherSide checks that the names are those of the side.
func TestTermsAreExplainedOnEitherSide(t *testing.T) {
	name, line := UK.Explained(TermGauge)
	assert.Equal(t, "tension", name)
	assert.Contains(t, line, "10 cm (4 in)")
	name, _ = US.Explained(TermBindOff)
	assert.Equal(t, "bind off", name)
	name, line = US.Explained("spanner")
	assert.Empty(t, name+line)
}

// TestFirstUseIsExplained cuts sentences where the wanted terms stand first.
func TestFirstUseIsExplained(t *testing.T) {
	texts := func(list []Run) (all []string) {
		for _, r := range list {
			if r.Line != "" {
				r.Text = "[" + r.Text + "]"
			}
			all = append(all, r.Text)
		}
		return all
	}
	assert.Equal(t, []string{"The ", "[gusset]", " ends; the gusset’s ", "[held stitches]", " wait."}, texts(US.Explain("The gusset ends; the gusset’s held stitches wait.", TermHeld, TermGusset)))
	assert.Equal(t, []string{"[Tension]", " 24, ", "[cast off]", "."}, texts(UK.Explain("Gauge 24, bind off.", TermBindOff, TermGauge)))
	assert.Equal(t, []string{"[Picked up]", " 4, unheld, strandless"}, texts(US.Explain("Picked up 4, unheld, strandless", TermPickUp, TermHeld, TermStrand)))
	assert.Equal(t, []string{"Nothing wanted"}, texts(US.Explain("Nothing wanted")))
	assert.Empty(t, US.Explain("", TermGauge))
	assert.Equal(t, []string{"İstanbul ", "[gauge]"}, texts(US.Explain("İstanbul gauge", TermGauge)), "a name that grows in small letters")
}

// TestTermsAreExplainedOnceAPage goes through the sentences of a page.
func TestTermsAreExplainedOnceAPage(t *testing.T) {
	e := NewExplainer(US, TermGusset, TermBridge)
	assert.Len(t, e.Cut("The gusset begins."), 3)
	assert.Equal(t, []Run{{Text: "The gusset goes on."}}, e.Cut("The gusset goes on."))
	assert.Len(t, e.Cut("Cast on a bridge over the gusset."), 3)
}
