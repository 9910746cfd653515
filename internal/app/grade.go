package app

import (
	"context"
	"fmt"
	"io"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/pattern"
	"thenar/internal/project"
)

// MaxDesign is the most bytes in a graded design.
const MaxDesign = grade.Largest

// GradeDesign returns the sizes of a graded design, both as JSON.
func GradeDesign(ctx context.Context, raw []byte) ([]byte, error) {
	g, err := gradeFile(ctx, raw)
	if err != nil {
		return nil, err
	}
	return project.NewPlanner().ReportSizes(g)
}

func gradeFile(ctx context.Context, raw []byte) (*grade.Graded, error) {
	d, err := grade.ParseDesign(raw)
	if err != nil {
		return nil, err
	}
	return grade.Grade(ctx, d)
}

// PatternAsk says how the text of a pattern is put.
type PatternAsk struct {
	Left    bool // for the left hand
	ByRound bool // a gusset is told round by round, not by its rhythm
}

// GradeWords writes the text of a graded design, for all sizes.
func GradeWords(ctx context.Context, raw []byte, ask PatternAsk, w io.Writer) error {
	g, err := gradeFile(ctx, raw)
	if err != nil {
		return err
	}
	t, err := textOf(project.NewPlanner(), g, project.Document{Name: "Pattern", Side: project.Right}, nil, ask)
	if err != nil {
		return err
	}
	return pattern.Write(w, t)
}

// textOf returns the text of a graded design: of the document in all its sizes, with
// the marks of its chart.
func textOf(pl *project.Planner, g *grade.Graded, doc project.Document, marks chart.Marks, ask PatternAsk) (*pattern.Text, error) {
	if ask.Left {
		doc.Side = project.Left
	}
	sizes := make([]pattern.Size, len(g.Sizes))
	for i, s := range g.Sizes {
		if s.Err != nil {
			return nil, fault.New(fault.Invalid, "Size %s can't be made, so there is no text for all sizes: %s", s.Name, fault.Message(s.Err))
		}
		own := doc
		own.Sheet = s.Sheet
		out, err := pl.Derive(own, marks)
		if err != nil {
			return nil, fmt.Errorf("size %s: %w", s.Name, err)
		}
		sizes[i] = pattern.Size{Name: s.Name, Out: out}
	}
	return pattern.Of(sizes, pattern.Style{Rhythm: !ask.ByRound})
}

// PatternWords writes the text of a mitt for all its sizes, and returns the mitt's name.
func (a *App) PatternWords(ctx context.Context, id int64, ask PatternAsk, w io.Writer) (string, error) {
	work, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return "", err
	}
	d := a.design(ctx, id, work.doc, work.doc.Design)
	if d.Graded == nil {
		return "", fault.New(fault.Invalid, "There are no sizes to write for yet. %s", d.inTheWay())
	}
	pl, done := a.plannerOf(&work)
	defer done()
	t, err := textOf(pl, d.Graded, work.doc, work.Marks, ask)
	if err != nil {
		return "", err
	}
	return work.doc.Name, pattern.Write(w, t)
}
