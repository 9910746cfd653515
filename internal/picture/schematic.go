package picture

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// Lettered is a measure of the sizes of a design, by the letter that names it on their
// schematic. A size without it has 0 mm.
type Lettered struct {
	Letter string
	mitt.Dimension
	MM []float64
}

// letters name measures. I and O look like figures.
const letters = "ABCDEFGHJKLMNPQRSTUVWXYZ"

// LetteredOf brings the measures of sizes together, in the order of each.
func LetteredOf(sizes []NestedSize) (list []Lettered) {
	for i, s := range sizes {
		at := 0
		for _, m := range s.Plan.Dimensions() {
			k := slices.IndexFunc(list, func(l Lettered) bool { return l.Same(m) })
			if k < 0 {
				k = at
				list = slices.Insert(list, k, Lettered{Dimension: m, MM: make([]float64, len(sizes))})
			}
			list[k].MM[i], at = m.MM, k+1
		}
	}
	for i := range list {
		list[i].Letter = letters[i%len(letters) : i%len(letters)+1]
	}
	return list
}

// SchematicOptions say how a schematic is drawn.
type SchematicOptions struct {
	Left   bool
	Letter float64    // size of its letters in mm
	Plain  bool       // without the names of sizes, of which there is one
	By     []Lettered // the letters, those of more sizes; nil: of these
}

// schematic is what a schematic is drawn from: the sizes over each other from one cast-on,
// and the one among them by which the measures are drawn.
type schematic struct {
	*canvas
	sizes   []NestedSize
	fabrics []*fabric
	of      *fabric
	list    []Lettered
	all     area // the outlines, in the hand's coordinates
}

// Schematic draws the mitts of several sizes flat over each other at one scale, in mm, from
// one cast-on, each with its name, and letters at what is measured. The middle size is cloth,
// and its measures are drawn.
func Schematic(sizes []NestedSize, o SchematicOptions) *draw.Scene {
	list := o.By
	if list == nil {
		list = LetteredOf(sizes)
	}
	of := Middle(len(sizes))
	fabrics := nested(sizes)
	c := fitCanvas(o.Left, o.Letter, o.Letter/2, o.Letter/2, func(c *canvas) {
		c.ground, c.even = groundColour, true
		s := &schematic{canvas: c, sizes: sizes, fabrics: fabrics, of: fabrics[of], list: list}
		s.outlines(of)
		x := s.all.left - 0.5*c.letter
		if o.Plain {
			s.heights(x)
		} else {
			s.heights(x - s.namesWide() - 1.6*c.letter)
			s.names(x)
		}
		s.digits()
		s.widths()
	})
	s := c.s
	s.Width, s.Height = c.drawn.right+o.Letter/2, c.drawn.bottom+o.Letter/2
	s.Label = schematicLabel(sizes, list, o)
	return s
}

// Middle returns which of so many sizes is the middle one.
func Middle(sizes int) int { return sizes / 2 }

// schematicLabel says what a schematic shows.
func schematicLabel(sizes []NestedSize, list []Lettered, o SchematicOptions) string {
	names := make([]string, len(sizes))
	for i, s := range sizes {
		names[i] = s.Name
	}
	at := make([]string, len(list))
	for i, l := range list {
		at[i] = l.Letter + " " + l.Name
	}
	what := "size " + names[0]
	if len(sizes) > 1 {
		what = "sizes " + strings.Join(names, ", ") + " over each other"
	}
	return fmt.Sprintf("%s hand, lying flat, to scale: %s. Letters: %s.", HandOptions{Left: o.Left}.side(), what, strings.Join(at, "; "))
}

// tubesOf returns all tubes of a mitt, with those of a cap.
func (m *fabric) tubesOf() []*tube {
	var list []*tube
	for i := range m.tubes {
		list = append(list, &m.tubes[i])
	}
	for i := range m.caps {
		list = append(list, &m.caps[i])
	}
	return list
}

// outlines draws the sizes: the one whose measures are drawn as cloth, the largest first.
func (s *schematic) outlines(of int) {
	thin := draw.Style{Class: "nested-size", Stroke: inkColour, Width: s.letter / 20, Round: true}
	thick := draw.Style{Class: "cloth", Fill: gapColour, Stroke: inkColour, Width: s.letter / 8, Round: true}
	sheer := draw.Style{Fill: gapColour}
	s.of.lay(s.canvas, thick)
	s.of.ribs(s.canvas, "")
	s.of.farEdge(s.canvas)
	s.of.drawCap(s.canvas, s.of.caps, sheer)
	for i, m := range slices.Backward(s.fabrics) {
		if i != of {
			m.lay(s.canvas, thin)
			if len(m.caps) > 0 {
				m.capOutline(s.canvas, m.caps).path(thin)
			}
		}
	}
	const far = 1e6
	s.all = area{far, far, -far, -far}
	for _, m := range s.fabrics {
		for _, t := range m.tubesOf() {
			for _, e := range t.edges {
				for _, p := range []point{e.left, e.out} {
					s.all = s.all.with(area{p.x, p.y, p.x, p.y})
				}
			}
		}
	}
}

// corner returns the upper corner of a mitt on the side away from the thumb.
func (m *fabric) corner() point {
	if f := m.fingers(); len(f) > 0 {
		return f[0].last().left
	}
	main := m.main()
	return main[len(main)-1].last().left
}

// namesWide returns the width of the widest name of a size.
func (s *schematic) namesWide() (wide float64) {
	for _, of := range s.sizes {
		wide = max(wide, draw.Measure(of.Name, s.letter, draw.Semibold))
	}
	return wide
}

// names writes the names of the sizes left of x, at their upper corners.
func (s *schematic) names(x float64) {
	order := make([]int, len(s.fabrics))
	for i := range order {
		order[i] = i
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(s.fabrics[a].corner().y, s.fabrics[b].corner().y)
	})
	want, gaps := make([]float64, len(order)), make([]float64, len(order))
	for i, k := range order {
		want[i], gaps[i] = s.fabrics[k].corner().y, 1.15*s.letter
	}
	at := Apart(want, gaps)
	lines := s.pen()
	for i, k := range order {
		corner := s.fabrics[k].corner()
		lines.move(corner).line(point{x, corner.y}, point{x - 0.8*s.letter, at[i]}, point{x - 1.1*s.letter, at[i]})
	}
	lines.path(draw.Style{Class: "leader", Stroke: pencilColour, Width: s.letter / 24, Round: true})
	wide := s.namesWide()
	for i, k := range order {
		p := point{x - 1.3*s.letter, at[i] - 0.35*s.letter}
		anchor := draw.End
		if s.sign < 0 {
			anchor = draw.Start
		}
		far := point{p.x - wide - 0.2*s.letter, p.y + 0.9*s.letter}
		near := point{p.x + 0.2*s.letter, p.y - 0.2*s.letter}
		s.pen().move(far).line(point{near.x, far.y}, near, point{far.x, near.y}).path(draw.Style{Class: "name-ground", Fill: groundColour}) // over what is level with it
		s.s.Text(s.x(p), s.y(p), s.sizes[k].Name, draw.TextStyle{Class: "size-name", Size: s.letter, Anchor: anchor, Face: draw.Semibold})
	}
}

// letterOf returns the letter of a measure.
func (s *schematic) letterOf(m mitt.Dimension) (string, bool) {
	i := slices.IndexFunc(s.list, func(l Lettered) bool { return l.Same(m) })
	if i < 0 {
		return "", false
	}
	return s.list[i].Letter, true
}

// digit reports whether a part stands by itself beside the others.
func digit(p stitch.Part) bool { return p.Over() == stitch.OverDigit }
