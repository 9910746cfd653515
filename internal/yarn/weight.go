package yarn

import (
	"math"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Weight is a class of yarn thickness, by gauge.
type Weight struct {
	Number       int
	Name         string
	Fewest, Most int    // stitches of stocking stitch over 4 in
	Needle       string // in mm
	NeedleUS     string
}

// weights are the classes of the Craft Yarn Council's standard yarn weight system
// (several pages that quote its table agree). It calls the ranges the most common
// ones, guidelines only.
var weights = []Weight{
	{0, "lace", 33, 40, "1.5–2.25 mm", "US 000–1"},
	{1, "super fine", 27, 32, "2.25–3.25 mm", "US 1–3"},
	{2, "fine", 23, 26, "3.25–3.75 mm", "US 3–5"},
	{3, "light", 21, 24, "3.75–4.5 mm", "US 5–7"},
	{4, "medium", 16, 20, "4.5–5.5 mm", "US 7–9"},
	{5, "bulky", 12, 15, "5.5–8 mm", "US 9–11"},
	{6, "super bulky", 7, 11, "8–12.75 mm", "US 11–17"},
	{7, "jumbo", 1, 6, "12.75 mm and larger", "US 17 and larger"},
}

// WeightOf returns the class of yarn usually knitted at a number of stitches per
// mm, the finer one of two that share it. Anything finer than lace is lace.
func WeightOf(stitches float64) Weight {
	n := int(math.Round(stitches * 101.6))
	for _, w := range weights {
		if n >= w.Fewest {
			return w
		}
	}
	return weights[len(weights)-1]
}

// Tails are the lengths of yarn in mm that a knitter leaves before an edge.
type Tails struct {
	CastOn float64 // for a cast-on worked with the tail: 3 widths of the edge, and the end to weave in
	Hand   float64 // to bind off the hand: 6 widths, and the end to weave in; 0 for a closed top
	Thumb  float64 // to bind off the thumb, likewise
	End    float64 // at all other starts and ends
	Seam   float64 // to sew a flat piece: twice its length up to an opening, and the ends; 0 in the round

	SeamAbove float64 // to sew it above the opening
	ThumbSeam float64 // to sew its thumb

	Fingers [len(mitt.Fingers{}.Each)]float64 // to bind off each finger; 0 where it ends otherwise
}

// TailsOf returns the tails of a plan, by the same allowances as the estimate.
func TailsOf(p *mitt.Plan, m stitch.Mitt) Tails {
	width := func(n int) float64 { return float64(n+p.SeamStitches()) / p.Gauge.Stitches }
	t := Tails{CastOn: castOnWidths*width(p.Cuff.CastOn.N) + tail, End: tail}
	if p.Down() {
		t.CastOn, t.Hand = tail, castOffWidths*width(p.Cuff.CastOn.N)+tail
		for i := range m.Sections {
			s := &m.Sections[i]
			switch long := castOnWidths*float64(s.CastOn)/p.Gauge.Stitches + tail; {
			case s.CastOn == 0 || s.About.Tip && s.Seam == 0:
			case s.Part.Over() == stitch.OverDigit:
				t.Thumb = long
			default:
				t.CastOn = long
			}
		}
	} else {
		t.boundOff(p, m)
	}
	s := seamsOf(p, m)
	t.Seam, t.SeamAbove, t.ThumbSeam = sewn(s.hand), sewn(s.above), sewn(s.thumb)
	return t
}

// boundOff returns the length of yarn to bind a section off; 0 if it ends otherwise.
func boundOff(p *mitt.Plan, s *stitch.Section) float64 {
	if n := count(s.Finish.Ops, stitch.BindOff); n > 0 {
		return castOffWidths*float64(n)/p.Gauge.Stitches + tail
	}
	return 0
}

// boundOff sets what it takes to bind off the hand, the thumb and the fingers.
func (t *Tails) boundOff(p *mitt.Plan, m stitch.Mitt) {
	for i := range m.Sections {
		s := &m.Sections[i]
		long := boundOff(p, s)
		f, finger := mitt.FingerOf(s.Part)
		switch {
		case long == 0:
		case finger:
			t.Fingers[f] = long
		case s.Part.Over() == stitch.OverDigit:
			t.Thumb = long
		default:
			t.Hand = long
		}
	}
}

// sewn returns the yarn in mm that a seam takes, with its ends.
func sewn(seam float64) float64 {
	if seam == 0 {
		return 0
	}
	return seamWidths*seam + 2*tail
}

// seams are the lengths in mm of a mitt's seams: the hand's, which ends below an opening
// that is left in it and goes on above, and the thumb's.
type seams struct{ hand, above, thumb float64 }

func seamsOf(p *mitt.Plan, m stitch.Mitt) (of seams) {
	hand := &of.hand
	for i := range m.Sections {
		switch s := &m.Sections[i]; {
		case s.Seam == 0:
		case s.Part.Over() == stitch.OverDigit:
			of.thumb += s.Reach(p.Gauge.Rounds)
		case s.SeamOpen():
			hand = &of.above
		default:
			*hand += s.Reach(p.Gauge.Rounds)
		}
	}
	return of
}
