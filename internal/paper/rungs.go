package paper

import (
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/units"
	"thenar/internal/words"
)

// setLadder is a ladder set in a width: the texts of its rungs, which stand on their
// lines, and those of its stages, which hang below the line above them.
type setLadder struct {
	ladder
	width         float64
	rungs, stages []part
}

// The room in mm below the text of a rung, and above and below that of a stage.
const (
	underRung  = 0.6
	aboveStage = 0.4
	underStage = 0.8
)

// numeral is the size of the numbers of rounds in mm, by the size of the text.
const numeral = 1.3

func (h *handout) setLadder(l ladder, width float64) *setLadder {
	s := &setLadder{ladder: l, width: width}
	for i, r := range l.rungs {
		p := h.setRung(r, width)
		if i == len(l.rungs)-1 {
			p = stack([]part{rightLine(h.measuredFrom(), width, draw.TextStyle{Size: h.small}), p})
		}
		s.rungs = append(s.rungs, p)
	}
	inRow := true // in all or in none, so that they stand below each other
	for _, st := range l.stages {
		inRow = inRow && h.stageHead(st).wide()+stageGap+h.lengthsWidth(st) <= width
	}
	for _, st := range l.stages {
		s.stages = append(s.stages, h.setStage(st, width, inRow))
	}
	return s
}

// measuredFrom says once, above the uppermost height, from where heights are measured.
func (h *handout) measuredFrom() string { return "from " + words.LowerEdge(h.Out.Mitt) + ":" }

// rightLine sets a line of text at the right end of a width.
func rightLine(text string, width float64, style draw.TextStyle) part {
	style.Anchor = draw.End
	return drawn(lineHeight(style.Size), func(p *draw.Scene, x, y float64) { p.Text(x+width, y+style.Size, text, style) })
}

// setRung sets what happens at a rung, with its height above the cast-on at the end of
// the last line.
func (h *handout) setRung(r rung, width float64) part {
	style := draw.TextStyle{Size: h.small, Face: draw.Semibold}
	var lines []part
	for i, text := range r.says {
		room := width
		if i == len(r.says)-1 {
			room -= h.heightWidth(r)
		}
		lines = append(lines, setLines(text, room, style)...)
	}
	if len(lines) == 0 {
		lines = []part{space(lineHeight(h.small))}
	}
	p := stack(lines)
	texts := p.draw
	p.draw = func(page *draw.Scene, x, y float64) {
		texts(page, x, y)
		if r.above > 0 {
			foot := y + float64(p.Height-lineHeight(h.small))/10 + h.small
			page.Text(x+width, foot, "at "+h.length(r.above), draw.TextStyle{Size: h.small, Anchor: draw.End})
		}
	}
	return p
}

// length returns a length in the unit of the sheet.
func (h *handout) length(mm float64) string {
	return units.FromMM(mm).With(h.Doc.Sheet.Unit())
}

// heightWidth returns the room that the height of a rung takes.
func (h *handout) heightWidth(r rung) float64 {
	if r.above == 0 {
		return 0
	}
	return draw.Measure("at "+h.length(r.above), h.small, draw.Regular) + 2
}

// stageGap is the room in mm between a part's name, its rounds and its lengths.
const stageGap = 2.5

// stageHead is the first line of a part: its name, and how many rounds it has.
type stageHead struct {
	title, count, unit string
	name, rounds       float64 // their widths in mm
}

// wide returns the width of the line.
func (s *stageHead) wide() float64 { return s.name + stageGap + s.rounds }

func (h *handout) stageHead(st stage) *stageHead {
	s := &stageHead{title: st.title(), count: strconv.Itoa(st.rounds), unit: st.unit()}
	s.name = draw.Measure(s.title, h.body, draw.Regular)
	s.rounds = draw.Measure(s.count, numeral*h.body, draw.Semibold) + draw.Measure(" "+s.unit, h.note(), draw.Regular)
	return s
}

// stageLengths returns a part's length in both units.
func (h *handout) stageLengths(st stage) string {
	return strings.Replace(words.Both(st.mm, h.Out.Unit), " / ", " · ", 1)
}

func (h *handout) lengthsWidth(st stage) float64 {
	return draw.Measure(h.stageLengths(st), h.note(), draw.Regular)
}

