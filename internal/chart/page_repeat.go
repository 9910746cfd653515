package chart

import (
	"slices"

	"thenar/internal/repeat"
	"thenar/internal/stitch"
)

// PageRepeat is a motif that is laid by rule, with the number of its row in the sheet. Its
// rows are drawn as it looks, the uppermost first, a letter or a point for each stitch.
type PageRepeat struct {
	At       int      `json:"at"`
	Name     string   `json:"name"`
	Wide     int      `json:"wide"`
	High     int      `json:"high"`
	Yarns    []string `json:"yarns,omitempty"`
	Stitches []string `json:"stitches,omitempty"`

	Title  string            `json:"title"` // what a sentence calls it
	Given  map[string]string `json:"given"` // what the sheet has of it beside its drawing
	Words  string            `json:"words"` // what became of it
	Across int               `json:"across"`
	Up     int               `json:"up"`
	Part   int               `json:"part,omitempty"` // rounds of one more that is cut
}

// PageLaid is a run of a row's cells that one repeat sets: N of them from I on, counted from
// 0 in the order in which they are listed. Right is the stitch of the motif that the first has, from
// the right from 0, Step how it goes on round the motif (1 or −1), Up the motif's round.
type PageLaid struct {
	I      int `json:"i"`
	N      int `json:"n"`
	Repeat int `json:"r"` // its place in the page's list, from 0
	Right  int `json:"x"`
	Step   int `json:"s"`
	Up     int `json:"y"`
	wide   int
}

// NewPageRepeat returns a repeat as a page has it; at is the number of its row in the sheet.
func NewPageRepeat(r repeat.Repeat, at int) PageRepeat {
	p := PageRepeat{At: at, Name: r.Name, Wide: r.Motif.Wide, High: r.Motif.High}
	p.Yarns, p.Stitches = r.Motif.Rows()
	return p
}

// laidRuns packs what repeats set in a row.
func laidRuns(cells []Cell, wide func(which int) int) []PageLaid {
	var list []PageLaid
	for i, c := range cells {
		if c.Laid == 0 {
			continue
		}
		which, right, up := int(c.Laid)-1, int(c.Right), int(c.Up)
		if n := len(list); n > 0 && list[n-1].goesOn(i, which, right, up) {
			list[n-1].N++
			continue
		}
		list = append(list, PageLaid{I: i, N: 1, Repeat: which, Right: right, Step: 1, Up: up, wide: wide(which)})
	}
	return list
}

// goesOn reports whether a run takes one cell more, and sets its step.
func (l *PageLaid) goesOn(i, which, right, up int) bool {
	if l.I+l.N != i || l.Repeat != which || l.Up != up {
		return false
	}
	if l.N == 1 && (l.Right+l.wide-1)%l.wide == right && l.wide > 2 {
		l.Step = -1
	}
	return mod(l.Right+l.Step*l.N, l.wide) == right
}

// Cover tells the page of a grid where the repeats lie, cells that they leave as they are
// included, what rows keep of how they were worked, and how many rounds of the whole hand come before each section.
func (s Source) Cover(p *Page, g Grid) {
	p.Hand = map[stitch.Part]int{}
	before := 0
	for _, part := range repeat.Around(s.Mitt) {
		p.Hand[part] = before
		before += len(s.Mitt.Section(part).Rounds)
	}
	for i, row := range g.Rows {
		var kept bool
		if p.Rows[i].Kept, kept = s.keptRuns(row); kept || s.laid == nil {
			continue
		}
		if lies := s.lies(row, g.motifWidth); !slices.Equal(lies, p.Rows[i].Laid) {
			p.Rows[i].Lies = lies
		}
	}
}

// lies packs what repeats cover in a row, the lowest first.
func (s Source) lies(row Row, wide func(which int) int) []PageLaid {
	names := make([]string, len(row.Cells))
	for i, c := range row.Cells {
		names[i] = c.Column
	}
	var list []PageLaid
	last := -1
	var cells []Cell
	pack := func() { list = append(list, laidRuns(cells, wide)...) }
	s.laid.Lies(row.Section, row.Round-1, names, func(j int, c repeat.Cell) {
		if c.Which != last {
			pack()
			cells, last = make([]Cell, len(names)), c.Which
		}
		cells[j] = Cell{Laid: uint8(c.Which + 1), Right: uint8(c.Right), Up: uint8(c.Up)}
	})
	pack()
	return list
}
