package view

import (
	"fmt"
	"net/url"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// ChartAsk says which chart of the mitt a page shows, and how it is drawn.
type ChartAsk struct {
	chart.Options
	Square bool
	Boxed  bool // of motifs that repeat one, boxed, to be looked at
}

// ReadChartAsk reads a ChartAsk from the query of an address. The chart package
// chooses what is unknown or missing.
func ReadChartAsk(q url.Values) ChartAsk {
	return ChartAsk{
		Options: chart.Options{View: chart.View(q.Get("view")), Layout: chart.Layout(q.Get("layout")), Middle: q.Get("middle")},
		Square:  q.Get("cells") == "square",
		Boxed:   q.Get("boxed") == "1",
	}
}

// Chart is the stitch grid with its tools.
type Chart struct {
	SVG     string
	Key     string // SVG
	Page    chart.Page
	Ask     ChartAsk
	Views   []chart.View
	Symbols picture.Convention
	Inch    string      // the longest float, in words
	Ops     []stitch.Op // that can be painted
	Yarns   chart.Palette
	Words   []string // floats and rounds with too many yarns
	Meant   int      // the number of floats that are meant to be long
	Dyed    bool     // whether a yarn was given a colour of its own
	Reading string   // how the chart is read
	Rows    bool     // it has rows, and no rounds
	Laid    []laidMotif
	Boxed   []picture.BoxedPart // what is asked for boxed, the uppermost first; none: nothing repeats whole
}

// noun is what the chart's rounds are called.
func (c Chart) noun() string {
	if c.Rows {
		return stitch.RightSide.Noun()
	}
	return stitch.AllRound.Noun()
}

// chartCell is the width of a stitch on the page, in mm of the drawing.
const chartCell = 6

// keyWidth is the width of the key on the page, in mm.
const keyWidth = 50

// Symbols returns the symbol convention of a document's charts.
func Symbols(doc project.Document) picture.Convention {
	if picture.Convention(doc.Sheet.Given("chart.symbols")) == picture.JIS {
		return picture.JIS
	}
	return picture.Trade
}

func newChart(doc project.Document, out *project.Outputs, ask ChartAsk) Chart {
	g := out.Grid(ask.Options)
	c := Chart{Ask: ChartAsk{g.Options, ask.Square, ask.Boxed}, Views: out.Charts.Views(), Symbols: Symbols(doc), Yarns: out.Charts.Palette, Words: g.FloatWords(), Meant: len(g.Meant), Dyed: dyed(doc), Inch: inchWords(doc.Sheet.Unit()), Reading: capital(picture.Reading(g)) + ".", Rows: g.Noun() == stitch.RightSide.Noun()}
	look := picture.Look{Cell: chartCell, Gauge: out.Plan.Gauge, Square: ask.Square, Symbols: c.Symbols, Unit: doc.Sheet.Unit(), Knitted: true}
	scene, at := picture.Chart(g, look)
	if ask.Boxed {
		c.Boxed = boxedParts(out, ask.Options, look)
	}
	c.SVG, c.Key, c.Page = SVG(scene, false), chartKey(g, c.Symbols), g.Page()
	c.Page.Left, c.Page.Bottom = at.Left, at.Bottom
	c.Page.CellWidth, c.Page.CellHeight, c.Page.Shapes = at.CellWidth, at.CellHeight, picture.Knitting
	for i, op := range c.Page.Ops {
		if o, ok := stitch.ByCode(op.Code); ok {
			c.Page.Ops[i].Path, c.Page.Ops[i].Purl = c.Symbols.Symbol(o), o.Purled()
		}
	}
	for i, y := range c.Page.Yarns {
		c.Page.Yarns[i].Dark, c.Page.Yarns[i].Cloth, c.Page.Yarns[i].Furrow = picture.Dark(y.Fill), picture.Cloth(y.Fill), picture.Furrow(y.Fill)
	}
	for _, op := range stitch.All() {
		if op.Paintable() {
			c.Ops = append(c.Ops, op)
		}
	}
	putLaid(&c.Page, doc, out, g)
	c.Laid = laidMotifs(doc, out, g.Noun())
	for _, e := range out.Lost {
		c.Page.Lost = append(c.Page.Lost, chart.PageLost{Edit: e, Words: e.Words(c.Yarns)})
	}
	for _, d := range out.Drifted {
		c.Page.Drifted = append(c.Page.Drifted, chart.NewPageDrift(d))
	}
	return c
}

// boxedParts draws of motifs that repeat one, as a chart's file has it; none if nothing repeats
// whole.
func boxedParts(out *project.Outputs, o chart.Options, look picture.Look) (parts []picture.BoxedPart) {
	if list := out.Boxed(o); len(list) > 0 {
		parts = picture.BoxedParts(list, look)
	}
	return parts
}

// dyed reports whether a yarn was given a colour of its own. The chart is then drawn
// as knitting before anything is painted.
func dyed(doc project.Document) bool {
	for i := range chart.MaxYarns {
		if doc.Sheet.Given(project.YarnPath(chart.ID(i), "colour")) != "" {
			return true
		}
	}
	return false
}

// chartKey draws the key of a chart.
func chartKey(g chart.Grid, symbols picture.Convention) string {
	return SVG(picture.Key(g, picture.Look{Symbols: symbols, Knitted: true}, keyWidth), false)
}

// The sets of stitches in the rail: those that keep the round as it is, those
// that make one more or one fewer of it, and, behind a press, all others.
var stripHeads = []Choice{{"keep", "as many"}, {"more", "one more"}, {"fewer", "one fewer"}}

// inSet are the numbers of stitches that the sets show.
var inSet = []int{4, 4, 2}

// stitches returns the stitches that can be painted by the sets in which they
// stand in the rail, as for a stitch that is knitted. The others come last.
func (c Chart) stitches() [][]stitch.Op {
	sets := make([][]stitch.Op, len(inSet)+1)
	for _, op := range c.Ops {
		i := len(inSet)
		switch net := op.Out() - op.In(); {
		case net == 0:
			i = 0
		case net == 1:
			i = 1
		case net == -1:
			i = 2
		}
		if i < len(inSet) && len(sets[i]) == inSet[i] {
			i = len(inSet)
		}
		sets[i] = append(sets[i], op)
	}
	return sets
}

// rule says how many yarns and how long a float the colour work may have.
func (c Chart) rule() string {
	r := c.Page.Rules
	return fmt.Sprintf("At most %s in a %s. A strand passes %s at most, and never over %s.", words.Plural(r.Colours, "yarn"), c.noun(), words.Plural(r.Float, "stitch"), c.Inch)
}

// mitt returns the address of the mitt whose chart this is.
func (c Chart) mitt() string { return strings.TrimSuffix(c.Page.Href, "/chart") }

// picked returns the colour for the picker beside a field: the one that was
// typed, or the usual one.
func picked(doc project.Document, path string) string {
	if text := doc.Sheet.Given(path); colourText.MatchString(text) {
		return text
	}
	var i int
	if _, err := fmt.Sscanf(path, "chart.yarns[%d]", &i); err == nil && i < len(chart.Yarns) && chart.Yarns[i].Fill != "" {
		return chart.Yarns[i].Fill
	}
	return "#FFFFFF"
}

var colourText = regexp.MustCompile(`^#[0-9A-Fa-f]{6}$`)

// yarnField returns the id of the field that a yarn is named in.
func yarnField(id string) string {
	return fieldID(project.YarnPath(id, "name"))
}

// yarnsInUse reports of each yarn of the palette whether it is the main one, says
// anything or is painted.
func (m Mitt) yarnsInUse() []bool {
	var marks chart.Marks
	if m.Answer.Out != nil {
		marks = m.Answer.Out.Charts.Marks
	}
	empty := m.Doc.EmptyPlaces(marks)
	used := make([]bool, chart.MaxYarns)
	for i := range used {
		id := chart.ID(i)
		used[i] = i == 0 || !slices.Contains(empty, id)
		for _, part := range []string{"name", "colour", "held"} {
			used[i] = used[i] || m.Answer.Faults[project.YarnPath(id, part)] != ""
		}
	}
	return used
}

// unused returns the indexes of the yarns that are not in use.
func unused(inUse []bool) []int {
	var list []int
	for i, used := range inUse {
		if !used {
			list = append(list, i)
		}
	}
	return list
}
