package paper

import (
	"cmp"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/roster"
	"thenar/internal/stitch"
	"thenar/internal/testenv"
	"thenar/internal/words"
)

// compact returns a text without its spaces and with its fractions in letters, so that it
// is the same however it is broken into lines, and in large print.
func compact(text string) string {
	return strings.Join(strings.Fields(strings.ReplaceAll(spelt(text), draw.Hard, "")), "")
}

// drawnLetters returns the letters of a drawing, in the order in which it is drawn.
func drawnLetters(scenes ...*draw.Scene) string {
	var b strings.Builder
	for _, s := range scenes {
		s.Each(draw.Place{Scale: 1}, func(i *draw.Item, _ draw.Place) { b.WriteString(compact(i.Text)) })
	}
	return b.String()
}

// onPages returns the letters of pages in the order in which they are drawn, without
// their feet and the headings that are repeated.
func onPages(pages []*draw.Scene) string {
	var b strings.Builder
	for _, p := range pages {
		foot := p.Height - margin - footRoom
		p.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
			if _, y := at.At(i.X, i.Y); y < foot+footRoom/2 && !strings.HasSuffix(i.Text, ", goes on") {
				b.WriteString(compact(i.Text))
			}
		})
	}
	return b.String()
}

// source returns everything that a handout of the usual pieces has to say, as it comes
// from outside this package: each text once, with the label or the name that stands
// before it. Rounds that read alike are merged, and the counts after them stand in
// columns, where they change. What does not add up is not
// among it, since it is told wherever those rounds are: by each chart, and by the words.
func source(s *Sheet) []string {
	p := s.Out.Plan
	list := append([]string{s.headline(), s.About, caution}, s.Doubts...)
	for _, m := range s.Out.Materials(s.Yarn, s.Needle) {
		list = append(list, m.Name+m.Text)
	}
	list = append(list, numbersSaid(s)...)
	for _, l := range words.Lengths(p, s.Out.Mitt, s.Out.Unit) {
		if l.Until != "" {
			list = append(list, l.Stop())
		}
		l.Until = ""
		list = append(list, l.Words())
	}
	for _, passage := range words.Merged(s.Out.Words) {
		for _, r := range passage.Rows() {
			list = append(list, r.Numbers()+r.Bare+told(r.Inside)+told(r.All))
		}
	}
	for _, w := range p.Warnings {
		list = append(list, words.Caution(w.Message))
	}
	for _, e := range s.Out.Charts.Marks.Edits() {
		if e.Layer == chart.Notes {
			list = append(list, e.Value)
		}
	}
	return list
}

// told returns a count as it stands in its column: nothing for none.
func told(n int) string {
	if n == 0 {
		return ""
	}
	return strconv.Itoa(n)
}

// lessonLetters returns the letters of the drawn steps of a handout.
func lessonLetters(s *Sheet, o Options) string {
	return drawnLetters(picture.Lesson(s.lessonOptions(o))...)
}

// saidOnce checks that pages have every text of a source exactly once: each is taken
// away where it stands, the longest first, and then no longer one is left over.
func saidOnce(t *testing.T, pages []*draw.Scene, texts []string, what string) {
	t.Helper()
	all := onPages(pages)
	list := make([]string, 0, len(texts))
	for _, text := range texts {
		if text = compact(text); text != "" {
			list = append(list, text)
		}
	}
	slices.SortStableFunc(list, func(a, b string) int { return cmp.Compare(len(b), len(a)) })
	for _, text := range list {
		at := strings.Index(all, text)
		if !assert.GreaterOrEqual(t, at, 0, "%s: %q is not on the paper", what, text) {
			continue
		}
		all = all[:at] + strings.Repeat("\x00", len(text)) + all[at+len(text):]
	}
	const long = 12 // letters; a shorter text may be part of something else
	for _, text := range list {
		if len([]rune(text)) >= long {
			assert.False(t, strings.Contains(all, text), "%s: %q stands twice", what, text)
		}
	}
}

// titlesOnce checks that each section of the words has its heading once.
func titlesOnce(t *testing.T, pages []*draw.Scene, s *Sheet, what string) {
	t.Helper()
	count := map[string]int{}
	for _, p := range pages {
		for _, i := range p.Items {
			if i.Kind == draw.TextItem && i.Letter.Face == draw.Serif {
				count[i.Text]++
			}
		}
	}
	for _, passage := range s.Out.Words {
		assert.Equal(t, 1, count[passage.Title], "%s: heading %q", what, passage.Title)
	}
}

