package view

import (
	"cmp"
	"fmt"
	"slices"
	"sort"

	"thenar/internal/app"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// WhatIf is the page of a mitt and its second variant. The form on it is that
// of the variant.
type WhatIf struct {
	Mitt          // the second variant
	First         Answer
	Curves        [2]string // SVG, first and second
	Changed, Rows []Compared
}

// Compared is one value in both variants.
type Compared struct {
	Name, First, Second string
}

// Differs reports whether the two values differ.
func (c Compared) Differs() bool { return c.First != c.Second }

// whatIfForm is where the form of the second variant is sent, below the address
// of the mitt.
const whatIfForm = "/what-if"

// NewWhatIf returns the page that compares a mitt with its second variant.
func NewWhatIf(both app.WhatIf) WhatIf {
	// It shows the curves of both together, and so is drawn as a desk without drawings.
	b, first := NewMitt(both.Variant, PatternDesk, ChartAsk{}), AnswerOf(both.First, PatternDesk, ChartAsk{})
	b.Form, b.Desk = whatIfForm, FitDesk
	w := WhatIf{Mitt: b, First: first, Changed: decisions(both.First.Doc, b.Doc)}
	if first.Out == nil || b.Answer.Out == nil {
		return w
	}
	w.Rows = compare(first, b.Answer)
	w.Curves = curves(both.First.Doc, first, b.Answer)
	return w
}

// NewContestedWhatIf is NewContested for the second variant.
func NewContestedWhatIf(u app.UnsavedWhatIf) WhatIf {
	w := NewWhatIf(u.WhatIf)
	w.Conflict, w.Between = inBetween, Betweens(u.Variant.Doc, u.Saved, u.Was)
	return w
}

// decisions lists the fields in which the two sheets differ, by name.
func decisions(a, b project.Document) []Compared {
	paths := map[string]bool{}
	for _, s := range []project.Document{a, b} {
		for _, path := range s.Sheet.Paths() {
			paths[path] = true
		}
	}
	var list []Compared
	for path := range paths {
		first, second := shownAs(path, value(a, path)), shownAs(path, value(b, path))
		if first != second {
			list = append(list, Compared{Label(path), cmp.Or(first, "–"), cmp.Or(second, "–")})
		}
	}
	sort.Slice(list, func(i, j int) bool { return list[i].Name < list[j].Name })
	return list
}

// shownAs returns a value in the words of its option, as the form shows it.
func shownAs(path, text string) string {
	_, f, _, ok := find(path)
	if !ok || len(f.Choices) == 0 {
		return text
	}
	if text == "" {
		text = defaults[f.Path]
	}
	for _, c := range f.Choices {
		if c.Value == text {
			return c.Words
		}
	}
	return text
}

// compare lists the numbers of both plans in the order in which they are
// knitted, then how they fit, and the yarn.
func compare(a, b Answer) []Compared {
	var list []Compared
	at := map[string]int{}
	for _, r := range a.Out.Reasons {
		at[r.Key] = len(list)
		list = append(list, Compared{r.Name, r.Value, "–"})
	}
	for _, r := range b.Out.Reasons {
		if i, both := at[r.Key]; both {
			list[i].Second = r.Value
		} else {
			list = append(list, Compared{r.Name, "–", r.Value})
		}
	}
	add := func(name string, of func(Answer) string) { list = append(list, Compared{name, of(a), of(b)}) }
	add("increase rounds at", func(x Answer) string { return cmp.Or(rounds(x.Out.Plan.Gusset.IncreaseRounds), "–") })
	for _, name := range siteNames(a, b) {
		add("fabric: "+name, func(x Answer) string { return x.site(name) })
	}
	add("off what was wanted, on average", func(x Answer) string { return words.Size(x.Out.Summary.Mean, x.Unit) })
	add("off what was wanted, at worst", func(x Answer) string { return words.Size(x.Out.Summary.Worst, x.Unit) })
	add("chance that all fit", func(x Answer) string {
		return fmt.Sprintf("%s within %s", percent(x.Out.Summary.Chance), words.Size(x.Out.Tolerance, x.Unit))
	})
	add("yarn for the pair, metres", func(x Answer) string { return around(x.Out.Yarn.Pair.Metres()) })
	return list
}

// siteNames returns the places at which either variant is measured for fit, in
// the order of the variant with more of them.
func siteNames(a, b Answer) []string {
	more, less := a.Out.Summary.Sites, b.Out.Summary.Sites
	if len(less) > len(more) {
		more, less = less, more
	}
	var names []string
	for _, s := range slices.Concat(more, less) {
		if !slices.Contains(names, s.Name) {
			names = append(names, s.Name)
		}
	}
	return names
}

// site returns the girth of the fabric at a place, with its interval.
func (a Answer) site(name string) string {
	for _, s := range a.Out.Summary.Sites {
		if s.Name == name {
			return a.length(s.Fabric) + " ± " + a.half(s)
		}
	}
	return "–"
}

// curves draws the fit curve of each variant, with the other's fabric in it,
// both at the same height.
func curves(doc project.Document, a, b Answer) [2]string {
	frame := func(x Answer) (height, foot float64) {
		return picture.Frame(x.Out.Plan, picture.HandOptions{Left: doc.Side == project.Left, Unit: x.Unit})
	}
	heightA, footA := frame(a)
	heightB, footB := frame(b)
	foot := max(footA, footB)
	height := foot + max(heightA-footA, heightB-footB)
	draw := func(x, other Answer) string {
		return SVG(picture.FitCurve(x.Out.Fit, x.Out.Plan, picture.FitOptions{
			Left: doc.Side == project.Left, Unit: x.Unit, Half: x.Out.Summary.Half, Height: height, Foot: foot,
			Other: other.Out.Fit, Tolerance: x.Out.Tolerance,
		}), false)
	}
	return [2]string{draw(a, b), draw(b, a)}
}
