package grade

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// The bounds of a design. More sizes than twelve can't be told apart in one text.
const (
	MaxSizes    = 12
	LongestName = 12 // characters in the name of a size
	MaxPrice    = 10_000.0
	MaxMultiple = 100
)

// Design is one mitt in several sizes: what a designer decided for all of them, and
// for each.
type Design struct {
	Sheet sheet.Sheet // kind, gauge, eases, lengths, multiples; its hand is the one that its lengths are for
	Sizes []Size
	Rules Rules
	All   sheet.Sheet            // numbers fixed for all sizes, by their paths
	Pins  map[string]sheet.Sheet // numbers fixed for one size, by its name

	Pattern map[string]string // what the designer wrote for the text, as a mitt's document has it
}

// Size is one size of a design: a hand, by the paths of a sheet, and a gauge of its
// own if it is knitted in another yarn.
type Size struct {
	Name string
	Hand sheet.Sheet
}

// Lengthening says how the lengths of a design's sheet go from size to size.
type Lengthening string

// The lengths of the sheet are its hand's, longer for longer hands, or the same for
// every size. The empty one is in proportion.
const (
	InProportion Lengthening = "in_proportion"
	FixedLengths Lengthening = "fixed"
)

// Rules are the designer's own.
type Rules struct {
	Length    Lengthening
	Price     *float64                 // of a change in the common text, in mm²; nil: as many as keep every size near its own best
	Multiples map[mitt.Number]Multiple // which numbers the hand and sections may have: a motif's width and height
}

// keepTo are the numbers that can keep to a multiple: the hand's stitches, and the rounds
// of sections.
func keepTo(n mitt.Number) bool { return n == mitt.HandStitches || n.Measure() == mitt.InRounds }

// Multiplied lists the numbers of a mitt that can keep to a multiple.
func Multiplied(names mitt.Names) (list []mitt.Number) {
	for _, n := range mitt.Ladder() {
		if keepTo(n) && names.Has(n) {
			list = append(list, n)
		}
	}
	return list
}

// forAll is what the pins of all sizes are called in a file, so no size has this name.
const forAll = "all"

// inLists finds what a name can't have that stands in lists: "Sizes S, M and L: ".
var inLists = regexp.MustCompile(`[(),:\n\r\t]|\band\b`)

// Multiple is a set of whole numbers: Offset, and every Of from there.
type Multiple struct{ Of, Offset int }

// nearest returns the number of the set nearest to n, the larger at equal distance,
// that is at least one.
func (m Multiple) nearest(n int) int {
	down := n - ((n-m.Offset)%m.Of+m.Of)%m.Of
	if down >= 1 && n-down < m.Of-(n-down) {
		return down
	}
	return down + m.Of
}

// check refuses what can't be a design.
func (d *Design) check() error {
	var faults fault.Fields
	if len(d.Sizes) == 0 {
		faults.Add("sizes", `is empty; write at least one size, such as {"name": "7", "hand": {"hand_circumference": 19}}`)
	}
	if len(d.Sizes) > MaxSizes {
		faults.Add("sizes", "has %d sizes; %d are the most", len(d.Sizes), MaxSizes)
	}
	seen := map[string]int{}
	for i, s := range d.Sizes {
		path := fmt.Sprintf("sizes[%d].name", i)
		switch first, twice := seen[s.Name]; {
		case strings.TrimSpace(s.Name) == "":
			faults.Add(path, `is missing; write what the size is called, such as "7"`)
		case utf8.RuneCountInString(s.Name) > LongestName || inLists.MatchString(s.Name):
			faults.Add(path, "is %.40q; write at most %d characters, without brackets, commas, colons or “and”", s.Name, LongestName)
		case s.Name == forAll:
			faults.Add(path, "is %q, which means every size; give this one a name of its own", s.Name)
		case twice:
			faults.Add(path, "is %q, as that of size %d; give each size its own name", s.Name, first+1)
		}
		seen[s.Name] = i
	}
	for name := range d.Pins {
		if _, ok := seen[name]; !ok {
			faults.Add("pins."+clip(name), "is no size of this design; write all, or one of: %s", strings.Join(d.Names(), ", "))
		}
	}
	d.Rules.check(&faults)
	return faults.Err()
}

