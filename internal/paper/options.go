package paper

import (
	"net/url"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/makeup"
)

// Piece is one of the pieces that a handout is composed of.
type Piece string

// The pieces of a handout, in their usual order.
const (
	Plan     Piece = "plan"
	Own      Piece = "own"
	Chart    Piece = "chart"
	Digits   Piece = "fingers"
	Key      Piece = "key"
	Lesson   Piece = "how"
	Words    Piece = "words"
	Ticks    Piece = "ticks"
	Curve    Piece = "curve"
	Notes    Piece = "notes"
	Cautions Piece = "cautions"
)

// Pieces returns all pieces, in their usual order.
func Pieces() []Piece {
	return []Piece{Plan, Own, Chart, Digits, Key, Lesson, Words, Ticks, Curve, Notes, Cautions}
}

// Words returns the piece's name as it is shown.
func (p Piece) Words() string {
	return map[Piece]string{
		Plan: "Plan with the hand", Lesson: "How it is worked, drawn", Chart: "Chart", Digits: "Charts of fingers and thumb", Key: "Key to the chart", Words: "Words",
		Ticks: "Boxes to tick, round by round", Curve: "Fit curve", Own: "Lines for own numbers", Notes: "Notes, with ruled lines", Cautions: "Cautions",
	}[p]
}

// usual are the pieces that are printed if none are chosen.
var usual = []Piece{Plan, Own, Chart, Key, Lesson, Words, Cautions}

// Options say how a handout is printed. The zero value is not usable; begin with
// Usual.
type Options struct {
	Paper    Size
	Sideways bool
	Large    bool    // large print: 18 pt, cells of 6.5 mm
	Grey     bool    // for a copier: greys that are far apart
	Double   bool    // printed on both sides: every handout begins on an odd page
	FromLeft bool    // for knitting from left to right
	Boxed    bool    // of motifs that repeat, charts show one, boxed
	Cell     float64 // width of a chart's cell in mm; 0: as large as fits
	Pieces   []Piece // those to print, in order
}

// Sheets returns the number of sheets of paper that so many pages take.
func (o Options) Sheets(pages int) int { return o.sides().Sheets(pages) }

// Facing returns the page of a handout that lies open beside a page, both counted from
// 1; 0 if none does.
func (o Options) Facing(page, pages int) int { return o.sides().Facing(page, pages) }

func (o Options) sides() makeup.Area { return makeup.Area{BothSides: o.Double} }

// Usual returns the options if none are chosen.
func Usual() Options { return Options{Paper: A4, Pieces: slices.Clone(usual)} }

// Widths of a cell in mm: the range that can be asked for, and that of large print.
const (
	SmallestCell = 2.0
	LargestCell  = 20.0
	largeCell    = 6.5
)

// Read reads options from an address or a form: paper, sideways, large, grey,
// double, boxed, cell, knits=left, and either pieces, a list in order, or a place for each
// piece, such as place-plan=1, where pieces without a place are left out. Faults
// name the field; the options hold what was valid.
func Read(q url.Values) (Options, error) {
	o := Usual()
	var faults fault.Fields
	if name := q.Get("paper"); name != "" {
		size, ok := SizeNamed(name)
		if !ok {
			faults.Add("paper", "is %.20q; choose a4 or letter", name)
		} else {
			o.Paper = size
		}
	}
	for name, flag := range map[string]*bool{"sideways": &o.Sideways, "large": &o.Large, "grey": &o.Grey, "double": &o.Double, "boxed": &o.Boxed} {
		*flag = q.Get(name) != ""
	}
	o.FromLeft = q.Get("knits") == "left"
	if text := strings.TrimSpace(q.Get("cell")); text != "" {
		mm, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(mm >= SmallestCell && mm <= LargestCell) {
			faults.Add("cell", "is %.20q; write a width from %g to %g mm, such as 5, or leave it empty", text, SmallestCell, LargestCell)
		} else {
			o.Cell = mm
		}
	}
	o.readPieces(q, &faults)
	return o, faults.Err()
}

// readPieces reads the pieces and their order.
func (o *Options) readPieces(q url.Values, faults *fault.Fields) {
	if q.Has("pieces") {
		o.Pieces = nil
		for _, name := range strings.FieldsFunc(q.Get("pieces"), func(r rune) bool { return r == ',' || r == ' ' }) {
			p := Piece(name)
			if !slices.Contains(Pieces(), p) {
				faults.Add("pieces", "has %.20q; choose among %s", name, pieceList())
			} else if !slices.Contains(o.Pieces, p) {
				o.Pieces = append(o.Pieces, p)
			}
		}
	} else if places, any := placesOf(q, faults); any {
		o.Pieces = places
	}
	if len(o.Pieces) == 0 {
		faults.Add("pieces", "is empty, so there is nothing to print; choose at least one part")
		o.Pieces = slices.Clone(usual)
	}
}

func pieceList() string {
	var names []string
	for _, p := range Pieces() {
		names = append(names, string(p))
	}
	return strings.Join(names, ", ")
}

// placesOf reads the places of pieces; any is false if the query has none.
func placesOf(q url.Values, faults *fault.Fields) (list []Piece, any bool) {
	places := map[Piece]float64{}
	for _, p := range Pieces() {
		name := "place-" + string(p)
		any = any || q.Has(name)
		text := strings.TrimSpace(q.Get(name))
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < 1 || n > 99 {
			faults.Add(name, "is %.20q; write its place from 1, or leave it empty to leave it out", text)
			continue
		}
		places[p] = float64(n)
		list = append(list, p)
	}
	slices.SortStableFunc(list, func(a, b Piece) int { return int(places[a] - places[b]) })
	return list, any
}

// Query returns options as a query for Read.
func (o Options) Query() url.Values {
	q := url.Values{"paper": {o.Paper.Name}}
	for name, on := range map[string]bool{"sideways": o.Sideways, "large": o.Large, "grey": o.Grey, "double": o.Double, "boxed": o.Boxed} {
		if on {
			q.Set(name, "1")
		}
	}
	if o.FromLeft {
		q.Set("knits", "left")
	}
	if o.Cell > 0 {
		q.Set("cell", strconv.FormatFloat(o.Cell, 'f', -1, 64))
	}
	names := make([]string, len(o.Pieces))
	for i, p := range o.Pieces {
		names[i] = string(p)
	}
	q.Set("pieces", strings.Join(names, ","))
	return q
}

// Has reports whether a piece is printed.
func (o Options) Has(p Piece) bool { return slices.Contains(o.Pieces, p) }

// Place returns the place of a piece, from 1; 0 if it is left out.
func (o Options) Place(p Piece) int { return slices.Index(o.Pieces, p) + 1 }

// page returns the size of a page, turned if it is printed sideways.
func (o Options) page() Size {
	if o.Sideways {
		return Size{o.Paper.Name, o.Paper.Height, o.Paper.Width}
	}
	return o.Paper
}

func (o Options) letters() letters {
	if o.Large {
		return large
	}
	return ordinary
}
