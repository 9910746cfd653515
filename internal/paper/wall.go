package paper

import (
	"fmt"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// wallCell is the usual width of a cell on a wall chart in mm, to be read from some
// 3 m (common practice, no source).
const wallCell = 15.0

// Wall lays out one view of a mitt as a chart for the wall, over as many sheets as
// it takes. A page in front says how to join them.
func Wall(s Sheet, o Options, v chart.View) []*draw.Scene {
	if o.Cell == 0 {
		o.Cell = wallCell
	}
	o.Pieces = nil
	h := handout{flow: newFlow(o, s.headline()), Sheet: &s, o: o}
	h.at = s.At
	g := h.grid(v)
	if len(g.Rows) == 0 {
		return nil
	}
	p := chartPages{handout: &h, g: g, title: g.View.Title()}
	p.lay(o.Cell, o.Cell)
	h.text(margin, h.width(), fmt.Sprintf("%s, for the wall", h.headline()), draw.TextStyle{Size: h.title, Face: draw.Serif})
	ratio := s.Out.Plan.Gauge.Stitches / s.Out.Plan.Gauge.Rounds
	h.say(fmt.Sprintf("%s. A stitch is %g mm wide: %.0f cm wide and %.0f cm high in all. %d sheets: %d side by side, %d one above the other.", p.title, p.cells.width,
		float64(g.Width)*p.cells.width/10, float64(len(g.Rows))*p.cells.width*ratio/10, p.parts(), len(p.cells.columns), len(p.cells.rows)), h.body)
	if p.parts() > 1 {
		h.say("Neighbouring sheets share two stitches or rounds. Cut one along its broken line, and lay it on the line of the other. Part 1 lies where the rounds begin, at the foot.", h.body)
	}
	key := h.key(g)
	h.head("Key", key.Height)
	h.put(key, margin, h.keyScale())
	p.print()
	h.listUnsound()
	h.foot()
	return finish(h.flow.pages, o.Grey)
}
