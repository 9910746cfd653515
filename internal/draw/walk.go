package draw

import (
	"math"
	"strconv"
	"strings"
)

// Walk parses path data written by a Pen and calls step for each of its
// commands M, L, C and Z with its numbers, which the next call overwrites. It
// stops at anything that no Pen writes.
func Walk(d string, step func(op byte, p []float64)) {
	var numbers [6]float64
	for i := 0; i < len(d); {
		op := d[i]
		if op == ' ' {
			i++
			continue
		}
		n := 0
		switch op {
		case 'M', 'L':
			n = 2
		case 'C':
			n = 6
		case 'Z':
		default:
			return
		}
		i++
		for k := range n {
			for i < len(d) && d[i] == ' ' {
				i++
			}
			from := i
			for i < len(d) && d[i] != ' ' {
				i++
			}
			v, err := strconv.ParseFloat(d[from:i], 64)
			if err != nil {
				return
			}
			numbers[k] = v
		}
		step(op, numbers[:n])
	}
}

// Map returns path data with every point moved by f.
func Map(d string, f func(x, y float64) (float64, float64)) string {
	var p Pen
	Walk(d, func(op byte, n []float64) {
		for i := 0; i+1 < len(n); i += 2 {
			n[i], n[i+1] = f(n[i], n[i+1])
		}
		switch op {
		case 'M':
			p.Move(n[0], n[1])
		case 'L':
			p.Line(n[0], n[1])
		case 'C':
			p.Curve(n[0], n[1], n[2], n[3], n[4], n[5])
		case 'Z':
			p.Close()
		}
	})
	return p.String()
}

// Dashes parses the lengths of a line's dashes and gaps, in turns, and returns
// them times scale. An odd list is repeated once. It returns nil, for a solid
// line, if text is not a list of lengths, if one is negative, or if all are 0
// (SVG 2, stroke-dasharray).
func Dashes(text string, scale float64) []float64 {
	var list []float64
	sum := 0.0
	for _, f := range strings.FieldsFunc(text, func(r rune) bool { return r == ' ' || r == ',' }) {
		n, err := strconv.ParseFloat(f, 64)
		if err != nil || n < 0 || math.IsNaN(n) || math.IsInf(n, 0) {
			return nil
		}
		sum += n
		list = append(list, n*scale)
	}
	if sum == 0 {
		return nil
	}
	if len(list)%2 == 1 {
		list = append(list, list...)
	}
	return list
}

// Place is the position of an item's group in its scene: a point of the group,
// times Scale, plus X and Y.
type Place struct{ X, Y, Scale float64 }

// At converts a point of the group to one of the scene.
func (p Place) At(x, y float64) (float64, float64) { return p.X + x*p.Scale, p.Y + y*p.Scale }

// Each calls f for every path, text and photograph of a scene with its place, in drawing
// order.
func (s *Scene) Each(start Place, f func(i *Item, at Place)) {
	open := []Place{start}
	for k := range s.Items {
		i, now := &s.Items[k], open[len(open)-1]
		switch i.Kind {
		case MoveItem:
			x, y := now.At(i.X, i.Y)
			open = append(open, Place{x, y, now.Scale * i.Scale})
		case GroupItem:
			open = append(open, now)
		case EndItem:
			open = open[:len(open)-1]
		default:
			f(i, now)
		}
	}
}
