package paper

import (
	"context"
	"iter"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/mitt"
	"thenar/internal/project"
	"thenar/internal/roster"
)

// Class lays out a part of a class: the teacher's summary, then every student's
// handout in the order of the list. Each begins on a new sheet, that is on an odd
// page in double-sided printing. A student without a plan gets a measuring sheet
// that says what is missing. A student with open questions gets nothing, and the
// summary says so.
//
// Lines are those of the part's review; complete adds the outputs of one of them. It
// is called as pages are asked for, for maxAhead students at a time, so that only
// their outputs are in memory. No page follows after ctx ends.
func Class(ctx context.Context, c roster.Class, part roster.Part, lines []roster.Line, complete func(roster.Line) roster.Line, o Options) iter.Seq[*draw.Scene] {
	return func(yield func(*draw.Scene) bool) {
		n := 0
		yieldAll := func(more []*draw.Scene) bool {
			if len(more) > 0 && o.Double && n%2 == 1 {
				more = append([]*draw.Scene{{Width: o.page().Width, Height: o.page().Height, Label: "an empty page"}}, more...)
			}
			for i, p := range more {
				more[i] = nil // so that it can be freed once it is printed
				if n++; ctx.Err() != nil || !yield(p) {
					return false
				}
			}
			return true
		}
		if !yieldAll(summary(c, part, lines, o)) {
			return
		}
		handout := func(l roster.Line) []*draw.Scene {
			l = complete(l)
			return Student(c, &l, o)
		}
		for pages := range ahead(ctx, lines, handout) {
			if !yieldAll(pages) {
				return
			}
		}
	}
}

// Student lays out one student's handout; nil while there are open questions about
// their hand.
func Student(c roster.Class, l *roster.Line, o Options) []*draw.Scene {
	if len(l.Asks) > 0 {
		return nil
	}
	o.FromLeft = l.Student.FromLeft
	if l.Out == nil {
		return measuringSheet(c, l, o)
	}
	about := c.About()
	for _, note := range []string{c.Note, l.Student.Note} {
		if note != "" {
			about += " · " + note
		}
	}
	return Handout(Sheet{Doc: l.Doc, Out: l.Out, Name: l.Student.Name, About: about, Yarn: c.Yarn, Needle: c.Needle, Doubts: l.Doubts}, o)
}

// measuringSheet lays out the sheet of a student without a plan: what is missing,
// and lines to write measurements on.
func measuringSheet(c roster.Class, l *roster.Line, o Options) []*draw.Scene {
	f := newFlow(o, l.Student.Name)
	f.page().Heading(1, f.y, l.Student.Name)
	f.text(margin, f.width(), l.Student.Name, draw.TextStyle{Size: f.title, Face: draw.Serif})
	f.say(c.About(), f.body)
	for _, text := range l.Missing {
		f.text(margin, f.width(), text, draw.TextStyle{Size: f.body, Face: draw.Semibold})
	}
	f.y += 2
	f.measuring(l.Doc.Side == project.Left)
	if l.Doc.Sheet.Kind().Fingered() {
		f.measuringFingers(l.Doc.Side == project.Left)
	}
	f.foot()
	return finish(f.pages, o.Grey)
}

// fixedText lists the numbers fixed for all.
func fixedText(c roster.Class) string {
	var list []string
	for _, n := range mitt.ForClass() {
		if text := c.Fixed[n.Key()]; text != "" {
			list = append(list, n.Words()+" "+text)
		}
	}
	if len(list) == 0 {
		return ""
	}
	return "; for all: " + strings.Join(list, ", ")
}
