package chart

import (
	"strconv"

	"thenar/internal/stitch"
)

// Page is a chart as data for the browser, which applies strokes to it at once.
// The view fills in geometry, symbols, revision and address.
type Page struct {
	View       View       `json:"view"`
	Layout     Layout     `json:"layout"`
	Middle     string     `json:"middle"`
	Mirrored   bool       `json:"mirrored"`
	FromLeft   bool       `json:"from_left,omitempty"`
	Width      int        `json:"width"`
	Start      int        `json:"start"`
	End        int        `json:"end"`
	Next       string     `json:"next"`
	Left       float64    `json:"left"`
	Bottom     float64    `json:"bottom"`
	CellWidth  float64    `json:"cell_width"`
	CellHeight float64    `json:"cell_height"`
	Rules      PageRules  `json:"rules"`
	Rows       []PageRow  `json:"rows"`
	Ops        []PageOp   `json:"ops"`
	Shapes     Shapes     `json:"shapes"`
	Yarns      []PageYarn `json:"yarns"`
	Marks      []Edit     `json:"marks"`
	Lost       []PageLost `json:"lost"`

	Drifted []PageDrift `json:"drifted,omitempty"` // painted stitches under which their motif moved

	Repeats []PageRepeat `json:"repeats,omitempty"` // in the order in which they are laid

	Hand     map[stitch.Part]int `json:"hand,omitempty"` // rounds of the whole hand before each of its sections
	Revision int64               `json:"revision"`
	Decided  int64               `json:"decided"`
	Restored int64               `json:"restored"`
	Mitt     string              `json:"mitt,omitempty"` // identifies the mitt across files, where numbers repeat
	CanUndo  bool                `json:"can_undo"`
	CanRedo  bool                `json:"can_redo"`
	Href     string              `json:"href"`
}

// PageRules are the rules of colour work; 0 is no limit.
type PageRules struct {
	Colours int `json:"colours"`
	Float   int `json:"float"`
}

// PageRow is one round of a Page, its cells in the order worked; those of a row as they
// look on the right side.
type PageRow struct {
	Section stitch.Part `json:"section"`
	Name    string      `json:"name"` // of the section, in words
	Round   int         `json:"round"`
	Side    string      `json:"side,omitempty"` // of a row, in words; none of a round
	Runs    []PageRun   `json:"runs"`
	Areas   []PageArea  `json:"areas,omitempty"`   // in the order worked; none on a thumb
	Changed bool        `json:"changed,omitempty"` // whether a try changed it
	Laid    []PageLaid  `json:"laid,omitempty"`
	Lies    []PageLaid  `json:"lies,omitempty"`  // where repeats lie, if that isn't as Laid
	Kept    []PageKept  `json:"kept,omitempty"`  // what looks as it was worked
	Fresh   bool        `json:"fresh,omitempty"` // whether no yarn goes on into it from the row below
	Moved   int         `json:"moved,omitempty"` // stitches by which the round's beginning moves on before it
}

// PageArea is a run of a round's cells that lie on one area of the mitt.
type PageArea struct {
	Words string `json:"words"`
	Count int    `json:"n"`
}

// PageRun is a run of neighbouring cells with the same planned operation of
// this hand. The first cell is at X and in the column Column. Each next one is
// a place further left and its column's number is greater by Step. X is −1 if
// the run is not shown.
type PageRun struct {
	X      int    `json:"x"`
	Count  int    `json:"n"`
	Column string `json:"column"`
	Step   int    `json:"step"`
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
	Purl  bool   `json:"purl"` // whether it is drawn as a purl
}

// Shapes are the shapes of stitches as path data in a cell of 100 by 100, which may
// reach out of it: knit with a stitch above it, knit at an upper edge, and purl.
type Shapes struct {
	Knit string `json:"knit"`
	End  string `json:"end"`
	Purl string `json:"purl"`
}

// PageYarn is one yarn of the palette.
type PageYarn struct {
	ID   string `json:"id"`
	Name string `json:"name"`
	Fill string `json:"fill"`
	Held Held   `json:"held"`
	Dark bool   `json:"dark"` // whether lines on it are drawn light

	Cloth  string `json:"cloth"`  // the colour of its stitches
	Furrow string `json:"furrow"` // the tone between them
}

// PageLost is a mark whose cell the plan no longer has.
type PageLost struct {
	Edit
	Words string `json:"words"`
}

// PageDrift is a painted stitch under which its motif came to lie otherwise, and where the
// stitch of the motif is now, if there is one.
type PageDrift struct {
	At PagePlace  `json:"at"`
	To *PagePlace `json:"to,omitempty"`
}

// PagePlace names a cell.
type PagePlace struct {
	Section stitch.Part `json:"section"`
	Round   int         `json:"round"`
	Column  string      `json:"column"`
}

// NewPageDrift returns a drift as a page has it.
func NewPageDrift(d Drift) PageDrift {
	p := PageDrift{At: PagePlace(d.At)}
	if to := PagePlace(d.To); to.Column != "" {
		p.To = &to
	}
	return p
}

// Page returns the grid as data.
func (g Grid) Page() Page {
	p := Page{
		View: g.View, Layout: g.Layout, Middle: g.Middle, Mirrored: g.Mirrored, FromLeft: g.FromLeft, Width: g.Width,
		Start: g.Start, End: g.End, Next: g.Next, Rules: PageRules(g.Rules),
		Rows: []PageRow{}, Marks: []Edit{}, Lost: []PageLost{},
	}
	for i, row := range g.Rows {
		one := PageRow{Section: row.Section, Name: row.Section.Words(), Round: row.Round, Side: row.Side.Words(), Runs: runs(row.Cells), Areas: g.areasOf(row), Changed: row.Changed, Laid: laidRuns(row.Cells, g.motifWidth)}
		if i > 0 {
			one.Fresh, one.Moved = row.fresh, row.moved
		}
		p.Rows = append(p.Rows, one)
	}
	for _, op := range stitch.All() {
		p.Ops = append(p.Ops, PageOp{op.Code(), op.Abbr(), op.Words(), op.In(), op.Out(), op.Twin().Code(), op.Paintable(), "", false})
	}
	for i := range MaxYarns {
		if y, ok := g.Palette.Named(ID(i)); ok {
			p.Yarns = append(p.Yarns, PageYarn{ID: y.ID, Name: y.Name, Fill: y.Fill, Held: y.Held})
		} else {
			y := g.Palette.Or(ID(i))
			p.Yarns = append(p.Yarns, PageYarn{ID: y.ID, Name: y.Name})
		}
	}
	return p
}

// runs packs cells, which keeps the data of a large chart small.
func runs(cells []Cell) []PageRun {
	list := []PageRun{}
	for i, c := range cells {
		if n := len(list); n > 0 && list[n-1].takes(c, cells[i-1]) {
			list[n-1].Count++
			continue
		}
		list = append(list, PageRun{X: c.X, Count: 1, Column: c.Column, Op: c.Planned.Code()})
	}
	return list
}

// takes reports whether a run continues from before with c, and sets its step.
func (r *PageRun) takes(c, before Cell) bool {
	shown := c.X == before.X-1 && c.X >= 0
	hidden := c.X < 0 && before.X < 0
	if c.Planned.Code() != r.Op || (!shown && !hidden) || c.Column == "" || before.Column == "" || c.Column[0] != before.Column[0] {
		return false
	}
	now, _ := strconv.Atoi(c.Column[1:])
	then, _ := strconv.Atoi(before.Column[1:])
	step := now - then
	if r.Count == 1 {
		r.Step = step
	}
	return step == r.Step
}
