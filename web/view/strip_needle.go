package view

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/stitch"
)

// needleRows is the height of the needle under a strip, in rows of its chart.
const needleRows = 2

// needles draws the needle under the window about each row that is drawn, with the stitches
// that the round leaves: each a loop in its yarn under its own cell, those that wait on
// waste yarn below it. The page shows the one of the row that it is turned to.
func (s *Strip) needles(at picture.Geometry, shown int) string {
	var b strings.Builder
	for i, row := range s.grid.Rows {
		if n := i + 1; s.From <= n && n <= s.To {
			hidden := ""
			if n != shown {
				hidden = ` hidden=""`
			}
			low, _ := s.window(n)
			top := s.Bottom - float64(low-1)*s.CellHeight
			fmt.Fprintf(&b, `<g class="on-needle" data-needle="%d" transform="translate(0 %s)"%s>%s</g>`, n, draw.Number(top), hidden, s.needle(at, row, s.waiting(i)))
		}
	}
	return s.loopTiles(at) + b.String()
}

// waiting returns the yarns of the stitches that wait on waste yarn once a row is worked, by
// their column.
func (s *Strip) waiting(upTo int) map[int]string {
	held := map[int]string{}
	for _, row := range s.grid.Rows[:upTo+1] {
		for _, c := range row.Cells {
			switch {
			case !c.Shown():
			case c.Op == stitch.Hold:
				held[c.X] = c.Yarn
			default:
				delete(held, c.X)
			}
		}
	}
	return held
}

// needle draws the needle of one row, in a frame whose upper edge is that of the needle's
// place and whose columns are those of the chart.
func (s *Strip) needle(at picture.Geometry, row chart.Row, held map[int]string) string {
	high, w := needleRows*s.CellHeight, at.CellWidth
	x := func(column int) float64 { return at.Left + float64(column)*w }
	path := func(class, fill, d string) string {
		if d == "" {
			return ""
		}
		return fmt.Sprintf(`<path class="%s"%s d="%s"></path>`, class, fill, d)
	}
	out := path("needle-ground", "", fmt.Sprintf("M0 0h%sv%sh-%sz", draw.Number(s.Width), draw.Number(high), draw.Number(s.Width)))
	on, all := map[int]string{}, []int{}
	for _, c := range row.Shown() {
		if c.Op.Out() > 0 {
			on[c.X], all = c.Yarn, append(all, c.X)
		}
	}
	if len(all) > 0 {
		var wood draw.Pen
		y, from, to := 0.46*high, x(slices.Min(all))-0.8*w, x(slices.Max(all)+1)+0.8*w
		wood.Move(from, y)
		wood.Line(from+w, y-0.1*high)
		wood.Line(to-w, y-0.1*high)
		wood.Line(to, y)
		wood.Line(to-w, y+0.1*high)
		wood.Line(from+w, y+0.1*high)
		wood.Close()
		out += path("wood", "", wood.String())
	}
	out += s.waste(held, x, w, high, path)
	for _, y := range s.grid.Palette {
		d := runsOf(on, y.ID, x, high)
		out += path("loops", fmt.Sprintf(` fill="url(#loop-%s-%s)"`, s.View, y.ID), d)
	}
	if first, ok := row.First(); ok && first.Shown() {
		begin := x(first.X)
		if !s.grid.BeginsLeft(row) {
			begin += w
		}
		out += fmt.Sprintf(`<ellipse class="ring" cx="%s" cy="%s" rx="%s" ry="%s"></ellipse>`, draw.Number(begin), draw.Number(0.46*high), draw.Number(0.2*w), draw.Number(0.26*high))
	}
	return out
}

// waste draws the stitches that wait, and the waste yarn through them.
func (s *Strip) waste(held map[int]string, x func(int) float64, w, high float64, path func(class, fill, d string) string) (out string) {
	if len(held) == 0 {
		return ""
	}
	from, to := s.grid.Width, 0
	for column := range held {
		from, to = min(from, column), max(to, column+1)
	}
	for _, y := range s.grid.Palette {
		out += path("loops held", fmt.Sprintf(` fill="url(#held-%s-%s)"`, s.View, y.ID), runsOf(held, y.ID, x, high))
	}
	var line draw.Pen
	y := 0.76 * high
	line.Move(x(from)-0.5*w, y+0.2*high)
	line.Curve(x(from)-0.4*w, y, x(from), y, x(from)+0.3*w, y)
	line.Line(x(to)-0.3*w, y)
	line.Curve(x(to), y, x(to)+0.4*w, y, x(to)+0.5*w, y+0.2*high)
	return out + path("waste", "", line.String())
}

// runsOf returns the places of the loops of one yarn, side by side ones in one piece.
func runsOf(of map[int]string, yarn string, x func(int) float64, high float64) string {
	var columns []int
	for column, y := range of {
		if y == yarn {
			columns = append(columns, column)
		}
	}
	slices.Sort(columns)
	var p draw.Pen
	for i := 0; i < len(columns); {
		last := i
		for last+1 < len(columns) && columns[last+1] == columns[last]+1 {
			last++
		}
		p.Rect(x(columns[i]), 0, x(columns[last]+1)-x(columns[i]), high)
		i = last + 1
	}
	return p.String()
}

// loopTiles returns two tiles for each yarn: a loop as it lies over the needle, and one that
// hangs under it. Runs of stitches are filled with them, since a path for each would make
// the page heavy.
func (s *Strip) loopTiles(at picture.Geometry) (tiles string) {
	high, w := needleRows*s.CellHeight, at.CellWidth
	for _, kind := range []struct {
		name      string
		top, foot float64 // as shares of the height
	}{{"loop", 0.16, 0.86}, {"held", 0.6, 0.96}} {
		loop := picture.Loop(0.5*w, 0.3*w, kind.top*high, kind.foot*high)
		for _, y := range s.grid.Palette {
			class, stroke := "loop", fmt.Sprintf(` stroke="%s"`, y.Fill)
			if y.Fill == "" {
				class, stroke = "loop undyed-strand", ""
			}
			tiles += fmt.Sprintf(`<pattern id="%s-%s-%s" x="%s" width="%s" height="%s" patternUnits="userSpaceOnUse"><path class="loop-edge" stroke-width="%s" d="%s"></path><path class="%s"%s stroke-width="%s" d="%s"></path></pattern>`,
				kind.name, s.View, y.ID, draw.Number(at.Left), draw.Number(w), draw.Number(high), draw.Number(0.3*w), loop, class, stroke, draw.Number(0.2*w), loop)
		}
	}
	return tiles
}
