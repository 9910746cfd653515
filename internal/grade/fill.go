package grade

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/sheet"
	"thenar/internal/units"
)

// Set is a set of hands that a design's sizes may be filled with.
type Set string

// The sets: the glove sizes of the standard, and children by their age.
const (
	GloveSizes Set = "glove_sizes"
	Children   Set = "children"
)

// Fill puts the sizes of a set in place of those of t, from one to another, in
// steps; u is the unit in which lengths are typed. What is typed beside the sizes
// stays.
func (t Texts) Fill(set Set, from, to, step float64, u units.Unit) (Texts, error) {
	var names []string
	var hands []sheet.Sheet
	if !(step > 0) || !(to >= from) || (to-from)/step > 100 {
		return nil, fault.Fields{{Path: "fill", Message: "needs a first and a last size, and steps above 0 between them"}}
	}
	switch set {
	case GloveSizes:
		for _, n := range steps(from, to, step) {
			text := strconv.FormatFloat(n, 'f', -1, 64)
			names, hands = append(names, text), append(hands, sheet.Sheet{hand.FieldSize: text})
		}
	case Children:
		for _, a := range hand.Ages() {
			if float64(a.Years) < from || float64(a.Years) > to || math.Mod(float64(a.Years)-from, step) != 0 {
				continue
			}
			names = append(names, fmt.Sprintf("%d years", a.Years))
			hands = append(hands, sheet.Sheet{
				hand.FieldBreadth: a.Breadth.Exact(u), hand.FieldLength: a.Length.Exact(u),
				hand.FieldWrist: a.Wrist.Exact(u), hand.FieldThumbLength: a.ThumbLength.Exact(u),
			})
		}
	}
	switch {
	case len(names) == 0:
		return nil, fault.Fields{{Path: "fill", Message: "finds no sizes there; glove sizes go from 4 to 13, children from 3 to 13 years"}}
	case len(names) > MaxSizes:
		return nil, fault.Fields{{Path: "fill", Message: fmt.Sprintf("gives %d sizes; %d are the most. Take wider steps", len(names), MaxSizes)}}
	}
	sizes := make([]Size, len(names))
	for i, name := range names {
		sizes[i] = Size{name, hands[i]}
	}
	return t.Take(sizes), nil
}

// Take puts sizes in place of those of t. Names are made such as sizes can have, each its
// own. What is typed beside the sizes stays.
func (t Texts) Take(sizes []Size) Texts {
	out := t.clone()
	maps.DeleteFunc(out, func(path, _ string) bool { return ofSize.MatchString(path) })
	var names []string
	for i, size := range sizes {
		names = append(names, ownName(size.Name, names))
		out[SizePath(i, "name")] = names[i]
		for path, text := range size.Hand {
			out[SizePath(i, path)] = text
		}
	}
	return out
}

func (t Texts) clone() Texts {
	if t == nil {
		return Texts{}
	}
	return maps.Clone(t)
}

// ownName returns a name for a size that is like one that somebody has, other than all
// that are taken.
func ownName(name string, taken []string) string {
	name = strings.Join(strings.Fields(inLists.ReplaceAllString(name, " ")), " ")
	cut := func(room int) string {
		letters := []rune(name)
		return strings.TrimSpace(string(letters[:min(len(letters), room)]))
	}
	own := cut(LongestName)
	for n := 2; own == "" || own == forAll || slices.Contains(taken, own); n++ {
		number := " " + strconv.Itoa(n)
		own = strings.TrimSpace(cut(LongestName-len(number)) + number)
	}
	return own
}

// Without returns the texts without a size, by its number from 0; the later ones move up.
func (t Texts) Without(number string) Texts {
	at, err := strconv.Atoi(number)
	if err != nil {
		return t
	}
	out := Texts{}
	for path, text := range t {
		switch i, field, ok := split(path); {
		case !ok || i < at:
			out[path] = text
		case i > at:
			out[SizePath(i-1, field)] = text
		}
	}
	return out
}
