package view

import (
	"strconv"
	"strings"
	"testing"

	"github.com/PuerkitoBio/goquery"
	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/project"
)

// The form of a mitten does not grow: what only a glove needs is there, and hidden, so
// that what was typed comes back with the glove.
func TestOnlyAGloveShowsItsFingers(t *testing.T) {
	shown := func(kind string, texts map[string]string) []string {
		sheet := map[string]string{"kind": kind}
		for path, text := range texts {
			sheet[path] = text
		}
		d, a := fitAnswer(t, sheet)
		var list []string
		parsed(t, FitPage(Mitt{Doc: d, Desk: FitDesk, Answer: a})).Find(".drawer .field:not([hidden]) [name]").Each(func(_ int, s *goquery.Selection) {
			name, _ := s.Attr("name")
			if n, number := mitt.NumberAt(name); number && ofFingers(n) || strings.Contains(name, "fingers.") || strings.Contains(name, "crotches.") {
				list = append(list, name)
			}
		})
		return list
	}
	assert.Empty(t, shown("mitten", nil))
	all := shown("glove", nil)
	assert.Len(t, all, 11+7+24, "girths, lengths, partings; ends; numbers")
	assert.Subset(t, all, hand.FieldsOfFingers())
	given := map[string]string{"hand.fingers.index.girth": "6.4", "pins.fingers.index.palm": "6"}
	assert.Equal(t, []string{"hand.fingers.index.girth", "pins.fingers.index.palm"}, shown("mitten", given), "what was typed stays")
}

// Each finger has a line with what it takes of palm and back, and opens to fix them; the
// numbers of a line are those of the plan.
func TestEachFingerHasALine(t *testing.T) {
	d, a := fitAnswer(t, map[string]string{"kind": "glove", "fingers.index": "half", "pins.fingers.ring.back": "5"})
	a.Out.Beside = project.NewPlanner().Beside(d, a.Out)
	lines := a.fingerLines()
	names := make([]string, len(lines))
	for i, l := range lines {
		names[i] = l.Name
	}
	assert.Equal(t, []string{"Little finger", "Upper hand", "Ring finger", "Middle finger", "Index finger, half"}, names)
	p := a.Out.Plan
	palm := 0
	for i, f := range []hand.Finger{hand.Little, hand.Ring, hand.Middle, hand.Index} {
		l := lines[[]int{0, 2, 3, 4}[i]]
		one := p.Fingers.Each[f]
		palm += one.Palm
		assert.Equal(t, p.Number(mitt.OfFinger(mitt.FingerStitches, f)), l.Numbers[3].Number)
		assert.Equal(t, f == hand.Ring, l.fixed(), l.Name)
		along, _ := strconv.Atoi(l.Along)
		assert.Equal(t, one.FirstRound, along+one.Palm+one.Back+bridgeAfter(p, f), "%s: its line adds up", l.Name)
		assert.Equal(t, f == hand.Little, l.Along == "", l.Name)
		assert.Regexp(t, `^Girth .+, length .+\. (Fit: (almost certain|very likely|likely)|Try it on)`, l.Fit)
	}
	assert.Contains(t, a.divided(), "42 stitches, 21 of the palm and 21 of the back")
	assert.Equal(t, 21, palm)
	doc := parsed(t, planFragment(a))
	assert.Equal(t, 24, doc.Find(".by-finger .finger-numbers > li").Length())
	assert.Equal(t, "Let go", doc.Find(`[id="at-fingers.ring.back"] button.set`).Text())
	assert.Contains(t, doc.Find(`[id="at-fingers.ring.back"] .cost`).Text(), "Free, it would be")
	assert.Regexp(t, `costs \d+ mm|as near|\d+ mm nearer`, strings.ReplaceAll(doc.Find(`[id="at-bridges.ring_little"] .ruler`).Text(), "\u00a0", " "))
	// a finger's stitches come from its neighbours: what that costs stands with what it gains
	stitches := doc.Find(`[id="at-fingers.index.stitches"] .ruler li:not(.now) span`)
	assert.Equal(t, 2, stitches.Length())
	stitches.Each(func(_ int, s *goquery.Selection) {
		assert.Regexp(t, `^(as wanted|[\d.]+ mm (tighter|looser)); (costs [\d.]+ mm|as near|[\d.]+ mm nearer)$`, strings.ReplaceAll(s.Text(), "\u00a0", " "))
	})
	for _, s := range a.sure() {
		assert.NotContains(t, s.Place, "finger", "told in its line")
	}
}

