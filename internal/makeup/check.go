package makeup

import "fmt"

// Limits of what is laid. They bound time and memory, and are far above what a
// handout or a class's table has.
const (
	maxHeight  = 20_000 // tenths of a millimetre, of an area and of any part
	MaxParts   = 2_000  // of all ways of all pieces
	maxWays    = 32     // of one piece
	maxChoices = 64     // pieces of several ways
	maxShrunk  = 19     // steps of 5 %
)

// check returns what of the input can't be laid, at the first field.
func check(pieces []Piece, area Area) error {
	if area.Page < 1 || area.Page > maxHeight {
		return fmt.Errorf("area: page is %d high; write 1 to %d tenths of a millimetre", area.Page, maxHeight)
	}
	if area.First < 0 || area.First > maxHeight {
		return fmt.Errorf("area: the first page is %d high; write 1 to %d tenths of a millimetre, or 0", area.First, maxHeight)
	}
	parts, choices := 0, 0
	for i := range pieces {
		p := &pieces[i]
		if err := p.check(); err != nil {
			return fmt.Errorf("piece %d, %q: %w", i+1, p.Name, err)
		}
		for _, w := range p.Ways {
			parts += len(w.Parts)
		}
		if len(p.Ways) > 1 {
			choices++
		}
	}
	if parts > MaxParts {
		return fmt.Errorf("pieces: have %d parts in all their ways; at most %d are laid at a time", parts, MaxParts)
	}
	if choices > maxChoices {
		return fmt.Errorf("pieces: %d have more than one way; at most %d may", choices, maxChoices)
	}
	return nil
}

func (p *Piece) check() error {
	if len(p.Ways) == 0 {
		return fmt.Errorf("has no way; give at least one")
	}
	if len(p.Ways) > maxWays {
		return fmt.Errorf("has %d ways; give at most %d", len(p.Ways), maxWays)
	}
	if p.Above < 0 || p.Above > maxHeight {
		return fmt.Errorf("has %d above it; write 0 to %d tenths of a millimetre", p.Above, maxHeight)
	}
	for n := range p.Ways {
		w := &p.Ways[n]
		if err := w.check(); err != nil {
			return fmt.Errorf("way %d: %w", n+1, err)
		}
		if w.shows() != p.Ways[0].shows() {
			return fmt.Errorf("way %d: has other charts or words than way 1; give every way the same", n+1)
		}
	}
	return nil
}

func (w *Way) check() error {
	if len(w.Parts) == 0 {
		return fmt.Errorf("has no part; give at least one")
	}
	if w.Shrunk < 0 || w.Shrunk > maxShrunk {
		return fmt.Errorf("is shrunk by %d steps; write 0 to %d", w.Shrunk, maxShrunk)
	}
	if w.Parts[0].Above != 0 {
		return fmt.Errorf("its first part has %d above it; write that as the space above the piece", w.Parts[0].Above)
	}
	for k, p := range w.Parts {
		if p.Height < 1 || p.Height > maxHeight {
			return fmt.Errorf("part %d is %d high; write 1 to %d tenths of a millimetre", k+1, p.Height, maxHeight)
		}
		if p.Above < 0 || p.Above > maxHeight || p.Again < 0 || p.Again > maxHeight {
			return fmt.Errorf("part %d has %d above it, and %d again; write 0 to %d tenths of a millimetre", k+1, p.Above, p.Again, maxHeight)
		}
		if p.Chart < 0 || p.Chart > maxPairs || p.Words < 0 || p.Words > maxPairs {
			return fmt.Errorf("part %d belongs to chart %d and words %d; write 1 to %d, or 0 for none", k+1, p.Chart, p.Words, maxPairs)
		}
	}
	return nil
}
