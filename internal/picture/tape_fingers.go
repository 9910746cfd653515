package picture

import (
	"thenar/internal/draw"
	"thenar/internal/hand"
)

// joint is where the girth of a finger is taken, as a share of its length: the fold of its
// middle joint.
const joint = 0.40

// tipNames are what the fingers are called beyond their tips.
var tipNames = [...]string{hand.Index: "index", hand.Middle: "middle", hand.Ring: "ring", hand.Little: "little"}

// fingerTapes returns the tapes of the fingers: round the middle joint, along the finger from
// where it parts to its tip, and from the wrist crease to where two part.
func (f *figure) fingerTapes(letter float64) (list []tape) {
	filled, _ := f.h.FillFingers()
	drawn := f.fingers()
	on := func(at point) label {
		return label{at: at.plus(point{0, -0.35 * letter}), anchor: draw.Middle, slide: point{0, -0.3 * letter}}
	}
	for i, of := range drawnOrder {
		d := drawn[i]
		at := func(up, out float64) point {
			return d.root.plus(d.along.times(up)).plus(point{d.along.y, -d.along.x}.times(out))
		}
		along := on(at(-letter, 0))
		if f.apart { // beyond the tip, as the finger's name
			along = label{at: at(d.long+0.8*letter, 0), anchor: draw.Middle, slide: d.along.times(0.3 * letter)}
		}
		list = append(list,
			tape{
				field: of.FieldGirth(), value: filled.Girth[of], round: true, still: true,
				from: at(joint*d.long, -1.06*d.half), to: at(joint*d.long, 1.06*d.half), label: on(at(joint*d.long-letter, 0)),
			},
			tape{
				field: of.FieldLength(), value: filled.Length[of], still: !f.apart, name: tipNames[of],
				from: at(0, 0), to: at(d.long, 0), label: along,
			})
		if of == hand.Index { // the last: no other parts from it
			continue
		}
		web := point{d.web.x, d.web.y}
		list = append(list, tape{
			field: drawnOrder[i+1].FieldCrotch(), value: filled.Crotch[drawnOrder[i+1]], still: true,
			from: point{web.x, 0}, to: web, label: on(point{web.x, 0.5 * web.y}),
		})
	}
	return list
}
