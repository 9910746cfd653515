package view

import (
	"fmt"
	"time"

	"thenar/internal/app"
	"thenar/internal/project"
)

// Item is one mitt on the shelf.
type Item struct {
	ID       int64
	Name     string
	About    string // kind, hand and cast-on in a few words
	Changed  string // when it was last saved
	Stamp    string // Changed in a form for machines
	Picture  string // SVG; empty while there is no plan
	Archived bool
	Next     string // what is knitted next; empty if it is not on the needles
	Anew     string // the name of a mitt begun from it
	Fixed    int    // how many numbers are fixed
}

// Shelf is the list of mitts, the newest first.
type Shelf struct {
	Items    []Item
	Archived []Item
}

// NewShelf returns the shelf with the mitts in their order, those put away in a
// list of their own.
func NewShelf(list []app.Shelved) (s Shelf) {
	for _, m := range list {
		if item := shelved(m); m.Doc.Archived {
			s.Archived = append(s.Archived, item)
		} else {
			s.Items = append(s.Items, item)
		}
	}
	return s
}

// fixedWords says which fixed numbers a mitt begun from it would take over.
func (i Item) fixedWords() string {
	if i.Fixed == 1 {
		return "with its one fixed number"
	}
	return fmt.Sprintf("with its %d fixed numbers", i.Fixed)
}

// shelved returns the item of one mitt.
func shelved(m app.Shelved) Item {
	item := Item{
		ID: m.ID, Name: m.Doc.Name, Archived: m.Doc.Archived,
		Changed: Clock(m.Changed, time.Now()), Stamp: m.Changed.UTC().Format(time.RFC3339),
		Anew: app.NameAnew(m.Doc.Name), Fixed: len(m.Doc.Sheet.Fixed()),
		About: fmt.Sprintf("%s, %s hand", m.Doc.Sheet.Kind().Words(), m.Doc.Side),
	}
	if next := m.Next; next != nil {
		item.Next = fmt.Sprintf("next: %s, %s hand", TaskWords(next.Mitt, next.Task, termsOf(m.Doc)), next.Side)
	}
	if m.Plan == nil {
		item.About += ", not measured yet"
		return item
	}
	item.About += fmt.Sprintf(", cast on %d", m.Plan.Cuff.CastOn.N)
	item.Picture = Small(m.Plan, m.Doc.Side == project.Left)
	return item
}
