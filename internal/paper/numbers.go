package paper

import (
	"math"

	"thenar/internal/draw"
	"thenar/internal/picture"
	"thenar/internal/project"
	"thenar/internal/words"
)

// Drawings shrink in steps of 5 % down to this share of their wished size, in percent.
const leastDrawing = 75

// shrinking returns the shares of the wished size in which a drawing may be set.
func shrinking() (shares []float64) {
	for s := 100; s >= leastDrawing; s -= 5 {
		shares = append(shares, float64(s)/100)
	}
	return shares
}

// numbers sets the plan's numbers beside the hand; in large print the hand stands
// below them.
func (h *handout) numbers() []block {
	o := picture.HandOptions{Left: h.Doc.Side == project.Left, Unit: h.Doc.Sheet.Unit(), Worn: h.worn()}
	if !h.o.Large {
		return []block{h.numbersBeside(picture.Hand(h.Out.Plan, o))}
	}
	half := h.columnWidth(2)
	var rows []part
	for _, r := range h.reasons() {
		rows = append(rows, h.numberRow(r, half))
	}
	b := one("numbers", 25, []part{inColumns(rows, 2, half+columnGap)})
	b.ways = append(b.ways, way{parts: inRows(rows, 2, half+columnGap)}) // which may begin on one page and end on the next
	return []block{b, h.largeHand(o)}
}

// numberRow sets a number with its name at its left, or above it where both don't fit
// a line.
func (h *handout) numberRow(r words.Reason, width float64) part {
	name := setLines(r.Name, width, draw.TextStyle{Size: h.small})
	value := draw.TextStyle{Size: h.body, Face: draw.Semibold}
	if wide := draw.Measure(valueText(r), h.body, draw.Semibold); draw.Measure(r.Name, h.small, draw.Regular)+2+wide <= width {
		return drawn(name[0].Height, func(p *draw.Scene, x, y float64) {
			name[0].draw(p, x, y)
			p.Text(x+width-wide, y+h.body, valueText(r), value)
		})
	}
	return stack(append(name, setLines(valueText(r), width, value)...))
}

// leastLargeHand is the least share of its wished size in which the hand stands in
// large print, where its letters are as large as the text all the same, in percent.
const leastLargeHand = 85

// largeHand sets the hand by itself, with letters as large as the text.
func (h *handout) largeHand(o picture.HandOptions) block {
	o.Letter = h.handLetter(o)
	hand := picture.Hand(h.Out.Plan, o)
	wished := min(h.width()/hand.Width, h.areaHeight()/hand.Height)
	b := block{name: "hand", above: 30}
	for s, share := range shrinking() {
		if scale := wished * share; s == 0 || o.Letter*scale >= h.body {
			whole := scene(hand.Height, scale, func() *draw.Scene { return hand }, (h.width()-hand.Width*scale)/2)
			b.ways = append(b.ways, way{s, []part{whole}})
		}
	}
	return b
}

// handLetter returns the size of letters in mm of the drawn hand that are as large as
// the text where the hand has its least size. With letters of size L the drawing is
// a + b·L wide and so it is high; printed at a scale of room / (a + b·L) · share the
// letters are as large as the text for L = text · a / (room · share − text · b).
func (h *handout) handLetter(o picture.HandOptions) float64 {
	const small, great = 8.0, 11.0 // about what comes out
	at := func(letter float64) *draw.Scene {
		o.Letter = letter
		return picture.Hand(h.Out.Plan, o)
	}
	lesser, greater := at(small), at(great)
	solve := func(room, from, to float64) float64 {
		b := (to - from) / (great - small)
		a := from - b*small
		return h.body * a / max(room*leastLargeHand/100-h.body*b, 0.1*room)
	}
	return 1.001 * max(solve(h.width(), lesser.Width, greater.Width), solve(h.areaHeight(), lesser.Height, greater.Height))
}

// handShare is the largest share of a page's height that the hand takes beside its
// numbers.
const handShare = 0.8

// numbersBeside sets the numbers in one or two columns to the left of the hand. Those
// for which there is no room there go below it.
func (h *handout) numbersBeside(hand *draw.Scene) block {
	b := block{name: "numbers", above: 25}
	list := h.reasons()
	var wished float64
	for columns := 1; columns <= 2; columns++ {
		n := newNumbers(h, list, columns)
		if columns == 1 {
			wished = min(n.room()/hand.Width, handShare*h.areaHeight()/hand.Height)
		}
		for s, share := range shrinking() {
			scale := wished * share
			if hand.Width*scale > n.room()+0.01 {
				continue
			}
			b.ways = append(b.ways, way{s, []part{n.with(hand, scale)}})
		}
	}
	return b
}

