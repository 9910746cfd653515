// Package grade plans one design over a range of hands and gauges: the tables
// from which a class or a pattern takes its numbers.
package grade

import (
	"context"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Hand is one hand of a table.
type Hand struct {
	Label string
	path  string // of the sheet
	text  string
}

// Numbers are what a table tells of a plan. Without a thumb those of gusset,
// bridge and thumb are 0.
type Numbers struct {
	CastOn, Hand                         int
	Increases, GussetRounds, Held        int
	Bridge, HandAfter, Above, Top, Thumb int
}

// Cell is a hand at a gauge: the numbers, or why there are none. Same tells
// that the numbers are those of the hand before it: two sizes that collide at
// this gauge.
type Cell struct {
	Numbers
	Why    string
	Same   bool
	Warned bool // the plan has something to look at
}

// Block is all hands at one gauge, in stitches and rounds over 10 cm.
type Block struct {
	Stitches, Rounds float64
	Cells            []Cell
}

// Grid is a whole table.
type Grid struct {
	Kind    mitt.Kind
	Hands   []Hand
	Blocks  []Block
	OneHand []string // the design's numbers that are fixed for one hand, in words
	Kept    bool     // these stand in every row; else they are left out
}

// Table plans a design for every hand at every gauge. Its own hand, swatches
// and what is knitted of it are set aside, and so are fixed numbers that are
// counts of one hand, unless the ask keeps them; kind, eases, lengths,
// multiples and the other fixed numbers stay. Rounds go with the stitches as in
// its swatches, or as the ask says. It fails with fault.Fields where the design
// itself can't be read, and with ctx, before the next gauge.
func Table(ctx context.Context, design sheet.Sheet, ask Ask) (Grid, error) {
	base := design.Clone()
	base.Unknit()
	ratio := ask.Rounds
	if ratio == 0 {
		ratio = ratioOf(base)
	}
	for path := range base {
		if strings.HasPrefix(path, "gauge.swatches") || strings.HasPrefix(path, "hand.") && path != hand.FieldReference {
			delete(base, path)
		}
	}
	g := Grid{Hands: ask.hands(), Kept: ask.Keep}
	for _, name := range base.OfOneHand() {
		g.OneHand = append(g.OneHand, strings.ReplaceAll(name, "_", " ")+" "+base.Given("pins."+name))
		if !ask.Keep {
			delete(base, "pins."+name)
		}
	}
	engine := mitt.New()
	for _, stitches := range ask.gauges() {
		if err := ctx.Err(); err != nil {
			return Grid{}, err
		}
		b := Block{Stitches: stitches, Rounds: stitches * ratio}
		for _, h := range g.Hands {
			s := base.Clone()
			s[h.path] = h.text
			req, err := s.At(stitches/100, b.Rounds/100)
			if err != nil {
				return Grid{}, err
			}
			g.Kind = req.Kind
			b.add(engine.Plan(req))
		}
		g.Blocks = append(g.Blocks, b)
	}
	return g, nil
}

// add adds the plan of the next hand, or what was in its way.
func (b *Block) add(p *mitt.Plan, err error) {
	if err != nil {
		b.Cells = append(b.Cells, Cell{Why: why(err)})
		return
	}
	c := Cell{Numbers: numbers(p), Warned: warned(p)}
	if n := len(b.Cells); n > 0 {
		c.Same = b.Cells[n-1].Numbers == c.Numbers && b.Cells[n-1].Why == ""
	}
	b.Cells = append(b.Cells, c)
}

// warned leaves out that the swatch is not known: a table has none.
func warned(p *mitt.Plan) bool {
	for _, w := range p.Warnings {
		if w.Code != "swatch" {
			return true
		}
	}
	return false
}

// why is the first thing in the way of a plan.
func why(err error) string {
	var fields fault.Fields
	if errors.As(err, &fields) && len(fields) > 0 {
		return fields[0].Message
	}
	return fault.Message(err)
}

func numbers(p *mitt.Plan) Numbers {
	n := Numbers{
		CastOn: p.Cuff.CastOn.N, Hand: p.Body.Stitches.N, HandAfter: p.Bridge.HandAfter, Above: p.Body.RoundsAbove,
	}
	if p.Thumbed() {
		n.Increases, n.GussetRounds, n.Held = p.Gusset.Increases, p.Gusset.Rounds.N, p.Thumb.Held
		n.Bridge, n.Thumb = p.Bridge.CastOn, p.Thumb.Stitches.N
	}
	if p.Top != nil {
		n.Top = p.Top.Rounds
	}
	return n
}

// ratioOf is rounds over stitches in the design's swatches; where they can't
// be read or have no rounds, the usual one.
func ratioOf(s sheet.Sheet) float64 {
	swatches := sheet.Sheet{sheet.PathUnit: string(s.Unit()), hand.FieldSize: "8"}
	for path, text := range s {
		if strings.HasPrefix(path, "gauge.") {
			swatches[path] = text
		}
	}
	req, err := swatches.Request()
	if err != nil {
		return gauge.RoundsPerStitch
	}
	return req.Gauge.Rounds / req.Gauge.Stitches
}

// The most hands and gauges of a table.
const (
	MaxHands  = 40
	MaxGauges = 24
)

// Ask says which hands and which gauges a table has.
type Ask struct {
	Unit           units.Unit // of girths, and of gauges: over 4 in for inches, else over 10 cm
	BySize         bool       // hands by glove size; else by circumference in Unit
	From, To, Step float64
	Gauge          [3]float64 // from, to, step, in stitches
	Rounds         float64    // over stitches; 0: as the design's
	Keep           bool       // numbers fixed for one hand stand for every hand
}

// Usual is the table of which nothing was asked: glove sizes 6 to 11, and
// gauges from 20 to 32 stitches.
func Usual(u units.Unit) Ask {
	return Ask{Unit: u, BySize: true, From: hand.SmallestListed, To: float64(hand.LargestListed), Step: 1, Gauge: [3]float64{20, 32, 2}}
}

func (a *Ask) hands() []Hand {
	var list []Hand
	for _, v := range steps(a.From, a.To, a.Step) {
		text := strconv.FormatFloat(v, 'f', -1, 64)
		if a.BySize {
			list = append(list, Hand{"size " + text, hand.FieldSize, text})
		} else {
			list = append(list, Hand{text + " " + string(a.Unit), hand.FieldCircumference, text})
		}
	}
	return list
}

// gauges are in stitches over 10 cm.
func (a *Ask) gauges() []float64 {
	list := steps(a.Gauge[0], a.Gauge[1], a.Gauge[2])
	if a.Unit == units.IN {
		for i := range list {
			list[i] /= 1.016
		}
	}
	return list
}

// steps are the values from … to, the last one when a step meets it.
func steps(from, to, step float64) []float64 {
	n := int(math.Floor((to-from)/step + 1e-9))
	list := make([]float64, 0, n+1)
	for i := range n + 1 {
		list = append(list, math.Round((from+float64(i)*step)*1e6)/1e6)
	}
	return list
}

// Words is what the table has, in a line.
func (a *Ask) Words() string {
	over := "10 cm"
	if a.Unit == units.IN {
		over = "4 in"
	}
	what := fmt.Sprintf("hands of %g to %g %s", a.From, a.To, a.Unit)
	if a.BySize {
		what = fmt.Sprintf("glove sizes %g to %g", a.From, a.To)
	}
	return fmt.Sprintf("%s, %g to %g stitches over %s", what, a.Gauge[0], a.Gauge[1], over)
}
