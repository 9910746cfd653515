package paper

import (
	"slices"

	"thenar/internal/draw"
	"thenar/internal/pattern"
	"thenar/internal/picture"
)

// PatternSheet is the content of a pattern that goes out. All texts but its name may be
// empty.
type PatternSheet struct {
	Name      string
	About     string // a line below the name: "Fingerless mitts in six sizes"
	Designer  string
	Story     string // a paragraph of the title page
	Notes     string // to the knitter: paragraphs
	Copyright string // a line; empty: made of the year and the designer
	Year      int    // of the copyright line; 0: none
	Version   string // which one went out, and when: a sentence
	Text      *pattern.Text
	Sizes     []pattern.Size
	Photos    []PatternPhoto // the first is that of the title page
	Left      bool           // of the left hand
	Symbols   picture.Convention
	Each      bool // each size is drawn by itself, too
}

// PatternPhoto is a photograph of the designer's.
type PatternPhoto struct {
	Picture draw.Picture
	Caption string // may be empty
}

// patternPages lays out a pattern.
type patternPages struct {
	*handout
	*PatternSheet
	listed *contents // nil: there is none
}

// fewestListed is the number of pages from which on a pattern has a list of contents.
const fewestListed = 5

// Pattern lays out a pattern for all sizes: a title page, the sizes, what is needed, the
// abbreviations, the words from the cuff to the thumb in the order in which they are read,
// and every number to tick off.
func Pattern(s PatternSheet, o Options) []*draw.Scene {
	p := patternPages{bare(o, s.footName()), &s, nil}
	p.above = p.headHeight()
	p.makeUp(p.blocks())
	if heads := headings(p.flow.pages); len(p.flow.pages)+1 >= fewestListed {
		p.listed = &contents{names: heads}
		p.makeUp(p.blocks())
		p.listed.fill(p.handout, p.flow.pages, 2)
	}
	p.flow.pages = slices.Insert(p.flow.pages, 0, p.cover())
	p.headAndFoot()
	return finish(p.flow.pages, o.Grey)
}

// blocks returns all that stands after the title page, in its order.
func (p patternPages) blocks() []block {
	var list []block
	list = append(list, p.contentsBlock()...)
	list = append(list, p.longStory()...)
	list = append(list, p.sizes(), p.needs(), p.signsBlock(), p.schematic())
	list = append(list, p.eachSize()...)
	list = append(list, p.patternNotes()...)
	list = append(list, p.photographs()...)
	list = append(list, p.charts()...)
	for _, passage := range p.Text.Passages {
		list = append(list, p.passage(passage))
	}
	return append(append(list, p.patternCautions(), p.numbers()), p.copyright()...)
}

// footName is what stands in the foot of every page: the name, and whose it is.
func (s *PatternSheet) footName() string {
	if s.Designer == "" {
		return s.Name
	}
	return s.Name + " · " + s.Designer
}

// headings returns the parts of a document that its outline leads to.
func headings(pages []*draw.Scene) (list []string) {
	for _, p := range pages {
		for _, h := range p.Headings {
			if h.Level == 2 {
				list = append(list, h.Text)
			}
		}
	}
	return list
}
