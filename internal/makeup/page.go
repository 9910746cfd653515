package makeup

import (
	"fmt"
)

// page returns the page of a fit that begins at a place.
func (m *maker) page(s int, f fit) Page {
	p := Page{Height: m.area.room(s)}
	for _, at := range m.parts(m.at[s], m.at[f.end], &f) {
		p = p.with(m.pieces, at)
	}
	return p
}

// parts returns the parts of a fit between two places.
func (m *maker) parts(from, to place, f *fit) (list []Placed) {
	add := func(piece, way, part, end int) {
		for ; part < end; part++ {
			list = append(list, Placed{Piece: piece, Way: way, Part: part})
		}
	}
	first := from.piece
	if f.over > 0 {
		add(first, f.way, from.part, from.part+1)
		return list
	}
	if from.part > 0 {
		end := len(m.pieces[first].Ways[from.way].Parts)
		if to.piece == first {
			end = to.part
		}
		add(first, from.way, from.part, end)
		first++
	}
	if to.piece < first {
		return list
	}
	m.filler.row.begin(m.choice[first])
	ways := m.filler.row.ways(m.choice[to.piece]-m.choice[first], f.goal)
	for i := first; i < to.piece; i++ {
		way := 0
		if len(m.pieces[i].Ways) > 1 {
			way, ways = ways[0], ways[1:]
		}
		add(i, way, 0, len(m.pieces[i].Ways[way].Parts))
	}
	add(to.piece, to.way, 0, to.part)
	return list
}

// with returns the page with a part in its place, below what is on it.
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
