package tryon

import (
	"fmt"
	"math"
	"strconv"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/units"
	"thenar/internal/words"
)

// The lengths of a sheet that take the place of a hand's own.
const (
	pathAbove = "length.above_gusset"
	pathThumb = "length.thumb"
)

// ends corrects the lengths of a glove by where its zones end on the hand. With l the
// length that a zone is planned for, r by how much its rounds are longer, and o by how much
// it is too long on the hand, it becomes l + r − o.
func (c *corrector) ends() {
	if !c.plan.Fingered() {
		return
	}
	for _, zone := range measured {
		if off := c.try.Ends[zone]; off != 0 && c.hasZone(zone) {
			c.end(zone, off)
		}
	}
}

// end corrects the length of one zone.
func (c *corrector) end(zone Zone, off units.Length) {
	p, part := c.plan, stitch.Part(zone)
	longer := func(at mitt.Place) units.Length { return units.FromMM(p.Off[at]) - off }
	one := Correction{
		Key: zone.endField(), Name: "length of the " + zone.Words(), Doubt: c.doubtOffset(off),
		Because: fmt.Sprintf("on the hand it is %s %s", c.offsetWords(off), lengthWay(off).Words()),
		Later:   c.try.Place.past(part) || c.try.Place.Part == part && c.try.Place.Ended,
	}
	fingers := &p.Hand.Fingers
	f, finger := mitt.FingerOf(part)
	switch {
	case finger && p.Fingers.Each[f].Closed:
		_, at := mitt.PlacesOfFinger(f)
		c.lengthened(one, f.FieldLength(), fingers.Length[f], longer(at))
	case finger:
		c.moreRounds(one, mitt.OfFinger(mitt.FingerRounds, f), p.Fingers.Each[f].Rounds, off)
	case zone == Thumb && c.sheet.Given(pathThumb) != "":
		c.lengthened(one, pathThumb, c.given(pathThumb), longer(mitt.PlaceThumbLength))
	case zone == Thumb && p.Thumb.Closed:
		c.lengthened(one, hand.FieldThumbLength, p.Hand.ThumbLength, longer(mitt.PlaceThumbLength))
	case zone == Thumb:
		c.moreRounds(one, mitt.ThumbRounds, p.Thumb.Rounds, off)
	case zone == Cap:
		one.Later = c.capDone()
		c.lengthened(one, mitt.PathCapLength, units.FromMM(c.capLength()-p.Off[mitt.PlaceCapLength]), longer(mitt.PlaceCapLength))
	case zone == Hand && c.sheet.Given(pathAbove) != "":
		c.lengthened(one, pathAbove, c.given(pathAbove), longer(mitt.PlaceHandLength))
	case zone == Hand && p.Fingers.Lower == 0:
		one.Name = "where the fingers part"
		c.parted(one, longer(mitt.PlaceHandLength), hand.Index, hand.Middle)
	case zone == Hand:
		one.Name = "where the little finger parts"
		c.parted(one, longer(mitt.PlaceHandLength), hand.Ring)
	case zone == UpperHand:
		one.Name = "where the other fingers part"
		c.parted(one, longer(mitt.PlaceUpperHand), hand.Index, hand.Middle)
	}
}

// lengthened adds the correction of a length by so much.
func (c *corrector) lengthened(one Correction, path string, was, by units.Length) {
	u := c.sheet.Unit()
	is := was + by
	one.Was, one.Is = typedLengthWithUnit(was, u), typedLengthWithUnit(is, u)
	if is < units.FromMM(2/c.plan.Gauge.Rounds) {
		one.Is, one.Because, one.Doubt = one.Was, one.Because+", which leaves nothing of it: measure again", ""
	} else {
		one.Edits = []Edit{{path, typedLength(is, u)}}
	}
	c.add(one)
}

// parted adds the correction of the height at which fingers part from the next ones. No
// finger parts above those that part higher, so these are moved along.
func (c *corrector) parted(one Correction, by units.Length, after ...hand.Finger) {
	u, heights := c.sheet.Unit(), &c.plan.Hand.Fingers.Crotch
	c.lengthened(one, after[0].FieldCrotch(), heights[after[0]], by)
	last := &c.list[len(c.list)-1]
	if !last.Changes() {
		return
	}
	for _, f := range after[1:] {
		last.Edits = append(last.Edits, Edit{f.FieldCrotch(), typedLength(heights[f]+by, u)})
	}
	if is := heights[after[0]] + by; after[0] == hand.Ring && is > heights[hand.Index] {
		last.Edits = append(last.Edits, Edit{hand.Index.FieldCrotch(), typedLength(is, u)}, Edit{hand.Middle.FieldCrotch(), typedLength(is, u)})
		last.Because += "; the others part no lower than the little finger, so they go along"
	}
}

// moreRounds adds the correction of the rounds of a tube that ends before the tip: there
// the finger’s own length says nothing.
func (c *corrector) moreRounds(one Correction, n mitt.Number, was int, off units.Length) {
	is := max(1, was-int(math.Round(off.MM()*c.plan.Gauge.Rounds)))
	one.Was, one.Is = words.Plural(was, "round"), words.Plural(is, "round")
	if is == was {
		one.Doubt, one.Because = "", one.Because+": less than half a round, so it stays"
	} else {
		one.Edits = []Edit{{n.Path(), strconv.Itoa(is)}}
	}
	c.add(one)
}

// given returns a length of the sheet that has a plan, so it can be read.
func (c *corrector) given(path string) units.Length {
	l, _ := units.Parse(c.sheet.Given(path), c.sheet.Unit())
	return l
}

// lengthWay returns the way in which a length is off.
func lengthWay(off units.Length) Way {
	if off < 0 {
		return TooShort
	}
	return TooLong
}
