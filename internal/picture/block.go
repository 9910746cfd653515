package picture

import (
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// block is cells of a motif as they are drawn in small: in a key, beside its name, along a
// strip.
type block struct {
	wide, high int
	at         func(x, up int) (yarn string, op stitch.Op) // from 0 from the left and from below; no yarn is blank
	yarn       func(id string) chart.Yarn
	by         Convention
	w, h       float64 // of a cell
	grey       bool
}

// draw draws the cells with the upper left corner at a point, and the lines between them.
func (b block) draw(s *draw.Scene, left, top float64) {
	x := func(k int) float64 { return left + float64(k)*b.w }
	y := func(up int) float64 { return top + float64(b.high-1-up)*b.h } // upper edge
	cells := map[string]*draw.Pen{}
	var symbols []string
	for up := range b.high {
		for k := range b.wide {
			id, op := b.at(k, up)
			if id != "" {
				if cells[id] == nil {
					cells[id] = new(draw.Pen)
				}
				cells[id].Rect(x(k), y(up), b.w, b.h)
			}
			if op != stitch.NoStitch {
				symbols = append(symbols, symbolInCell(b.by.Symbol(op), x(k), y(up), b.w, b.h))
			}
		}
	}
	for i := range chart.MaxYarns {
		if pen := cells[chart.ID(i)]; pen != nil {
			s.Path(pen.String(), yarnStyle(b.yarn(chart.ID(i))))
		}
	}
	if b.grey {
		b.textures(s, x, y)
	}
	if path := strings.TrimSpace(strings.Join(symbols, " ")); path != "" {
		s.Path(path, draw.Style{Class: "edge", Stroke: edgeColour, Width: b.w / 4, Round: true})
		s.Path(path, draw.Style{Class: "symbol", Stroke: inkColour, Width: b.w / 12, Round: true})
	}
	var lines draw.Pen
	for k := range b.wide + 1 {
		lines.Move(x(k), top).Line(x(k), top+float64(b.high)*b.h)
	}
	for up := range b.high + 1 {
		lines.Move(left, top+float64(up)*b.h).Line(x(b.wide), top+float64(up)*b.h)
	}
	s.Path(lines.String(), draw.Style{Class: "grid", Stroke: gridColour, Width: b.w / 16})
}

// textures draws the lines that tell the yarns of cells apart without colour.
func (b block) textures(s *draw.Scene, x, y func(int) float64) {
	for up := range b.high {
		for k := range b.wide {
			id, _ := b.at(k, up)
			if id == "" {
				continue
			}
			yarn := b.yarn(id)
			if t := Texture(yarn.ID, x(k), y(up), b.w, b.h, b.w/2); t != "" {
				s.Path(t, textureStyle(yarn, b.w/20))
			}
		}
	}
}

// SmallMotif draws a motif alone, as it looks on the chart of a right hand.
func SmallMotif(m repeat.Motif, l Look, p chart.Palette) *draw.Scene {
	b := block{
		wide: m.Wide, high: m.High, yarn: p.Or, by: l.Symbols, w: l.Cell, h: l.Cell, grey: l.Grey,
		at: func(x, up int) (string, stitch.Op) { return m.At(m.Wide-1-x, up) },
	}
	s := &draw.Scene{Width: b.w * float64(b.wide), Height: b.h * float64(b.high)}
	b.draw(s, 0, 0)
	return s
}
