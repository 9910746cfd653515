package picture

import (
	"fmt"
	"strconv"
	"strings"

	"thenar/internal/draw"
)

// LessonOptions says for which plan and page a lesson is drawn.
type LessonOptions struct {
	Width, Letter          float64 // of the page and of its letters, in mm
	Share                  float64 // of the drawings' wished size, to save room; 0: all of it
	FromLeft               bool    // knitted from left to right
	Thumbed                bool
	Held, Bridge, PickedUp int // counts of the plan
}

// names holds the words that change with the direction of knitting.
type names struct{ first, second, left, right, fromBehind string }

func (o LessonOptions) names() names {
	if o.FromLeft {
		return names{"right (M1R)", "left (M1L)", "right", "left", "M1L"}
	}
	return names{"left (M1L)", "right (M1R)", "left", "right", "M1R"}
}

// lessonPanel is one drawing of a lesson with its title and the text below it, which
// begins with the number of its step in a ring. Width and height are those of the
// drawing, in mm.
type lessonPanel struct {
	title         string
	step          int // 0: the only one
	text          string
	width, height float64
	draw          func(k *sketch, o LessonOptions)
}

// Lesson draws how a mitt's thumb is worked: make one leaning left and right, the
// loops cast on over the gap, where stitches are picked up, and how both corners are
// closed. It returns rows to be set one below the other; none for a mitt without
// a thumb. For knitting from left to right the drawings are mirrored, and the
// increases named as they then lean.
func Lesson(o LessonOptions) (rows []*draw.Scene) {
	if !o.Thumbed {
		return nil
	}
	for _, row := range o.rows() {
		s := &draw.Scene{Width: o.Width, Label: "How it is worked: make ones, loop cast-on, picking up, closing the corners"}
		s.Height = o.row(s, row)
		rows = append(rows, s)
	}
	return rows
}

// LessonHeights returns the heights of the rows that Lesson draws, in mm.
func LessonHeights(o LessonOptions) (list []float64) {
	if !o.Thumbed {
		return nil
	}
	for _, row := range o.rows() {
		list = append(list, o.row(nil, row))
	}
	return list
}

// largeLetter is the size of letters in mm from which a page is in large print.
const largeLetter = 5.0

// wideEnough is the width of a page in mm from which large print has as many panels in
// a row as ordinary print.
const wideEnough = 230.0

// caption returns the size of the text below a drawing: smaller than the page's
// letters, except in large print.
func (o LessonOptions) caption() float64 {
	if o.Letter > largeLetter {
		return o.Letter
	}
	return 0.85 * o.Letter
}

// note returns the size of the letters in a drawing, 9 pt at least; in large print that
// of the page.
func (o LessonOptions) note() float64 {
	if o.Letter > largeLetter {
		return o.Letter
	}
	return 3.2
}

// title returns the size of the text above a drawing.
func (o LessonOptions) title() float64 { return max(o.caption(), 0.95*o.Letter) }

func (o LessonOptions) rows() [][]lessonPanel {
	n := o.names()
	const high, low = 34.0, 32.0
	makeOne := []lessonPanel{
		{"Make one leaning " + n.first, 1, "Lift the strand from the front with the " + n.left + " needle: its " + n.right + " leg lies in front.", 40, high, drawLiftFront},
		{"", 2, "Knit it through the back loop: that twists it shut.", 40, high, drawKnitBack},
	}
	other := []lessonPanel{
		{"Make one leaning " + n.second, 1, "Lift the strand from behind with the " + n.left + " needle: its " + n.left + " leg lies in front.", 40, high, drawLiftBack},
		{"", 2, "Knit it through the front loop: that twists it shut.", 40, high, drawKnitFront},
	}
	over := lessonPanel{
		"Bridge over the gap", 0, fmt.Sprintf("Turn the yarn into a loop, put it on the %s needle, pull it snug. %s.", n.right, timesWords(o.Bridge)), 40, low, drawLoops,
	}
	pick := lessonPanel{"Pick up for the thumb", 0, o.pickText(n), 66, low, drawOpening}
	gaps := []lessonPanel{
		{"Close both corners", 1, "Lift the strand from behind, as for " + n.fromBehind + ". K2tog it with the first held stitch.", 40, 27, drawFirstGap},
		{"", 2, "Slip the last held stitch as if to knit, then the strand, lifted likewise. Knit both through the back loops.", 40, 27, drawLastGap},
	}
	if o.Bridge == 0 {
		over.text = "Not needed in this mitt: nothing is cast on over the gap."
	}
	if o.Letter > largeLetter && o.Width < wideEnough { // fewer panels in a row
		return [][]lessonPanel{makeOne, other, {over, pick}, gaps}
	}
	return [][]lessonPanel{append(makeOne, other...), append([]lessonPanel{over, pick}, gaps...)}
}

