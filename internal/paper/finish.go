package paper

import (
	"math"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/picture"
)

// finish makes pages ready for any printer: what is not seen on paper is left
// out, and nothing looks to a style sheet, so that the browser's print and the
// PDF are the same marks.
func finish(pages []*draw.Scene, grey bool) []*draw.Scene {
	for _, p := range pages {
		items := make([]draw.Item, 0, len(p.Items))
		for _, i := range p.Items {
			if i, seen := plain(i, grey); seen {
				items = append(items, i)
			}
		}
		p.Items = unempty(items)
	}
	return pages
}

// plain is an item without what belongs to a screen.
func plain(i draw.Item, grey bool) (draw.Item, bool) {
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
			i.Style.Fill = thinned(i.Style.Fill, a.Value)
		case a.Name == "stroke-opacity":
			i.Style.Stroke = thinned(i.Style.Stroke, a.Value)
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

// thinned is a colour that is laid on white paper with an opacity; nothing at
// all of it is no colour.
func thinned(colour, opacity string) string {
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

// unempty leaves out groups that hold nothing, and the frame of those that
// only a script had use for.
func unempty(items []draw.Item) []draw.Item {
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

// greyOf is the grey of the same relative luminance as a colour (WCAG 2.2).
func greyOf(colour string) string {
	l, ok := picture.Luminance(colour)
	if !ok {
		return colour
	}
	return picture.Tone(l)
}
