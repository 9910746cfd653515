package tryon

import (
	"fmt"
	"strconv"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// A mitt without a gusset keeps the hand's count over the base of the thumb. What is felt
// there and what is felt above it are both settled by that one count.

// oneCount reports whether the mitt parts for the thumb without a gusset.
func (c *corrector) oneCount() bool { return c.plan.Parted() && !c.plan.Gusseted() }

// settles returns the zone whose ease settles what is felt in a zone.
func (c *corrector) settles(zone Zone) Zone {
	if zone == Parting && c.oneCount() || zone == UpperHand {
		return Hand
	}
	return zone
}

// feltInAll corrects the ease of the hand by what was felt over the base of the thumb and
// above it: by the stronger of the two, if they don't pull apart.
func (c *corrector) feltInAll() {
	at, above := c.try.Steps[Parting], c.try.Steps[Hand]
	const gives = "a gusset would give room at the thumb alone"
	switch {
	case at == 0:
		c.eased(Hand, above, "")
	case at*above < 0:
		_, ease, _ := c.easeOf(Hand)
		c.add(Correction{
			Key: string(Hand), Name: "room for the hand (ease), " + Hand.Words(), Was: signedPercent(ease), Is: signedPercent(ease),
			Because: fmt.Sprintf("at the thumb’s base it felt %s, above it %s. One count serves both, so it stays: %s", FeelWords(at), FeelWords(above), gives),
		})
	case above*above > at*at:
		c.eased(Hand, above, "")
	case at > 0:
		c.eased(Parting, at, "; the hand gets it all the way up, since it has one count: "+gives)
	default:
		c.eased(Parting, at, "; the hand loses it all the way up, since it has one count")
	}
}

// opening corrects the rows of an opening whose top sits off the place where the thumb
// parts. Its foot is where it is; with R rows, q over a mm, and o how far the top sits
// above that place, it gets the even number nearest to R − o·q.
func (c *corrector) opening() {
	off, rows := c.try.Top, c.plan.OpeningRows()
	const pair = 2
	exact := float64(rows) - off.MM()*c.plan.Gauge.Rounds
	is := max(pair, pair*int(exact/pair+0.5))
	side := "above"
	if *off < 0 {
		side = "below"
	}
	one := Correction{
		Key: "top", Name: "opening", Was: words.Plural(rows, "row"), Is: words.Plural(is, "row"), Doubt: c.doubtOffset(*off),
		Because: fmt.Sprintf("its top comes %s %s the place where the thumb parts", c.offsetWords(*off), side),
	}
	if is == rows {
		one.Doubt, one.Because = "", one.Because+": less than a pair of rows, so it stays"
	} else {
		one.Edits = []Edit{{mitt.GussetRounds.Path(), strconv.Itoa(is)}}
		one.Later = c.try.Place.past(stitch.Opening)
	}
	c.add(one)
}
