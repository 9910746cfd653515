package makeup

import (
	"fmt"
)

// page returns the page of a fit that begins at a place, with every part in its
// place.
func (m *maker) page(s int, f fit) Page {
	from, to := m.at[s], m.at[f.end]
	p := Page{Height: m.area.room(s)}
	first := from.piece
	if from.part > 0 {
		first++
	}
	if f.over > 0 {
		return p.with(m.pieces, Placed{Piece: from.piece, Way: f.way, Part: from.part})
	}
	if from.part > 0 {
		last := len(m.pieces[from.piece].Ways[from.way].Parts)
		if to.piece == from.piece {
			last = to.part
		}
		for k := from.part; k < last; k++ {
			p = p.with(m.pieces, Placed{Piece: from.piece, Way: from.way, Part: k})
		}
	}
	if to.piece < first {
		return p
	}
	m.filler.row.begin(m.choice[first])
	ways := m.filler.row.ways(m.choice[to.piece]-m.choice[first], f.goal)
	for i := first; i < to.piece; i++ {
		way := 0
		if len(m.pieces[i].Ways) > 1 {
			way, ways = ways[0], ways[1:]
		}
		for k := range m.pieces[i].Ways[way].Parts {
			p = p.with(m.pieces, Placed{Piece: i, Way: way, Part: k})
		}
	}
	for k := range to.part {
		p = p.with(m.pieces, Placed{Piece: to.piece, Way: to.way, Part: k})
	}
	return p
}

// with returns the page with a part below what is on it.
func (p Page) with(pieces []Piece, at Placed) Page {
	part := pieces[at.Piece].part(at)
	if n := len(p.Placed); n > 0 {
		above := p.Placed[n-1]
		at.Top = above.Top + pieces[above.Piece].part(above).Height + part.Above
		if at.Part == 0 {
			at.Top += pieces[at.Piece].Above
		}
	} else if at.Part > 0 {
		at.Top, at.Again = part.Again, part.Again
	}
	p.Placed, p.Filled = append(p.Placed, at), at.Top+part.Height
	return p
}

func (p *Piece) part(at Placed) *Part { return &p.Ways[at.Way].Parts[at.Part] }

// Trouble is where a layout could not keep a rule.
type Trouble struct {
	Name              string // of the piece
	Piece, Part, Page int    // of the part, all from 0
	Over              int    // tenths of a millimetre by which it sticks out; 0: it is parted from what follows
}

// String says the trouble in words.
func (t Trouble) String() string {
	if t.Over > 0 {
		return fmt.Sprintf("%s: part %d is %d.%d mm higher than page %d; it stands there alone", t.Name, t.Part+1, t.Over/10, t.Over%10, t.Page+1)
	}
	return fmt.Sprintf("%s: page %d ends after part %d, which should stay with what follows; together they are higher than a page", t.Name, t.Page+1, t.Part+1)
}

// troubles returns where pages could not keep a rule.
func (m *maker) troubles(pages []Page) (list []Trouble) {
	for n, p := range pages {
		end := p.Placed[len(p.Placed)-1]
		t := Trouble{Name: m.pieces[end.Piece].Name, Piece: end.Piece, Part: end.Part, Page: n}
		if over := p.Filled - p.Height; over > 0 {
			t.Over = over
			list = append(list, t)
		}
		if m.at[m.after(end.Piece, end.Way, end.Part)].kept {
			t.Over = 0
			list = append(list, t)
		}
	}
	return list
}
