// Package grade plans one design over a range of hands and gauges, for the size
// tables of a class or a pattern.
package grade

import (
	"context"
	"errors"
	"fmt"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// Hand is one hand of a table.
type Hand struct {
	Label string
	path  string // field of the sheet that gives the hand
	text  string // its text
}

// Numbers are the numbers of a plan that a table shows; those that the mitt doesn't have
// are 0. What is cast on includes the seam's stitches.
type Numbers struct {
	CastOn, Hand                         int
	Increases, GussetRounds, Held        int
	Bridge, HandAfter, Above, Top, Thumb int

	Fingers [fingers]FingerNumbers // of a glove, from the index on
	Between [fingers - 1]int       // the bridges from one finger to the next
	Lower   int                    // rounds from the little finger to the others
}

// FingerNumbers are those of one finger: what it takes of palm and back, its first round
// with the bridges, and its rounds.
type FingerNumbers struct{ Palm, Back, Stitches, Rounds int }

const fingers = int(hand.Little) + 1

// Cell is the plan of one hand at one gauge.
type Cell struct {
	Numbers
	Why    string // why there is no plan; else ""
	Same   bool   // the numbers equal those of the hand before: the two are one size at this gauge
	Warned bool   // the plan has warnings
}

// Block is all hands at one gauge.
type Block struct {
	Stitches, Rounds float64 // over 10 cm
	Cells            []Cell  // one for each hand
}

// Grid is a whole table.
type Grid struct {
	Names   mitt.Names // what its numbers are called, and which it has
	Hands   []Hand
	Blocks  []Block  // one for each gauge
	OneHand []string // the fixed numbers of the design that are counts of one hand, in words
	Kept    bool     // whether these are used for every hand
}

// Table plans a design for every hand at every gauge. Kind, eases, lengths and
// multiples are the design's. Its hand, its swatches and its knitted rounds are
// ignored, and so are fixed numbers that are counts of one hand, unless r keeps
// them. The ratio of rounds to stitches is r's, else that of the design's
// swatches. Table returns fault.Fields if the design can't be read, and stops
// before the next gauge when ctx is done.
func Table(ctx context.Context, design sheet.Sheet, r Request) (Grid, error) {
	base := design.Clone()
	base.ForgetProgress()
	ratio := r.Rounds
	if ratio == 0 {
		ratio = ratioOf(base)
	}
	for path := range base {
		if strings.HasPrefix(path, "gauge.swatches") || strings.HasPrefix(path, "hand.") && path != hand.FieldReference {
			delete(base, path)
		}
	}
	g := Grid{Names: base.Names(), Hands: r.hands(), Kept: r.Keep}
	for _, n := range base.OfOneHand() {
		g.OneHand = append(g.OneHand, base.Names().Words(n)+" "+base.Given(n.Path()))
		if !r.Keep {
			delete(base, n.Path())
		}
	}
	engine := mitt.New()
	for _, stitches := range r.gauges() {
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
			b.add(engine.Plan(req))
		}
		g.Blocks = append(g.Blocks, b)
	}
	return g, nil
}

// add appends the cell of the next hand, from its plan or the error of planning
// it.
func (b *Block) add(p *mitt.Plan, err error) {
	if err != nil {
		b.Cells = append(b.Cells, Cell{Why: why(err)})
		return
	}
	c := Cell{Numbers: numbers(p), Warned: isWarned(p)}
	if n := len(b.Cells); n > 0 {
		c.Same = b.Cells[n-1].Numbers == c.Numbers && b.Cells[n-1].Why == ""
	}
	b.Cells = append(b.Cells, c)
}

// isWarned reports whether a plan has warnings other than that about the swatch,
// which a table doesn't have.
func isWarned(p *mitt.Plan) bool {
	for _, w := range p.Warnings {
		if w.Code != "swatch" {
			return true
		}
	}
	return false
}

// why returns the first reason for which a plan can't be made.
func why(err error) string {
	var fields fault.Fields
	if errors.As(err, &fields) && len(fields) > 0 {
		return fields[0].Message
	}
	return fault.Message(err)
}

func numbers(p *mitt.Plan) Numbers {
	n := Numbers{
		CastOn: p.OnNeedles(), Hand: p.Body.Stitches.N, HandAfter: p.Bridge.HandAfter, Above: p.Body.RoundsAbove,
		Increases: p.Count(mitt.Increases), Bridge: p.Count(mitt.BridgeStitches), GussetRounds: p.Count(mitt.GussetRounds),
		Held: p.Count(mitt.Held), Thumb: p.Count(mitt.ThumbStitches), Top: p.Count(mitt.TopRounds),
		Lower: p.Count(mitt.LittleLowerRounds),
	}
	for i := range n.Fingers {
		of := func(what mitt.FingerNumber) int { return p.Count(mitt.OfFinger(what, hand.Finger(i))) }
		n.Fingers[i] = FingerNumbers{of(mitt.FingerPalm), of(mitt.FingerBack), of(mitt.FingerStitches), of(mitt.FingerRounds)}
	}
	for i := range n.Between {
		n.Between[i] = p.Count(mitt.OfBridge(i))
	}
	return n
}

// ratioOf returns rounds over stitches of the design's swatches, or
// gauge.RoundsPerStitch if they can't be read or have no rounds.
func ratioOf(s sheet.Sheet) float64 {
	g, err := s.Gauge()
	if err != nil {
		return gauge.RoundsPerStitch
	}
	return g.Rounds / g.Stitches
}

// FingersOf says in one line how a glove is divided, and how long its fingers are; "" of
// another mitt.
func (g *Grid) FingersOf(c Cell) string {
	var list []string
	for i, f := range c.Fingers {
		finger := hand.Finger(i)
		if !g.Names.Has(mitt.OfFinger(mitt.FingerStitches, finger)) {
			return ""
		}
		list = append(list, fmt.Sprintf("%s %d, %d rounds", mitt.PartOfFinger(finger).Words(), f.Stitches, f.Rounds))
	}
	list = append(list, fmt.Sprintf("between them %d, %d, %d", c.Between[0], c.Between[1], c.Between[2]))
	if c.Lower > 0 {
		list = append(list, fmt.Sprintf("upper hand %d rounds", c.Lower))
	}
	return strings.Join(list, " · ")
}
