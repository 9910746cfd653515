package paper

import (
	"slices"

	"thenar/internal/makeup"
)

// blocks measures the pieces of the options and puts them in their order. In large print,
// where a chart and its words seldom lie face to face in any case, the drawn steps of the
// usual order come before the chart if the whole is then laid better.
func (h *handout) blocks() []block {
	made := map[Piece][]block{}
	for _, p := range h.o.Pieces {
		for _, b := range h.piece(p) {
			if len(b.ways) > 0 && len(b.ways[0].parts) > 0 {
				made[p] = append(made[p], b)
			}
		}
	}
	list := inOrder(made, h.o.Pieces)
	if !h.o.Large || !slices.Equal(h.o.Pieces, usual) {
		return list
	}
	other := inOrder(made, stepsFirst)
	if cost, ok := h.cost(list); ok {
		if less, ok := h.cost(other); ok && less.Compare(cost) < 0 {
			return other
		}
	}
	return list
}

// stepsFirst is the usual order with the drawn steps before the chart.
var stepsFirst = []Piece{Plan, Own, Lesson, Chart, Key, Words, Cautions}

// inOrder returns the blocks of pieces in an order.
func inOrder(made map[Piece][]block, order []Piece) (list []block) {
	for _, p := range order {
		list = append(list, made[p]...)
	}
	return list
}

// cost returns what a layout of blocks costs; ok is false if they are too many to be laid
// at once.
func (h *handout) cost(blocks []block) (cost makeup.Cost, ok bool) {
	if turn(blocks) < len(blocks) {
		return makeup.Cost{}, false
	}
	pieces := make([]makeup.Piece, len(blocks))
	for i := range blocks {
		pieces[i] = h.pieceOf(&blocks[i])
	}
	layout, err := makeup.Lay(pieces, h.area())
	return layout.Cost, err == nil
}
