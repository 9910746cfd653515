package paper

import (
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
)

// middle returns the mitt of the middle size, which is the one that is shown.
func (p patternPages) middle() *project.Outputs { return p.Sizes[len(p.Sizes)/2].Out }

func (p patternPages) middleName() string { return p.Sizes[len(p.Sizes)/2].Name }

// wornOf returns what a size is knitted in, for a copier in the greys of its charts.
func (p patternPages) wornOf(out *project.Outputs) *picture.Worn {
	charts := out.Charts
	if p.o.Grey {
		charts.Palette = picture.Greys(charts.Palette, out.Grid(chart.Options{View: chart.TubeView}).YarnsUsed())
	}
	return picture.NewWorn(charts)
}

// paragraphsOf returns the paragraphs of a text that a person wrote.
func paragraphsOf(text string) (list []string) {
	for _, line := range strings.Split(text, "\n") {
		if line = strings.TrimSpace(line); line != "" {
			list = append(list, line)
		}
	}
	return list
}

// sizes sets the measurements of every size.
func (p patternPages) sizes() block {
	const head = "Sizes"
	return one(head, aboveHeading, keptWith(p.headingPart(head), p.bySize(p.Text.Head.Sizes, head)))
}

// needs sets what to have at hand.
func (p patternPages) needs() block {
	var list [][2]string
	for _, l := range p.Text.Head.Needs.Lines {
		name, text, _ := strings.Cut(p.Text.Told(p.Text.Head.Needs, l), ": ")
		list = append(list, [2]string{name, text})
	}
	rows := p.pairs(list, p.width())
	for i := range rows[:len(rows)-1] {
		rows[i].Keep = true
	}
	return p.headed(p.Text.Head.Needs.Title, rows)
}

// signsBlock sets the abbreviations, in two columns where there is room.
func (p patternPages) signsBlock() block {
	const head = "Abbreviations"
	var list [][2]string
	for _, s := range p.Text.Head.Signs {
		list = append(list, [2]string{s.Sign, s.Line})
	}
	b := p.headed(head, keptLines(p.pairs(list, p.width())))
	if half := p.columnWidth(2); p.roomFor(half) {
		two := inColumns(p.pairs(list, half), 2, half+columnGap)
		b.ways = append([]way{{parts: keptWith(p.headingPart(head), []part{two})}}, b.ways...)
	}
	return b
}

// patternNotes sets what the designer tells the knitter.
func (p patternPages) patternNotes() []block {
	if p.Notes == "" {
		return nil
	}
	return []block{p.headed("Notes", keptLines(p.paragraphs(paragraphsOf(p.Notes))))}
}

// highestPhoto is the most height of a photograph among the pages, in mm.
const highestPhoto = 85.0

// photographs sets those that are not on the title page two and two beside each other,
// with their captions.
func (p patternPages) photographs() []block {
	if len(p.Photos) < 2 {
		return nil
	}
	var list []block
	half := p.columnWidth(2)
	for at := 1; at < len(p.Photos); at += 2 {
		var pair [][]part
		for _, of := range p.Photos[at:min(at+2, len(p.Photos))] {
			pair = append(pair, p.photoPart(of, half))
		}
		list = append(list, one("photographs", aboveHeading, []part{beside(half+columnGap, pair...)}))
	}
	return list
}

// photoPart sets a photograph with its caption in a width.
func (p patternPages) photoPart(of PatternPhoto, wide float64) []part {
	w, h := of.Picture.Sized()
	if w == 0 || h == 0 {
		return []part{space(0)}
	}
	scale := min(wide/float64(w), highestPhoto/float64(h))
	photo := draw.Photo{Picture: of.Picture, Width: float64(w) * scale, Height: float64(h) * scale, Label: of.Label(p.Name)}
	list := []part{drawn(tenths(photo.Height)+10, func(s *draw.Scene, x, y float64) { s.Photo(x, y, photo) })}
	if of.Caption != "" {
		list = append(list, setLines(of.Caption, wide, draw.TextStyle{Size: p.small})...)
	}
	return list
}
