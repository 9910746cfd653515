package app

import (
	"context"
	"crypto/sha256"

	"thenar/internal/roster"
)

// maxCosts is the number of classes whose costs are cached.
const maxCosts = 64

// Cost is what it takes to print a class set.
type Cost struct {
	Pages     int // empty ones, which keep students apart, included
	Sheets    int // of paper
	BothSides bool
}

// costKey is what a cost was worked out from: the stored class.
type costKey [sha256.Size]byte

// Countable reports whether the sheets of a class are counted: laying out a
// student takes some 5 ms, so a class that does not fit a PDF is not.
func Countable(c roster.Class) bool {
	return len(c.Students) > 0 && len(c.Students) <= maxInPDF
}

// CountSheets lays out the class set of a class as it is kept, counts its pages,
// and has the page of the class show what it costs. It returns false for a class
// that is not Countable.
func (a *App) CountSheets(ctx context.Context, class int64) (Cost, bool, error) {
	c, err := a.store.LoadClass(ctx, class)
	if err != nil {
		return Cost{}, false, err
	}
	key := costKey(sha256.Sum256(c.Document))
	if cost, ok := a.costs.get(class, key); ok {
		return cost, true, nil
	}
	doc, err := roster.Decode(c.Document)
	if err != nil || !Countable(doc) {
		return Cost{}, false, err
	}
	s := ClassSheets{Class: doc, Part: doc.Whole()}
	if s.Sheets, err = (Layout{}).sheets(doc.Name, doc.Print); err != nil {
		return Cost{}, false, err
	}
	if err := a.layPart(ctx, &s); err != nil {
		return Cost{}, false, err
	}
	cost := s.cost()
	if err := ctx.Err(); err != nil {
		return Cost{}, false, err // no page follows after ctx ends
	}
	a.costs.put(class, key, cost)
	return cost, true, nil
}

// cost lays the sheets out and counts them.
func (s Sheets) cost() (c Cost) {
	for range s.Pages() {
		c.Pages++
	}
	c.Sheets, c.BothSides = s.Options.Sheets(c.Pages), s.Options.Double
	return c
}
