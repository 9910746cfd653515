package grade

import (
	"context"
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// mostPaid is what no size should pay for the common text, in mm, if the designer
// names no price (common practice, no source: a stitch of a fine yarn).
const mostPaid = 4.0

// mostGussetRounds is the most rounds of a gusset of which all choices are scheduled, which
// takes the square of the rounds for each. The finest knitting has no hundred.
const mostGussetRounds = 200

// Graded is a design with all its sizes planned.
type Graded struct {
	Design  *Design // its sizes in order of the hands
	Sizes   []Planned
	Notches []Notch // every common text that is the best at some price
	At      int     // which of them was taken
	Barred  bool    // no gusset has fewer stitches than the size before, unless the hand has
	Splits  []Split // the text's numbers, size by size
}

// Planned is one size of a graded design.
type Planned struct {
	Name  string
	Sheet sheet.Sheet // its measure sheet, with what the common text fixes
	Plan  *mitt.Plan  // nil if it can't be made
	Err   error       // why not
	Own   []int       // the text's numbers as they would be by itself; nil if it has none
	Text  []int       // as they are: base, bridge, stitches picked up, decreases, rhythm
	Pays  float64     // for the common text, in mm: Near less Best
	Best  float64     // the root of the cost of its own best, in mm
	Near  float64     // of what it takes
	Same  bool        // every number is that of the size before: one of the two is spare
	Falls []Fall
	Worst mitt.Place // where the fabric is furthest from the wish
	Off   float64    // how far, in mm
}

// Grade plans a design. The hand's count and the thumb's are each size's own. No
// number falls from one size to the next, unless the measure behind it does: such a
// number is held at the size before, and its cost stands with the size. It stops
// before the next size when ctx is done.
func Grade(ctx context.Context, d *Design) (*Graded, error) {
	own := *d
	own.Sizes = slices.Clone(d.Sizes)
	if err := own.check(); err != nil {
		return nil, err
	}
	sheets, err := own.Sheets()
	if err != nil {
		return nil, err
	}
	g := &Graded{Design: &own}
	own.order(sheets)
	engine := mitt.New()
	choices, mayFall := make([][]mitt.Choice, len(sheets)), make([]bool, len(sheets))
	var before *mitt.Plan
	for i, s := range sheets {
		if err := ctx.Err(); err != nil {
			return nil, err
		}
		size := Planned{Name: own.Sizes[i].Name, Sheet: s}
		if size.plan(engine); size.Err != nil {
			size.Err = d.faultsOf(own.Sizes[i], size.Err)
		} else {
			own.keepMultiples(engine, &size)
			size.hold(engine, before)
			choices[i], err = size.choices(engine)
			if err != nil {
				return nil, d.faultsOf(own.Sizes[i], err)
			}
			mayFall[i] = before == nil || palm(size.Plan) < palm(before)
			before = size.Plan
		}
		g.Sizes = append(g.Sizes, size)
	}
	g.Notches, g.Barred = Notches(choices, mayFall)
	g.take(engine, choices)
	return g, nil
}

// order puts the sizes, and their sheets, in order of hand girth.
func (d *Design) order(sheets []sheet.Sheet) {
	girth := make([]float64, len(sheets))
	for i, s := range sheets {
		if h, err := s.Hand(); err == nil {
			h, _ = h.Fill()
			girth[i] = h.Circumference.MM()
		}
	}
	sort.Stable(byGirth{girth, d.Sizes, sheets})
}

type byGirth struct {
	girth  []float64
	sizes  []Size
	sheets []sheet.Sheet
}

func (b byGirth) Len() int           { return len(b.girth) }
func (b byGirth) Less(i, j int) bool { return b.girth[i] < b.girth[j] }
func (b byGirth) Swap(i, j int) {
	b.girth[i], b.girth[j] = b.girth[j], b.girth[i]
	b.sizes[i], b.sizes[j] = b.sizes[j], b.sizes[i]
	b.sheets[i], b.sheets[j] = b.sheets[j], b.sheets[i]
}

// palm is the girth that a gusset grows to, in stitches.
func palm(p *mitt.Plan) float64 {
	return p.Gauge.Stitches * p.Hand.Palm.MM() * (1 + p.Ease.Palm)
}

// plan plans the size from its sheet.
func (s *Planned) plan(engine *mitt.Planner) {
	req, err := s.Sheet.Request()
	if err == nil {
		s.Plan, err = engine.Plan(req)
	}
	s.Err = err
}

// with plans the size with a number fixed. If it can't be, nothing changes.
func (s *Planned) with(engine *mitt.Planner, n mitt.Number, value int) bool {
	trial := Planned{Sheet: s.Sheet.Clone()}
	trial.Sheet[n.Path()] = strconv.Itoa(value)
	if trial.plan(engine); trial.Err != nil {
		return false
	}
	s.Sheet, s.Plan = trial.Sheet, trial.Plan
	return true
}

// keepMultiples fixes numbers of rounds to the nearest of their multiples; the hand's is
// in its sheet.
func (d *Design) keepMultiples(engine *mitt.Planner, s *Planned) {
	for _, n := range mitt.InSheet() {
		m, ok := d.Rules.Multiples[n]
		if now := s.Plan.Count(n); ok && n != mitt.HandStitches && now > 0 && s.Sheet.Given(n.Path()) == "" && m.nearest(now) != now {
			s.with(engine, n, m.nearest(now))
		}
	}
}

// choices lists the ways to make the size; none if its text is its own: without a
// gusset, or with increases whose rounds are fixed one by one.
func (s *Planned) choices(engine *mitt.Planner) ([]mitt.Choice, error) {
	if n := s.Plan.Gusset.Rounds.N; n > mostGussetRounds {
		return nil, fault.Fields{{Path: hand.FieldGussetLength, Message: fmt.Sprintf("asks for %d rounds of gusset; one text for several sizes takes at most %d", n, mostGussetRounds)}}
	}
	req, err := s.Sheet.Request()
	if err != nil {
		return nil, err
	}
	return engine.Choices(req)
}

// take takes the notch of the designer's price, or by default that with the fewest
// changes at which no size pays more than mostPaid, and plans each size with it.
func (g *Graded) take(engine *mitt.Planner, choices [][]mitt.Choice) {
	for i, n := range g.Notches {
		if p := g.Design.Rules.Price; p != nil {
			if i > 0 && n.from.atMost(int64(math.Round(*p*nano))) {
				g.At = i
			}
		} else if slices.Max(append([]float64{0}, n.Pays...)) <= mostPaid {
			g.At = i
		}
	}
	notch := &g.Notches[g.At]
	for i := range g.Sizes {
		s := &g.Sizes[i]
		if v := notch.Choice[i]; v >= 0 {
			s.Pays, s.Text = notch.Pays[i], text(&choices[i][v])
			best := cheapest(choices[i])
			s.Own, s.Best, s.Near = text(best), root(best.Cost), root(choices[i][v].Cost)
			s.keep(engine, &choices[i][v])
		}
	}
	g.mark()
}

// cheapest returns the size's own best choice, the first of equals.
func cheapest(list []mitt.Choice) *mitt.Choice {
	best := &list[0]
	for i := range list {
		if list[i].Cost < best.Cost {
			best = &list[i]
		}
	}
	return best
}

// text lists the numbers of a choice that a reader meets, in the order of InText.
func text(x *mitt.Choice) []int {
	return []int{x.Base, x.Bridge, x.PickedUp, x.Decreases, x.Every}
}

// InText are the numbers of the common text, as a sheet fixes them.
var InText = [textNumbers]mitt.Number{mitt.GussetBase, mitt.BridgeStitches, mitt.PickedUp, mitt.ThumbDecreases, mitt.Rhythm}

// keep plans the size with a choice. What it would be by itself is left free.
func (s *Planned) keep(engine *mitt.Planner, x *mitt.Choice) {
	now := mitt.Choice{
		Base: s.Plan.Count(mitt.GussetBase), Bridge: s.Plan.Count(mitt.BridgeStitches), PickedUp: s.Plan.Count(mitt.PickedUp),
		Decreases: s.Plan.Count(mitt.ThumbDecreases), Every: x.Every,
	}
	if slices.Equal(text(&now), text(x)) && slices.Equal(s.Plan.Gusset.IncreaseRounds, x.Rounds) {
		return
	}
	trial := Planned{Sheet: s.Sheet.Clone()}
	for i, v := range text(x) {
		if s.Plan.Names().Has(InText[i]) && (InText[i] != mitt.Rhythm || v > 0) {
			trial.Sheet[InText[i].Path()] = strconv.Itoa(v)
		}
	}
	if trial.plan(engine); trial.Err == nil {
		s.Sheet, s.Plan = trial.Sheet, trial.Plan
	}
}
