package draw

import (
	"math"
	"strconv"
	"strings"
)

// Walk reads path data as a Pen writes them and gives every step in turn: M, L,
// C or Z with its numbers, which are overwritten by the next step. It stops at
// what no Pen writes.
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

// Map is path data with every point moved by f.
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

// Dashes are the lengths of the dashes of a line and of the gaps after them, by
// turns, times scale. There are none, so that the line is whole, where the text
// is empty or no list of lengths, where one is negative, or all are 0; an odd
// list counts twice (SVG 2, stroke-dasharray).
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

// Place is where the group of an item lies on its scene: a point of the group,
// times Scale, plus X and Y.
type Place struct{ X, Y, Scale float64 }

// At is a point of the group as one of the scene.
func (p Place) At(x, y float64) (float64, float64) { return p.X + x*p.Scale, p.Y + y*p.Scale }

// Each gives every path and text of a scene with its place, in the order in
// which they are drawn.
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
