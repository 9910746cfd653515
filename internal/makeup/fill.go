package makeup

// fit is a page that begins at a place and ends at another, in its best choice of
// ways.
type fit struct {
	end    int
	height int  // in tenths of a millimetre; on the last page the whole room, since what is empty there costs nothing
	shrunk int  // sum of the squares of shrinkings
	over   int  // tenths of a millimetre by which its only part sticks out
	way    int  // of that part
	goal   goal // of the choices that are whole on the page
	shows  pairs
}

// filler finds the pages that begin at a place.
type filler struct {
	*places
	row    *row
	room   int
	shows  pairs
	height int // of what is on the page but for the choices
	n      int // number of choices that are whole on the page
	shrunk int
	yield  func(fit)
}

// from calls yield with every page that begins at a place.
func (f *filler) from(s int) {
	at := f.at[s]
	f.shows, f.height, f.n, f.shrunk = pairs{}, 0, 0, 0
	first := at.piece
	if at.part > 0 {
		first++
	}
	f.row.begin(f.choice[first])
	if at.part > 0 && !f.rest(at) {
		return
	}
	for i := first; i < len(f.pieces); i++ {
		head := s == f.start[i]
		if head {
			f.tooHigh(i)
		}
		if !f.piece(i, head) {
			return
		}
	}
}

// rest fills the page with the parts that are left of a piece, and reports whether
// there may be room below them.
func (f *filler) rest(at place) bool {
	way := &f.pieces[at.piece].Ways[at.way]
	f.height = way.Parts[at.part].Again
	for k := at.part; k < len(way.Parts); k++ {
		part := &way.Parts[k]
		f.height += part.Height
		if k > at.part {
			f.height += part.Above
		}
		f.shows = f.shows.and(part.shows())
		end := f.after(at.piece, at.way, k)
		if f.height > f.room {
			if k == at.part {
				f.stickOut(end, at.way, f.height, 0, f.shows)
			}
			return false
		}
		f.offer(end, f.height, 0, f.shows)
	}
	return true
}

// piece fills the page with a piece, whole or in part, and reports whether there
// may be room below it.
func (f *filler) piece(i int, head bool) bool {
	piece := &f.pieces[i]
	if !head {
		f.height += piece.Above
	}
	for w := range piece.Ways {
		f.parts(i, w)
	}
	if len(piece.Ways) == 1 {
		f.height += piece.Ways[0].height()
		f.shrunk += piece.Ways[0].Shrunk * piece.Ways[0].Shrunk
	} else {
		f.n++
	}
	f.shows = f.shows.and(piece.Ways[0].shows())
	if list := f.row.with(f.n); len(list) == 0 || f.height+list[0].height > f.room {
		return false
	}
	f.offer(f.start[i+1], f.height, f.shrunk, f.shows)
	return true
}

// parts ends the page after each part of a way but the last.
func (f *filler) parts(i, w int) {
	way := &f.pieces[i].Ways[w]
	height, shows := f.height, f.shows
	lowest := f.row.with(f.n)[0].height
	for k := range len(way.Parts) - 1 {
		height += way.Parts[k].Height
		if k > 0 {
			height += way.Parts[k].Above
		}
		if height+lowest > f.room {
			return
		}
		shows = shows.and(way.Parts[k].shows())
		f.offer(f.after(i, w, k), height, f.shrunk+way.Shrunk*way.Shrunk, shows)
	}
}

// offer yields the page that ends at a place, with so much on it besides the
// choices: these take what is left, or as much as they wish on the last page.
func (f *filler) offer(end, height, shrunk int, shows pairs) {
	g, ok := goal{}, false
	if list := f.row.with(f.n); end == f.end() {
		g.height, g.most = f.room-height, true
		g.shrunk, ok = list.least(g.height)
	} else {
		g.sum, ok = list.highest(f.room - height)
	}
	if ok {
		f.yield(fit{end: end, height: height + g.height, shrunk: shrunk + g.shrunk, goal: g, shows: shows.only(f.whole)})
	}
}

// tooHigh yields pages with nothing but the first part of a piece, if that is
// higher than the page.
func (f *filler) tooHigh(i int) {
	for w := range f.pieces[i].Ways {
		way := &f.pieces[i].Ways[w]
		if part := &way.Parts[0]; part.Height > f.room {
			f.stickOut(f.after(i, w, 0), w, part.Height, way.Shrunk*way.Shrunk, part.shows())
		}
	}
}

func (f *filler) stickOut(end, way, height, shrunk int, shows pairs) {
	f.yield(fit{end: end, height: height, shrunk: shrunk, over: height - f.room, way: way, shows: shows.only(f.whole)})
}
