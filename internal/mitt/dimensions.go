package mitt

import "thenar/internal/stitch"

// Dimension is a length of the finished mitt as it lies unstretched, by its stitches and
// rounds at the gauge: around a part, along it, or along the whole mitt.
type Dimension struct {
	Part   stitch.Part // empty: the whole mitt
	Around bool
	Edge   bool // around the part's lower edge
	Name   string
	MM     float64
}

// Same reports whether another mitt's measure is the same one.
func (m Dimension) Same(o Dimension) bool {
	return m.Part == o.Part && m.Around == o.Around && m.Edge == o.Edge
}

// Dimensions lists the measures of the finished mitt: around hand and cuff, then along its
// parts from the cuff's edge up, then around and along each finger, thumb last, then along a
// cap, and the whole.
func (p *Plan) Dimensions() []Dimension {
	m := p.Mitt()
	return append(append(p.around(m), p.along(m)...), Dimension{Name: "whole length", MM: p.whole(m)})
}

// around lists the measures around hand and cuff.
func (p *Plan) around(m stitch.Mitt) (list []Dimension) {
	round := func(n int) float64 { return float64(n) / p.Gauge.Stitches }
	lying := m.Upward()
	for _, s := range lying {
		if s.Part.Over() == stitch.OverHand {
			list = append(list, Dimension{Part: s.Part, Around: true, Name: "hand, around", MM: round(p.Body.Stitches.N)})
			break
		}
	}
	if s := lying[0]; s.Part.Over() == stitch.OverWrist {
		edge := Dimension{Part: s.Part, Around: true, Edge: true, Name: "cuff, around", MM: round(p.Cuff.CastOn.N)}
		if p.Make.Cuff.info().flares {
			list = append(list, Dimension{Part: s.Part, Around: true, Name: "wrist, around", MM: round(p.Cuff.Wrist.N)})
			edge.Name = "cuff’s edge, around"
		}
		list = append(list, edge)
	}
	return list
}

// along lists the measures along the parts, with those around fingers and thumb.
func (p *Plan) along(m stitch.Mitt) (list []Dimension) {
	mound := false // what lies below belongs to the thumb, too
	for _, s := range m.Upward() {
		name := s.Part.Words()
		switch s.Part.Over() {
		case stitch.OverWrist:
			name = p.Make.Cuff.Words()
		case stitch.OverMound:
			mound = true
		case stitch.OverHand:
			if mound && s.Joins() == "" {
				name += " above the thumb"
			}
		case stitch.OverDigit:
			list = append(list, Dimension{Part: s.Part, Around: true, Name: name + ", around", MM: float64(s.About.Digit.Stitches) / p.Gauge.Stitches})
		}
		list = append(list, Dimension{Part: s.Part, Name: name + ", length", MM: s.Reach(p.Gauge.Rounds)})
	}
	return list
}

// Whole returns the length of the finished mitt in mm: to its edge or tip, that of its
// longest finger, or that of its cap.
func (p *Plan) Whole() float64 { return p.whole(p.Mitt()) }

func (p *Plan) whole(m stitch.Mitt) (most float64) {
	at, base := 0.0, 0.0 // the upper end of what is worked so far, and the base of the thumb
	over := 0.0          // the upper end of a cap
	for i := range m.Sections {
		s := &m.Sections[i]
		reach := s.Reach(p.Gauge.Rounds)
		switch s.Part.Over() {
		case stitch.OverDigit:
			if s.OfFinger() {
				most = max(most, at+reach)
			}
			continue
		case stitch.OverCap:
			if over == 0 {
				over = max(0, base+s.About.Above)
			}
			over += reach
			continue
		case stitch.OverMound:
			base = at
		}
		at += reach
	}
	return max(most, at, over)
}
