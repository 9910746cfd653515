package web

import (
	"fmt"
	"testing"

	"github.com/chromedp/chromedp"
	"github.com/chromedp/chromedp/kb"
	"github.com/stretchr/testify/assert"

	"thenar/internal/testenv"
)

// The whole main job, by a mouse, by keys alone and by touch alone: own hand,
// plan, a number fixed, a motif of two yarns laid round the hand, seen on the
// hand, printed; and what it takes, in presses and scrolls. It is done in long
// runs; TestKeyboardAlone, TestAMotifByKeyboardAlone and TestTheEditorByTouch do
// pieces of it before each commit.
func TestMainJobInSteps(t *testing.T) {
	if !testenv.Long() {
		return
	}
	t.Run("mouse", func(t *testing.T) { mainJob(newPerson(t, byMouse, 1440, 900)) })
	t.Run("keys", func(t *testing.T) { mainJob(newPerson(t, byKeys, 1280, 800)) })
	t.Run("touch", func(t *testing.T) { mainJob(newPerson(t, byTouch, 390, 844)) })
}

func mainJob(p *person) {
	p.t.Helper()
	p.next("own hand")
	p.pressTo(".begin .main-action", `document.getElementById("measure-form") !== null`)
	if p.way == byKeys {
		p.press(".in-the-way a[data-opens]") // what is to go leads to its field
	}
	for _, of := range [][2]string{
		{"gauge.swatches[0].stitches", "24"},
		{"gauge.swatches[0].width", "10"},
		{"gauge.swatches[0].rounds", "32"},
		{"gauge.swatches[0].height", "10"},
		{"hand.hand_circumference", "19"},
		{"hand.thumb_circumference", "6,5"},
		{"hand.hand_length", "18"},
	} {
		p.types(of[0], of[1])
	}
	p.until(`document.querySelector(".summary")?.textContent.includes("gusset 3 → 15 in 19 rounds")`)
	p.until(settled)

	p.next("a number fixed")
	if !p.shows(`.number[data-key="cuff.cast_on"] summary`) {
		p.press("#measure > summary") // on a phone the ladder is there once the measures are folded
	}
	p.fix("cuff.cast_on")
	p.until(`document.querySelector('.number[data-key="cuff.cast_on"] .fixed') !== null`)
	p.until(settled)

	p.next("to the chart, all round the hand")
	mitt := p.mitt()
	p.goTo("chart", `document.getElementById("chart-cell") !== null`)
	p.allRound()
	p.wideEnough()

	p.next("a motif of two yarns")
	p.takes("b")
	p.until(quiet) // it has turned to upright columns
	for _, at := range [][2]int{{22, 2}, {23, 1}, {23, 3}, {24, 2}} {
		p.paints(at[0], at[1])
	}
	p.takes("a")
	p.paints(23, 2)
	p.until(chartSaved)

	p.next("laid round the hand")
	p.reach("select")
	p.spans(22, 1, 2, 3)
	p.press(`[data-run="lay-round"]`)
	p.until(chartSaved)
	painted := await[int](p.browser, fmt.Sprintf(`fetch(%q).then((r) => r.json()).then((c) => c.edits.filter((e) => e.layer === "colour").length)`, mitt+"/chart"))
	assert.Equal(p.t, 44, painted, "4 rust stitches in each 4 of the 44 round the hand")

	p.next("seen on the hand")
	p.goTo("fit", `document.querySelector(".drawing svg") !== null`)
	p.seen(`document.querySelector(".drawing .hand svg, .drawing .pair svg, .drawing svg")`, `look.middle(e)`)
	assert.True(p.t, eval[bool](p.browser, `[...document.querySelectorAll(".drawing path.worn")].some((e) => e.getAttribute("stroke"))`), "the hand wears the motif")

	p.next("printed")
	p.goTo("pattern", `document.querySelector(".sheet") !== null`)
	p.do(chromedp.Evaluate[chromedp.Void](`window.print = () => { window.hasPrinted = true; }`))
	p.press(`[data-print]`)
	p.until(`window.hasPrinted === true`)
	p.done()
}

// goTo goes to a desk, by the tape.
func (p *person) goTo(desk, there string) {
	p.t.Helper()
	p.pressTo(fmt.Sprintf(`.desk-tape a[href$="/desk/%s"]`, desk), there)
}

// fix fixes a number as it stands: its slip opens with the number in hand, and
// Enter fixes it.
func (p *person) fix(number string) {
	p.t.Helper()
	rung := fmt.Sprintf(`.number[data-key="%s"]`, number)
	if p.way != byKeys {
		p.press(rung + " .fix")
		return
	}
	p.press(rung + " summary")
	p.strike(kb.Enter)
}

// takes takes up a yarn.
func (p *person) takes(yarn string) {
	p.t.Helper()
	hank := fmt.Sprintf(`[data-tool-colour="%s"]`, yarn)
	if p.way == byKeys {
		p.onChart(hank)
	} else {
		p.press(hank)
	}
}

// reach chooses how far a mark reaches; on a phone that row is opened first.
func (p *person) reach(shape string) {
	p.t.Helper()
	button := fmt.Sprintf(`button[data-shape="%s"]`, shape)
	if p.way == byKeys {
		p.onChart(button)
		return
	}
	if !p.shows(button) {
		p.press("[data-reach-open]")
	}
	p.press(button)
}

// shows reports whether the page shows what a selector finds, in view or not.
func (p *person) shows(selector string) bool {
	p.t.Helper()
	return eval[bool](p.browser, fmt.Sprintf(`document.querySelector(%q)?.checkVisibility() ?? false`, selector))
}

// allRound shows the chart of the whole hand.
func (p *person) allRound() {
	p.t.Helper()
	if p.shows(`[data-go="hand"]`) { // beside the small mitt
		p.press(`[data-go="hand"]`)
	} else {
		p.press(`[data-run="seeing"]`)
		p.picks(`[data-view="view"]`, "hand")
	}
	p.until(`document.querySelector('svg[data-chart="hand"]') !== null && ` + quiet)
}

// wideEnough makes the stitches as large as the pointer needs: 8 px for a mouse,
// 20 px for a finger (common practice, no source).
func (p *person) wideEnough() {
	p.t.Helper()
	least := map[way]float64{byMouse: 8, byTouch: 20}[p.way]
	p.t.Logf("a stitch is %.1f px wide", p.stitchWide())
	for p.stitchWide() < least {
		p.press(`[data-run="larger"]`)
	}
}
