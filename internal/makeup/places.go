package makeup

// place is where a page can begin: before a piece, or before a part of one of its
// ways.
type place struct {
	piece, way, part int  // part 0 is before the piece, whatever its way
	kept             bool // a page should not end here
}

// places holds the pieces with all places among them, each before those that can
// be reached from it.
type places struct {
	pieces []Piece
	at     []place
	start  []int    // the place before each piece, and the one after all
	inside [][]int  // by piece and way, the place before its second part; those of further parts follow
	choice []int    // by piece, the number of pieces of several ways before it
	sizes  [][]size // of the pieces of several ways
	whole  pairs    // what all pages together show
}

func newPlaces(pieces []Piece) *places {
	p := &places{pieces: pieces, start: make([]int, len(pieces)+1), inside: make([][]int, len(pieces)), choice: make([]int, len(pieces)+1)}
	for i := range pieces {
		piece := &pieces[i]
		p.start[i] = len(p.at)
		p.at = append(p.at, place{piece: i, kept: i > 0 && pieces[i-1].WithNext})
		sizes := make([]size, len(piece.Ways))
		for w, way := range piece.Ways {
			p.inside[i] = append(p.inside[i], len(p.at))
			for k := range way.Parts {
				if k > 0 {
					p.at = append(p.at, place{i, w, k, way.Parts[k-1].Keep})
				}
				p.whole = p.whole.and(way.Parts[k].shows())
			}
			sizes[w] = size{way.height(), way.Shrunk * way.Shrunk}
		}
		p.choice[i] = len(p.sizes)
		if len(sizes) > 1 {
			p.sizes = append(p.sizes, sizes)
		}
	}
	p.choice[len(pieces)], p.start[len(pieces)] = len(p.sizes), len(p.at)
	p.at = append(p.at, place{piece: len(pieces)})
	return p
}

// end returns the place after all pieces.
func (p *places) end() int { return len(p.at) - 1 }

// after returns the place after a part.
func (p *places) after(piece, way, part int) int {
	if part+1 == len(p.pieces[piece].Ways[way].Parts) {
		return p.start[piece+1]
	}
	return p.inside[piece][way] + part
}

// height returns the height of all parts, without repeats.
func (w *Way) height() int {
	sum := 0
	for k := range w.Parts {
		sum += w.Parts[k].Height
		if k > 0 {
			sum += w.Parts[k].Above
		}
	}
	return sum
}

// shows returns what all parts show.
func (w *Way) shows() (all pairs) {
	for k := range w.Parts {
		all = all.and(w.Parts[k].shows())
	}
	return all
}
