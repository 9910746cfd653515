package view

import (
	"cmp"
	"fmt"
	"math"
	"net/url"
	"slices"
	"strconv"

	"thenar/internal/app"
	"thenar/internal/fault"
	"thenar/internal/grade"
	"thenar/internal/mitt"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// DesignBelow is the address of a mitt's sizes, below that of the mitt.
const DesignBelow = "/design"

// Design is the page of a mitt in its sizes.
type Design struct {
	app.Design
	Message string // why nothing was saved

	Proofs Print    // the pages
	Begins []string // what begins on each of them

	Asked   url.Values         // what stood in fields that no mitt keeps
	Classes []app.ClassOfSizes // that sizes may be taken from
}

// Bar returns the bar of the page.
func (d Design) Bar() Bar { return roomBar(d.ID, d.Doc.Name, PatternDesk) }

// NewPatternPrint returns the pages of a mitt in all its sizes.
func NewPatternPrint(id int64, s app.Sheets) Print {
	return newMittPrint(id, s, "", DesignBelow+"/print")
}

// nested draws the sizes that can be made over each other; "" if none can.
func (d Design) nested() string {
	var list []picture.NestedSize
	for _, s := range d.Graded.Sizes {
		if s.Plan != nil {
			list = append(list, picture.NestedSize{Name: s.Name, Plan: s.Plan})
		}
	}
	if len(list) == 0 {
		return ""
	}
	return SVG(picture.Nested(list, d.Doc.Side == project.Left, 6), false)
}

// fault returns what is wrong with a field.
func (d Design) fault(path string) string { return d.Faults.Of(path) }

// elsewhere returns what is wrong that has no field in the form.
func (d Design) elsewhere() []string {
	var list []string
	for _, f := range d.Faults {
		if !d.shows(f.Path) {
			list = append(list, d.why(fault.Fields{f})...)
		}
	}
	if len(d.Faults) == 0 && d.Fault != nil {
		list = append(list, fault.Message(d.Fault))
	}
	return list
}

// notch is one common text to choose.
type notch struct {
	label, set, pays string
	taken            bool
}

// notches lists the common texts, from each size's own best to the fewest changes.
func (d Design) notches() []notch {
	var list []notch
	for i, n := range d.Graded.Notches {
		at := notch{label: fmt.Sprintf("%.1f", math.Sqrt(n.From)), taken: i == d.Graded.At}
		switch {
		case i == 0:
			at.label = "own best"
		case n.Changes == 0:
			at.label = "one text"
		}
		// The next thousandth of a mm² at which it is the best.
		at.set = grade.PathPrice + "=" + strconv.FormatFloat(math.Ceil(n.From*1000)/1000, 'f', -1, 64)
		worst := slices.Max(append([]float64{0}, n.Pays...))
		at.pays = fmt.Sprintf("%s, at most %.1f mm for a size", words.Plural(n.Changes, "change"), worst)
		list = append(list, at)
	}
	return list
}

// sumUp says what the common text comes to.
func (d Design) sumUp() string {
	var split []string
	for _, s := range d.Graded.Splits {
		if len(s.Groups) > 1 {
			split = append(split, textNames[s.Number])
		}
	}
	said := "One text for all sizes."
	if len(split) > 0 {
		said = fmt.Sprintf("%s split: %s.", words.Plural(len(split), "number"), words.Listed(split))
		if len(split) == 1 {
			said = fmt.Sprintf("One number splits: %s.", split[0])
		}
	}
	worst := slices.MaxFunc(d.Graded.Sizes, func(a, b grade.Planned) int { return cmp.Compare(a.Pays, b.Pays) })
	if worst.Pays >= 0.05 {
		said += fmt.Sprintf(" Size %s pays most, %.1f mm.", worst.Name, worst.Pays)
	} else {
		said += " Nobody pays for it."
	}
	return said
}

// textNames are what the numbers of the common text are called on this page.
var textNames = map[mitt.Number]string{
	mitt.GussetBase: "base", mitt.BridgeStitches: "bridge", mitt.PickedUp: "pick up", mitt.ThumbDecreases: "decrease", mitt.Rhythm: "increase every",
}
