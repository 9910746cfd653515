package paper

import (
	"fmt"
	"math"
	"strings"

	"thenar/internal/draw"
)

// use is how the paper of some pages is used. Pages counts those with anything on
// them; sheets counts leaves of paper, empty backs included. All shares are of the
// type area: the page less its margins and the room above its foot.
//
//   - empty is the share outside the boxes of lines and drawings, over all pages but
//     the last of each handout, which ends where it ends. The box of a line is 1.35 of
//     its letters high, however the lines are set apart, and reaches to the next box
//     at its right or to the edge, since a ragged line isn't empty paper. The box of a
//     drawing, letters included, counts as no larger than its wished size: cells of
//     maxFitCell (largeCell in large print, or as asked), a hand drawn to life at half
//     of it (¾ in large print), all else as it is drawn. A line to write on has 8 mm
//     above it.
//   - foot is the share below the last box, over the same pages.
//   - under counts the pages that are used for less than 40 % of their height, but
//     the last of each handout.
type use struct {
	pages, sheets, under, handouts int
	most                           int // pages of the longest handout
	empty, foot                    float64
}

func (u use) String() string {
	return fmt.Sprintf("%3d pages, %3d sheets, at most %2d a handout, %2d under 40 %%, %4.1f %% empty, %4.1f %% at the foot", u.pages, u.sheets, u.most, u.under, 100*u.empty, 100*u.foot)
}

// emptyPages returns how many pages the empty paper makes, but for the last page of
// each handout.
func (u use) emptyPages() float64 { return u.empty * float64(u.pages-u.handouts) }

// box is a rectangle on a page in mm.
type box struct{ left, top, right, bottom float64 }

func (b box) wide() float64 { return b.right - b.left }
func (b box) high() float64 { return b.bottom - b.top }

// meets reports whether two boxes have more than an edge in common.
func (b box) meets(o box) bool {
	const slack = 0.01
	return b.left+slack < o.right && o.left+slack < b.right && b.top+slack < o.bottom && o.top+slack < b.bottom
}

// with returns the smallest box round both.
func (b box) with(o box) box {
	return box{min(b.left, o.left), min(b.top, o.top), max(b.right, o.right), max(b.bottom, o.bottom)}
}

// nothing is the box of no mark at all.
func nothing() box {
	return box{math.Inf(1), math.Inf(1), math.Inf(-1), math.Inf(-1)}
}

// textBox returns the box of a text: as wide as its letters, from top to bottom given
// as shares of their size above and below the baseline.
func textBox(i *draw.Item, at draw.Place, above, below float64) box {
	size := i.Letter.Size * at.Scale
	w := draw.Measure(i.Text, size, i.Letter.Face)
	x, y := at.At(i.X, i.Y)
	x -= w * [...]float64{draw.Start: 0, draw.Middle: 0.5, draw.End: 1}[i.Letter.Anchor]
	return box{x, y - above*size, x + w, y + below*size}
}

// pathBox returns the box round a path's points.
func pathBox(d string, at draw.Place) box {
	b := nothing()
	draw.Walk(d, func(_ byte, n []float64) {
		for k := 0; k+1 < len(n); k += 2 {
			x, y := at.At(n[k], n[k+1])
			b = b.with(box{x, y, x, y})
		}
	})
	return b
}

// letterBox is how far the box of a text reaches above and below its baseline, as
// shares of its size: as a line is set, or as its letters are.
type letterBox struct{ above, below float64 }

var (
	asSet    = letterBox{1, leading - 1}
	asLetter = letterBox{0.7, 0.2} // Source Sans 3 and Source Serif 4, measured
)

// placedBoxes returns the boxes of a page's own lines, and of its drawings, its rules
// and other marks. Whatever lies in the foot is left out.
func placedBoxes(p *draw.Scene, o Options, of letterBox) (lines, drawings []box) {
	foot := p.Height - margin - footRoom
	one := draw.Place{Scale: 1}
	for k := 0; k < len(p.Items); k++ {
		i := &p.Items[k]
		switch {
		case i.Kind == draw.MoveItem:
			end := endOf(p.Items, k)
			drawings = append(drawings, drawingBox(p, p.Items[k:end+1], o, of))
			k = end
		case i.Kind == draw.TextItem && i.Y < foot:
			lines = append(lines, textBox(i, one, of.above, of.below))
		case i.Kind == draw.PathItem:
			b := pathBox(i.Path, one)
			if b.top >= foot {
				continue
			}
			if b.high() == 0 && i.Style.Stroke == ink && i.Style.Dash == "" { // a line to write on
				b.top -= 8
			}
			drawings = append(drawings, b)
		}
	}
	return lines, drawings
}

