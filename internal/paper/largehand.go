package paper

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// numbers sets the plan in large print: what is done in each part, in the order worked,
// then the hand with the parts' names at its left and the measures at its right.
func (h *handout) numbers() []block {
	l := h.newLadder()
	return []block{one("numbers", 25, keptLines(h.pairs(h.steps(l), h.width()))), h.largeHand(l)}
}

// steps returns the parts of a ladder in the order worked, each with what is done in it.
func (h *handout) steps(l ladder) (list [][2]string) {
	text := func(st stage) string {
		rounds := fmt.Sprintf("%d %s", st.rounds, st.unit())
		return strings.Join(append([]string{rounds + ", " + words.Both(st.mm, h.Out.Unit)}, st.notes...), "; ")
	}
	var parts []stitch.Part
	add := func(st stage, done string) {
		at := len(list)
		if len(l.fingered) > 0 { // the upper hand is worked after the little finger
			for at > 0 && h.Out.Mitt.Order(parts[at-1]) > h.Out.Mitt.Order(st.part) {
				at--
			}
		}
		parts, list = slices.Insert(parts, at, st.part), slices.Insert(list, at, [2]string{st.part.Title(), done + "."})
	}
	for i, st := range l.stages {
		done := text(st)
		if says := l.rungs[i].says; len(says) > 0 {
			done = strings.Join(says, ", ") + "; " + done
		}
		if i == len(l.stages)-1 {
			done += "; " + strings.Join(l.rungs[i+1].says, ", ")
		}
		add(st, done)
	}
	for _, st := range append(slices.Clone(l.fingered), l.thumb) {
		if st.rounds > 0 {
			add(st, text(st))
		}
	}
	return list
}

// largeFigure is the hand in large print: at its left the names of the parts and the
// heights at which they end, at its right the measures.
type largeFigure struct {
	*handout
	hand     *picture.Dressed
	set      *setLadder
	measures part
	wide     float64 // of the measures
	foot     part
}

// mostLargeHand is the wished scale of the hand in large print.
const mostLargeHand = 0.62

// largeHand sets the hand in each of its sizes.
func (h *handout) largeHand(l ladder) block {
	f := &largeFigure{handout: h, hand: picture.NewDressed(h.Out.Plan, h.handOptions())}
	f.set = f.names(l)
	f.measures, f.wide = h.measurePair()
	f.foot = setWhole(h.handCaption(f.hand, "")+" "+h.easeSaid(), h.width(), draw.TextStyle{Size: h.body})
	room := h.width() - f.set.width - leaderRoom - curveGap - f.wide
	wished := min(mostLargeHand, room/f.hand.Width(), (h.areaHeight()-30)/(f.hand.Above()+f.hand.Below()))
	b := block{name: "hand", above: 30}
	for s, share := range shrinking() {
		b.ways = append(b.ways, way{s, []part{f.at(wished * share)}})
	}
	return b
}

// leaderRoom is the room in mm between the names and the hand.
const leaderRoom = 6.0

// names sets only the names of the parts of a ladder, and the heights of its rungs.
func (f *largeFigure) names(l ladder) *setLadder {
	s := &setLadder{ladder: l, width: draw.Measure(f.measuredFrom(), f.body, draw.Regular)}
	style := draw.TextStyle{Size: f.body}
	for _, st := range l.stages {
		s.width = max(s.width, draw.Measure(st.part.Title(), f.body, draw.Regular)+1)
	}
	for _, r := range l.rungs {
		s.width = max(s.width, draw.Measure(spelt(f.heightText(r)), f.body, draw.Semibold)+1)
	}
	for _, st := range l.stages {
		s.stages = append(s.stages, setWhole(st.part.Title(), s.width, style))
	}
	style.Face = draw.Semibold
	for i, r := range l.rungs {
		p := rightLine(spelt(f.heightText(r)), s.width, style)
		if i == len(l.rungs)-1 {
			p = stack([]part{rightLine(f.measuredFrom(), s.width, draw.TextStyle{Size: f.body}), p})
		}
		s.rungs = append(s.rungs, p)
	}
	return s
}

// heightText returns the height of a rung as it stands beside the hand.
func (f *largeFigure) heightText(r rung) string {
	if r.above == 0 {
		return strings.TrimPrefix(words.LowerEdge(f.Out.Mitt), "the ")
	}
	return f.length(r.above)
}

// at sets the hand at a scale.
func (f *largeFigure) at(scale float64) part {
	lines := f.set.lines(scale)
	n := len(lines) - 1
	above := max(f.hand.Above()*scale, lines[n]+float64(f.set.rungs[n].Height)/10+underRung)
	below := max(f.hand.Below()*scale, 1-lines[0], float64(f.measures.Height)/10-above) + 1
	return drawn(tenths(above+below)+f.foot.Height, func(p *draw.Scene, x, y float64) {
		s := &draw.Scene{}
		right := f.width() - f.wide
		left := f.set.width + leaderRoom
		f.set.drawLines(s, 0, right-curveGap, scale, above, lines)
		f.hand.Draw(s, left+(right-curveGap-left-f.hand.Width()*scale)/2, above, scale)
		f.set.draw(s, 0, above, lines)
		f.measures.draw(s, right, 0)
		f.foot.draw(s, 0, above+below)
		p.Add(s, x, y, 1)
	})
}
