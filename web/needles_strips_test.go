package web

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// From the last round of the gusset, through the round that divides the mitt, to its end: a
// phone shows one chart at a time, that of the present round's part. A chart that is left
// stays nowhere, neither above the next one nor beside the foot.
func TestPhoneShowsTheChartOfThePresentRound(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	b.phone()
	mitt := b.sample()
	b.desk(mitt, "knit")
	b.until(`document.getElementById("awake").textContent !== ""`)
	b.taps(".forward", 2)
	b.until(keptAll)
	assert.Empty(t, eval[string](b, `["The screen stays on.", ""].includes(document.getElementById("awake").textContent) ? "" : "said again"`), "what the screen does is said once")
	b.serverAway() // the page has all charts by now
	b.until(`[...document.querySelectorAll("[data-strip] svg")].length === document.querySelectorAll("[data-strip]").length`)
	assert.Empty(t, eval[[]string](b, `(() => {
		const wrong = [], foot = document.querySelector(".press");
		for (const task of JSON.parse(document.getElementById("tasks").textContent).slice(2)) {
			const shown = [...document.querySelectorAll("[data-strip]")].filter((e) => e.checkVisibility()).map((e) => e.dataset.strip);
			if (shown.join() !== task.view) wrong.push(task.name + " of the " + task.part + ": " + shown.join(" and "));
			const small = foot.querySelector("[data-backward]").getBoundingClientRect(), back = foot.querySelector(".back").getBoundingClientRect();
			const word = foot.querySelector(".back b").getBoundingClientRect();
			if (small.top < word.bottom || small.bottom > back.bottom) wrong.push(task.name + ": a word lies on another, " + foot.querySelector("[data-backward]").textContent);
			document.querySelector(".forward").click();
		}
		if (foot.getBoundingClientRect().width < innerWidth) wrong.push("the foot is " + foot.getBoundingClientRect().width + " wide");
		return wrong;
	})()`))
	b.shot("needles-phone-end")
	b.serverBack()
	b.until(keptAll)
}
