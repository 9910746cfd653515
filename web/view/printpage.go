package view

import (
	"fmt"
	"path"

	"github.com/a-h/templ"

	"thenar/internal/paper"
	"thenar/internal/roster"
	"thenar/internal/sheet"
	"thenar/internal/words"
)

// Print is the page of printed sheets: the pages as they come out of the
// printer, and above them the form that lays them out.
type Print struct {
	Title    string
	Back     string // address and name of what it belongs to
	BackName string
	Action   string // address of the page, without its options
	File     string // the same as a PDF
	Options  paper.Options
	Handout  bool   // of pieces that can be chosen
	Class    bool   // of several handouts
	Motifs   bool   // whether charts may show one motif of many, boxed
	Keep     string // where the options are kept; empty: nowhere
	Kept     bool   // these are the options that are kept
	Fields   []PrintField
	Hidden   map[string]string // what else stands in the address
	More     []Choice          // other sheets, by their addresses
	Takes    []Choice          // files to take along, by their addresses
	Faults   map[string]string
	Typed    func(name string) string // as it was typed, to stand at a fault
	Pages    []string                 // SVG, sized in mm
	Held     int                      // how many of the pages, the last ones, come only after this page
	Rest     string                   // address of these
	Lacking  string                   // letters for which a PDF has no shape
	Trouble  []string                 // why there is nothing to print, or less
	Asks     []sheet.Question         // that have to be answered first
	Answers  string                   // where the answers go

	Part         roster.Part   // the part of a class that is shown
	Parts, Files []roster.Part // the parts of the class that fit a page, and those that fit a PDF
}

// PrintField is a field that only one kind of sheet has.
type PrintField struct {
	Name, Label, Unit, Value string
	Hint                     string   // what an empty one stands for
	Choices                  []Choice // of a select; a text field if there are none
	Tick                     bool     // a box to tick, whose value is 1 or nothing
}

func (p Print) query() string {
	q := p.Options.Query()
	for _, f := range p.Fields {
		q.Set(f.Name, f.Value)
	}
	for name, value := range p.Hidden {
		q.Set(name, value)
	}
	return q.Encode()
}

// partHref returns the address at which a part of a class is printed, laid out
// as here.
func (p Print) partHref(action string, part roster.Part) templ.SafeURL {
	q := p.Options.Query()
	q.Set("students", part.String())
	return templ.SafeURL(action + "?" + q.Encode())
}

func (p Print) pdf() templ.SafeURL { return templ.SafeURL(p.File + "?" + p.query()) }

// sheetClass returns the CSS class of the paper.
func (p Print) sheetClass() string {
	name := "paper paper-" + p.Options.Paper.Name
	if p.Options.Sideways {
		name += "-sideways"
	}
	if p.Options.Double {
		name += " both-sides"
	}
	return name
}

// maxAtOnce is the number of bytes of sheets that come with their page. Packed,
// they are about a seventh of it.
const maxAtOnce = 300_000

// Hold holds back the sheets that would make the page heavy. They are at the
// address that it notes.
func (p *Print) Hold(address string) {
	bytes := 0
	for i, page := range p.Pages {
		if bytes += len(page); bytes > maxAtOnce && i > 1 {
			p.HoldFrom(i)
			p.Rest = fmt.Sprintf("%s?from=%d&%s", address, i, p.query())
			return
		}
	}
}

// HoldFrom holds back all sheets from one on, counted from 0.
func (p *Print) HoldFrom(first int) { p.Held = max(len(p.Pages)-first, 0) }

// everything returns the address of the page with all its sheets.
func (p Print) everything() templ.SafeURL { return templ.SafeURL(p.Action + "?all=1&" + p.query()) }

// facing returns the numbers of pages in pairs, as they lie side by side: on one side
// of the paper the first beside the second; on both the first alone, since its back
// faces the front of the next sheet.
func facing(pages int, bothSides bool) (pairs [][]int) {
	o := paper.Options{Double: bothSides}
	for n := 1; n <= pages; {
		pair := []int{n}
		if n < pages && (!bothSides || o.Facing(n, pages) == n+1) {
			pair = append(pair, n+1)
		}
		pairs = append(pairs, pair)
		n += len(pair)
	}
	return pairs
}

func pageID(i int) string { return fmt.Sprintf("page-%d", i+1) }

func pageLabel(p Print, i int) string { return fmt.Sprintf("Page %d of %d", i+1, len(p.Pages)) }

// pagesText counts the pages, and on both sides of the paper the sheets.
func pagesText(p Print) string {
	n := len(p.Pages)
	switch {
	case n == 0:
		return "no page yet"
	case !p.Options.Double:
		return words.Plural(n, "page")
	}
	text := words.Plural(n, "page") + " on " + words.Plural(p.Options.Sheets(n), "sheet")
	if n > 2 {
		text += "; 2 lies beside 3"
	}
	return text
}

// papers are the papers to choose from.
func papers() (list []Choice) {
	for _, size := range paper.Papers() {
		list = append(list, Choice{size.Name, size.Words()})
	}
	return list
}

func tickValue(on bool) string {
	if on {
		return "1"
	}
	return ""
}

func knitsValue(fromLeft bool) string {
	if fromLeft {
		return "left"
	}
	return ""
}

// cellText returns the width of a cell as it is typed, or "" for as large as
// fits.
func cellText(o paper.Options) string { return o.Query().Get("cell") }

func placeText(o paper.Options, piece paper.Piece) string {
	if n := o.Place(piece); n > 0 {
		return fmt.Sprint(n)
	}
	return ""
}

// isFile reports whether an address is that of a file.
func isFile(address string) bool { return path.Ext(address) != "" }
