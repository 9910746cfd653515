package view

import (
	"fmt"
	"time"

	"github.com/a-h/templ"

	"thenar/internal/app"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/stitch"
)

// Item is one mitt on the shelf.
type Item struct {
	ID       int64
	Name     string
	About    string // kind and hand in a few words
	Line     string // its plan in one line; empty while there is none
	Changed  string // when it was last saved
	Stamp    string // Changed in a form for machines
	Picture  string // SVG; empty while there is no plan
	Archived bool
	Next     string // where the knitting is; empty if it is not on the needles
	Anew     string // the name of a mitt begun from it
	Fixed    int    // how many numbers are fixed
}

// Shelf is the list of mitts: first those on the needles, then the one changed
// last.
type Shelf struct {
	Items    []Item
	Archived []Item
	Hand     string // SVG of a hand, life-size in mm; only while nothing is on the shelf
}

// NewShelf returns the shelf with the mitts in their order, those put away in a
// list of their own.
func NewShelf(list []app.Shelved) (s Shelf) {
	var resting []Item
	for _, m := range list {
		switch item := shelved(m); {
		case item.Archived:
			s.Archived = append(s.Archived, item)
		case item.Next != "":
			s.Items = append(s.Items, item)
		default:
			resting = append(resting, item)
		}
	}
	s.Items = append(s.Items, resting...)
	tellApart(s.Items)
	tellApart(s.Archived)
	if len(s.Items) == 0 {
		s.Hand = SVG(picture.LifeSize(), true)
	}
	return s
}

// tellApart adds when they were saved to mitts of one name.
func tellApart(list []Item) {
	named := map[string]int{}
	for _, i := range list {
		named[i.Name]++
	}
	for k := range list {
		if one := &list[k]; named[one.Name] > 1 {
			one.About += ", saved " + one.Changed
		}
	}
}

// fixedWords says which fixed numbers a mitt begun from it would take over.
func (i Item) fixedWords() string {
	if i.Fixed == 1 {
		return "with its one fixed number"
	}
	return fmt.Sprintf("with its %d fixed numbers", i.Fixed)
}

func (i Item) href(below string) templ.SafeURL {
	return templ.SafeURL(MittAt(i.ID, below))
}

// shelved returns the item of one mitt.
func shelved(m app.Shelved) Item {
	item := Item{
		ID: m.ID, Name: m.Doc.Name, Archived: m.Doc.Archived,
		Changed: Clock(m.Changed, time.Now()), Stamp: m.Changed.UTC().Format(time.RFC3339),
		Anew: app.NameAnew(m.Doc.Name), Fixed: len(m.Doc.Sheet.Fixed()),
		About: fmt.Sprintf("%s, %s hand", m.Doc.Sheet.Kind().Words(), m.Doc.Side),
	}
	look := picture.SmallOptions{Left: m.Doc.Side == project.Left, Worn: m.Worn}
	if own := m.Doc.OwnYarns(); len(own) > 0 {
		look.Yarn = m.Doc.Palette()[0].Fill
	}
	if next := m.Next; next != nil {
		item.Next = nextWords(m)
		look.Needles, look.Knitted, look.Left = true, next.Knitted, next.Side == project.Left
		if next.IsRound() {
			look.Knitted--
		}
	}
	if m.Plan == nil {
		item.About += ", not measured yet"
		return item
	}
	item.Line = planLine(m.Plan)
	item.Picture = SVG(picture.Small(m.Plan, look), false)
	return item
}

// nextWords says where the knitting of a mitt on the needles is.
func nextWords(m app.Shelved) string {
	next := m.Next
	if !next.IsRound() {
		return fmt.Sprintf("next: %s, %s hand", TaskWords(next.Mitt, next.Task, termsOf(m.Doc)), next.Side)
	}
	all := 0
	for i := range next.Mitt.Sections {
		all += len(next.Mitt.Sections[i].Rounds)
	}
	return fmt.Sprintf("%s %d of %d, %s, %s hand", m.Doc.Sheet.Names().NounOf(stitch.Hand), next.Knitted, all, next.Part.Words(), next.Side)
}

// scaleWords says how the pictures are to be read.
func (s Shelf) scaleWords() string {
	if len(s.Items) == 1 {
		return "one mitt; a tick of the tape is 1 cm"
	}
	return fmt.Sprintf("%d mitts at one scale; a tick of the tape is 1 cm", len(s.Items))
}
