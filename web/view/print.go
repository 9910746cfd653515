package view

import (
	"errors"
	"fmt"
	"maps"
	"strconv"
	"strings"

	"thenar/internal/app"
	"thenar/internal/fault"
)

// newPrint returns the page of printed sheets whose form is sent to action.
func newPrint(s app.Sheets, title, action string) Print {
	return Print{
		Title: title, Action: action, Options: s.Options, Typed: s.Typed.Get, Faults: Faults(s.Faults), Kept: s.Kept,
		Trouble: s.Trouble, Asks: s.Asks, File: action + ".pdf",
	}
}

// newMittPrint returns the page of sheets of a mitt, at an address below that
// of the mitt.
func newMittPrint(id int64, s app.Sheets, title, below string) Print {
	back := MittAt(id, "")
	p := newPrint(s, title+s.Name, back+below)
	p.Back, p.BackName = back, s.Name
	return p
}

// NewHandoutPrint returns the page of a mitt's handout.
func NewHandoutPrint(id int64, s app.Sheets) Print {
	p := newMittPrint(id, s, "Print ", "/print")
	p.Action = PatternDesk.At(id)
	p.Handout, p.Keep, p.File = true, p.Back+"/print", p.Back+"/print.pdf"
	p.Motifs = s.Motifs || s.Options.Boxed
	p.Answers = p.Back + "/sure"
	p.More = []Choice{{p.Back + DesignBelow, "Several sizes, one text"}, {p.Back + "/sizes", "Table of sizes"}, {p.Back + "/wall", "Wall chart"}, {"/paper/measure", "Measuring sheet"}, {"/paper/ruler", "Swatch ruler"}}
	p.Takes = []Choice{
		{p.Back + "/words.txt", "Words as plain text"},
		{p.Back + "/export.json", "The whole mitt as a file"},
		{ChartDesk.At(id) + "#chart-file-head", "Charts as SVG, PNG or PDF"},
	}
	return p
}

// NewWallPrint returns the page of a chart for the wall.
func NewWallPrint(id int64, c app.WallChart) Print {
	p := newMittPrint(id, c.Sheets, "Wall chart of ", "/wall")
	p.Fields = []PrintField{{Name: "cell", Label: "A stitch, wide", Unit: "mm", Value: c.Cell}}
	if c.View != "" {
		p.Hidden = map[string]string{"view": c.View}
	}
	return p
}

// NewBlankPrint returns the page of sheets that belong to no mitt and no class.
func NewBlankPrint(s app.Sheets, title, action string) Print {
	p := newPrint(s, title, action)
	p.Back, p.BackName = "/classes", "Classes"
	return p
}

// NewMeasuringPrint returns the page of the sheet on which a hand is measured.
func NewMeasuringPrint(m app.Measuring) Print {
	p := NewBlankPrint(m.Sheets, "Measuring sheet", "/paper/measure")
	p.Fields = []PrintField{{Name: "fingers", Label: "For a glove: the fingers, too", Tick: true, Value: tickValue(m.Fingers)}}
	return p
}

// NewGridPrint returns the page of grid paper.
func NewGridPrint(g app.Grid) Print {
	p := NewBlankPrint(g.Sheets, "Grid paper", "/paper/grid")
	p.Fields = []PrintField{
		{Name: "stitches", Label: "Stitches over 10 cm", Value: g.Stitches},
		{Name: "rounds", Label: "Rounds over 10 cm", Value: g.Rounds},
		{Name: "cell", Label: "A stitch, wide", Unit: "mm", Value: g.Cell},
	}
	p.Blame(g.GaugeFaults)
	return p
}

// NewClassPrint returns the page of a class set, or of one student of it.
func NewClassPrint(id int64, s app.ClassSheets, pdf bool) Print {
	back := fmt.Sprintf("/classes/%d", id)
	p := newPrint(s.Sheets, "Print "+s.Name, back+"/print")
	p.Back, p.BackName = back, s.Name
	p.Handout, p.Class, p.Keep = true, true, p.Action
	p.Motifs = s.Options.Boxed || s.Class.Pattern != nil && len(s.Class.Pattern.Sheet.Repeats()) > 0
	if at := s.Class.At(s.Student); at >= 0 {
		p.Title = "Print " + s.Class.Students[at].Name
		p.Hidden = map[string]string{"student": strconv.Itoa(s.Student)}
		p.Answers = fmt.Sprintf("%s/students/%d/sure", back, s.Student)
	}
	if len(s.Parts) > 0 {
		p.Hidden, p.Part = map[string]string{"students": s.Part.String()}, s.Part
		p.Parts, p.Files = s.Parts, s.Files
		if pdf {
			p.Title += ", " + s.Part.Words()
		}
	}
	return p
}

// typed returns what a field shows: its value, or, if that is faulty, what was
// typed.
func (p *Print) typed(name, value string) string {
	if p.Faults[name] != "" && p.Typed != nil {
		return p.Typed(name)
	}
	return value
}

// piecesFault reports whether one of the pieces has a message.
func (p *Print) piecesFault() bool {
	for name := range p.Faults {
		if name == "pieces" || strings.HasPrefix(name, "place-") {
			return true
		}
	}
	return false
}

// Blame puts each fault of the options at its field.
func (p *Print) Blame(err error) { maps.Copy(p.Faults, Faults(err)) }

// Faults returns the messages of an error by their fields.
func Faults(err error) map[string]string {
	list := map[string]string{}
	var fields fault.Fields
	if errors.As(err, &fields) {
		for _, f := range fields {
			list[f.Path] = f.Message
		}
	}
	return list
}