// setStage sets a part's name, in as many lines as it needs, with its rounds and its lengths,
// and its notes below. Lengths
// that are not in the row stand before the first note.
func (h *handout) setStage(st stage, width float64, inRow bool) part {
	s, long := h.stageHead(st), h.stageLengths(st)
	size, note := numeral*h.body, draw.TextStyle{Size: h.note(), Anchor: draw.End}
	notes, end := strings.Join(st.notes, "; "), width
	if inRow {
		end -= h.lengthsWidth(st) + stageGap
	} else {
		notes = strings.TrimSuffix(long+", "+notes, ", ")
	}
	name := draw.Wrap(s.title, end-s.rounds-stageGap/2, h.body, draw.Regular)
	head := drawn(tenths(1.05*size+float64(len(name)-1)*lineOf(h.body)), func(p *draw.Scene, x, y float64) {
		foot := y + 0.88*size
		for i, line := range name {
			p.Text(x, foot+float64(i)*lineOf(h.body), line, draw.TextStyle{Size: h.body})
		}
		p.Text(x+end-s.rounds, foot, s.count, draw.TextStyle{Size: size, Face: draw.Semibold})
		p.Text(x+end, foot, s.unit, note)
		if inRow {
			p.Text(x+width, foot, long, note)
		}
	})
	lines := setLines(notes, width, draw.TextStyle{Size: note.Size})
	for i := range lines {
		lines[i].Height = tenths(1.22 * note.Size)
	}
	return stack(append([]part{head}, lines...))
}

// note returns the size of letters of the notes in the ladder: 9.5 pt, or as large as
// the text in large print.
func (l letters) note() float64 {
	if l.body > ordinary.body {
		return l.body
	}
	return 3.35
}

// lines returns where the lines of the rungs are set, in mm above the cast-on, for a
// drawing at a scale: where they are in the drawing, or apart where their texts need it.
func (s *setLadder) lines(scale float64) []float64 {
	want, gaps := make([]float64, len(s.ladder.rungs)), make([]float64, len(s.stages))
	for i, r := range s.ladder.rungs {
		want[i] = r.above * scale
	}
	for i := range gaps {
		gaps[i] = float64(s.rungs[i].Height+s.stages[i].Height)/10 + underRung + aboveStage + underStage
	}
	return picture.Apart(want, gaps)
}

// top returns the height of the uppermost rung above the cast-on, in mm.
func (s *setLadder) top() float64 { return s.ladder.rungs[len(s.ladder.rungs)-1].above }

// draw draws the texts at their lines, from x on, with the cast-on at foot.
func (s *setLadder) draw(page *draw.Scene, x, foot float64, lines []float64) {
	for i, above := range lines {
		s.rungs[i].draw(page, x, foot-above-underRung-float64(s.rungs[i].Height)/10)
		if i > 0 {
			s.stages[i-1].draw(page, x, foot-above+aboveStage)
		}
	}
}

// drawLines draws the line of each rung from x on, below its text, to its height on the
// mitt and on to the end.
func (s *setLadder) drawLines(page *draw.Scene, x, end, scale, foot float64, lines []float64) {
	from, to := x+s.width, x+s.width+leaderRoom
	var level draw.Pen
	for i, above := range lines {
		y := foot - s.ladder.rungs[i].above*scale
		level.Move(x, foot-above).Line(from, foot-above).Line(to, y).Line(end, y)
	}
	page.Path(level.String(), draw.Style{Stroke: ink, Width: 0.2})
}

// drawScale draws an upright line up to a height of the mitt, with a tick for each round,
// longer for every fifth.
func drawScale(page *draw.Scene, x, scale, foot, perMM, top float64) {
	var ticks draw.Pen
	for r := 1; float64(r)+0.5 < top*perMM; r++ {
		long := 1.0
		if r%5 == 0 {
			long = 2
		}
		y := foot - float64(r)/perMM*scale
		ticks.Move(x, y).Line(x+long, y)
	}
	page.Path(ticks.String(), draw.Style{Stroke: ink, Width: 0.2})
	page.Line(x, foot, x, foot-top*scale, draw.Style{Stroke: ink, Width: 0.4})
}
