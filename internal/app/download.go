package app

import (
	"context"
	"fmt"
	"io"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/exportfile"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// Written is a mitt worked out so that its words and charts can be written to
// files.
type Written struct {
	Name string
	doc  project.Document
	out  *project.Outputs
}

// Written works out a mitt of the shelf for its files.
func (a *App) Written(ctx context.Context, id int64) (Written, error) {
	w, err := decoded(a.store.ReadWork(ctx, id, wantsChart()))
	if err != nil {
		return Written{}, err
	}
	pl, done := a.Planner()
	defer done()
	out, err := w.outputs(pl, w.doc)
	return Written{w.doc.Name, w.doc, out}, err
}

// ReadMitt works out a mitt from a file: a measure sheet, or an exported mitt
// with the marks of its chart. If left is set, it is the left hand.
func ReadMitt(ctx context.Context, name string, raw []byte, left bool) (Written, error) {
	doc, marks := project.New(name), chart.Marks{}
	var err error
	if exportfile.Is(raw) {
		doc, marks, err = exportedMitt(ctx, raw)
	} else {
		doc.Sheet, err = sheet.Parse(raw)
	}
	if err != nil {
		return Written{}, err
	}
	if left {
		doc.Side = project.Left
	}
	out, err := project.NewPlanner().Derive(doc, marks)
	return Written{name, doc, out}, err
}

// exportedMitt returns the only mitt of an exported file, in its newest
// revision.
func exportedMitt(ctx context.Context, raw []byte) (project.Document, chart.Marks, error) {
	file, err := exportfile.Read(ctx, raw)
	if err != nil {
		return project.Document{}, nil, err
	}
	m, err := file.OnlyMitt()
	if err != nil {
		return project.Document{}, nil, err
	}
	document, marks := m.Newest()
	doc, err := project.Decode(document)
	return doc, marks, err
}

// Words writes all the instructions as plain text, after what they are for.
func (m Written) Words(w io.Writer) error {
	told := m.out.Listed()
	return words.Write(w, append(m.head(told), told...))
}

// head says of what and for which hand instructions are, what is needed for it, and what
// their abbreviations and signs mean.
func (m Written) head(told []words.Passage) []words.Passage {
	side := string(m.doc.Side)
	about := words.Passage{Title: fmt.Sprintf("%s%s hand: %s", strings.ToUpper(side[:1]), side[1:], m.out.Plan.Kind.Words())}
	if m.doc.FromLeft {
		about.Title += ", knitted from left to right"
	}
	for _, need := range m.out.Materials("", "") {
		about.Steps = append(about.Steps, words.Step{Text: need.Name + ": " + need.Text})
	}
	var texts []string
	for _, passage := range told {
		for _, s := range passage.Steps {
			texts = append(texts, s.Text)
		}
	}
	signs := words.Passage{Title: "Abbreviations and signs"}
	for _, sign := range m.out.Terms.Signs(texts, nil, m.doc.FromLeft) {
		signs.Steps = append(signs.Steps, words.Step{Text: sign.Sign + ": " + sign.Line})
	}
	return []words.Passage{about, signs}
}

// WordsOf writes the instructions for the rounds from–to of a section. found is
// false if the mitt has none of them.
func (m Written) WordsOf(w io.Writer, section string, from, to int) (found bool, err error) {
	some := words.Select(m.out.Words, stitch.Part(section), from, to)
	if len(some) == 0 {
		return false, nil
	}
	return true, words.Write(w, some)
}
