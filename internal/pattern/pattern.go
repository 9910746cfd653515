// Package pattern writes one text for all sizes of a design, out of what each size's own
// mitt says. What differs only in numbers stands once, "44 (48, 52, 56)"; what differs
// otherwise stands in lines for the sizes that it is for. Nothing is left out: who follows
// the lines of one size, with its numbers, knits the mitt of that size.
package pattern

import (
	"regexp"
	"slices"

	"thenar/internal/fault"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// Most is the greatest number of sizes of one text.
const Most = 12

// inLists finds what a name can't have that stands in lists: "Sizes S, M and L: ".
var inLists = regexp.MustCompile(`[,:\n]|\band\b`)

// Size is one size of a design: what it is called, and its mitt.
type Size struct {
	Name string
	Out  *project.Outputs
}

// Text is the instructions for all sizes.
type Text struct {
	Sizes    []string // their names, in order
	Head     Head
	Passages []Passage

	out  *project.Outputs // of the first size
	left bool             // it is for the left hand
	both bool             // it is for both
}

// Passage is the instructions for one section, for the sizes that have it.
type Passage struct {
	Part  stitch.Part
	Title string
	Hand  string // "right" or "left"; "": both, or the text is for one hand
	For   []int  // sizes, by their places
	Lines []Line
}

// Line is one line of a passage. Label names its rounds, and Count tells how many stitches
// are there after them; both may be empty.
type Line struct {
	Key   string // names its place in the text, whatever its numbers and neighbours are
	For   []int  // the sizes that it is for
	Only  bool   // the other sizes have no line in its place
	Hand  string // "right" or "left": it is for that hand only, in a passage for both
	Under bool   // it tells for its sizes the round that a line before it names
	Label []Piece
	Body  []Piece
	Count []Piece
	Table *Table // in place of all these

	ByHand  bool   // Body is a whole sentence that the designer wrote
	After   bool   // it stands after the line of its key
	Written string // the key under which it is kept

	numbers []numberOf // those that a sentence by hand may hold
	says    []string   // what each of its sentences says but for its numbers
}

// Piece is words, or a number with its value for each size of the line.
type Piece struct {
	Text   string   // words, or a number that is the same in all sizes
	Values []string // of a number
	Same   bool     // the number is told once
	Tail   string   // follows the values where they differ: " times"
}

// Style says how a text is put.
type Style struct {
	Rhythm  bool // a gusset is told by its rhythm, not round by round
	Wording Wording
}

// Of returns the text for sizes, in their order.
func Of(sizes []Size, style Style) (*Text, error) {
	t := &Text{}
	if len(sizes) == 0 || len(sizes) > Most {
		return nil, fault.New(fault.Invalid, "A pattern has 1 to %d sizes.", Most)
	}
	t.out, t.left = sizes[0].Out, sizes[0].Out.Charts.Mirrored
	own := make([][]section, len(sizes))
	for i, s := range sizes {
		if s.Name == "" || slices.Contains(t.Sizes, s.Name) {
			return nil, fault.New(fault.Invalid, "Each size needs a name of its own.")
		}
		if inLists.MatchString(s.Name) {
			return nil, fault.New(fault.Invalid, "“%s” would not be read as one size: call it something without comma, colon or “and”.", s.Name)
		}
		t.Sizes = append(t.Sizes, s.Name)
		own[i] = sections(s.Out)
	}
	if style.Rhythm {
		byRhythm(own, sizes)
	}
	for i := range own {
		for k := range own[i] {
			s := &own[i][k]
			s.placed(sizes[i].Out.Mitt.Section(s.part))
		}
	}
	for _, c := range inColumns(own, func(a, b section) int {
		if a.part == b.part && a.title == b.title {
			return same
		}
		return unlike
	}) {
		t.Passages = append(t.Passages, passage(c, style.Wording))
	}
	if len(sizes) > 1 {
		for _, p := range t.Passages {
			for i := range p.Lines {
				p.Lines[i].squared()
			}
		}
	}
	t.Head = t.headOf(sizes, style.Wording)
	if style.Wording == Both {
		t.explained(sizes[0].Out)
	}
	return t, nil
}

// passage brings the steps of a section of several sizes together.
func passage(c column[section], how Wording) Passage {
	first := c.cells[0]
	p := Passage{Part: first.part, Title: first.title, For: c.sizes}
	steps := make([][]step, len(c.cells))
	for i, s := range c.cells {
		steps[i] = s.steps
	}
	rows := inColumns(steps, step.likeness)
	keys := keys(first.part, rows)
	for i, row := range rows {
		for k, at := range row.sizes {
			row.sizes[k] = c.sizes[at]
		}
		list := lines(row, c.sizes, keys[i], how)
		if at := len(p.Lines) - 1; at >= 0 && joins(row) && len(list) == 1 && !p.Lines[at].Under && slices.Equal(p.Lines[at].For, list[0].For) {
			p.Lines[at].goesOn(list[0])
			continue
		}
		p.Lines = append(p.Lines, list...)
	}
	p.parted()
	return p
}

// parted lets lines that follow each other, and share all sizes of the passage out among
// them, stand for each other: none is for its sizes only.
func (p *Passage) parted() {
	for from := 0; from < len(p.Lines); from++ {
		var of []int
		for to := from; to < len(p.Lines); to++ {
			l := p.Lines[to]
			if !l.Only || l.Label != nil || slices.ContainsFunc(l.For, func(s int) bool { return slices.Contains(of, s) }) {
				break
			}
			if of = append(of, l.For...); len(of) == len(p.For) {
				for i := from; i <= to; i++ {
					p.Lines[i].Only = false
				}
				from = to
				break
			}
		}
	}
}

// goesOn adds the words of another line to those of l.
func (l *Line) goesOn(with Line) {
	l.numbers = append(l.numbers, numbersIn(with.Body, l.ofWords())...)
	l.Body = append(append(l.Body, Piece{Text: " "}), with.Body...)
	l.says = append(l.says, with.says...)
}

// joins reports whether steps go on with those before them.
func joins(c column[step]) bool {
	return !slices.ContainsFunc(c.cells, func(s step) bool { return !s.joins })
}
