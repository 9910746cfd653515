package view

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/mitt"
	"thenar/internal/units"
	"thenar/internal/words"
)

// near is a value on the ruler of a slip: the number as it is, or a neighbour,
// with what it makes of the fabric.
type near struct {
	Value int
	Words string
	Now   bool
}

// nearby returns the neighbours of a number, the lower one first, with what
// each makes of girth or length in mm at the gauge. It is empty for a number
// that is knitted already, and for a list.
func (a Answer) nearby(r words.Reason) []near {
	p := a.Out.Plan
	g, q := p.Gauge.Stitches, p.Gauge.Rounds
	girth := func(c mitt.Count) []near {
		return a.around(c, func(n int) string { return a.offWords((float64(n)-c.Exact)/g, "tighter", "looser") })
	}
	now := p.Count(r.Of)
	step := p.Names().Step(r.Of)
	one := mitt.Count{N: now, Below: now - step, Above: now + step}
	length := func(place mitt.Place) []near {
		off := p.Off[place]
		return a.around(one, func(n int) string { return a.offWords(off+float64(n-now)/q, "shorter", "longer") })
	}
	switch r.Of {
	case mitt.CastOn:
		return girth(p.Cuff.CastOn)
	case mitt.HandStitches:
		return girth(p.Body.Stitches)
	case mitt.ThumbStitches:
		return girth(p.Thumb.Stitches)
	case mitt.GussetRounds:
		return length(mitt.PlaceGussetLength)
	case mitt.CuffRounds:
		return length(mitt.PlaceCuffLength)
	case mitt.CuffPlainRounds:
		return length(mitt.PlaceCuffPlain)
	case mitt.RoundsAboveGusset:
		return length(mitt.PlaceHandLength)
	case mitt.TopRounds:
		return length(mitt.PlaceTop)
	case mitt.ThumbRounds:
		return length(mitt.PlaceThumbLength)
	case mitt.LittleLowerRounds:
		return length(mitt.PlaceUpperHand)
	case mitt.CapRounds:
		return length(mitt.PlaceCapLength)
	}
	if what, f, ok := fingerNumberOf(r.Of); ok {
		one := &p.Fingers.Each[f]
		at, long := mitt.PlacesOfFinger(f)
		switch what {
		case mitt.FingerStitches:
			return a.costed(r.Of, girth(mitt.Count{N: now, Exact: float64(now) - p.Off[at]*g, Below: now - 1, Above: now + 1, Knitted: one.Stitches.Knitted}))
		case mitt.FingerRounds:
			return length(long)
		case mitt.FingerDecreases:
			return nil
		}
	}
	if beside, ok := a.Out.Beside[r.Of]; ok {
		return a.costing(beside, now)
	}
	if r.Of.List() || r.Of.Measure() != mitt.InStitches {
		return nil
	}
	return a.around(one, func(n int) string { return a.small(float64(n)/g) + " wide" })
}

// costed adds to the neighbours of a finger's stitches what each costs in all places, since
// its neighbours on the hand give or take them; those that can't be are left out.
func (a Answer) costed(n mitt.Number, list []near) []near {
	beside, ok := a.Out.Beside[n]
	if !ok {
		return list
	}
	for _, b := range beside {
		at := slices.IndexFunc(list, func(one near) bool { return one.Value == b.Value })
		switch {
		case at < 0:
		case b.Can:
			list[at].Words += "; " + a.besideWords(b)
		default:
			list = slices.Delete(list, at, at+1)
		}
	}
	return list
}

// costing returns a count between its neighbours with what each costs in all places.
func (a Answer) costing(beside [2]mitt.Neighbour, now int) []near {
	list := []near{{now, "as it is", true}}
	for i, n := range beside {
		if n.Can {
			list = slices.Insert(list, i*len(list), near{n.Value, a.besideWords(n), false})
		}
	}
	return list
}

// besideWords says what a neighbour costs in all places.
func (a Answer) besideWords(n mitt.Neighbour) string {
	switch {
	case math.Abs(n.MM) < 0.5:
		return "as near"
	case n.MM < 0:
		return a.small(-n.MM) + " nearer"
	}
	return "costs " + a.small(n.MM)
}

// around returns a count between its neighbours, which are as far from it as
// those of the free number are: a fixed number may lie elsewhere. One below what
// the number can be is left out.
func (a Answer) around(c mitt.Count, say func(int) string) []near {
	if c.Knitted {
		return nil
	}
	step := max((c.Above-c.Below)/2, 1)
	var list []near
	for _, n := range []int{c.N - step, c.N, c.N + step} {
		if n >= 1 || n == c.N {
			list = append(list, near{n, say(n), n == c.N})
		}
	}
	return list
}

// offWords says how far a fabric is off what was wanted.
func (a Answer) offWords(mm float64, less, more string) string {
	switch {
	case math.Abs(mm) < 0.5:
		return "as wanted"
	case mm < 0:
		return a.small(-mm) + " " + less
	}
	return a.small(mm) + " " + more
}

