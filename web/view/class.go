package view

import (
	"fmt"

	"github.com/a-h/templ"

	"thenar/internal/roster"
)

// ClassItem is one class in the list of classes.
type ClassItem struct {
	ID       int64
	Name     string
	About    string
	Archived bool
}

// Classes is the list of classes, and the mitts that a class can begin with.
type Classes struct {
	Items []ClassItem
	Mitts []Choice
}

// Class is the page of one class.
type Class struct {
	ID      int64
	Doc     roster.Class
	Stamp   string // of what the form was made from
	Lines   []roster.Line
	Mitts   []Choice
	Newer   bool // the pattern's mitt was changed since
	Faults  map[string]string
	Message string
	Between []Between // what another window has otherwise

	Student Student // the form for one more
	Pasted  string  // a table that was pasted, as it was
	Whole   string  // the table that was read, to be read again; empty: too long
	Read    *roster.Table
	Columns *roster.Table // whose columns are told, and can be chosen
	Merged  roster.Merged
}

func (c Class) href(rest string) templ.SafeURL {
	return templ.SafeURL(fmt.Sprintf("/classes/%d%s", c.ID, rest))
}

// fixLabels are the numbers that a class can fix.
var fixLabels = map[string]string{
	"cast_on": "Cast on", "cuff_rounds": "Rounds of ribbing", "cuff_plain_rounds": "Plain rounds", "hand_stitches": "Stitches of the hand",
	"gusset_base": "Base of the gusset", "increases": "Increase rounds", "rhythm": "An increase every … round", "first_increase": "First increase in round", "increase_rounds": "Increases in rounds", "gusset_rounds": "Rounds of the gusset",
	"kept_on_hand": "Kept on the hand", "held": "Held stitches", "bridge": "Bridge", "picked_up": "Picked up", "rounds_above_gusset": "Rounds above the gusset",
}

// attention is how many lines somebody should look at.
func (c Class) attention() int {
	n := 0
	for i := range c.Lines {
		if c.Lines[i].NeedsAttention() {
			n++
		}
	}
	return n
}

// planned are the numbers of a line, a cell each; without a plan they are
// empty.
func planned(l roster.Line) []string {
	if numbers := l.Numbers(); numbers != nil {
		return numbers
	}
	return make([]string, len(plannedHeads))
}

// plannedHeads are the headings of a line’s numbers.
var plannedHeads = []string{"Stitches / 10 cm", "Cast on", "Increases", "Rounds", "Held", "Thumb", "Above", "Yarn"}

// columnLabels are what a column can be read as, where a student's form has no
// word for it.
var columnLabels = map[string]string{
	"name": "Name", "first_name": "First name", "last_name": "Surname", "note": "Note", "knits": "Knits from left to right", "gauge_from": "Gauge counted on",
	"gauge.swatches[0].stitches": "Stitches", "gauge.swatches[0].rounds": "Rounds", "hand.hand_circumference": "Hand, round the knuckles", "hand.wrist_circumference": "Wrist, round",
	"hand.thumb_circumference": "Thumb, round", "pins.cast_on": "Cast on",
}

// ColumnWords is what a field of a table is called.
func ColumnWords(field string) string {
	if label, ok := columnLabels[field]; ok {
		return label
	}
	name, _, _ := Student{}.label(field)
	return name
}

// columnChoices are all that a column can be read as.
func columnChoices() []Choice {
	list := []Choice{{Value: "", Words: "not used"}}
	for _, field := range roster.Readable() {
		list = append(list, Choice{Value: field, Words: ColumnWords(field)})
	}
	return list
}

// unread counts the columns that are not used.
func (c Class) unread() int {
	n := 0
	for _, col := range c.Columns.Columns {
		if col.Field == "" {
			n++
		}
	}
	return n
}

// heading is what a column is called on the page.
func heading(c roster.Column, at int) string {
	if c.Heading == "" {
		return fmt.Sprintf("column %d, which has no heading", at+1)
	}
	return c.Heading
}

// difference is a value on which a table differs, in words: who knits from
// what.
func difference(field, text string) string {
	if field == "gauge_from" {
		return roster.GaugeFrom(text).Words()
	}
	return text
}

// fixed are the numbers that a class can fix, as fields.
func (c Class) fixed() []PrintField {
	var list []PrintField
	for _, name := range roster.Fixable() {
		list = append(list, PrintField{Name: "pins." + name, Label: fixLabels[name], Value: c.Doc.Fixed[name]})
	}
	return list
}

func (c Class) patternID() int64 {
	if c.Doc.Pattern == nil {
		return 0
	}
	return c.Doc.Pattern.Mitt
}
