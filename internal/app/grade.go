package app

import (
	"context"

	"thenar/internal/grade"
	"thenar/internal/project"
)

// MaxDesign is the most bytes in a graded design.
const MaxDesign = grade.Largest

// GradeDesign returns the sizes of a graded design, both as JSON.
func GradeDesign(ctx context.Context, raw []byte) ([]byte, error) {
	d, err := grade.ParseDesign(raw)
	if err != nil {
		return nil, err
	}
	g, err := grade.Grade(ctx, d)
	if err != nil {
		return nil, err
	}
	return project.NewPlanner().ReportSizes(g)
}
