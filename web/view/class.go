package view

import (
	"fmt"
	"strings"

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
	Read    *roster.Table
	Added   int
	Twice   []string // names of the table that are in the class already
}

func (c Class) href(rest string) templ.SafeURL {
	return templ.SafeURL(fmt.Sprintf("/classes/%d%s", c.ID, rest))
}

// fixLabels are the numbers that a class can fix.
var fixLabels = map[string]string{
	"cast_on": "Cast on", "cuff_rounds": "Rounds of ribbing", "cuff_plain_rounds": "Plain rounds", "hand_stitches": "Stitches of the hand",
	"gusset_base": "Base of the gusset", "increases": "Increase rounds", "rhythm": "An increase every … round", "gusset_rounds": "Rounds of the gusset",
	"kept_on_hand": "Kept on the hand", "held": "Held stitches", "bridge": "Bridge", "picked_up": "Picked up", "rounds_above_gusset": "Rounds above the gusset",
}

// attention is how many lines somebody should look at.
func (c Class) attention() int {
	n := 0
	for i := range c.Lines {
		if c.Lines[i].Attention() {
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

// columnsLeft is what of a table was left out, in a sentence.
func (c Class) columnsLeft() string {
	var names []string
	for _, col := range c.Read.Columns {
		if col.Field == "" && col.Heading != "" {
			names = append(names, "“"+col.Heading+"”")
		}
	}
	if len(names) == 0 {
		return ""
	}
	return "Not used, since these headings mean nothing here: " + strings.Join(names, ", ") + "."
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
