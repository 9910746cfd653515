package view

import (
	"net/url"
	"slices"
	"strings"

	"thenar/internal/hand"
	"thenar/internal/mitt"
)

// fieldTable lays fields out as a table: so many of a group's first fields, row by row.
type fieldTable struct {
	Heads []string
	Lines []fieldLine
}

// fieldLine is a row of a table of fields: of a finger.
type fieldLine struct {
	Name  string
	Paths []string // one for each head; empty: none
}

// eachFinger lists the fingers as a hand has them, from the index on.
var eachFinger = []hand.Finger{hand.Index, hand.Middle, hand.Ring, hand.Little}

// asWorked lists them in the order worked.
var asWorked = []hand.Finger{hand.Little, hand.Ring, hand.Middle, hand.Index}

// fingerName returns what a finger is called, at the beginning of a line.
func fingerName(f hand.Finger) string { return capital(mitt.PartOfFinger(f).Words()) }

// bareFinger returns what a finger is called beside another: "ring".
func bareFinger(f hand.Finger) string {
	return strings.TrimSuffix(mitt.PartOfFinger(f).Words(), " finger")
}

// fingerGroup is the measurements of the fingers, which only a glove needs.
func fingerGroup() Group {
	g := Group{
		Title: "Fingers", Folded: true,
		Note:  "One by one, without pulling. What you leave out is filled from the hand.",
		Table: &fieldTable{Heads: []string{"Girth", "Length"}},
	}
	for _, f := range eachFinger {
		name := fingerName(f)
		g.Fields = append(g.Fields,
			Field{Path: f.FieldGirth(), Label: name + ", girth", Help: "round its middle joint", Unit: unitSign},
			Field{Path: f.FieldLength(), Label: name + ", length", Help: lengthHelp[f], Unit: unitSign})
		g.Table.Lines = append(g.Table.Lines, fieldLine{name, []string{f.FieldGirth(), f.FieldLength()}})
	}
	for i, f := range eachFinger[:len(eachFinger)-1] {
		next := eachFinger[i+1]
		g.Fields = append(g.Fields, Field{
			Path: f.FieldCrotch(), Label: "Wrist to " + bareFinger(f) + " and " + bareFinger(next),
			Help: "from the wrist crease straight up to where they part", Unit: unitSign,
		})
	}
	return g
}

// lengthHelp says where the tape goes for a finger's length.
var lengthHelp = [...]string{
	hand.Index:  "from where it parts from the middle finger to its tip",
	hand.Middle: "from where it parts from its neighbours to its tip",
	hand.Ring:   "from half-way between its two partings to its tip",
	hand.Little: "from where it parts from the ring finger to its tip",
}

// fingerEnds are the ways to end a finger of a glove.
var fingerEnds = []Choice{{"", "to the tip"}, {string(mitt.HalfFinger), "half"}, {string(mitt.OpenFinger), "open"}}

// coveredFields are the choices of how far each finger of a glove is covered.
func coveredFields() []Field {
	var list []Field
	for _, f := range eachFinger {
		list = append(list, Field{Path: mitt.PathFinger(f), Label: fingerName(f), Usual: string(mitt.FullFinger), Choices: fingerEnds})
	}
	return append(
		list,
		Field{Path: mitt.PathThumbEnd, Label: "Thumb", Usual: string(mitt.FullFinger), Choices: fingerEnds},
		Field{Path: mitt.PathLower, Label: "Little finger parts", Usual: "true", Choices: []Choice{{"", "lower than the others"}, {"false", "level with the others"}}},
		Field{Path: mitt.PathCap, Label: "A mitten’s cap", Help: "over half fingers; it folds back", Usual: "false", Choices: []Choice{{"", "none"}, {"true", "over the half fingers"}}},
	)
}

// allCovered are the ways to cover all four fingers at once.
func allCovered() []Choice {
	var list []Choice
	for _, end := range fingerEnds {
		sets := url.Values{}
		for _, f := range eachFinger {
			sets.Set(mitt.PathFinger(f), end.Value)
		}
		list = append(list, Choice{sets.Encode(), end.Words})
	}
	return list
}

