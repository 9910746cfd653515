package paper

import (
	"math"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/picture"
)

// finish makes pages ready for any printer. It drops what paper doesn't show and
// whatever depends on a style sheet, so that the browser and the PDF print the
// same marks.
func finish(pages []*draw.Scene, grey bool) []*draw.Scene {
	for _, p := range pages {
		items := make([]draw.Item, 0, len(p.Items))
		for _, i := range p.Items {
			if i, seen := printable(i, grey); seen {
				items = append(items, i)
			}
		}
		p.Items = dropGroups(items)
	}
	return pages
}

// printable returns an item without what only a screen uses; false if nothing of
// it is seen on paper.
func printable(i draw.Item, grey bool) (draw.Item, bool) {
	i.Style.Class, i.Letter.Class = "", ""
	if i.Kind == draw.GroupItem {
		i.Attrs = nil
		return i, true
	}
	var kept []draw.Attr
	for _, a := range i.Attrs {
		switch {
		case a.Name == "data-ruler":
			kept = append(kept, a)
		case a.Name == "fill-opacity":
			i.Style.Fill = onWhite(i.Style.Fill, a.Value)
		case a.Name == "stroke-opacity":
			i.Style.Stroke = onWhite(i.Style.Stroke, a.Value)
		}
	}
	i.Attrs = kept
	if i.Kind == draw.PathItem && (i.Path == "" || i.Style.Fill == "" && i.Style.Stroke == "") {
		return i, false
	}
	if i.Kind == draw.TextItem && i.Text == "" {
		return i, false
	}
	if grey {
		i.Style.Fill, i.Style.Stroke, i.Letter.Halo = greyOf(i.Style.Fill), greyOf(i.Style.Stroke), greyOf(i.Letter.Halo)
	}
	return i, true
}

// onWhite returns the opaque colour that a colour with an opacity makes on white
// paper; "" for opacity 0.
func onWhite(colour, opacity string) string {
	share, err := strconv.ParseFloat(opacity, 64)
	if err != nil || len(colour) != 7 {
		return colour
	}
	if share <= 0 {
		return ""
	}
	out := "#"
	for i := 1; i < 7; i += 2 {
		n, _ := strconv.ParseUint(colour[i:i+2], 16, 8) // as drawn
		mixed := 255 - share*float64(255-n)
		out += strconv.FormatUint(0x100|uint64(math.Round(mixed)), 16)[1:]
	}
	return out
}

// dropGroups drops the frames of groups, which only scripts use, and keeps their
// items and the groups that move or scale.
func dropGroups(items []draw.Item) []draw.Item {
	out := make([]draw.Item, 0, len(items))
	var open []draw.Kind
	for _, i := range items {
		switch i.Kind {
		case draw.GroupItem:
			open = append(open, i.Kind)
			continue
		case draw.MoveItem:
			open = append(open, i.Kind)
		case draw.EndItem:
			was := open[len(open)-1]
			open = open[:len(open)-1]
			if was == draw.GroupItem {
				continue
			}
		}
		out = append(out, i)
	}
	return out
}

// greyOf returns the grey of the same relative luminance as a colour (WCAG 2.2).
func greyOf(colour string) string {
	l, ok := picture.Luminance(colour)
	if !ok {
		return colour
	}
	return picture.Tone(l)
}
