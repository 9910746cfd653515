package view

import (
	"thenar/internal/chart"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// WholeThen is all of a mitt as it stood, in its colours.
type WholeThen struct {
	Palm   string   // SVG, palm towards the viewer
	Motifs []string // what is laid on it, in words
	open   miniMitt
}

// newWholeThen draws a mitt; noun is what its rounds are called.
func newWholeThen(doc project.Document, out *project.Outputs, noun string) *WholeThen {
	look := picture.SmallOptions{Left: doc.Side == project.Left, Worn: picture.NewWorn(out.Charts)}
	if len(doc.OwnYarns()) > 0 {
		look.Yarn = doc.Palette()[0].Fill
	}
	w := &WholeThen{Palm: SVG(picture.Small(out.Plan, look), false), open: newMini(out)}
	for _, l := range out.Repeats {
		if !l.Off {
			w.Motifs = append(w.Motifs, repeatName(l)+": "+l.Words(noun))
		}
	}
	return w
}

// inColours says in what it is knitted: "in oat, rust and moss".
func (w *WholeThen) inColours() string {
	var names []string
	for _, c := range w.open.Cloth {
		name := c.Yarn.Name
		if c.Yarn == chart.Yarns[0] {
			name = "the " + name
		}
		names = append(names, name)
	}
	if len(names) == 1 {
		return "all in " + names[0]
	}
	return "in " + words.Listed(names)
}
