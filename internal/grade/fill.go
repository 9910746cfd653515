package grade

import (
	"fmt"
	"maps"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"thenar/internal/fault"
	"thenar/internal/hand"
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
	var hands []map[string]string
	if !(step > 0) || !(to >= from) || (to-from)/step > 100 {
		return nil, fault.Fields{{Path: "fill", Message: "needs a first and a last size, and steps above 0 between them"}}
	}
	switch set {
	case GloveSizes:
		for _, n := range steps(from, to, step) {
			text := strconv.FormatFloat(n, 'f', -1, 64)
			names, hands = append(names, text), append(hands, map[string]string{hand.FieldSize: text})
		}
	case Children:
		for _, a := range hand.Ages() {
			if float64(a.Years) < from || float64(a.Years) > to || math.Mod(float64(a.Years)-from, step) != 0 {
				continue
			}
			names = append(names, fmt.Sprintf("%d years", a.Years))
			hands = append(hands, map[string]string{
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
	out := maps.Clone(t)
	if out == nil {
		out = Texts{}
	}
	maps.DeleteFunc(out, func(path, _ string) bool { return ofSize.MatchString(path) })
	for i, name := range names {
		out[SizePath(i, "name")] = name
		for path, text := range hands[i] {
			out[SizePath(i, path)] = text
		}
	}
	return out, nil
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

// Paste adds sizes from a list: a line for each, with its name, the circumference of
// the hand and, if it is known, the hand's length, apart by tabs, semicolons or spaces.
// A line whose second field is no number is a heading. Nothing is added if a line can't
// be read, or if there are too many.
func (t Texts) Paste(list string) (Texts, error) {
	out := maps.Clone(t)
	if out == nil {
		out = Texts{}
	}
	var faults fault.Fields
	n := t.Sizes()
	for number, line := range strings.Split(strings.ReplaceAll(list, "\r", ""), "\n") {
		fields := strings.FieldsFunc(line, func(r rune) bool { return r == '\t' || r == ';' })
		if len(fields) < 2 {
			fields = strings.Fields(line)
		}
		switch {
		case len(fields) == 0:
			continue
		case len(fields) < 2 || len(fields) > 3:
			faults.Add("list", "line %d has %d fields; write the size’s name, the hand’s circumference and, if you like, its length", number+1, len(fields))
			continue
		case !startsWithDigit(fields[1]):
			if number > 0 {
				faults.Add("list", "line %d: %.40q is no circumference; write a number such as 18.5", number+1, fields[1])
			}
			continue
		case n >= MaxSizes:
			faults.Add("list", "has more sizes than the %d that one text can hold", MaxSizes)
			return t, faults
		}
		out[SizePath(n, "name")] = strings.TrimSpace(fields[0])
		out[SizePath(n, hand.FieldCircumference)] = strings.TrimSpace(fields[1])
		if len(fields) == 3 {
			out[SizePath(n, hand.FieldLength)] = strings.TrimSpace(fields[2])
		}
		n++
	}
	if len(faults) == 0 && n == t.Sizes() {
		faults.Add("list", "is empty; write a line for each size, such as: 7 17.8")
	}
	return out, faults.Err()
}

func startsWithDigit(text string) bool {
	first, _ := utf8.DecodeRuneInString(strings.TrimSpace(text))
	return strings.ContainsRune("0123456789½¼¾⅓⅔⅛", first)
}
