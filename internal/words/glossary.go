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
	TermBackLoop    Term = "backward loop"
	TermBindOff     Term = "bind off"
	TermBridge      Term = "bridge"
	TermCastOn      Term = "cast on"
	TermClosed      Term = "closed cast-on"
	TermDecrease    Term = "decrease"
	TermEase        Term = "ease"
	TermFingers     Term = "bridge between fingers"
	TermGarter      Term = "garter stitch"
	TermGauge       Term = "gauge"
	TermGauntlet    Term = "gauntlet"
	TermGraft       Term = "graft"
	TermGusset      Term = "gusset"
	TermHeld        Term = "held stitches"
	TermHeldFor     Term = "stitches held for"
	TermHem         Term = "hem"
	TermIncrease    Term = "increase"
	TermK2tog       Term = "k2tog"
	TermK3tog       Term = "k3tog"
	TermKfb         Term = "kfb"
	TermLLI         Term = "LLI"
	TermLongTail    Term = "long-tail cast-on"
	TermM1          Term = "M1"
	TermM1L         Term = "M1L"
	TermM1R         Term = "M1R"
	TermMarker      Term = "marker"
	TermMattress    Term = "mattress stitch"
	TermNotch       Term = "notch"
	TermOpening     Term = "opening"
	TermPickUp      Term = "pick up and knit"
	TermPurl        Term = "purl"
	TermRLI         Term = "RLI"
	TermRib         Term = "rib"
	TermRightSide   Term = "right side"
	TermRipBack     Term = "rip back"
	TermRound       Term = "round"
	TermRow         Term = "row"
	TermS2kp        Term = "s2kp"
	TermSeam        Term = "seam"
	TermSk2p        Term = "sk2p"
	TermSsk         Term = "ssk"
	TermStockinette Term = "stockinette"
	TermStraight    Term = "straight thumb"
	TermStrand      Term = "strand"
	TermSwatch      Term = "swatch"
	TermTail        Term = "tail"
	TermTBL         Term = "tbl"
	TermThird       Term = "third needle"
	TermTurn        Term = "turn at the end"
	TermWasteYarn   Term = "waste yarn"
	TermWrongSide   Term = "wrong side"
	TermYarnOver    Term = "yarn over"
)

