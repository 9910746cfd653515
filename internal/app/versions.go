package app

import (
	"bytes"
	"context"
	"encoding/json"
	"fmt"
	"strings"
	"time"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/pattern"
	"thenar/internal/plain"
	"thenar/internal/project"
	"thenar/internal/store"
	"thenar/internal/words"
)

// Version is a pattern that went out.
type Version struct {
	Number   int64
	Name     string // may be empty
	At       time.Time
	Revision int64 // of the mitt, as it was then
}

// Called is what a version is called: "version 2 (sent to testers)".
func (v Version) Called() string {
	if v.Name == "" {
		return fmt.Sprintf("version %d", v.Number)
	}
	return fmt.Sprintf("version %d (%s)", v.Number, v.Name)
}

// Versions are the patterns of a mitt that went out, the oldest first.
type Versions struct {
	ID     int64
	Doc    project.Document
	List   []Version
	Stamp  string // tells what would go out now from what would before
	Why    string // why nothing can go out now; "" if it can
	record project.Printed
}

// Since is what changed of a pattern since a version went out.
type Since struct {
	ID      int64
	Doc     project.Document
	Version Version
	Changed project.ChangedPrint // by the person
	Program project.ChangedPrint // by the program, which words or works it out otherwise now
}

// OpenVersions returns the versions of a mitt.
func (a *App) OpenVersions(ctx context.Context, id int64) (Versions, error) {
	v, _, err := a.versions(ctx, id)
	return v, err
}

// versions returns the versions of a mitt, beside the mitt as it was read.
func (a *App) versions(ctx context.Context, id int64) (Versions, work, error) {
	wants := wantsChart()
	wants.Went = true
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	if err != nil {
		return Versions{}, w, err
	}
	v := Versions{ID: id, Doc: w.doc}
	for _, one := range w.Went {
		v.List = append(v.List, Version{one.Number, one.Name, one.At, one.Revision})
	}
	if v.record, err = a.printed(ctx, &w); err != nil {
		if fault.KindOf(err) != fault.Invalid {
			return v, w, err
		}
		v.Why = fault.Message(err)
	}
	v.Stamp = stamp(v.record)
	return v, w, nil
}

// printed returns what the pattern of a mitt prints.
func (a *App) printed(ctx context.Context, w *work) (p project.Printed, err error) {
	d := a.design(ctx, w.ID, w.doc, w.doc.Design)
	if d.Graded == nil {
		return p, d.textless()
	}
	pl, done := a.plannerOf(w)
	defer done()
	t, _, err := textOf(pl, d.Graded, w.doc, w.Marks, PatternAsk{}.kept(w.doc.Pattern))
	if err != nil {
		return p, err
	}
	return printedOf(d, t), nil
}

// printedOf returns what a pattern prints: its numbers, size by size, and its lines.
func printedOf(d Design, t *pattern.Text) project.Printed {
	p := project.Printed{Sizes: t.Sizes}
	names := d.Graded.Design.Sheet.Names()
	for _, n := range mitt.Ladder() {
		if n.List() || !names.Has(n) {
			continue
		}
		values, some := make([]string, len(d.Graded.Sizes)), false
		for i, s := range d.Graded.Sizes {
			if s.Plan != nil {
				values[i] = s.Plan.Number(n)
				some = some || values[i] != ""
			}
		}
		if some {
			p.Numbers = append(p.Numbers, project.PrintedNumber{Key: n.Path(), Name: names.Label(n), Values: values})
		}
	}
	for _, r := range t.Head.Sizes {
		p.Numbers = append(p.Numbers, project.PrintedNumber{Key: "head " + r.Name, Name: r.Name, Values: r.Values})
	}
	for _, l := range [][2]string{
		{project.PatternTitle, "Title"}, {project.PatternAbout, "Title"}, {project.PatternStory, "Title"}, {project.PatternNotes, "Notes"},
	} {
		if text := d.Doc.Pattern.Given(l[0]); text != "" {
			p.Lines = append(p.Lines, project.PrintedLine{Key: l[0], Passage: l[1], Text: text})
		}
	}
	for _, s := range t.Head.Signs {
		p.Lines = append(p.Lines, project.PrintedLine{Key: "sign " + s.Sign, Passage: "Abbreviations", Text: s.Sign + ": " + s.Line})
	}
	for _, passage := range append([]pattern.Passage{t.Head.Needs}, t.Passages...) {
		for _, l := range passage.Lines {
			line := project.PrintedLine{Key: passage.Hand + " " + l.Key, Passage: t.Titled(passage), Text: t.Told(passage, l)}
			if l.After {
				line.Key += " after"
			}
			if l.Table != nil {
				line.Text = strings.Join(t.Lines(l.Table), "\n")
			}
			p.Lines = append(p.Lines, line)
		}
	}
	return p
}

// issue tells a pattern's pages when it was changed last, and which version they are.
type issue struct {
	Year    int    // for the copyright line; 0: not known
	Version string // a sentence; empty: none went out yet
}

