package paper

import (
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
		case a.Name == "fill-opacity" && a.Value == "0": // only to be pointed at
			i.Style.Fill = ""
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
