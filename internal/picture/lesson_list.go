package picture

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// lessonGroup is panels that stay in one row, and the operations of which each calls for
// them, or what else does. They are those of a mitt that is knitted from right to left.
type lessonGroup struct {
	name   string // what is drawn, for who can't see it
	ops    []stitch.Op
	also   func(o LessonOptions) bool // nil: nothing
	panels func(o LessonOptions, n names) []lessonPanel
}

// high is the height of a panel with two needles, and low that of one with the thumb's
// opening, in mm.
const high, low = 34.0, 32.0

// lessons are all groups, in the order in which they are worked.
var lessons = []lessonGroup{
	{"closed cast-on", nil, func(o LessonOptions) bool { return slices.ContainsFunc(o.Tips, inRing) }, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{
			{"Closed cast-on", 1, "Lay the yarn in a ring and draw each stitch out of it.", 40, high, drawRing},
			{"", 2, "Pull the end: the ring closes.", 40, high, drawRingShut},
		}
	}},
	{"wound cast-on", nil, func(o LessonOptions) bool {
		return slices.ContainsFunc(o.Tips, func(n int) bool { return !inRing(n) })
	}, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{{"Closed cast-on", 0, "Wind the yarn round two needles held together, half of the stitches on each. Knit across both.", 40, high, drawWound}}
	}},
	{"make ones", []stitch.Op{stitch.M1L}, nil, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Make one leaning " + n.left + " (" + n.op(stitch.M1L) + ")", 1, "Lift the strand from the front with the " + n.left + " needle: its " + n.right + " leg lies in front.", 40, high, drawLiftFront},
			{"", 2, "Knit it through the back loop: that twists it shut.", 40, high, drawKnitBack},
		}
	}},
	{"make ones", []stitch.Op{stitch.M1R}, nil, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Make one leaning " + n.right + " (" + n.op(stitch.M1R) + ")", 1, "Lift the strand from behind with the " + n.left + " needle: its " + n.left + " leg lies in front.", 40, high, drawLiftBack},
			{"", 2, "Knit it through the front loop: that twists it shut.", 40, high, drawKnitFront},
		}
	}},
	{"lifted increases", []stitch.Op{stitch.LLI}, nil, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Lifted, leaning " + n.left + " (" + n.op(stitch.LLI) + ")", 1, "Two rows below the stitch just worked, lift the " + n.left + " leg onto the " + n.left + " needle.", 40, high, drawLiftTwoBelow},
			{"", 2, "Knit it through the back loop: so it isn’t twisted.", 40, high, drawKnitLiftedLeft},
		}
	}},
	{"lifted increases", []stitch.Op{stitch.RLI}, nil, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Lifted, leaning " + n.right + " (" + n.op(stitch.RLI) + ")", 1, "Right below the next stitch, lift the " + n.right + " leg onto the " + n.left + " needle.", 40, high, drawLiftBelowNext},
			{"", 2, "Knit it as usual, then knit the next stitch.", 40, high, drawKnitLiftedRight},
		}
	}},
	{"yarn overs", []stitch.Op{stitch.YarnOver}, nil, func(o LessonOptions, n names) []lessonPanel {
		list := []lessonPanel{{"Yarn over (yo)", 1, "Bring the yarn to the front and lay it over the " + n.right + " needle.", 40, high, drawYarnOver}}
		if !o.Ops[stitch.KnitTBL] {
			list[0].step = 0
			return list
		}
		list[0].title = "Yarn over (yo), closed"
		shut := "In the next round knit it through the back loop: that twists it shut."
		if o.Seam { // the next row is on the wrong side
			shut = "In the next row purl it through the back loop. From the right side it looks knitted like this."
		}
		return append(list, lessonPanel{"", 2, shut, 40, high, drawKnitBack})
	}},
	{"knitting front and back", []stitch.Op{stitch.KFB}, nil, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Knit front and back (kfb)", 1, "Knit into the front, but leave the stitch on the " + n.left + " needle.", 40, high, drawFront},
			{"", 2, "Knit into its back as well, then let it go: one has become two.", 40, high, drawFrontAndBack},
		}
	}},
	{"loop cast-on", atGap, nil, func(o LessonOptions, n names) []lessonPanel {
		over := lessonPanel{
			"Bridge over the gap", 0, fmt.Sprintf("Turn the yarn into a loop, put it on the %s needle, pull it snug. %s.", n.right, timesWords(o.Bridge)), 40, low, drawLoops,
		}
		switch {
		case o.onWaste(), o.divides() && o.Bridge == 0:
			over.title = "A bridge of loops"
			over.text = fmt.Sprintf("Turn the yarn into a loop, put it on the %s needle, pull it snug. So is each bridge beside a finger cast on.", n.right)
		case o.Bridge == 0:
			over.text = "Not needed in this mitt: nothing is cast on over the gap."
		}
		return []lessonPanel{over}
	}},
	{"picking up", atGap, nil, func(o LessonOptions, n names) []lessonPanel {
		if o.Seam || o.onWaste() { // the corners are then those of fingers
			return nil
		}
		return []lessonPanel{{"Pick up for the thumb", 0, o.pickText(n), 66, low, drawOpening}}
	}},
	{"closing the corners", atGap, nil, func(o LessonOptions, n names) []lessonPanel {
		lift := "Lift the strand from behind."
		if o.holds(stitch.M1R) {
			lift = "Lift the strand from behind, as for " + n.op(stitch.M1R) + "."
		}
		title := "Close both corners"
		if o.onWaste() {
			title += " beside a finger"
		}
		return []lessonPanel{
			{title, 1, lift + " K2tog it with the first held stitch.", 40, 27, drawFirstGap},
			{"", 2, "Slip the last held stitch as if to knit, then the strand, lifted likewise. Knit both through the back loops.", 40, 27, drawLastGap},
		}
	}},
	{"a bridge beside a finger", nil, LessonOptions.divides, func(o LessonOptions, n names) []lessonPanel {
		return []lessonPanel{
			{"Bridge beside a finger", 0, o.besideText(), 66, low, drawBeside},
			{"Pick up along that bridge", 0, o.alongText(n), 66, low, drawAlong},
		}
	}},
	{"a thumb on waste yarn", []stitch.Op{stitch.Waste, stitch.CornerM1}, nil, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{
			{"Thumb on waste yarn", 1, "Knit with waste yarn; slip that back and knit it again with the working yarn.", 40, high, drawWaste},
			{"", 2, "Take the waste yarn out, loop by loop: loops wait below and above.", 40, high, drawFreed},
			{"", 3, "At each corner lift the strand with its half loop and knit it through the back loop.", 40, high, drawKnitBack},
		}
	}},
	{"grafting", []stitch.Op{stitch.Graft}, nil, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{
			{"Graft (the front needle is drawn below)", 1, "Put half on each of two needles. Front: as if to purl. Back: as if to knit.", 40, high, drawGraftBegun},
			{"", 2, "Front: as if to knit, slip it off; the next as if to purl.", 40, high, drawGraftFront},
			{"", 3, "Back: as if to purl, slip it off; the next as if to knit. Repeat 2 and 3.", 40, high, drawGraftBack},
		}
	}},
	{"binding off together", nil, func(o LessonOptions) bool { return o.Gap }, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{{"Or bind off together", 0, "Inside out, knit the first of each as one with a third needle; bind off.", 40, high, drawBoth}}
	}},
	{"loop cast-on", nil, func(o LessonOptions) bool { return o.Seam && o.Ops[stitch.CornerM1] }, func(_ LessonOptions, n names) []lessonPanel {
		return []lessonPanel{{"Cast on for the thumb’s seam", 0, fmt.Sprintf("Turn the yarn into a loop, put it on the %s needle, pull snug: at both ends of row 1.", n.right), 40, low, drawLoops}}
	}},
	{"mattress stitch", nil, func(o LessonOptions) bool { return o.Seam }, func(LessonOptions, names) []lessonPanel {
		return []lessonPanel{{"Mattress stitch", 0, "Go under two strands beside the last stitch of one edge, then of the other; pull.", 40, high, drawMattress}}
	}},
}