// chartsOnce checks that a chart that is whole has each of its numbers and names once.
func chartsOnce(t *testing.T, pages []*draw.Scene, h *handout, what string) {
	t.Helper()
	all := onPages(pages)
	if strings.Contains(all, "part1of") {
		return
	}
	for _, p := range pages {
		if cell := cellOf(p); cell > 0 && hasChart(p) {
			for i, g := range h.grids {
				scene, _ := picture.Chart(g, picture.Look{Cell: cell, Gauge: h.Out.Plan.Gauge, Symbols: h.symbols(), Grey: h.o.Grey, Numbers: numbersIn(h.o)})
				said := strings.Count(all, drawnLetters(scene))
				for _, at := range append(h.sizes(g, h.width()-h.keyColumn(g)-columnGap), h.laid[i]...) {
					if scene, _, ok := picture.PrintedChart(g, at.look(), at.over); ok {
						said = max(said, strings.Count(all, drawnLetters(scene)))
					}
				}
				assert.Equal(t, 1, said, "%s: letters of the chart of the %s", what, g.View.Words())
			}
			return
		}
	}
}

// numbersIn returns the least size of a chart's numbers in mm.
func numbersIn(o Options) float64 {
	if o.Large {
		return o.letters().body
	}
	return 0
}

// combinations returns all combinations of the options that change pages: paper, way
// up, print, greys, sides, hand that leads, cells.
func combinations() []Options {
	var list []Options
	for n := range 1 << 6 {
		for _, cell := range []float64{0, 5} {
			on := func(bit int) bool { return n>>bit&1 == 1 }
			o := Usual()
			o.Paper, o.Sideways, o.Large, o.Grey, o.Double, o.FromLeft, o.Cell = Papers()[n&1], on(1), on(2), on(3), on(4), on(5), cell
			list = append(list, o)
		}
	}
	return list
}

func (o Options) said() string {
	return fmt.Sprintf("%s sideways %v large %v grey %v double %v from the left %v cell %g", o.Paper.Name, o.Sideways, o.Large, o.Grey, o.Double, o.FromLeft, o.Cell)
}

// painted returns samples with marks: what does not add up, a purl, notes, colours.
func painted(t *testing.T, sample int, fromLeft bool) Sheet {
	t.Helper()
	marks := chart.Marks{}
	marks.Apply([]chart.Edit{
		{Section: stitch.Gusset, Round: 2, Column: "B1", Layer: chart.Stitches, Value: "k2tog"},
		{Section: stitch.Hand, Round: 4, Column: "H12", Layer: chart.Colours, Value: "c"},
		{Section: stitch.Thumb, Round: 2, Layer: chart.Notes, Value: "knit it looser than the round before"},
	})
	if sample == 0 {
		marks = chart.Marks{}
	}
	doc := project.Samples()[sample]
	doc.FromLeft = fromLeft
	return derived(t, doc, marks)
}

// Every word of what a handout says is on its paper exactly once, in all combinations
// of the options.
func TestEveryWordOnce(t *testing.T) {
	all := combinations()
	for k, o := range testenv.Some(6, all) {
		s := painted(t, k%3, o.FromLeft)
		pages := Handout(s, o)
		what := s.Doc.Name + ", " + o.said()
		texts := source(&s)
		if lesson := lessonLetters(&s, o); lesson != "" {
			texts = append(texts, lesson)
		}
		saidOnce(t, pages, texts, what)
		titlesOnce(t, pages, &s, what)
		chartsOnce(t, pages, newHandout(&s, o), what)
	}
}

// Every word of every student's handout of the set of fourteen is on their paper once.
func TestEveryWordOfTheSetOnce(t *testing.T) {
	f := newFourteen(t)
	for _, large := range []bool{false, true} {
		o := Usual()
		o.Large, o.Double = large, true
		for _, l := range f.lines[:testenv.Cases(7, len(f.lines))] {
			l = f.complete(l)
			if l.Out == nil {
				continue
			}
			s := sheetOf(f.class, &l)
			o.FromLeft = l.Student.FromLeft
			saidOnce(t, Student(f.class, &l, o), append(source(&s), lessonLetters(&s, o)), l.Student.Name)
		}
	}
}

// sheetOf returns what the handout of a student is made of.
func sheetOf(c roster.Class, l *roster.Line) Sheet {
	about := c.About()
	if l.Student.Note != "" {
		about += " · " + l.Student.Note
	}
	return Sheet{Doc: l.Doc, Out: l.Out, Name: l.Student.Name, About: about, Yarn: c.Yarn, Needle: c.Needle, Doubts: l.Doubts}
}
