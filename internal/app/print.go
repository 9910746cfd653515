package app

import (
	"context"
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/paper"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/tryon"
)

// whereSure names the place where questions about a mitt's hand are answered.
const whereSure = "its print page"

// Handout returns the sheets of a mitt's handout. While there is a question
// about its hand, it asks that instead; while there is no plan, it says why.
func (a *App) Handout(ctx context.Context, id int64, l Layout) (Sheets, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return Sheets{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	return w.handout(pl, l)
}

// Pattern returns a mitt as OpenMitt does, with its handout, from one reading
// and one plan.
func (a *App) Pattern(ctx context.Context, id int64, l Layout) (Mitt, Sheets, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsPage()))
	if err != nil {
		return Mitt{}, Sheets{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	s, err := w.handout(pl, l)
	out, fault := w.stored(pl, w.doc.FromLeft)
	return w.withHabits(w.shown(w.doc, out, fault)), s, err
}

// handout lays out the handout of a mitt.
func (w *work) handout(pl *project.Planner, l Layout) (Sheets, error) {
	s, err := l.sheets(w.doc.Name, w.doc.Print)
	if err != nil {
		return Sheets{}, err
	}
	if asks := w.doc.Questions(); len(asks) > 0 {
		return s, s.ask(l, asks, whereSure)
	}
	sheet, err := w.printable(pl, &s)
	if fault.KindOf(err) == fault.Invalid && !l.Final {
		s.Trouble = append(s.Trouble, fault.Message(err))
		return s, nil
	}
	if err != nil {
		return Sheets{}, err
	}
	s.Motifs, s.Language = len(sheet.Out.Repeats) > 0, languageOf(sheet.Out.Terms)
	s.lay(paper.Handout(sheet, s.Options))
	return s, nil
}

// printable works a mitt out for printing.
func (w *work) printable(pl *project.Planner, s *Sheets) (paper.Sheet, error) {
	out, err := w.stored(pl, s.Options.FromLeft)
	if out == nil {
		return paper.Sheet{}, fault.New(fault.Invalid, "There is no plan to print yet. In the way: %s", fault.Message(err))
	}
	if err != nil {
		s.Lacks = fmt.Errorf("what a try changed: %w", err)
	}
	doc := w.doc
	doc.FromLeft = s.Options.FromLeft
	return paper.Sheet{Doc: doc, Out: out, Needle: doc.Sheet.Given("gauge.swatches[0].needle"), At: w.standsAt(pl)}, nil
}

// standsAt says where the knitter of a mitt on the needles is, at the round that
// comes next, as on the page where it is knitted: round 23 of the gusset. The hand
// is named if the paper is of the other one. It returns "" if nothing is on the
// needles.
func (w *work) standsAt(pl *project.Planner) string {
	next := w.next(pl)
	if next == nil {
		return ""
	}
	at := fmt.Sprintf("round %d of the %s", next.Round, next.Part.Words())
	switch next.Round {
	case tryon.Opening:
		at = "the beginning of the " + next.Part.Words()
	case tryon.Ending, tryon.Woven:
		at = "the end of the " + next.Part.Words()
	}
	if next.Side != w.doc.Side {
		at += fmt.Sprintf(", %s hand", next.Side)
	}
	return at
}

// KeepPrint saves how the handout of a mitt is laid out, and returns the
// revision.
func (a *App) KeepPrint(ctx context.Context, id int64, options string) (int64, error) {
	kept, err := keptLayout(options)
	if err != nil {
		return 0, err
	}
	done, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		doc := w.doc
		doc.Print = kept
		return w.decision(doc)
	})
	return done.Decided, err
}

// WallChart is a chart for the wall.
type WallChart struct {
	Sheets
	View string // the chart that is shown; empty if the mitt has no such chart
	Cell string // the width of a cell in mm
}

// WallChart returns a chart of a mitt for the wall: the one asked for, or the
// first that it has.
func (a *App) WallChart(ctx context.Context, id int64, l Layout) (WallChart, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return WallChart{}, err
	}
	s, err := l.sheets(w.doc.Name, "")
	if err != nil {
		return WallChart{}, err
	}
	if err := unsure(w.doc.Questions(), whereSure); err != nil {
		return WallChart{}, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	sheet, err := w.printable(pl, &s)
	if err != nil {
		return WallChart{}, err
	}
	c := WallChart{Sheets: s, Cell: l.Asked.Get("cell")}
	v := chart.View(l.Asked.Get("view"))
	if views := sheet.Out.Charts.Views(); v == "" && len(views) > 0 {
		v = views[0]
	}
	if strings.TrimSpace(c.Cell) == "" {
		c.Options.Cell = paper.WallCell(sheet, c.Options, v)
		c.Cell = strconv.FormatFloat(c.Options.Cell, 'f', -1, 64)
	}
	if c.lay(paper.Wall(sheet, c.Options, v)); c.Empty() {
		c.Trouble = []string{"This mitt has no such chart."}
	} else {
		c.View = string(v)
	}
	return c, nil
}

// SizeTable is a design worked out for several hands and gauges.
type SizeTable struct {
	Sheets
	Asked       grade.Request
	OfOneHand   bool  // the design has counts that suit one hand; the table can keep them
	TableFaults error // what of Asked can't be used
}

// SizeTable returns a mitt's design for the hands and gauges asked for.
func (a *App) SizeTable(ctx context.Context, id int64, l Layout) (SizeTable, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, store.Wants{}))
	if err != nil {
		return SizeTable{}, err
	}
	s, err := l.sheets(w.doc.Name, "")
	if err != nil {
		return SizeTable{}, err
	}
	t := SizeTable{Sheets: s, OfOneHand: len(w.doc.Sheet.OfOneHand()) > 0}
	if t.Asked, t.TableFaults = grade.Read(l.Asked.Get, w.doc.Sheet.Unit()); t.TableFaults != nil {
		t.Trouble = []string{"There is no such table; the reason stands at its field."}
		return t, nil
	}
	grid, err := grade.Table(ctx, w.doc.Sheet, t.Asked)
	if err != nil {
		return SizeTable{}, fault.New(fault.Invalid, "There is no table of sizes yet. In the way: %s", fault.Message(err))
	}
	t.lay(paper.SizeTable(t.Options, t.Name, t.Asked, grid))
	return t, nil
}