// What can be changed is told before the upper hand, which only follows from the hand and
// the little finger, however sure that is.
func TestTheUpperHandIsToldLast(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"kind": "glove", "hand.wrist_circumference": "15.4", "hand.palm_and_thumb_circumference": "22"})
	list := a.sure()
	last := list[len(list)-1]
	require.Equal(t, "upper hand", last.Place)
	assert.Less(t, last.Chance, list[0].Chance, "else it would be last anyway")
	assert.Regexp(t, `^It has the hand’s stitches without the little finger’s: \d+ mm looser than wanted\.$`, strings.ReplaceAll(last.Why, "\u00a0", " "))
	for i := 2; i < len(list); i++ {
		assert.LessOrEqual(t, list[i-2].Chance, list[i-1].Chance, "the least sure of the others comes first")
	}
}

// What keeps a hand from being divided stands at its field, with a button that takes the
// nearest that works.
func TestADivisionThatCantBeHasAWayOut(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"kind": "glove", "pins.fingers.index.palm": "40"})
	assert.Nil(t, a.Out)
	assert.Contains(t, a.Faults["pins.fingers.index.palm"], "is 40")
	way := parsed(t, planFragment(a)).Find(`.in-the-way button[value^="pins.fingers.index.palm="]`)
	assert.Equal(t, "Use "+a.Works["pins.fingers.index.palm"], way.First().Text())
}

// Where all fingers lie alike, or lie well, the headline takes them together.
func TestTheHeadlineTakesFingersTogether(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"kind": "glove"})
	assert.NotContains(t, a.fitHeadline(), "ring finger")
	assert.Contains(t, a.fitHeadline(), "fingers")
	_, a = fitAnswer(t, map[string]string{"kind": "glove", "pins.fingers.index.palm": "15"})
	assert.Contains(t, a.fitHeadline(), "too loose at the index finger")
}

// A glove for a baby's hand is not planned; the way out is what is planned instead.
func TestABabyIsOfferedNoGlove(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"kind": "glove", "hand.hand_circumference": "11", "hand.hand_length": "8", "hand.wrist_circumference": "", "hand.thumb_circumference": ""})
	assert.Nil(t, a.Out)
	assert.Contains(t, parsed(t, planFragment(a)).Find(".in-the-way").Text(), "gets no fingers")
	assert.Equal(t, "mitten_without_thumb", a.Works["kind"])
	assert.Equal(t, 1, parsed(t, planFragment(a)).Find(`button[value="kind=mitten_without_thumb"]`).Length())
}

// How far each finger is covered is chosen by a drawing: for all four at once, one by one,
// and for the thumb.
func TestEndsAreChosenByTheirDrawing(t *testing.T) {
	_, a := fitAnswer(t, map[string]string{"kind": "glove", "fingers.index": "half", "fingers.middle": "half", "fingers.ring": "half", "fingers.little": "half", "fingers.thumb": "open"})
	doc := parsed(t, planFragment(a))
	assert.Equal(t, 3, doc.Find(".covered .covered-drawn svg").Length())
	var chosen []string
	doc.Find(".covered [checked]").Each(func(_ int, s *goquery.Selection) {
		name, _ := s.Attr("name")
		value, _ := s.Attr("value")
		chosen = append(chosen, name+" "+value)
	})
	assert.Equal(t, []string{"end-all half", "end-fingers.index half", "end-fingers.middle half", "end-fingers.ring half", "end-fingers.little half", "end-fingers.thumb open"}, chosen)
	sets, _ := doc.Find(`[name="end-all"][value="full"]`).Attr("data-sets")
	assert.Equal(t, "fingers.index=&fingers.little=&fingers.middle=&fingers.ring=", sets)
	_, a = fitAnswer(t, map[string]string{"kind": "glove", "fingers.index": "half"})
	assert.Empty(t, parsed(t, planFragment(a)).Find(`[name="end-all"][checked]`).Nodes, "they differ")
}