// small returns a length that is too small for the sheet's centimetres.
func (a Answer) small(mm float64) string {
	if a.Unit == units.IN {
		return words.Size(mm, a.Unit)
	}
	return words.Size(mm, units.MM)
}

// bare returns a girth in a unit, without the unit.
func bare(mm float64, u units.Unit) string { return units.FromMM(mm).Format(u) }

// slipTerms are the terms that a slip explains.
var slipTerms = []words.Term{
	words.TermEase, words.TermGusset, words.TermBridge, words.TermHeld, words.TermPickUp, words.TermCastOn, words.TermBindOff, words.TermGauge, words.TermRib,
}

// called are the terms after which numbers are called.
var called = map[mitt.Number]words.Term{
	mitt.CastOn: words.TermCastOn, mitt.GussetBase: words.TermGusset, mitt.GussetRounds: words.TermGusset,
	mitt.Held: words.TermHeld, mitt.BridgeStitches: words.TermBridge, mitt.PickedUp: words.TermPickUp,
}

// untold returns the term after which a number is called, unless the sentence
// about it explains that.
func (a Answer) untold(r words.Reason) words.Term {
	t := called[r.Of]
	if t == words.TermGusset && !a.Out.Plan.Gusseted() {
		return ""
	}
	if t == "" || len(a.Out.Terms.Explain(a.brief(r), t)) > 1 {
		return ""
	}
	return t
}

// brief says in a sentence where a number comes from: "15.4 cm of wrist, no
// ease: 37 stitches."
func (a Answer) brief(r words.Reason) string {
	p := a.Out.Plan
	switch r.Of {
	case mitt.CastOn:
		if f := p.Cuff.Flare; f != nil {
			return fmt.Sprintf("%s round the upper edge: %s stitches.", a.length(f.Girth), tenths(p.Cuff.CastOn.Exact))
		}
		return fmt.Sprintf("%s of wrist, %s: %s stitches.", p.Hand.Wrist.With(a.Unit), easeWords(p.Ease.Cuff), tenths(p.Cuff.CastOn.Exact))
	case mitt.HandStitches:
		return fmt.Sprintf("%s of hand, %s: %s stitches.", p.Hand.Circumference.With(a.Unit), easeWords(p.Ease.Hand), tenths(p.Body.Stitches.Exact))
	case mitt.GussetRounds:
		if p.OpeningRows() > 0 {
			break
		}
		return fmt.Sprintf("%s along the thumb’s side: %s %s.", p.Hand.GussetLength.With(a.Unit), tenths(p.Gusset.Rounds.Exact), unitWords(a.Names, r.Of))
	case mitt.Increases:
		return a.increaseWords()
	case mitt.ThumbStitches:
		return fmt.Sprintf("%s of thumb, %s of room: %s stitches.", p.Hand.Thumb.With(a.Unit), a.length(p.Ease.ThumbAdded), tenths(p.Thumb.Stitches.Exact))
	}
	return capital(r.Why)
}

// tenths writes a number to the tenth, and a whole one without it.
func tenths(n float64) string { return strconv.FormatFloat(math.Round(10*n)/10, 'f', -1, 64) }

// easeWords says an ease: "5 % negative ease", "no ease".
func easeWords(ease float64) string {
	percent := math.Round(100 * ease)
	switch {
	case percent < 0:
		return fmt.Sprintf("%.0f\u00a0%% negative ease", -percent)
	case percent > 0:
		return fmt.Sprintf("%.0f\u00a0%% ease", percent)
	}
	return "no ease"
}

// fixing says what it costs to fix a number, or what it costs fixed.
func (a Answer) fixing(r words.Reason) string {
	if r.Fixed {
		return a.cost(r.Of)
	}
	return "Costs nothing: the plan chooses it, too."
}

// lights returns the attributes by which pointing at a number lights its
// rounds.
func (a Answer) lights(r words.Reason) templ.OrderedAttributes {
	from, to := a.roundsOf(r)
	return templ.OrderedAttributes{
		{Key: "data-section", Value: string(r.Part)},
		{Key: "data-from", Value: fmt.Sprint(from)},
		{Key: "data-to", Value: fmt.Sprint(to)},
	}
}

// bareValue returns a number's value without what it counts, or the rounds of a
// list.
func bareValue(r words.Reason) string {
	if r.Of.List() || r.Number == "" {
		return r.Value
	}
	return r.Number
}

// onlyNumber returns the number that is fixed, or "it" if it is a list.
func onlyNumber(r words.Reason) string {
	if r.Of.List() {
		return "it"
	}
	return r.Number
}

// inputMode returns the keyboard that a phone shows for a number.
func inputMode(n mitt.Number) string {
	if n.List() {
		return "text"
	}
	return "numeric"
}

// bareUp is bare, rounded up, as an interval is.
func bareUp(mm float64, u units.Unit) string { return units.FromMM(mm).RoundUp(u).Format(u) }

// capital begins a text with a capital letter.
func capital(text string) string {
	r := []rune(text)
	if len(r) == 0 {
		return ""
	}
	return strings.ToUpper(string(r[:1])) + string(r[1:])
}
