package chart

import "thenar/internal/stitch"

// Page is a chart as data for the browser, which applies strokes to it at
// once. Geometry, symbols, revision and address are filled in by the page.
type Page struct {
	Section    stitch.Part `json:"section"`
	Mirrored   bool        `json:"mirrored"`
	Width      int         `json:"width"`
	Start      int         `json:"start"`
	End        int         `json:"end"`
	Left       float64     `json:"left"`
	Bottom     float64     `json:"bottom"`
	CellWidth  float64     `json:"cell_width"`
	CellHeight float64     `json:"cell_height"`
	Rows       []PageRow   `json:"rows"`
	Ops        []PageOp    `json:"ops"`
	Yarns      []PageYarn  `json:"yarns"`
	Marks      []Edit      `json:"marks"`
	Revision   int64       `json:"revision"`
	CanUndo    bool        `json:"can_undo"`
	CanRedo    bool        `json:"can_redo"`
	Href       string      `json:"href"`
}

// PageRow is one round of a Page, its cells in the order worked.
type PageRow struct {
	Round   int        `json:"round"`
	RestIn  int        `json:"rest_in"`
	RestOut int        `json:"rest_out"`
	Cells   []PageCell `json:"cells"`
}

// PageCell is one planned operation, as this hand shows it.
type PageCell struct {
	Column string `json:"column"`
	X      int    `json:"x"`
	Op     string `json:"op"`
}

// PageOp is one line of the table of operations.
type PageOp struct {
	Code  string `json:"code"`
	Abbr  string `json:"abbr"`
	Words string `json:"words"`
	In    int    `json:"in"`
	Out   int    `json:"out"`
	Twin  string `json:"twin"`
	Paint bool   `json:"paint"`
	Path  string `json:"path"`
}

// PageYarn is one yarn of the palette.
type PageYarn struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Fill string `json:"fill"`
}

// Page gives the grid as data.
func (g Grid) Page() Page {
	p := Page{Section: g.Section, Mirrored: g.Mirrored, Width: g.Width, Start: g.Start, End: g.End, Marks: []Edit{}}
	for _, row := range g.Rows {
		r := PageRow{Round: row.Round, RestIn: row.RestIn, RestOut: row.RestOut, Cells: []PageCell{}}
		for _, c := range row.Cells {
			r.Cells = append(r.Cells, PageCell{c.Column, c.X, c.Planned.Code()})
		}
		p.Rows = append(p.Rows, r)
	}
	for _, op := range stitch.All() {
		p.Ops = append(p.Ops, PageOp{op.Code(), op.Abbr(), op.Words(), op.In(), op.Out(), op.Twin().Code(), op.Paintable(), ""})
	}
	for _, y := range Yarns {
		p.Yarns = append(p.Yarns, PageYarn(y))
	}
	return p
}
