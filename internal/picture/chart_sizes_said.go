package picture

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/draw"
)

// saying is what stands beside the line above or below a row.
type saying struct {
	line int // how many rows are below it
	text string
}

// only names the sizes that change the count in a row, if others don't; else it is empty.
func (s *sizesChart) only(y int) string {
	r := s.c.Rows[y]
	if !r.Changes() || !slices.Contains(r.Works, false) {
		return ""
	}
	var of []int
	for i, works := range r.Works {
		if works {
			of = append(of, s.c.Of[i])
		}
	}
	text := strings.Join(s.names(of), ", ")
	if len(of) == 1 {
		text += " only"
	}
	return text
}

// sayings returns where sizes begin and end, if not all do so together.
func (s *sizesChart) sayings() (list []saying) {
	note := func(line func(i int) int, word string) {
		at := map[int][]int{}
		for i, size := range s.c.Of {
			at[line(i)] = append(at[line(i)], size)
		}
		if len(at) < 2 {
			return
		}
		for line, sizes := range at {
			verb := word
			if len(sizes) > 1 {
				verb = strings.TrimSuffix(word, "s")
			}
			list = append(list, saying{line, strings.Join(s.names(sizes), ", ") + " " + verb})
		}
	}
	note(func(i int) int { return s.c.Begin[i] }, "begins")
	note(func(i int) int { return s.c.Ends(i) + 1 }, "ends")
	slices.SortFunc(list, func(a, b saying) int {
		if a.line != b.line {
			return a.line - b.line
		}
		return strings.Compare(a.text, b.text)
	})
	return list
}

// foldTimes is how often sizes work a box: "× 5 (6, 7, 8)", or "× 5".
func foldTimes(f chart.SizesFold) string {
	if len(slices.Compact(slices.Clone(f.Times))) == 1 {
		return fmt.Sprintf("× %d", f.Times[0])
	}
	others := make([]string, len(f.Times)-1)
	for i, n := range f.Times[1:] {
		others[i] = strconv.Itoa(n)
	}
	return fmt.Sprintf("× %d (%s)", f.Times[0], strings.Join(others, ", "))
}

// numbers writes the numbers of the rounds where they begin; as many as there is room for.
func (s *sizesChart) numbers() {
	said := numbered(s.c.Grid, rowsApart(s.l.Letter, s.at.CellHeight))
	for y, row := range s.c.Grid.Rows {
		changes := s.c.Rows[y].Changes()
		if !said[y] && !changes {
			continue
		}
		base := s.at.y(y+1) + s.at.CellHeight/2 + figureHigh/2*s.l.Letter
		style := draw.TextStyle{Size: s.l.Letter, Anchor: draw.End}
		if changes || (y+1)%5 == 0 {
			style.Face = draw.Semibold
		}
		x := s.at.x(s.c.Grid.Width) + s.right - 0.3*s.l.Letter
		if s.c.Grid.BeginsLeft(row) {
			x = s.at.Left - 0.5*s.l.Letter
		}
		s.Text(x, base, strconv.Itoa(row.Round), style)
		if text := s.only(y); text != "" {
			s.Text(s.at.x(s.c.Grid.Width)+s.right-0.8*s.l.Letter-s.numberWide(), base, text, draw.TextStyle{Size: s.l.Letter, Anchor: draw.End})
		}
	}
}

// said returns the heights at which what is said at the left stands, none over another.
func (s *sizesChart) said() []float64 {
	want, gaps := make([]float64, len(s.says)), make([]float64, len(s.says))
	for i, say := range s.says {
		want[i], gaps[i] = -s.at.y(say.line), 1.2*s.l.Letter
	}
	at := Apart(want, gaps)
	for i := range at {
		at[i] = -at[i]
	}
	return at
}

// beside writes where sizes begin and end, with lines to there.
func (s *sizesChart) beside() {
	var lines draw.Pen
	outer := s.left - 1.6*s.l.Letter
	if s.c.Grid.BothWays() {
		outer -= s.numberWide() + 0.9*s.l.Letter
	}
	for i, y := range s.said() {
		line := s.at.y(s.says[i].line)
		edge := s.at.x(0)
		for _, k := range []int{s.says[i].line - 1, s.says[i].line} {
			if k >= 0 && k < len(s.c.Grid.Rows) {
				if low, _, ok := shownRange(s.c.Grid.Rows[k]); ok {
					edge = max(edge, s.at.x(low))
				}
			}
		}
		lines.Move(outer+0.3*s.l.Letter, y).Line(outer+0.8*s.l.Letter, y).Line(outer+1.4*s.l.Letter, line).Line(edge, line)
		s.Text(outer, y+figureHigh/2*s.l.Letter, s.says[i].text, draw.TextStyle{Size: s.l.Letter, Anchor: draw.End, Face: draw.Semibold})
	}
	s.Path(lines.String(), draw.Style{Stroke: outlineColour, Width: 0.2})
}

// under numbers the stitches of the first round from the right, or tells the base of a gusset.
func (s *sizesChart) under() {
	y := s.at.Bottom + 1.1*s.l.Letter
	style := draw.TextStyle{Size: s.l.Letter, Anchor: draw.Middle}
	row := s.c.Grid.Rows[0]
	low, high, ok := shownRange(row)
	if !ok {
		return
	}
	if s.c.Block {
		base := 0
		for _, c := range row.Cells {
			base += c.Op.In()
		}
		text := fmt.Sprintf("base %d", base)
		if slices.ContainsFunc(s.c.Grid.Rows, func(r chart.Row) bool { return r.Narrows() }) {
			text = fmt.Sprintf("begins on %d", base)
		}
		s.Text((s.at.x(low)+s.at.x(high+1))/2, y, text, style)
		return
	}
	n := s.c.Grid.Width
	every := draw.Measure(strconv.Itoa(n), s.l.Letter, draw.Regular) < 0.9*s.at.CellWidth
	for k := 1; k <= n; k++ {
		if every || k == 1 || k%5 == 0 {
			s.Text(s.at.x(n-k)+s.at.CellWidth/2, y, strconv.Itoa(k), style)
		}
	}
}