// endOf returns the index of the end of the group that is opened at from.
func endOf(items []draw.Item, from int) int {
	open := 0
	for k := from; k < len(items); k++ {
		switch items[k].Kind {
		case draw.MoveItem, draw.GroupItem:
			open++
		case draw.EndItem:
			if open--; open == 0 {
				return k
			}
		}
	}
	return len(items) - 1
}

// drawingBox returns the box of a drawing, no larger than its wished size, about its
// middle and from its top.
func drawingBox(p *draw.Scene, items []draw.Item, o Options, of letterBox) box {
	only := &draw.Scene{Width: p.Width, Height: p.Height, Items: items}
	b := nothing()
	only.Each(draw.Place{Scale: 1}, func(i *draw.Item, at draw.Place) {
		if i.Kind == draw.TextItem {
			b = b.with(textBox(i, at, of.above, of.below))
		} else {
			b = b.with(pathBox(i.Path, at))
		}
	})
	shrink := 1.0
	if scale := items[0].Scale; b.high()/scale > 200 { // drawn to life: a hand
		wished := 0.5
		if o.Large {
			wished = 0.75
		}
		shrink = min(1, wished/scale)
	}
	if cell := cellOf(only); cell > 0 {
		wished := maxFitCell
		if o.Large {
			wished = largeCell
		}
		if o.Cell > 0 {
			wished = o.Cell
		}
		shrink = min(shrink, wished/cell)
	}
	gone := (1 - shrink) * b.wide() / 2
	return box{b.left + gone, b.top, b.right - gone, b.top + shrink*b.high()}
}

// cellOf returns the width of the cells of a chart in mm; 0 if there is none.
func cellOf(p *draw.Scene) float64 {
	lines := chartLines(p)
	if len(lines.upright) < 20 {
		return 0
	}
	step := math.Inf(1)
	for _, l := range lines.upright {
		if d := math.Abs(l.at - lines.upright[0].at); d > 0.5 {
			step = min(step, d)
		}
	}
	for _, l := range lines.upright { // lines that are not cells apart belong to another drawing
		if n := (l.at - lines.upright[0].at) / step; math.Abs(n-math.Round(n)) > 0.02 {
			return 0
		}
	}
	return step
}

// pageUse returns the share of a page that is empty, and that below its last box.
func pageUse(p *draw.Scene, o Options) (empty, foot float64) {
	lines, boxes := placedBoxes(p, o, asSet)
	right := p.Width - margin
	for _, l := range lines {
		end := right
		for _, other := range append(lines, boxes...) {
			if other.left >= l.right-0.01 && other.top < l.bottom-0.5 && l.top+0.5 < other.bottom {
				end = min(end, other.left)
			}
		}
		boxes = append(boxes, box{l.left, l.top, max(end, l.right), l.bottom})
	}
	const dot = 0.5 // mm
	wide, high := int((p.Width-2*margin)/dot), int((p.Height-2*margin-footRoom)/dot)
	used, count, last := make([]bool, wide*high), 0, 0.0
	for _, b := range boxes {
		last = max(last, min(b.bottom, p.Height-margin-footRoom))
		for y := max(int(math.Round((b.top-margin)/dot)), 0); y < min(int(math.Round((b.bottom-margin)/dot)), high); y++ {
			for x := max(int(math.Round((b.left-margin)/dot)), 0); x < min(int(math.Round((b.right-margin)/dot)), wide); x++ {
				if !used[y*wide+x] {
					used[y*wide+x] = true
					count++
				}
			}
		}
	}
	return 1 - float64(count)/float64(wide*high), 1 - max(last-margin, 0)/(p.Height-2*margin-footRoom)
}

// useOf measures the paper of a set of handouts as they are printed.
func useOf(pages []*draw.Scene, o Options) use {
	u, counted, mine := use{}, 0, 0
	for i, p := range pages {
		u.sheets++
		if len(p.Items) == 0 {
			continue
		}
		u.pages++
		if mine++; isLast(pages, i) {
			u.most, mine = max(u.most, mine), 0
			u.handouts++
			continue
		}
		empty, foot := pageUse(p, o)
		u.empty, u.foot, counted = u.empty+empty, u.foot+foot, counted+1
		if foot > 0.6 {
			u.under++
		}
	}
	if o.Double {
		u.sheets = (u.sheets + 1) / 2
	}
	if counted > 0 {
		u.empty, u.foot = u.empty/float64(counted), u.foot/float64(counted)
	}
	return u
}

// isLast reports whether a page is the last of its handout: "Ada, page 5 of 5".
func isLast(pages []*draw.Scene, i int) bool {
	_, n, found := strings.Cut(pages[i].Label[max(strings.LastIndex(pages[i].Label, ", page "), 0):], ", page ")
	at, of, _ := strings.Cut(n, " of ")
	return found && at == of
}
