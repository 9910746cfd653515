package app

import (
	"cmp"
	"context"
	"errors"
	"maps"
	"net/url"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/sheet"
	"thenar/internal/store"
)

// What is set for a pattern beside its own texts.
const (
	SetPaper = "paper" // the size of its pages
	SetGrey  = "grey"  // "1": in greys, for a copier
	SetTerms = sheet.PathTerms
)

// PatternStamp tells what is saved of a pattern's texts from what was before.
func (d *Design) PatternStamp() string { return stamp(d.Doc.Pattern) }

// Written returns the text of a pattern at a key, as it was typed.
func (d *Design) Written(key string) string {
	if d.Wrote != nil {
		return d.Wrote[key]
	}
	return d.Doc.Pattern[key]
}

// pattern lays the fields of a form over what is saved of a pattern. A button adds its own,
// "set" with "KEY=TEXT": a text, or what is set beside them.
func (t Typed) pattern(doc project.Document) (project.Document, error) {
	for key, values := range t {
		if key != stampField && key != "set" {
			doc.Pattern = doc.Pattern.With(key, strings.ReplaceAll(values[0], "\r\n", "\n"))
		}
	}
	set, ok := t["set"]
	if !ok {
		return doc, nil
	}
	switch key, text, _ := strings.Cut(set[0], "="); key {
	case SetPaper, SetGrey:
		q, err := url.ParseQuery(doc.Print)
		if err != nil {
			q = url.Values{}
		}
		q.Set(key, text)
		doc.Print, err = keptLayout(q.Encode())
		return doc, err
	case SetTerms:
		doc.Sheet = doc.Sheet.Clone()
		doc.Sheet.Put(key, text)
	default:
		doc.Pattern = doc.Pattern.With(key, text)
	}
	return doc, nil
}

// errRewritten says that another window saved other texts first.
var errRewritten = fault.New(fault.Conflict, "Another window saved other texts in between.")

// SavePattern saves what was typed for the pattern of a mitt. A form that bears a stamp is
// refused if another window saved other texts since it was made; what comes back then has
// what was typed.
func (a *App) SavePattern(ctx context.Context, id int64, typed Typed) (Design, error) {
	var doc project.Document
	var wrote project.PatternTexts
	_, err := a.change(ctx, id, store.Wants{}, func(w *work, _ *project.Planner) (store.Change, error) {
		doc = w.doc
		next, err := typed.pattern(w.doc)
		if wrote = next.Pattern; err != nil {
			return store.Change{}, err
		}
		if stamped := typed[stampField]; len(stamped) > 0 && stamped[0] != stamp(doc.Pattern) {
			return store.Change{}, errRewritten
		}
		if err := next.Check(); err != nil {
			return store.Change{}, err
		}
		if next.Print == doc.Print && maps.Equal(next.Pattern, doc.Pattern) && maps.Equal(next.Sheet, doc.Sheet) {
			return store.Change{}, nil
		}
		doc = next
		return w.decision(next)
	})
	if doc.Sheet == nil {
		return Design{}, err // there is no such mitt
	}
	d := a.design(ctx, id, doc, doc.Design)
	if err != nil {
		d.Wrote = wrote
	}
	var fields fault.Fields
	if errors.As(err, &fields) {
		d.Faults = append(fields, d.Faults...)
	}
	return d, err
}

// kept fills in how the text is put, where nothing is asked, as the designer chose it.
func (ask PatternAsk) kept(by project.PatternTexts) PatternAsk {
	ask.Hand = cmp.Or(ask.Hand, by.Given(project.PatternHands))
	ask.ByRound = ask.ByRound || by.Given(project.PatternTold) == "rounds"
	return ask
}