// pinTable lays the numbers of the fingers out: a line for each, in the order worked.
func pinTable() *fieldTable {
	t := &fieldTable{Heads: []string{"Palm", "Back", "Bridge", "In all", "Fewer", "Rounds"}}
	for _, f := range asWorked {
		line := fieldLine{Name: fingerName(f)}
		for _, n := range numbersOf(f) {
			path := ""
			if n != mitt.Rib {
				path = n.Path()
			}
			line.Paths = append(line.Paths, path)
		}
		t.Lines = append(t.Lines, line)
	}
	return t
}

// numbersOf lists the numbers of a finger that can be fixed, in the order of its line. The
// bridge is the one that it casts on for the next finger; the index finger, which is worked
// last, has none (mitt.Rib).
func numbersOf(f hand.Finger) []mitt.Number {
	bridge := mitt.Rib
	if f > hand.Index {
		bridge = mitt.OfBridge(int(f) - 1)
	}
	return []mitt.Number{
		mitt.OfFinger(mitt.FingerPalm, f), mitt.OfFinger(mitt.FingerBack, f), bridge,
		mitt.OfFinger(mitt.FingerStitches, f), mitt.OfFinger(mitt.FingerDecreases, f), mitt.OfFinger(mitt.FingerRounds, f),
	}
}

// besideFingers are the numbers that stand with those of the fingers, and belong to none.
var besideFingers = []mitt.Number{mitt.LittleLowerRounds, mitt.CapRounds, mitt.CapTopRounds}

// lineOf is the finger in whose line a number stands.
var lineOf = func() map[mitt.Number]hand.Finger {
	lines := map[mitt.Number]hand.Finger{}
	for _, f := range eachFinger {
		for _, n := range numbersOf(f) {
			if n != mitt.Rib {
				lines[n] = f
			}
		}
	}
	return lines
}()

// fingerPinFields are the fields of the numbers of the fingers, those of the table first.
func fingerPinFields() []Field {
	var list []Field
	for _, f := range asWorked {
		for _, n := range numbersOf(f) {
			if n != mitt.Rib {
				list = append(list, Field{Path: n.Path(), Label: n.Label(), Help: n.Help()})
			}
		}
	}
	for _, n := range besideFingers {
		list = append(list, Field{Path: n.Path(), Label: n.Label(), Help: n.Help()})
	}
	return list
}

// onlyFingers makes a field one that only a mitt with fingers has a use for.
func onlyFingers(w mitt.Names, f Field) Field {
	f.Useless = !w.Kind.Fingered()
	return f
}

// onlyCapped says that a field is of no use without a cap.
func onlyCapped(w mitt.Names, f Field) Field {
	f.Useless = !w.Has(mitt.CapRounds)
	return f
}

// fingerPaths lists the fields that only a mitt with fingers has a use for, but its numbers.
func fingerPaths() []string {
	list := hand.FieldsOfFingers()
	for _, f := range coveredFields() {
		list = append(list, f.Path)
	}
	return list
}

// ofFingers reports whether a number stands with those of the fingers.
func ofFingers(n mitt.Number) bool {
	_, ok := lineOf[n]
	return ok || slices.Contains(besideFingers, n)
}

// fingerNumberOf returns what a number says of a finger; ok is false for every other number.
func fingerNumberOf(n mitt.Number) (what mitt.FingerNumber, f hand.Finger, ok bool) {
	for _, f := range eachFinger {
		for _, what := range []mitt.FingerNumber{mitt.FingerPalm, mitt.FingerBack, mitt.FingerStitches, mitt.FingerDecreases, mitt.FingerRounds} {
			if mitt.OfFinger(what, f) == n {
				return what, f, true
			}
		}
	}
	return 0, 0, false
}

// girthOfFinger reports whether a place is the girth of a finger, or of a cap over them.
func girthOfFinger(p mitt.Place) bool {
	if p == mitt.PlaceCap {
		return true
	}
	for _, f := range eachFinger {
		if girth, _ := mitt.PlacesOfFinger(f); girth == p {
			return true
		}
	}
	return false
}
