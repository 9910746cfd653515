package project

import (
	"cmp"
	"slices"
	"strconv"

	"thenar/internal/chart"
	"thenar/internal/sheet"
)

// Palette returns the yarns of the document's chart.
func (d Document) Palette() chart.Palette {
	settings := d.Sheet.Settings()
	return palette(settings.Chart.Yarns[:])
}

// palette returns the built-in yarns, changed as the sheet says, and those
// further ones of which the sheet says anything.
func palette(given []sheet.ChartYarn) chart.Palette {
	var p chart.Palette
	for i, y := range given {
		one := chart.Yarn{ID: chart.ID(i), Name: "yarn " + chart.ID(i)}
		if i < len(chart.Yarns) {
			one = chart.Yarns[i]
		} else if y == (sheet.ChartYarn{}) {
			continue
		}
		one.Name, one.Fill, one.Held = cmp.Or(y.Name, one.Name), cmp.Or(y.Colour, one.Fill), cmp.Or(chart.Held(y.Held), one.Held)
		p = append(p, one)
	}
	return p
}

// OwnYarns returns the yarns whose name or colour a person chose, without the
// hand that holds them.
func (d Document) OwnYarns() chart.Palette {
	var own chart.Palette
	for i, y := range d.Sheet.Settings().Chart.Yarns {
		if y.Name == "" && y.Colour == "" {
			continue
		}
		one := chart.Yarn{ID: chart.ID(i), Name: y.Name, Fill: y.Colour}
		if i < len(chart.Yarns) {
			one.Name, one.Fill = cmp.Or(one.Name, chart.Yarns[i].Name), cmp.Or(one.Fill, chart.Yarns[i].Fill)
		}
		own = append(own, one)
	}
	return own
}

// Brought returns the yarns of another mitt as they would be laid into the empty
// places of this one: under its own letter if that is free, else in the first
// place left. Yarns that are here already, or find no place, are left out.
func (d Document) Brought(marks chart.Marks, from Document) chart.Palette {
	here, empty := d.Palette(), d.EmptyPlaces(marks)
	var laid, others chart.Palette
	for _, y := range from.OwnYarns() {
		known := func(own chart.Yarn) bool {
			return own.Name == y.Name && own.Fill == y.Fill && !slices.Contains(empty, own.ID)
		}
		if slices.ContainsFunc(here, known) {
			continue
		}
		if i := slices.Index(empty, y.ID); i >= 0 {
			empty = slices.Delete(empty, i, i+1)
			laid = append(laid, y)
		} else {
			others = append(others, y)
		}
	}
	for i := range min(len(others), len(empty)) {
		laid = append(laid, inPlace(others[i], empty[i]))
	}
	return laid
}

// inPlace returns a yarn as it is laid into another place. Where that has a
// built-in yarn, one without a name is called by its place, and one without a
// colour gets that of bare paper.
func inPlace(y chart.Yarn, to string) chart.Yarn {
	y.ID = to
	if built, ok := chart.Yarns.Named(to); ok {
		y.Name = cmp.Or(y.Name, "yarn "+to)
		if built.Fill != "" {
			y.Fill = cmp.Or(y.Fill, "#FFFFFF")
		}
	}
	return y
}

// EmptyPlaces returns the IDs of the yarns of which the sheet says nothing and
// with which nothing is painted. The main colour is in use as soon as anything
// is painted, since it stands beside it.
func (d Document) EmptyPlaces(marks chart.Marks) []string {
	painted := map[string]bool{}
	for _, m := range marks {
		if m.Colour != "" {
			painted[m.Colour], painted[chart.ID(0)] = true, true
		}
	}
	laid := slices.Concat(d.Sheet.Knitted(string(Right)).Yarns(), d.Sheet.Knitted(string(Left)).Yarns())
	for _, one := range d.Sheet.Repeats() {
		laid = append(laid, one.Motif.Yarns()...)
	}
	for _, yarn := range laid {
		painted[yarn], painted[chart.ID(0)] = true, true
	}
	var empty []string
	for i := range chart.MaxYarns {
		id := chart.ID(i)
		given := d.Sheet.Given(YarnPath(id, "name")) + d.Sheet.Given(YarnPath(id, "colour")) + d.Sheet.Given(YarnPath(id, "held"))
		if given == "" && !painted[id] {
			empty = append(empty, id)
		}
	}
	return empty
}

// YarnPath returns the path of a field of a yarn in a sheet.
func YarnPath(id, key string) string {
	return "chart.yarns[" + strconv.Itoa(int(id[0]-'a')) + "]." + key
}

// YarnEdits returns the edits of the sheet that lay yarns into their places.
func YarnEdits(p chart.Palette) []chart.Edit {
	var edits []chart.Edit
	for _, y := range p {
		for _, text := range [][2]string{{"name", y.Name}, {"colour", y.Fill}} {
			if text[1] != "" {
				edits = append(edits, chart.Edit{Layer: chart.Sheet, Column: YarnPath(y.ID, text[0]), Value: text[1]})
			}
		}
	}
	return edits
}
