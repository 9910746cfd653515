package paper

import (
	"encoding/base64"
	"fmt"
	"html/template"
	"io"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/pattern"
	"thenar/internal/picture"
)

// PatternHTML writes a pattern as one page of HTML that needs nothing beside itself: with
// headings, tables whose heads are marked, and a text beside every drawing and photograph.
// It is in a language, a tag of BCP 47.
func PatternHTML(w io.Writer, s PatternSheet, language string) error {
	p := patternPages{&handout{flow: &flow{letters: ordinary, size: A4, name: s.footName()}}, &s, nil}
	page := htmlPage{PatternSheet: &s, Language: language, Style: template.CSS(patternStyle), Caution: caution, Ends: p.ends()}
	page.Stories, page.Told = paragraphsOf(s.Story), paragraphsOf(s.Notes)
	if len(s.Photos) > 0 {
		page.Cover = photoHTML(s.Photos[0], s.Name)
		for _, of := range s.Photos[1:] {
			page.More = append(page.More, photoHTML(of, s.Name))
		}
	} else {
		page.Cover = htmlFigure{Body: sceneHTML(p.coverScene())}
	}
	for _, f := range p.figures() {
		page.Figures = append(page.Figures, htmlFigure{Body: sceneHTML(f.scene), Caption: f.caption})
	}
	page.Reading, page.Charts = p.chartsHTML()
	for _, l := range s.Text.Head.Needs.Lines {
		name, text, _ := strings.Cut(s.Text.Told(s.Text.Head.Needs, l), ": ")
		page.Needs = append(page.Needs, [2]string{name, text})
	}
	for i, of := range s.Text.Passages {
		page.Sections = append(page.Sections, p.sectionHTML(i, of))
	}
	page.Table = htmlSizes{"Sizes", s.Text.Sizes, s.Text.Head.Sizes}
	page.Measured = htmlSizes{"Measures of every size", s.Text.Sizes, p.measuresHTML()}
	page.Listed = htmlSizes{"Every number of every size", s.Text.Sizes, s.Numbers()}
	if err := patternTemplate.Execute(w, page); err != nil {
		return fmt.Errorf("paper.PatternHTML: %w", err)
	}
	return nil
}

// htmlPage is what the page has beside its sheet.
type htmlPage struct {
	*PatternSheet
	Language, Caution, Ends string
	Style                   template.CSS
	Cover                   htmlFigure
	Stories, Told           []string
	Figures, More, Charts   []htmlFigure
	Reading                 string // how the charts are read
	Needs                   [][2]string
	Sections                []htmlSection
	Measured, Listed        htmlSizes
	Table                   htmlSizes
}

// htmlSizes is a table with a value for each size.
type htmlSizes struct {
	Label string
	Sizes []string
	Rows  []pattern.Row
}

// htmlFigure is a drawing or a photograph, with what stands below it.
type htmlFigure struct {
	Body    template.HTML
	Caption string
}

// htmlSection is the words of a section.
type htmlSection struct {
	ID, Title string
	Lines     []htmlLine
}

// htmlLine is a line in runs, those at odd places heavy; or, in their place, a list of what is
// told for single sizes below the line before, or a table.
type htmlLine struct {
	Runs  []string
	Under [][]string
	Table *htmlTable
}

// htmlTable is a table with two lines of heads: what is alike stands over its columns.
type htmlTable struct {
	Label string
	What  string
	Over  []htmlOver
	Heads []string
	Rows  [][]string
}

type htmlOver struct {
	Title string
	Span  int
}

// coverScene is the mitt on its hand, by itself.
func (p patternPages) coverScene() *draw.Scene {
	d := picture.NewDressed(p.middle().Plan, picture.HandOptions{Left: p.Left, Worn: p.wornOf(p.middle())})
	s := &draw.Scene{Width: d.Width() + 4, Height: d.Above() + d.Below() + 4, Label: upperFirst(p.coverLabel()) + "."}
	d.Draw(s, 2, d.Above()+2, 1)
	return s
}

// figured is a drawing with its caption.
type figured struct {
	scene   *draw.Scene
	caption string
}

// figures are the drawings of the pattern beside that of its title page.
func (p patternPages) figures() []figured {
	s := picture.Schematic(p.nested(), picture.SchematicOptions{Left: p.Left, Letter: 7, Plain: len(p.Sizes) == 1})
	caption := "Lying flat, palm up. The letters stand for the measures below."
	if len(p.Sizes) > 1 {
		caption = fmt.Sprintf("All sizes from one edge, lying flat, palm up. Size %s is tinted. The letters stand for the measures below.", p.middleName())
	}
	return []figured{{s, caption}}
}

