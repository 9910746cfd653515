package view

import (
	"strconv"

	"thenar/internal/app"
	"thenar/internal/units"
)

// NewSizesPrint returns the page of a mitt's table of sizes.
func NewSizesPrint(id int64, t app.SizeTable) Print {
	p := newMittPrint(id, t.Sheets, "Sizes of ", "/sizes")
	p.Fields = sizeFields(t)
	if t.TableFaults != nil {
		p.Blame(t.TableFaults)
		for i, f := range p.Fields {
			if text := t.Typed.Get(f.Name); text != "" {
				p.Fields[i].Value = text
			}
		}
	}
	return p
}

// sizeFields returns the fields of a table of sizes, filled in as asked.
func sizeFields(t app.SizeTable) []PrintField {
	a := t.Asked
	number := func(v float64) string {
		if v == 0 {
			return ""
		}
		return strconv.FormatFloat(v, 'f', -1, 64)
	}
	by, unit, over := "girth", string(a.Unit), "10 cm"
	if a.BySize {
		by, unit = "size", ""
	}
	if a.Unit == units.IN {
		over = "4 in"
	}
	list := []PrintField{
		{Name: "by", Label: "Hands by", Value: by, Choices: []Choice{{Value: "size", Words: "glove size"}, {Value: "girth", Words: "circumference"}}},
		{Name: "from", Label: "from", Unit: unit, Value: number(a.From)},
		{Name: "to", Label: "to", Unit: unit, Value: number(a.To)},
		{Name: "step", Label: "in steps of", Unit: unit, Value: number(a.Step)},
		{Name: "gauge_from", Label: "Stitches over " + over + ", from", Value: number(a.Gauge[0])},
		{Name: "gauge_to", Label: "to", Value: number(a.Gauge[1])},
		{Name: "gauge_step", Label: "in steps of", Value: number(a.Gauge[2])},
		{Name: "rounds", Label: "Rounds for a stitch", Value: number(a.Rounds)},
	}
	if t.OfOneHand {
		keep := PrintField{Name: "keep", Label: "Keep the fixed counts", Tick: true}
		if a.Keep {
			keep.Value = "1"
		}
		list = append(list, keep)
	}
	return list
}