// says has one line of plain words for each term. It leans on no term that is
// not explained itself, and never on itself by way of others.
var says = map[Term]string{
	TermBackLoop:    "the simplest new stitch: the yarn turned once over itself and put on the needle",
	TermBindOff:     "end the stitches for good: each is drawn over its neighbour, so that none can run",
	TermBridge:      "new stitches, cast on over the gap that the thumb’s stitches leave in the hand",
	TermCastOn:      "put the first loops of yarn on the needle",
	TermClosed:      "a beginning without a hole: out of a ring of yarn, or round two needles",
	TermDecrease:    "make two or more stitches into one",
	TermEase:        "how much wider the mitt is than the hand; below zero it stretches to fit",
	TermFingers:     "new stitches from palm to back between two fingers; the next finger is picked up out of them",
	TermGarter:      "one row of knit bumps upon another, from knitting and purling rounds in turn",
	TermGauge:       "how many stitches and rounds of your own knitting lie on 10 cm (4 in)",
	TermGauntlet:    "a wide cuff that narrows to the wrist, so that it goes over a sleeve",
	TermGraft:       "join two edges by a darning needle, with yarn that runs as knitted stitches would",
	TermGusset:      "the wedge of extra stitches that makes room for the root of the thumb",
	TermHeld:        "stitches that wait, on a piece of other yarn, until the thumb is worked",
	TermHeldFor:     "stitches that wait, on a piece of other yarn, until their finger is worked",
	TermHem:         "an edge that is folded inside, so that it is double",
	TermIncrease:    "make a stitch more",
	TermK2tog:       "knit two stitches together as one; the new stitch leans to the right",
	TermK3tog:       "knit three stitches together as one; the new stitch leans to the right",
	TermKfb:         "knit into the front of a stitch and then into its back: one becomes two",
	TermLLI:         "a new stitch out of one below it; it leans to the left",
	TermLongTail:    "loops laid on the needle with the yarn and its own end at once",
	TermM1:          "make one, either way: lift the yarn between two stitches, twist it and knit it",
	TermM1L:         "make one: lift the yarn between two stitches from the front, knit it through the back",
	TermM1R:         "make one: lift the yarn between two stitches from the back, knit it through the front",
	TermMarker:      "a ring, or a loop of thread, on the needle: it shows a place",
	TermMattress:    "a seam that is sewn from outside, one edge after the other; the edges turn inside",
	TermNotch:       "a small mark at the edge that shows where something begins or meets",
	TermOpening:     "a long hole at the side of the hand, out of which the thumb comes",
	TermPickUp:      "draw new stitches out of an edge that is knitted already: between its stitches and at both ends",
	TermPurl:        "a stitch with its bump towards you: a knit stitch, seen from behind",
	TermRLI:         "a new stitch out of one below it; it leans to the right",
	TermRib:         "knit and purl stitches side by side, in columns; it stretches and hugs the wrist",
	TermRightSide:   "the side of the fabric that is seen when the mitt is worn",
	TermRipBack:     "pull the knitting out, down to an earlier round, and put its stitches back on the needles",
	TermRound:       "once about the mitt: every stitch on the needles is worked one time",
	TermRow:         "once across a piece that is open, from one edge to the other",
	TermS2kp:        "slip two together as if to knit, knit one, pass both over it: three become one, upright",
	TermSeam:        "where two edges are sewn together; the stitches at both edges go inside",
	TermSk2p:        "slip one, knit two together, pass the slipped one over: three become one, to the left",
	TermSsk:         "slip two stitches as if to knit, one by one, then knit them together; it leans to the left",
	TermStockinette: "plain knitting: every round is knitted, and its smooth side is outside",
	TermStraight:    "a thumb without a gusset: its place in the palm is kept by waste yarn",
	TermStrand:      "yarn that waits its turn, carried loosely along the back of the other colour’s stitches",
	TermSwatch:      "a piece knitted first, washed and laid flat, to count your stitches on",
	TermTail:        "the end of yarn left hanging where the knitting begins or ends, to be woven in",
	TermTBL:         "through the back loop: the needle goes in behind, which twists the stitch shut",
	TermThird:       "held beside two others: it takes the first stitch of each and knits both as one",
	TermTurn:        "take the needles in the other hands, so that the work shows its other side; go back",
	TermWasteYarn:   "a length of smooth spare yarn that holds stitches and is drawn out later",
	TermWrongSide:   "the side of the fabric that lies against the hand",
	TermYarnOver:    "the yarn laid over the needle: a new stitch, with a small hole under it",
}

// otherForms are the forms of a term that a sentence may use in its place.
var otherForms = map[Term][]string{
	TermBackLoop: {"backward loops"},
	TermBindOff:  {"bound off", "binding off"},
	TermBridge:   {"bridges"},
	TermCastOn:   {"casts on", "casting on"},
	TermDecrease: {"decreases", "decreased"},
	TermEase:     {"eases"},
	TermGauge:    {"gauges"},
	TermGraft:    {"grafted"},
	TermGusset:   {"gussets"},
	TermHeld:     {"held"},
	TermIncrease: {"increases", "increased"},
	TermMarker:   {"markers"},
	TermNotch:    {"notches"},
	TermOpening:  {"slit"},
	TermPickUp:   {"pick up", "picked up", "picking up"},
	TermPurl:     {"purled", "purls"},
	TermRipBack:  {"ripped back", "ripping back"},
	TermRound:    {"rounds"},
	TermRow:      {"rows"},
	TermSeam:     {"seams"},
	TermStrand:   {"strands"},
	TermSwatch:   {"swatches"},
	TermTail:     {"tails"},
}

// InInstructions are the terms that the words of a mitt may use, in the order in which
// most of them come.
func InInstructions() []Term {
	return []Term{
		TermGauntlet, TermHem, TermLongTail, TermClosed, TermCastOn, TermTail, TermMarker, TermRightSide, TermWrongSide, TermTurn, TermSeam, TermGarter, TermRib,
		TermGusset, TermOpening, TermIncrease, TermDecrease, TermM1L, TermM1R, TermM1, TermLLI, TermRLI, TermYarnOver, TermTBL, TermKfb, TermK2tog, TermSsk, TermK3tog, TermS2kp, TermSk2p,
		TermHeldFor, TermHeld, TermWasteYarn, TermBackLoop, TermFingers, TermBridge, TermPickUp, TermStrand, TermPurl, TermBindOff, TermThird, TermGraft, TermMattress,
	}
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
