package picture

import (
	"strconv"
	"strings"

	"thenar/internal/draw"
	"thenar/internal/stitch"
)

// LessonOptions says for which plan and page a lesson is drawn.
type LessonOptions struct {
	Width, Letter          float64            // of the page and of its letters, in mm
	Share                  float64            // of the drawings' wished size, to save room; 0: all of it
	Left, FromLeft         bool               // the left hand; knitted from left to right
	Ops                    map[stitch.Op]bool // what its rounds hold, as that person reads them
	Tips                   []int              // how many stitches its closed cast-ons begin
	Held, Bridge, PickedUp int                // counts of the plan
	Seam                   bool               // it has a seam; the thumb is picked up from the middle of the bridge: the words tell it
	Fingers                []FingerShare      // of a hand that is divided, in the order worked; nil: it is not
	Gap                    bool               // what waits on both sides of a gap is joined at the end

	Say func(string) string // puts a text into the person's terms; nil: it stays as it is
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

// Lesson draws how that is worked which a mitt's rounds hold, beyond what every knitter
// knows: rows of drawn steps, to be set one below the other; none if there is nothing of
// that kind. For knitting from left to right the drawings are mirrored, and the increases
// named as they then lean.
func Lesson(o LessonOptions) (rows []*draw.Scene) {
	groups := o.groups()
	label := "How it is worked: " + namesOf(groups)
	for _, row := range o.rows(groups) {
		s := &draw.Scene{Width: o.Width, Label: label}
		s.Height = o.row(s, row)
		rows = append(rows, s)
	}
	return rows
}

// LessonHeights returns the heights of the rows that Lesson draws, in mm.
func LessonHeights(o LessonOptions) (list []float64) {
	for _, row := range o.rows(o.groups()) {
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
			for j := i + 1; j < len(row) && row[j].title == ""; j++ {
				over += between + room*row[j].width/sum
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