// inRing reports whether so many stitches of a closed cast-on begin in a ring of yarn.
func inRing(n int) bool { return n <= stitch.MostInRing }

// atGap are the operations beside a gap, of what was held there: a thumb's stitches, or a
// finger's.
var atGap = []stitch.Op{stitch.GapK2tog, stitch.GapSSK}

// onWaste reports whether the thumb of a glove was knitted with waste yarn. Nothing is picked
// up for it, and what is worked at a gap is a finger's.
func (o LessonOptions) onWaste() bool { return o.divides() && o.Ops[stitch.CornerM1] }

// names holds the words that change with the direction of knitting: the sides, as they
// are drawn for knitting from right to left, and what an increase is called.
type names struct {
	left, right string
	op          func(stitch.Op) string
}

func (o LessonOptions) names() names {
	if o.FromLeft {
		return names{"right", "left", func(op stitch.Op) string { return op.FromLeft().Abbr() }}
	}
	return names{"left", "right", stitch.Op.Abbr}
}

// holds reports whether the mitt's rounds hold an operation, or the one that is read for
// it from left to right.
func (o LessonOptions) holds(op stitch.Op) bool {
	if o.FromLeft {
		op = op.FromLeft()
	}
	return o.Ops[op]
}

// said returns a text in the person's terms.
func (o LessonOptions) said(text string) string {
	if o.Say == nil {
		return text
	}
	return o.Say(text)
}