// chartCell is the width in mm of a cell of a chart on the page.
const chartCell = 4.2

// chartsHTML are the charts of all sizes, after their key, and how they are read.
func (p patternPages) chartsHTML() (reading string, list []htmlFigure) {
	charts, alike := p.handCharts()
	if len(charts) == 0 {
		return "", nil
	}
	c := sizesCharts{p, charts, alike}
	key := stack(c.key())
	drawn := &draw.Scene{Width: p.width(), Height: float64(key.Height) / 10, Label: "Key of the charts."}
	key.draw(drawn, 0, 0)
	list = append(list, htmlFigure{Body: sceneHTML(drawn)})
	for i := range c.list {
		of := &c.list[i]
		caption := strings.Join(append([]string{"Chart " + chartLetter(i) + ", " + c.named(of) + "."}, c.under(of)...), " ")
		list = append(list, htmlFigure{sceneHTML(picture.SizesChart(&of.Sizes, c.look(chartCell))), caption})
	}
	return c.aboutWords(), list
}

// measuresHTML are the measures of the drawing, each in both units, after its letter.
func (p patternPages) measuresHTML() (rows []pattern.Row) {
	first, second := p.unitsShown()
	for _, l := range picture.LetteredOf(p.nested()) {
		name := strings.TrimSpace(l.Letter + "  " + l.Name)
		one, other := pattern.Row{Name: name + ", " + unitWords[first]}, pattern.Row{Name: name + ", " + unitWords[second]}
		for _, mm := range l.MM {
			one.Values, other.Values = append(one.Values, measured(mm, first)), append(other.Values, measured(mm, second))
		}
		rows = append(rows, one, other)
	}
	return rows
}

// sceneHTML returns a drawing as an element of its page.
func sceneHTML(s *draw.Scene) template.HTML {
	var b strings.Builder
	_ = draw.WriteSVG(&b, finish([]*draw.Scene{s}, false)[0], true) // a builder takes all; texts keep their width in any face
	return template.HTML(b.String())
}

// photoHTML returns a photograph that the page holds itself.
func photoHTML(f PatternPhoto, name string) htmlFigure {
	return htmlFigure{
		Body: template.HTML(`<img alt="` + template.HTMLEscapeString(f.Label(name)) + `" src="data:image/jpeg;base64,` +
			base64.StdEncoding.EncodeToString(f.Picture.JPEG) + `">`),
		Caption: f.Caption,
	}
}

// sectionHTML returns the words of a section.
func (p patternPages) sectionHTML(i int, of pattern.Passage) htmlSection {
	s := htmlSection{ID: fmt.Sprintf("part-%d", i+1), Title: p.Text.Titled(of)}
	for _, l := range of.Lines {
		if l.Table != nil {
			s.Lines = append(s.Lines, htmlLine{Table: p.tableHTML(l.Table, fmt.Sprintf("%s, rounds of each %s", s.Title, l.Table.What))})
			continue
		}
		text := p.Text.Told(of, l)
		runs := runsOf(text, p.heavy(text, l))
		last := len(s.Lines) - 1
		switch {
		case l.Under && last >= 0 && s.Lines[last].Under != nil:
			s.Lines[last].Under = append(s.Lines[last].Under, runs)
		case l.Under:
			s.Lines = append(s.Lines, htmlLine{Under: [][]string{runs}})
		default:
			s.Lines = append(s.Lines, htmlLine{Runs: runs})
		}
	}
	return s
}

// runsOf cuts a text where it becomes heavy and light, in turns, from a light run on.
func runsOf(text string, heavy func(at int) bool) []string {
	runs, at := []string{""}, 0
	for _, r := range text {
		if heavy(at) != (len(runs)%2 == 0) {
			runs = append(runs, "")
		}
		runs[len(runs)-1] += string(r)
		at++
	}
	return runs
}

// tableHTML returns the rounds that change a count.
func (p patternPages) tableHTML(of *pattern.Table, label string) *htmlTable {
	t := &htmlTable{Label: label, What: of.What}
	for i, c := range of.Columns {
		names := make([]string, len(c.For))
		for k, s := range c.For {
			names[k] = p.Text.Sizes[s]
		}
		t.Heads = append(t.Heads, spanned(names, p.Text.Sizes))
		if from, to := titleOver(of, i); from == i {
			t.Over = append(t.Over, htmlOver{c.Title, to - from})
		}
	}
	for r, first := range of.First {
		row := []string{first}
		for _, c := range of.Columns {
			row = append(row, c.Cells[r])
		}
		t.Rows = append(t.Rows, row)
	}
	return t
}

func upperFirst(text string) string { return strings.ToUpper(text[:1]) + text[1:] }