// issueOf returns which issue of its pattern a mitt is.
func (a *App) issueOf(ctx context.Context, w *work) (issue, error) {
	out := issue{Year: w.Changed.Year()}
	if len(w.Went) == 0 {
		return out, nil
	}
	last := w.Went[len(w.Went)-1]
	called := Version{last.Number, last.Name, last.At, last.Revision}.Called()
	out.Version = fmt.Sprintf("%s%s, %s", strings.ToUpper(called[:1]), called[1:], last.At.Local().Format("2 January 2006"))
	if last.Revision == w.Revision {
		return out, nil
	}
	record, err := a.printed(ctx, w)
	if err != nil {
		return out, err
	}
	now, err := json.Marshal(record)
	if err != nil {
		return out, err
	}
	if !bytes.Equal(now, last.Record) {
		out.Version = "Changed since " + called + " of " + last.At.Local().Format("2 January 2006")
	}
	return out, nil
}

// SendVersion keeps the pattern of a mitt as it is now as a version that went out, and returns
// its number. If it was changed since the page was made, nothing is kept.
func (a *App) SendVersion(ctx context.Context, id int64, name, stamped string) (int64, error) {
	name = strings.TrimSpace(name)
	if why := plain.Line(name, maxMoment); why != "" {
		return 0, fault.New(fault.Invalid, "name: %s", why)
	}
	v, w, err := a.versions(ctx, id)
	switch {
	case err != nil:
		return 0, err
	case v.Why != "":
		return 0, fault.New(fault.Invalid, "%s", v.Why)
	case stamped != v.Stamp:
		return 0, fault.New(fault.Conflict, "The pattern was changed since this page was made. Nothing is kept yet; look at it again.")
	}
	raw, err := json.Marshal(v.record)
	if err != nil {
		return 0, err
	}
	return a.store.AddVersion(ctx, id, w.Revision, name, raw)
}

// SinceVersion tells what changed of a pattern since a version went out: as the present
// program works both out from their documents. Where it words the earlier one otherwise than
// was printed, that is told apart.
func (a *App) SinceVersion(ctx context.Context, id, number int64) (Since, error) {
	var went *store.Version
	wants := wantsChart()
	wants.Went = true
	pick := func(w store.Work) (int64, bool) {
		for i := range w.Went {
			if w.Went[i].Number == number {
				went = &w.Went[i]
				return went.Revision, true
			}
		}
		return 0, false
	}
	wants.Earlier = append([]store.Pick{pick}, wants.Earlier...)
	w, err := decoded(a.store.ReadWork(ctx, id, wants))
	if err != nil {
		return Since{}, err
	}
	if went == nil {
		return Since{}, fault.New(fault.NotFound, "This pattern has no version %d.", number)
	}
	s := Since{ID: id, Doc: w.doc, Version: Version{went.Number, went.Name, went.At, went.Revision}}
	var kept project.Printed
	if err := json.Unmarshal(went.Record, &kept); err != nil {
		return s, fmt.Errorf("version %d of mitt %d: %w", number, id, err)
	}
	now, err := a.printed(ctx, &w)
	if err != nil {
		return s, err
	}
	s.Changed = now.Since(kept)
	then := w
	if went.Revision != w.Revision {
		if err := then.goBack(went.Revision); err != nil {
			return s, err
		}
	}
	if again, err := a.printed(ctx, &then); err == nil { // else there is only what was printed
		s.Changed, s.Program = now.Since(again).PrintedAs(kept), again.Since(kept)
	}
	return s, nil
}

// Errata returns what changed since a version as plain text.
func (s Since) Errata() string {
	var b strings.Builder
	name := s.Doc.Name
	if title := s.Doc.Pattern.Given(project.PatternTitle); title != "" {
		name = title
	}
	fmt.Fprintf(&b, "%s: what changed since %s, of %s\n", name, s.Version.Called(), s.Version.At.Local().Format("2 January 2006"))
	if s.Changed.None() {
		b.WriteString("\nNothing changed.\n")
	}
	for _, list := range []struct {
		sizes []string
		say   string
	}{{s.Changed.New, "New: "}, {s.Changed.Gone, "No longer there: "}} {
		if len(list.sizes) > 0 {
			fmt.Fprintf(&b, "\n%s%s %s.\n", list.say, plural("size", len(list.sizes)), words.Listed(list.sizes))
		}
	}
	if len(s.Changed.Numbers) > 0 {
		b.WriteString("\nNumbers\n")
	}
	for _, n := range s.Changed.Numbers {
		fmt.Fprintf(&b, "%s, size %s: %s → %s\n", n.Name, n.Size, orNone(n.Before), orNone(n.After))
	}
	passage := ""
	for _, l := range s.Changed.Lines {
		if l.Passage != passage {
			passage = l.Passage
			fmt.Fprintf(&b, "\n%s\n", passage)
		}
		if l.Before != "" {
			fmt.Fprintf(&b, "  instead of: %s\n", indented(l.Before))
		} else {
			b.WriteString("  added:\n")
		}
		if l.After != "" {
			fmt.Fprintf(&b, "  read: %s\n", indented(l.After))
		} else {
			b.WriteString("  read nothing: it is left out\n")
		}
	}
	return b.String()
}

// indented returns a text of several lines below the first of them.
func indented(text string) string { return strings.ReplaceAll(text, "\n", "\n    ") }

func orNone(value string) string {
	if value == "" {
		return "none"
	}
	return value
}

func plural(noun string, n int) string {
	if n == 1 {
		return noun
	}
	return noun + "s"
}