// numberGap is the room between columns of numbers, and between them and the hand.
const numberGap = 4.0

// numbers are set in columns of a width beside a hand.
type numbers struct {
	*handout
	list    []words.Reason
	parts   []part    // each set in the width of a column
	heights []float64 // of each, in mm
	columns int
	width   float64 // of a column in mm
}

// newNumbers measures numbers for so many columns. One column is as wide as its widest
// name; in two, long names are broken.
func newNumbers(h *handout, list []words.Reason, columns int) *numbers {
	n := &numbers{handout: h, list: list, columns: columns, width: 0.29 * h.width()}
	if columns > 1 {
		n.width = 0.2 * h.width()
	}
	for _, r := range list {
		if columns == 1 {
			n.width = max(n.width, draw.Measure(r.Name, h.small, draw.Regular))
		}
		n.parts = append(n.parts, h.number(r, n.width))
		n.heights = append(n.heights, float64(n.parts[len(n.parts)-1].Height)/10)
	}
	return n
}

// left returns where the hand's room begins, in mm from the margin.
func (n *numbers) left() float64 { return float64(n.columns) * (n.width + numberGap) }

// room returns the width that is left for the hand.
func (n *numbers) room() float64 { return n.flow.width() - n.left() }

// with sets the numbers with a hand, so that both together are as low as can be.
func (n *numbers) with(hand *draw.Scene, scale float64) part {
	high := hand.Height * scale
	best, count := math.Inf(1), len(n.list)
	for k := len(n.list); k >= 0; k-- {
		if total := max(n.height(k), high+n.underHeight(k)); total < best-0.01 {
			best, count = total, k
		}
	}
	return drawn(tenths(best), func(p *draw.Scene, x, y float64) {
		p.Add(hand, x+n.left()+(n.room()-hand.Width*scale)/2, y, scale)
		for i, at := range n.columned(count) {
			top := y
			for k := at[0]; k < at[1]; k++ {
				n.parts[k].draw(p, x+float64(i)*(n.width+numberGap), top)
				top += n.heights[k]
			}
		}
		n.drawUnder(p, count, x+n.left(), y+high)
	})
}

// columned returns the first k numbers divided into columns, from … to−1.
func (n *numbers) columned(k int) (list [][2]int) {
	each := max((k+n.columns-1)/n.columns, 1)
	for from := 0; from < k; from += each {
		list = append(list, [2]int{from, min(from+each, k)})
	}
	return list
}

// height returns the height of the first k numbers in their columns.
func (n *numbers) height(k int) float64 {
	highest := 0.0
	for _, at := range n.columned(k) {
		highest = max(highest, sum(n.heights[at[0]:at[1]]))
	}
	return highest
}

// across returns how many numbers stand side by side below the hand.
func (n *numbers) across() int {
	return max(int((n.room()+numberGap)/(n.width+numberGap)), 1)
}

// underHeight returns the height of the numbers from the kth on below the hand.
func (n *numbers) underHeight(k int) float64 {
	total := 0.0
	for ; k < len(n.list); k += n.across() {
		total += n.rowHeight(k)
	}
	if total > 0 {
		total += numberGap
	}
	return total
}

// rowHeight returns the height of the row below the hand that begins with the kth.
func (n *numbers) rowHeight(k int) float64 {
	highest := 0.0
	for _, high := range n.heights[k:min(k+n.across(), len(n.list))] {
		highest = max(highest, high)
	}
	return highest
}

func (n *numbers) drawUnder(p *draw.Scene, k int, x, y float64) {
	y += numberGap
	for ; k < len(n.list); k += n.across() {
		for i, one := range n.parts[k:min(k+n.across(), len(n.parts))] {
			one.draw(p, x+float64(i)*(n.width+numberGap), y)
		}
		y += n.rowHeight(k)
	}
}

func sum(list []float64) float64 {
	total := 0.0
	for _, n := range list {
		total += n
	}
	return total
}

// number sets a number with its name above it.
func (h *handout) number(r words.Reason, width float64) part {
	name := setLines(r.Name, width, draw.TextStyle{Size: h.small})
	name[len(name)-1].Height = tenths(1.25 * h.small) // the value stands close below
	value := setLines(valueText(r), width, draw.TextStyle{Size: h.body, Face: draw.Semibold})
	return stack(append(append(name, value...), space(6)))
}

// reasons returns the numbers that are printed: all but zeros that are not fixed.
func (h *handout) reasons() []words.Reason {
	var list []words.Reason
	for _, r := range h.Out.Reasons {
		if r.Number != "0" || r.Fixed {
			list = append(list, r)
		}
	}
	return list
}

func valueText(r words.Reason) string {
	if r.Fixed {
		return r.Value + " (fixed)"
	}
	return r.Value
}
