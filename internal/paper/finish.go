package paper

import (
	"math"
	"strconv"

	"thenar/internal/draw"
	"thenar/internal/picture"
)

// finish makes pages ready for any printer, in the memory that they have. It drops
// what paper doesn't show and whatever depends on a style sheet, so that the browser
// and the PDF print the same marks. The frames of groups, which only scripts use, are
// dropped too, and their items and the groups that move or scale are kept.
func finish(pages []*draw.Scene, grey bool) []*draw.Scene {
	var open []draw.Kind
	for _, p := range pages {
		kept := p.Items[:0]
		for k := range p.Items {
			i := &p.Items[k]
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
			if printable(i, grey) {
				kept = append(kept, *i)
			}
		}
		clear(p.Items[len(kept):])
		p.Items = kept
	}
	return pages
}

// printable takes off an item what only a screen uses, and reports whether anything of
// it is seen on paper.
func printable(i *draw.Item, grey bool) bool {
	i.Style.Class, i.Letter.Class = "", ""
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
		return false
	}
	if i.Kind == draw.TextItem && i.Text == "" {
		return false
	}
	if grey && i.Kind == draw.PhotoItem {
		own := *i.Photo
		own.Picture = own.Grey()
		i.Photo = &own
	}
	if grey {
		i.Style.Fill, i.Style.Stroke, i.Letter.Halo = greyOf(i.Style.Fill), greyOf(i.Style.Stroke), greyOf(i.Letter.Halo)
	}
	return true
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

// greyOf returns the grey of the same relative luminance as a colour (WCAG 2.2).
func greyOf(colour string) string {
	l, ok := picture.Luminance(colour)
	if !ok {
		return colour
	}
	return picture.Tone(l)
}
