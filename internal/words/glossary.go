package words

import (
	"slices"
	"strings"
)

// A Term is a word of the trade that a beginner may not know. Pages explain it
// in place, where it is first used.
type Term string

// The terms that pages explain, by the name that they have in US terms.
const (
	TermBindOff     Term = "bind off"
	TermBridge      Term = "bridge"
	TermCastOn      Term = "cast on"
	TermEase        Term = "ease"
	TermGarter      Term = "garter stitch"
	TermGauge       Term = "gauge"
	TermGusset      Term = "gusset"
	TermHeld        Term = "held stitches"
	TermK2tog       Term = "k2tog"
	TermKfb         Term = "kfb"
	TermM1L         Term = "M1L"
	TermM1R         Term = "M1R"
	TermNotch       Term = "notch"
	TermPickUp      Term = "pick up and knit"
	TermPurl        Term = "purl"
	TermRib         Term = "rib"
	TermRipBack     Term = "rip back"
	TermRightSide   Term = "right side"
	TermRound       Term = "round"
	TermRow         Term = "row"
	TermSsk         Term = "ssk"
	TermStockinette Term = "stockinette"
	TermStrand      Term = "strand"
	TermSwatch      Term = "swatch"
	TermTail        Term = "tail"
	TermTurn        Term = "turn at the end"
	TermWasteYarn   Term = "waste yarn"
	TermWrongSide   Term = "wrong side"
	TermYarnOver    Term = "yarn over"
)

// says has one line of plain words for each term. It leans on no term that is
// not explained itself, and never on itself by way of others.
var says = map[Term]string{
	TermBindOff:     "end the stitches for good: each is drawn over its neighbour, so that none can run",
	TermBridge:      "new stitches, cast on over the gap that the thumb’s stitches leave in the hand",
	TermCastOn:      "put the first loops of yarn on the needle",
	TermEase:        "how much wider the mitt is than the hand; below zero it stretches to fit",
	TermGarter:      "one row of knit bumps upon another, from knitting and purling rounds in turn",
	TermGauge:       "how many stitches and rounds of your own knitting lie on 10 cm (4 in)",
	TermGusset:      "the wedge of extra stitches that makes room for the root of the thumb",
	TermHeld:        "stitches that wait, on a piece of other yarn, until the thumb is worked",
	TermK2tog:       "knit two stitches together as one; the new stitch leans to the right",
	TermKfb:         "knit into the front of a stitch and then into its back: one becomes two",
	TermM1L:         "make one: lift the yarn between two stitches from the front, knit it through the back",
	TermM1R:         "make one: lift the yarn between two stitches from the back, knit it through the front",
	TermNotch:       "a small mark at the edge that shows where something begins or meets",
	TermPickUp:      "draw new stitches out of an edge that is knitted already",
	TermPurl:        "a stitch with its bump towards you: a knit stitch, seen from behind",
	TermRib:         "knit and purl stitches side by side, in columns; it stretches and hugs the wrist",
	TermRipBack:     "pull the knitting out, down to an earlier round, and put its stitches back on the needles",
	TermRightSide:   "the side of the fabric that is seen when the mitt is worn",
	TermRow:         "once across a piece that is open, from one edge to the other",
	TermRound:       "once about the mitt: every stitch on the needles is worked one time",
	TermSsk:         "slip two stitches as if to knit, one by one, then knit them together; it leans to the left",
	TermStockinette: "plain knitting: every round is knitted, and its smooth side is outside",
	TermStrand:      "yarn that waits its turn, carried loosely along the back of the other colour’s stitches",
	TermSwatch:      "a piece knitted first, washed and laid flat, to count your stitches on",
	TermTail:        "the end of yarn left hanging where the knitting begins or ends, to be woven in",
	TermTurn:        "take the needles in the other hands, so that the work shows its other side; go back",
	TermWrongSide:   "the side of the fabric that lies against the hand",
	TermWasteYarn:   "a length of smooth spare yarn that holds stitches and is drawn out later",
	TermYarnOver:    "the yarn laid over the needle: a new stitch, with a small hole under it",
}

// otherForms are the forms of a term that a sentence may use in its place.
var otherForms = map[Term][]string{
	TermBindOff: {"bound off", "binding off"},
	TermBridge:  {"bridges"},
	TermCastOn:  {"casts on", "casting on"},
	TermEase:    {"eases"},
	TermGauge:   {"gauges"},
	TermGusset:  {"gussets"},
	TermHeld:    {"held"},
	TermNotch:   {"notches"},
	TermPickUp:  {"pick up", "picked up", "picking up"},
	TermPurl:    {"purled", "purls"},
	TermRipBack: {"ripped back", "ripping back"},
	TermRound:   {"rounds"},
	TermRow:     {"rows"},
	TermStrand:  {"strands"},
	TermSwatch:  {"swatches"},
	TermTail:    {"tails"},
}

// Explained returns a term's name and the line that explains it, in the terms of
// one side; both are empty for a word that is not explained.
func (t Terms) Explained(term Term) (name, line string) {
	if says[term] == "" {
		return "", ""
	}
	return t.Say(string(term)), t.Say(says[term])
}

// A Run is a piece of a sentence; where it is a term of the trade, its Line
// explains it.
type Run struct{ Text, Line string }

// Explain puts a sentence into the terms of one side and cuts it into runs. The
// first use of each of the wanted terms is a run by itself.
func (t Terms) Explain(sentence string, wanted ...Term) []Run {
	return NewExplainer(t, wanted...).Cut(sentence)
}

// An Explainer goes through the sentences of a page in their order and explains
// each term once, where it is first used.
type Explainer struct {
	in     Terms
	wanted []Term
}

// NewExplainer returns an explainer of the wanted terms, in those of one side.
func NewExplainer(in Terms, wanted ...Term) *Explainer {
	return &Explainer{in, slices.Clone(wanted)}
}

// Wants reports whether a term is still to be explained.
func (e *Explainer) Wants(t Term) bool { return slices.Contains(e.wanted, t) }

// Cut puts the next sentence into the terms of the side and cuts it into runs.
// The first use of a term that is still wanted is a run by itself.
func (e *Explainer) Cut(sentence string) []Run {
	rest := e.in.Say(sentence)
	var list []Run
	for {
		at, end, which := e.in.firstOf(rest, e.wanted)
		if which < 0 {
			break
		}
		if at > 0 {
			list = append(list, Run{Text: rest[:at]})
		}
		_, line := e.in.Explained(e.wanted[which])
		list = append(list, Run{Text: rest[at:end], Line: line})
		rest = rest[end:]
		e.wanted = slices.Delete(e.wanted, which, which+1)
	}
	if rest != "" {
		list = append(list, Run{Text: rest})
	}
	return list
}

// firstOf returns where the earliest of some terms stands in a text, and which
// it is; -1 if none does. The longer of two that begin together is taken.
func (t Terms) firstOf(text string, terms []Term) (from, to, which int) {
	which = -1
	for i, term := range terms {
		for _, form := range append([]string{string(term)}, otherForms[term]...) {
			at, end := findWord(text, t.Say(form))
			if at >= 0 && (which < 0 || at < from || at == from && end > to) {
				from, to, which = at, end, i
			}
		}
	}
	return from, to, which
}

// findWord returns where a word stands by itself in a text, in capitals or not;
// -1 if it doesn't.
func findWord(text, word string) (from, to int) {
	for at := 0; at+len(word) <= len(text); at++ {
		end := at + len(word)
		if strings.EqualFold(text[at:end], word) && !joins(lastOf(text[:at])) && !joinedTo(text[end:]) {
			return at, end
		}
	}
	return -1, -1
}
