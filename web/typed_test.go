package web

import (
	"fmt"
	"strings"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// A note that is still being written when the page goes, because it is loaded
// again or the phone is put away, is kept as one that was left with a tap.
func TestNoteOutlivesThePage(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.phone()
	at := b.sample() + "/desk/knit"
	b.open(at)
	b.tap(".forward")
	b.until(keptAll)
	b.fill("note", "tight at the base")
	b.open(at)
	assert.Equal(t, "tight at the base", eval[string](b, `document.getElementById("note").value`))
}

// How far up the tape is held is told for the round that the form names, not
// for the one with which the page came; above the gusset nothing is told.
func TestTryTellsTheTopOfItsRound(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	at := b.sample()
	b.open(at + "/desk/try")
	ahead := func(part string, round int) string {
		b.do(chromedp.Evaluate[chromedp.Void](fmt.Sprintf(`{
			const { section, round } = document.getElementById("try-form").elements;
			section.value = %q;
			section.dispatchEvent(new Event("change", { bubbles: true }));
			round.value = "%d";
			round.dispatchEvent(new Event("change", { bubbles: true }));
		}`, part, round)))
		return strings.TrimSpace(eval[string](b, `document.querySelector("[data-ahead]").textContent`))
	}
	assert.Contains(t, ahead("gusset", 10), "31 mm above this round", "10 rounds of 32 over 10 cm are left")
	assert.Contains(t, ahead("gusset", 4), "50 mm above this round")
	assert.Empty(t, ahead("gusset", 20), "it is reached")
	assert.Empty(t, ahead("hand", 3))
	assert.Empty(t, ahead("cuff", 3))
}

// Without a script the same is told for the round at which the count stands.
func TestTryTellsTheTopWithoutScript(t *testing.T) {
	a := newApp(t)
	at := a.sample()
	require.Equal(t, 200, a.stroke(at+"/needles", `{"key":"a","side":"right","section":"gusset","round":10}`).status)
	assert.Contains(t, a.get(at+"/tries").doc().Find("[data-ahead]").Text(), "the top comes 31 mm above this round")
}
