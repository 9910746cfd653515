package words

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
)

// tradeWords are words of the trade that stand in the Craft Yarn Council's list
// of abbreviations and terms (from memory), or that this program uses itself
// (common practice, no source). Everybody knows yarn, needle, knit and stitch.
var tradeWords = []Term{
	TermBindOff, TermBridge, TermCastOn, TermEase, TermGarter, TermGauge, TermGusset, TermHeld, TermK2tog, TermKfb, TermM1L, TermM1R, TermNotch, TermPickUp,
	TermPurl, TermRib, TermRightSide, TermRipBack, TermRound, TermRow, TermSsk, TermStockinette, TermStrand, TermSwatch, TermTail, TermTurn, TermWasteYarn,
	TermWrongSide, TermYarnOver,
	"slip marker", "place marker", "stranded", "float", "selvedge", "selvage", "frog", "block", "blocking", "graft", "kitchener",
	"psso", "skp", "m1", "tbl", "wyif", "wyib", "live stitches", "provisional", "negative ease", "repeat", "steek", "motif", "increase",
	"decrease",
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
