package paper

import (
	"math"
	"slices"

	"thenar/internal/draw"
	"thenar/internal/makeup"
)

// area returns the height of the pages between their margins, above the foot.
func (h *handout) area() makeup.Area {
	return makeup.Area{Page: int(math.Floor((h.size.Height-2*margin-footRoom-h.above)*10 + 1e-6)), BothSides: h.o.Double}
}

// areaHeight returns the height of the area in mm.
func (h *handout) areaHeight() float64 { return float64(h.area().Page) / 10 }

// onHeight is the height of a heading that is repeated, in tenths of a millimetre.
func (h *handout) onHeight() int { return lineHeight(h.body) + 15 }

// againHeight is the height of what is repeated where a part begins a page, in tenths of a
// millimetre.
func (h *handout) againHeight(p *part) (height int) {
	if p.goesOn != "" {
		height = h.onHeight()
	}
	if p.headAgain != nil {
		height += p.headAgain.Height
	}
	return height
}

// makeUp lays blocks and draws their pages. Very many parts are laid in turns, each
// beginning a page.
func (h *handout) makeUp(blocks []block) {
	h.flow.pages = nil
	h.lay(blocks)
	if len(h.flow.pages) == 0 {
		h.addPage()
	}
}

// lay lays blocks on fresh pages behind those that are there.
func (h *handout) lay(blocks []block) {
	blocks = bounded(blocks)
	for len(blocks) > 0 {
		n := turn(blocks)
		h.makeUpAtOnce(blocks[:n])
		blocks = blocks[n:]
	}
}

// bounded divides blocks of more parts than are laid at once.
func bounded(blocks []block) []block {
	var list []block
	for _, b := range blocks {
		if b.parts() <= makeup.MaxParts {
			list = append(list, b)
			continue
		}
		for few := range slices.Chunk(b.ways[0].parts, makeup.MaxParts) {
			piece := b
			piece.ways = []way{{b.ways[0].shrunk, few}}
			list = append(list, piece)
		}
	}
	return list
}

// parts returns the number of parts of all ways.
func (b *block) parts() int {
	n := 0
	for _, w := range b.ways {
		n += len(w.parts)
	}
	return n
}

// turn returns how many blocks may be laid at once.
func turn(blocks []block) int {
	parts := 0
	for i := range blocks {
		if parts += blocks[i].parts(); parts > makeup.MaxParts && i > 0 {
			return i
		}
	}
	return len(blocks)
}

func (h *handout) makeUpAtOnce(blocks []block) {
	pieces := make([]makeup.Piece, len(blocks))
	for i := range blocks {
		pieces[i] = h.pieceOf(&blocks[i])
	}
	layout, err := makeup.Lay(pieces, h.area())
	if err != nil { // the blocks are our own, and bounded
		panic("paper: " + err.Error())
	}
	h.troubles = append(h.troubles, layout.Troubles...)
	for _, page := range layout.Pages {
		h.addPage()
		for _, at := range page.Placed {
			h.place(&blocks[at.Piece], at)
		}
		last := page.Placed[len(page.Placed)-1]
		if b := &blocks[last.Piece]; b.fill != nil && last.Part == len(b.ways[last.Way].parts)-1 {
			b.fill(h.page(), margin, margin+h.above+float64(page.Filled)/10, float64(page.Empty())/10)
		}
	}
}

// pieceOf returns a block as it is laid.
func (h *handout) pieceOf(b *block) makeup.Piece {
	p := makeup.Piece{Name: b.name, Above: b.above, WithNext: b.withNext, Ways: make([]makeup.Way, len(b.ways))}
	for i, w := range b.ways {
		parts := makeupParts(w.parts)
		for k := range parts {
			if k > 0 {
				parts[k].Again = h.againHeight(&w.parts[k])
			}
		}
		parts[0].Above = 0
		p.Ways[i] = makeup.Way{Shrunk: w.shrunk, Parts: parts}
	}
	return p
}

// place draws a part in its place.
func (h *handout) place(b *block, at makeup.Placed) {
	y := margin + h.above + float64(at.Top)/10
	part := &b.ways[at.Way].parts[at.Part]
	if at.Again > 0 && part.goesOn != "" {
		h.page().Text(margin, y-float64(at.Again)/10+h.body, goesOn(part.goesOn), draw.TextStyle{Size: h.body, Face: draw.Semibold})
	}
	if at.Again > 0 && part.headAgain != nil {
		part.headAgain.draw(h.page(), margin, y-float64(part.headAgain.Height)/10)
	}
	part.draw(h.page(), margin, y)
}

// goesOn returns a heading as it is repeated where what it heads goes on.
func goesOn(heading string) string { return heading + ", goes on" }