// groups returns what is drawn for the mitt.
func (o LessonOptions) groups() (list []lessonGroup) {
	for _, g := range lessons {
		if slices.ContainsFunc(g.ops, o.holds) || g.also != nil && g.also(o) {
			list = append(list, g)
		}
	}
	return list
}

func namesOf(groups []lessonGroup) string {
	var list []string
	for _, g := range groups {
		if !slices.Contains(list, g.name) {
			list = append(list, g.name)
		}
	}
	return strings.Join(list, ", ")
}

// rows sets groups in as few rows as have room for them, and in those that are as even as
// can be.
func (o LessonOptions) rows(groups []lessonGroup) (rows [][]lessonPanel) {
	room := mostInRow
	if o.Letter > largeLetter && o.Width < wideEnough { // fewer panels in a row
		room = mostLargeInRow
	}
	n := o.names()
	var sets [][]lessonPanel
	var widths []float64
	for _, g := range groups {
		set := g.panels(o, n)
		wide := 0.0
		for i, p := range set {
			set[i].title, set[i].text = o.said(p.title), o.said(p.text)
			wide += p.width
		}
		sets, widths = append(sets, set), append(widths, wide)
	}
	from := 0
	for _, to := range evenRows(widths, room) {
		rows = append(rows, slices.Concat(sets[from:to]...))
		from = to
	}
	return rows
}

// The most that the panels of a row are wide together, in mm of their wished size: in
// ordinary and in large print.
const mostInRow, mostLargeInRow = 186.0, 120.0

// evenRows breaks widths into rows of at most room, as few as can be, and among those so
// that the widest is the least. It returns the end of each row.
func evenRows(widths []float64, room float64) (ends []int) {
	type best struct {
		rows int
		most float64
		from int // of the last row
	}
	till := make([]best, len(widths)+1)
	for i := 1; i <= len(widths); i++ {
		sum := 0.0
		for from := i - 1; from >= 0; from-- {
			if sum += widths[from]; sum > room && from < i-1 {
				break
			}
			b := best{till[from].rows + 1, max(till[from].most, sum), from}
			if t := till[i]; t.rows == 0 || b.rows < t.rows || b.rows == t.rows && b.most < t.most {
				till[i] = b
			}
		}
	}
	for i := len(widths); i > 0; i = till[i].from {
		ends = append(ends, i)
	}
	slices.Reverse(ends)
	return ends
}

// pickText says where the thumb's stitches are picked up, as the Thumb's words do.
func (o LessonOptions) pickText(n names) string {
	where := "at the top of the gap"
	switch {
	case o.PickedUp == 0:
		return fmt.Sprintf("Nothing is picked up. Hold it fingers up, outside towards you: knit the %d\u00a0held from the %s corner.", o.Held, n.right)
	case o.Bridge > 0 && o.PickedUp > o.Bridge: // more than it has
		places := "between its stitches and at both ends"
		if o.Bridge == 1 {
			places = "at both ends"
		}
		switch more := o.PickedUp - o.Bridge - 1; {
		case more == 1:
			places += ". 1\u00a0more comes out of the loop in the middle"
		case more > 1:
			places += fmt.Sprintf(". %d\u00a0more come out of the loops in the middle", more)
		}
		return fmt.Sprintf("Fingers down: pick up along the bridge from %s to %s, %s. Fingers up: the %d\u00a0held.", n.right, n.left, places, o.Held)
	case o.Bridge > 0:
		where = "along the bridge"
	}
	return fmt.Sprintf("Hold it fingers down, outside towards you: pick up %s from %s to %s. Turn it fingers up for the %d\u00a0held.", where, n.right, n.left, o.Held)
}

func timesWords(n int) string {
	if n == 1 {
		return "Once"
	}
	return fmt.Sprintf("%d\u00a0times", n)
}
