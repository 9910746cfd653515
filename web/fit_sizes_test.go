package web

import (
	"testing"

	"github.com/stretchr/testify/assert"
)

// Fit at the sizes of common windows, in screens: on a desk the hand, its ladder
// and its curve are seen together without scrolling and line up with each other;
// nothing is wider than the window.
func TestFitFillsTheWindow(t *testing.T) {
	t.Parallel()
	b := newBrowser(t)
	page := sampled(b)
	for _, s := range []struct {
		width, height int64
		screens       float64
		together      bool
	}{{1280, 800, 2, true}, {1440, 900, 2, true}, {1920, 1080, 2, true}, {390, 844, 5, false}, {360, 740, 5, false}} {
		b.size(s.width, s.height)
		b.open(page)
		screens := eval[float64](b, `document.documentElement.scrollHeight / innerHeight`)
		t.Logf("%d × %d: %.2f screens", s.width, s.height, screens)
		assert.LessOrEqual(t, screens, s.screens, "%d × %d", s.width, s.height)
		assert.LessOrEqual(t, eval[int64](b, `document.documentElement.scrollWidth`), s.width)
		assert.GreaterOrEqual(t, eval[float64](b, `(() => {
			const at = [...document.querySelectorAll(".numbers > li > details")].map((e) => e.getBoundingClientRect().top);
			return Math.min(...at.slice(1).map((y, i) => y - at[i]));
		})()`), 23.5, "numbers on the ladder are a line of type apart")
		assert.InDelta(t, 0, eval[float64](b, `Math.max(...[...document.querySelectorAll(".curve")].map((c) =>
			Math.abs(c.querySelector("svg").getBoundingClientRect().right - [...c.querySelectorAll(".ticks > :not(.unit-of)")].at(-1).getBoundingClientRect().right)))`), 1.5, "the last girth stands at the end of its axis")
		if !s.together {
			continue
		}
		assert.True(t, eval[bool](b, `[...document.querySelectorAll(".ladder, .drawing > .hand, .curves")].every((e) => e.getBoundingClientRect().bottom <= innerHeight)`))
		assert.InDelta(t, 0, eval[float64](b, `(() => {
			const bottom = (s) => document.querySelector(s).getBoundingClientRect().bottom;
			const round = '[data-section="gusset"][data-from="1"]';
			return bottom(".rung" + round) - bottom(".curve .band" + round);
		})()`), 1, "a round of the ladder is as high as that of the curve")
	}
}