// pickText says where the thumb's stitches are picked up, as the Thumb's words do.
func (o LessonOptions) pickText(n names) string {
	where := "at the top of the gap"
	switch {
	case o.PickedUp == 0:
		return fmt.Sprintf("Nothing is picked up. Hold it fingers up, outside towards you: knit the %d held from the %s corner.", o.Held, n.right)
	case o.Bridge > 0:
		where = "along the bridge"
	}
	return fmt.Sprintf("Hold it fingers down, outside towards you: pick up %s from %s to %s. Turn it fingers up for the %d held.", where, n.right, n.left, o.Held)
}

func timesWords(n int) string {
	if n == 1 {
		return "Once"
	}
	return fmt.Sprintf("%d times", n)
}

// between is the room between two panels in mm.
const between = 4.0

// row draws panels side by side, unless the scene is nil, and returns the height of
// the row.
func (o LessonOptions) row(s *draw.Scene, row []lessonPanel) float64 {
	sum, high, room := 0.0, 0.0, o.Width-between*float64(len(row)-1)
	for _, p := range row {
		sum, high = sum+p.width, max(high, p.height) // captions begin on one line
	}
	scale := min(room/sum, 1.25)
	if o.Share > 0 {
		scale *= o.Share
	}
	x, deepest := 0.0, 0.0
	for i, p := range row {
		wide := room*p.width/sum - 0.01
		if s != nil && p.title != "" {
			over := wide
			if i+1 < len(row) && row[i+1].title == "" {
				over = 2*wide + between
			}
			s.Text(x, o.Letter*0.9, clipTo(p.title, over, o.title()), draw.TextStyle{Size: o.title(), Face: draw.Semibold})
		}
		p.height = high
		deepest = max(deepest, o.panel(s, p, x, wide, scale))
		x += wide + between
	}
	return deepest + o.Letter*0.3
}

// panel draws a panel below its title, unless the scene is nil, and returns the y
// below it.
func (o LessonOptions) panel(s *draw.Scene, p lessonPanel, x, wide, scale float64) float64 {
	head := o.Letter * 1.3
	if s != nil {
		inner := &draw.Scene{Width: p.width, Height: p.height}
		p.draw(&sketch{s: inner, width: p.width, mirrored: o.FromLeft, letter: o.note() / scale}, o)
		s.Add(inner, x+(wide-p.width*scale)/2, head, scale)
	}
	y := head + p.height*scale + o.Letter*0.2
	for i, line := range o.lines(p, wide) {
		y += o.caption() * leading
		if s == nil {
			continue
		}
		in := 0.0
		if p.step > 0 && i == 0 {
			in = o.ringRoom()
			o.ring(s, p.step, x, y)
		}
		s.Text(x+in, y, line, draw.TextStyle{Size: o.caption()})
	}
	return y
}

// ringRoom returns the width that a number in its ring takes, with the gap after it.
func (o LessonOptions) ringRoom() float64 { return 1.6 * o.caption() }

// ring draws the number of a step in a ring, at the left of a line with its baseline at y.
func (o LessonOptions) ring(s *draw.Scene, step int, x, y float64) {
	r, mid := 0.6*o.caption(), y-figureHigh/2*o.caption()
	s.Path(ringAt(x+r, mid, r), draw.Style{Stroke: outlineColour, Width: 0.3})
	s.Text(x+r, y, strconv.Itoa(step), draw.TextStyle{Size: o.caption(), Face: draw.Semibold, Anchor: draw.Middle})
}

// lines breaks the text of a panel for a width; the first line leaves room for the ring.
func (o LessonOptions) lines(p lessonPanel, wide float64) []string {
	if p.step == 0 {
		return draw.Wrap(p.text, wide, o.caption(), draw.Regular)
	}
	first := draw.Wrap(p.text, wide-o.ringRoom(), o.caption(), draw.Regular)[0]
	rest := strings.TrimSpace(strings.TrimPrefix(p.text, first))
	return append([]string{first}, draw.Wrap(rest, wide, o.caption(), draw.Regular)...)
}

// clipTo cuts a title to a width, with "…" if anything is cut.
func clipTo(text string, room, size float64) string {
	if lines := draw.Wrap(text, room, size, draw.Semibold); len(lines) > 1 {
		return lines[0] + " …"
	}
	return text
}