func (r *Rules) check(faults *fault.Fields) {
	switch r.Length {
	case "", InProportion, FixedLengths:
	default:
		faults.Add("rules.length", "is %.40q; write %s or %s", r.Length, InProportion, FixedLengths)
	}
	if p := r.Price; p != nil && !(*p >= 0 && *p <= MaxPrice) {
		faults.Add("rules.price_mm2", "is %g; write 0 for each size's own best, up to %g for one text", *p, MaxPrice)
	}
	for n, m := range r.Multiples {
		if m.Of < 1 || m.Of > MaxMultiple || m.Offset < 0 || m.Offset >= m.Of {
			faults.Add("rules.multiples."+n.Key(), "is %d and %d; write a multiple from 1 to %d, and an offset below it", m.Of, m.Offset, MaxMultiple)
		}
	}
}

func clip(text string) string {
	if r := []rune(text); len(r) > 40 {
		return string(r[:40]) + "…"
	}
	return text
}

// Names lists what the sizes are called, in their order.
func (d *Design) Names() []string {
	names := make([]string, len(d.Sizes))
	for i, s := range d.Sizes {
		names[i] = s.Name
	}
	return names
}

// Sheets returns the measure sheet of each size: that of the design with the size's
// hand, its own gauge if it has one, its lengths, the multiple of the hand, and the numbers
// that are fixed for it. What was knitted of the design's own mitt is no size's.
func (d *Design) Sheets() ([]sheet.Sheet, error) {
	list := make([]sheet.Sheet, len(d.Sizes))
	long, err := d.ownLength()
	if err != nil {
		return nil, err
	}
	var faults fault.Fields
	for i, size := range d.Sizes {
		s := d.Sheet.Clone()
		s.ForgetProgress()
		for path := range s {
			own := strings.HasPrefix(path, swatches) && size.ownGauge()
			if own || strings.HasPrefix(path, "hand.") && path != hand.FieldReference {
				delete(s, path)
			}
		}
		if m, ok := d.Rules.Multiples[mitt.HandStitches]; ok {
			s[handRepeat], s[handOffset] = strconv.Itoa(m.Of), strconv.Itoa(m.Offset)
		}
		for _, more := range []sheet.Sheet{size.Hand, d.All, d.Pins[size.Name]} {
			for path, text := range more {
				s[path] = text
			}
		}
		if long > 0 {
			lengthen(s, long)
		}
		if _, err := s.Request(); err != nil {
			for _, f := range d.faultsOf(size, err) {
				if !slices.Contains(faults, f) {
					faults = append(faults, f)
				}
			}
		}
		list[i] = s
	}
	return list, faults.Err()
}

// The paths of the swatches, and of the multiple of the hand and its offset, in a sheet.
const (
	swatches   = "gauge.swatches"
	handRepeat = "stitch.repeat"
	handOffset = "stitch.offset"
)

// ownGauge reports whether a size has a gauge of its own.
func (s Size) ownGauge() bool { return s.Hand.Rows(swatches) > 0 }

// faultsOf returns the faults of a size's sheet under the paths of the design: those of its
// hand and its gauge, of numbers that are fixed for it or for all, and of the sheet.
func (d *Design) faultsOf(size Size, err error) fault.Fields {
	_, multiple := d.Rules.Multiples[mitt.HandStitches]
	at := slices.IndexFunc(d.Sizes, func(s Size) bool { return s.Name == size.Name })
	own := fmt.Sprintf("sizes[%d]", at)
	var fields fault.Fields
	if !errors.As(err, &fields) {
		return fault.Fields{{Path: own, Message: fault.Message(err)}}
	}
	list := slices.Clone(fields)
	for n := range list {
		path, in := list[n].Path, "sheet."
		switch {
		case strings.HasPrefix(path, "hand."), strings.HasPrefix(path, swatches) && size.ownGauge():
			in = own + "."
		case multiple && (path == handRepeat || path == handOffset):
			path, in = mitt.HandStitches.Key(), multiples
		case d.Pins[size.Name].Given(path) != "":
			path, in = strings.TrimPrefix(path, mitt.PathPins+"."), mitt.PathPins+"."+size.Name+"."
		case d.All.Given(path) != "":
			path, in = strings.TrimPrefix(path, mitt.PathPins+"."), mitt.PathPins+"."+forAll+"."
		}
		list[n].Path = in + path
	}
	return list
}
