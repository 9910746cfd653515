package grade

import (
	"errors"
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/mitt"
	"thenar/internal/plain"
	"thenar/internal/sheet"
)

// Texts are what a person typed of the sizes of a design, by paths such as
// "sizes[0].name", "sizes[0].hand.hand_circumference", "sizes[0].pins.gusset_base",
// "pins.gusset_base" for all sizes, and "rules.price_mm2". Right or wrong, they are
// kept as typed; FromTexts says whether they can be used.
type Texts map[string]string

// The paths of the rules in Texts.
const (
	PathLength = "rules.length"
	PathPrice  = "rules.price_mm2"
)

// multiples begins the paths of multiples; the offset of one is at its path and ".offset".
const multiples = "rules.multiples."

// MultiplePaths returns the paths of the multiple of a number, and of its offset.
func MultiplePaths(n mitt.Number) (of, offset string) {
	return multiples + n.Key(), multiples + n.Key() + ".offset"
}

// multipleAt returns the number of which a path has the multiple, or the offset.
func multipleAt(path string) (n mitt.Number, offset, ok bool) {
	key, ok := strings.CutPrefix(path, multiples)
	key, offset = strings.CutSuffix(key, ".offset")
	n, known := mitt.NumberOf(key)
	return n, offset, ok && known && keepTo(n)
}

// SizePath returns the path of a field of a size, counted from 0.
func SizePath(i int, field string) string { return fmt.Sprintf("sizes[%d].%s", i, field) }

// ofSize finds the number of a size, and its field.
var ofSize = regexp.MustCompile(`^sizes\[(0|[1-9][0-9]?)\]\.(.+)$`)

// split returns the number and the field of a size's path.
func split(path string) (i int, field string, ok bool) {
	m := ofSize.FindStringSubmatch(path)
	if m == nil {
		return 0, "", false
	}
	i, _ = strconv.Atoi(m[1])
	return i, m[2], i < MaxSizes
}

// Known reports whether Texts may hold a value at a path.
func Known(path string) bool {
	if _, field, ok := split(path); ok {
		return field == "name" || fixes(field) || sheet.Known(field) && (strings.HasPrefix(field, "hand.") || strings.HasPrefix(field, "gauge.swatches["))
	}
	_, _, multiple := multipleAt(path)
	return path == PathLength || path == PathPrice || multiple || fixes(path)
}

// fixes reports whether a path is that of a fixed number.
func fixes(path string) bool {
	_, ok := mitt.NumberAt(path)
	return ok
}

// Given returns the trimmed text at a path, or "" if it was not given.
func (t Texts) Given(path string) string { return strings.TrimSpace(t[path]) }

// Sizes returns how many sizes there are: up to the last of which anything is given.
func (t Texts) Sizes() int {
	n := 0
	for path := range t {
		if i, _, ok := split(path); ok && t.Given(path) != "" {
			n = max(n, i+1)
		}
	}
	return n
}

// Check refuses what can't be kept: a path that no design has, a text that is too
// long or holds control characters. It does not check numbers.
func (t Texts) Check(faults *fault.Fields) {
	for path, text := range t {
		if !Known(path) {
			faults.Add("design", "has no field of this name: %.60q", path)
		} else if why := plain.Line(text, sheet.LongestText); why != "" {
			faults.Add(path, "%s", why)
		}
	}
}

// FromTexts returns the design of a sheet and of what was typed of its sizes. Faults
// name the paths of the texts.
func FromTexts(s sheet.Sheet, t Texts) (*Design, error) {
	d := &Design{Sheet: s, All: sheet.Sheet{}, Pins: map[string]sheet.Sheet{}}
	d.Sizes = make([]Size, t.Sizes())
	pins := make([]sheet.Sheet, len(d.Sizes))
	for i := range d.Sizes {
		d.Sizes[i] = Size{Name: t.Given(SizePath(i, "name")), Hand: sheet.Sheet{}}
		pins[i] = sheet.Sheet{}
	}
	var faults fault.Fields
	for path := range t {
		text := t.Given(path)
		i, field, ok := split(path)
		switch {
		case text == "":
		case ok && fixes(field):
			pins[i][field] = text
		case ok && field != "name":
			d.Sizes[i].Hand[field] = text
		case fixes(path):
			d.All[path] = text
		case path == PathLength:
			d.Rules.Length = Lengthening(text)
		case path == PathPrice:
			price, ok := sheet.Count(text)
			if !ok {
				faults.Add(path, "is %.40q; write a number of mm², such as 25", text)
			}
			d.Rules.Price = &price
		}
	}
	d.Rules.Multiples = t.multiples(&faults)
	for i := range d.Sizes {
		d.Sizes[i].Hand.OverGaugeIn(s.Unit())
	}
	for i, p := range pins {
		if len(p) > 0 {
			d.Pins[d.Sizes[i].Name] = p
		}
	}
	var checked, own fault.Fields
	if errors.As(d.check(), &checked); len(faults)+len(checked) == 0 {
		return d, nil
	}
	// Whoever mends these should see what else is wrong at once.
	if !slices.ContainsFunc(checked, func(f fault.Field) bool { return strings.HasSuffix(f.Path, ".name") }) {
		_, err := d.Sheets()
		errors.As(err, &own)
	}
	return nil, slices.Concat(faults, checked, own)
}

// multiples reads the multiples; nil if there are none.
func (t Texts) multiples(faults *fault.Fields) (list map[mitt.Number]Multiple) {
	for _, path := range t.Paths() {
		n, isOffset, ok := multipleAt(path)
		if !ok || t.Given(path) == "" {
			continue
		}
		value, err := strconv.Atoi(t.Given(path))
		of, _ := MultiplePaths(n)
		switch {
		case err != nil:
			faults.Add(path, "is %.40q; write a whole number such as 6", t[path])
			continue
		case isOffset && t.Given(of) == "":
			faults.Add(of, "is missing beside its offset; write the multiple, too, or leave both empty")
			continue
		case list == nil:
			list = map[mitt.Number]Multiple{}
		}
		m := list[n]
		if isOffset {
			m.Offset = value
		} else {
			m.Of = value
		}
		list[n] = m
	}
	return list
}

// Typed returns faults of a design under the paths at which its texts were typed.
func (t Texts) Typed(faults fault.Fields) fault.Fields {
	list := slices.Clone(faults)
	for n := range list {
		path, ok := strings.CutPrefix(list[n].Path, mitt.PathPins+".")
		if !ok {
			continue
		}
		if key, ok := strings.CutPrefix(path, forAll+"."); ok {
			list[n].Path = mitt.PathPins + "." + key
		}
		for i := range t.Sizes() {
			if key, ok := strings.CutPrefix(path, t.Given(SizePath(i, "name"))+"."); ok {
				list[n].Path = SizePath(i, mitt.PathPins+"."+key)
			}
		}
	}
	return list
}

// Paths lists the paths of t in order.
func (t Texts) Paths() []string { return slices.Sorted(maps.Keys(t)) }
