package app

import (
	"cmp"
	"context"
	"fmt"
	"io"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/paper"
	"thenar/internal/pattern"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// MaxDesign is the most bytes in a graded design.
const MaxDesign = grade.Largest

// GradeDesign returns the sizes of a graded design, both as JSON.
func GradeDesign(ctx context.Context, raw []byte) ([]byte, error) {
	return appendSizes(ctx, nil, project.NewPlanner(), raw)
}

// appendSizes appends the sizes of a design to b.
func appendSizes(ctx context.Context, b []byte, pl *project.Planner, raw []byte) ([]byte, error) {
	g, err := gradeFile(ctx, raw)
	if err != nil {
		return nil, err
	}
	return pl.AppendSizes(b, g)
}

func gradeFile(ctx context.Context, raw []byte) (*grade.Graded, error) {
	d, err := grade.ParseDesign(raw)
	if err != nil {
		return nil, err
	}
	var faults fault.Fields
	if project.PatternTexts(d.Pattern).Check(&faults); len(faults) > 0 {
		return nil, faults
	}
	return grade.Grade(ctx, d)
}

// documentOf returns the document of a design that is no mitt's.
func documentOf(name string, g *grade.Graded) project.Document {
	return project.Document{Name: name, Side: project.Right, Pattern: g.Design.Pattern}
}

// wordings are the ways to write stitches by their choices.
var wordings = map[string]pattern.Wording{"short": pattern.Short, "full": pattern.Full, "both": pattern.Both}

// PatternAsk says how the text of a pattern is put.
type PatternAsk struct {
	Hand    string // "right" or "left", for that hand alone; else for both, apart where they differ
	ByRound bool   // a gusset is told round by round, not by its rhythm
	Each    bool   // the pages draw each size by itself, too

	Pictures string // the address of photographs on a page, up to their names; empty: they are held by the pages
	photos   []paper.PatternPhoto
}

// GradeWords writes the text of a graded design, for all sizes.
func GradeWords(ctx context.Context, raw []byte, ask PatternAsk, w io.Writer) error {
	g, err := gradeFile(ctx, raw)
	if err != nil {
		return err
	}
	t, _, err := textOf(project.NewPlanner(), g, documentOf("Pattern", g), nil, ask.kept(g.Design.Pattern))
	if err != nil {
		return err
	}
	return pattern.Write(w, t)
}

// GradePages lays out the text of a graded design as pages.
func GradePages(ctx context.Context, raw []byte, name string, ask PatternAsk, l Layout) (Sheets, error) {
	g, err := gradeFile(ctx, raw)
	if err != nil {
		return Sheets{}, err
	}
	ask = ask.kept(g.Design.Pattern)
	t, sizes, err := textOf(project.NewPlanner(), g, documentOf(name, g), nil, ask)
	if err != nil {
		return Sheets{}, err
	}
	return patternSheets(name, "", issue{}, g, sizes, t, documentOf(name, g).Pattern, ask, l)
}

// patternSheets lays out a pattern, with what the designer wrote for it.
func patternSheets(name, kept string, out issue, g *grade.Graded, sizes []pattern.Size, t *pattern.Text, by project.PatternTexts, ask PatternAsk, l Layout) (Sheets, error) {
	s, err := l.sheets(cmp.Or(by.Given(project.PatternTitle), name), kept)
	if err != nil {
		return Sheets{}, err
	}
	s.Language, s.Author = languageOf(words.TermsOf(g.Design.Sheet.Given(sheet.PathTerms))), by.Given(project.PatternDesigner)
	s.lay(paper.Pattern(patternSheet(s.Name, out, g, sizes, t, by, ask), s.Options))
	return s, nil
}

// patternSheet returns what a pattern has on its pages.
func patternSheet(name string, out issue, g *grade.Graded, sizes []pattern.Size, t *pattern.Text, by project.PatternTexts, ask PatternAsk) paper.PatternSheet {
	kind := g.Design.Sheet.Kind().Words()
	about := fmt.Sprintf("%s%s, %s", strings.ToUpper(kind[:1]), kind[1:], words.Plural(len(g.Sizes), "size"))
	return paper.PatternSheet{
		Name: name, About: cmp.Or(by.Given(project.PatternAbout), about), Designer: by.Given(project.PatternDesigner),
		Story: by.Given(project.PatternStory), Notes: by.Given(project.PatternNotes), Copyright: by.Given(project.PatternCopyright), Year: out.Year, Version: out.Version,
		Text: t, Sizes: sizes, Left: ask.Hand == "left", Photos: ask.photos, Each: ask.Each,
		Symbols: picture.Convention(g.Design.Sheet.Given("chart.symbols")),
	}
}

// inSizes works out the text of a mitt for all its sizes, and the mitts of these.
func (a *App) inSizes(ctx context.Context, id int64, ask PatternAsk) (d Design, t *pattern.Text, sizes []pattern.Size, err error) {
	wants := wantsChart()
	wants.Went = true
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	if err != nil {
		return Design{}, nil, nil, err
	}
	if d = a.design(ctx, id, w.doc, w.doc.Design); d.Graded == nil {
		return d, nil, nil, d.textless()
	}
	if d.out, err = a.issueOf(ctx, &w); err != nil {
		return d, nil, nil, err
	}
	pl, done := a.plannerOf(&w)
	defer done()
	t, sizes, err = textOf(pl, d.Graded, w.doc, w.Marks, ask.kept(w.doc.Pattern))
	return d, t, sizes, err
}

// PatternPages lays out a mitt in all its sizes as pages.
func (a *App) PatternPages(ctx context.Context, id int64, ask PatternAsk, l Layout) (Sheets, error) {
	d, t, sizes, err := a.inSizes(ctx, id, ask)
	if err != nil {
		return Sheets{}, err
	}
	ask = ask.kept(d.Doc.Pattern)
	if ask.photos, err = a.photographs(ctx, d.Doc.Pattern, ask.Pictures); err != nil {
		return Sheets{}, err
	}
	return patternSheets(d.Doc.Name, d.Doc.Print, d.out, d.Graded, sizes, t, d.Doc.Pattern, ask, l)
}

// The kinds of file that a pattern is written to beside its pages, by their endings.
const (
	PlainText = "txt"
	Markdown  = "md"
	HTML      = "html"
)

// PatternFile writes the text of a mitt for all its sizes to a file of a kind, and returns
// what the pattern is called.
func (a *App) PatternFile(ctx context.Context, id int64, ask PatternAsk, kind string, w io.Writer) (string, error) {
	d, t, sizes, err := a.inSizes(ctx, id, ask)
	if err != nil {
		return "", err
	}
	ask = ask.kept(d.Doc.Pattern)
	if kind == HTML { // the others have words alone
		if ask.photos, err = a.photographs(ctx, d.Doc.Pattern, ""); err != nil {
			return "", err
		}
	}
	s := patternSheet(cmp.Or(d.Doc.Pattern.Given(project.PatternTitle), d.Doc.Name), d.out, d.Graded, sizes, t, d.Doc.Pattern, ask)
	switch kind {
	case HTML:
		return s.Name, paper.PatternHTML(w, s, languageOf(words.TermsOf(d.Doc.Sheet.Given(sheet.PathTerms))))
	case Markdown:
		return s.Name, pattern.Markdown(w, s.Front(), t)
	}
	return s.Name, pattern.WriteWith(w, s.Front(), t)
}

// textOf returns the text of a graded design, with what is written by hand for it. The mitts
// of the sizes that come with it are those of one hand.
func textOf(pl *project.Planner, g *grade.Graded, doc project.Document, marks chart.Marks, ask PatternAsk) (*pattern.Text, []pattern.Size, error) {
	t, sizes, err := plainTextOf(pl, g, doc, marks, ask)
	if err != nil {
		return nil, nil, err
	}
	t, _ = t.ByHand(doc.Pattern)
	return t, sizes, nil
}

// plainTextOf returns the text of a graded design as the program writes it: of the document
// in all its sizes, with the marks of its chart.
func plainTextOf(pl *project.Planner, g *grade.Graded, doc project.Document, marks chart.Marks, ask PatternAsk) (*pattern.Text, []pattern.Size, error) {
	switch ask.Hand {
	case "right":
		return textOfHand(pl, g, doc, marks, project.Right, ask)
	case "left":
		return textOfHand(pl, g, doc, marks, project.Left, ask)
	}
	right, sizes, err := textOfHand(pl, g, doc, marks, project.Right, ask)
	if err != nil {
		return nil, nil, err
	}
	left, _, err := textOfHand(pl, g, doc, marks, project.Left, ask)
	if err != nil {
		return nil, nil, err
	}
	return pattern.Hands(right, left), sizes, nil
}

func textOfHand(pl *project.Planner, g *grade.Graded, doc project.Document, marks chart.Marks, side project.Side, ask PatternAsk) (*pattern.Text, []pattern.Size, error) {
	doc.Side = side
	sizes := make([]pattern.Size, len(g.Sizes))
	for i, s := range g.Sizes {
		if s.Err != nil {
			return nil, nil, fault.New(fault.Invalid, "Size %s can't be made, so there is no text for all sizes: %s", s.Name, fault.Message(s.Err))
		}
		own := doc
		own.Sheet = s.Sheet
		out, err := pl.Derive(own, marks)
		if err != nil {
			return nil, nil, fmt.Errorf("size %s: %w", s.Name, err)
		}
		sizes[i] = pattern.Size{Name: s.Name, Out: out}
	}
	t, err := pattern.Of(sizes, pattern.Style{Rhythm: !ask.ByRound, Wording: wordings[doc.Pattern.Given(project.PatternWording)]})
	return t, sizes, err
}
