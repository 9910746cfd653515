package words

import (
	"fmt"
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// What is said of a piece with a seam, in place of the beginning of a round and of its
// markers.

// bothEdges follows the cast-on.
const bothEdges = "The first and the last stitch of every row go into the seam."

// across returns where a row begins and what it crosses, with the gusset or the thumb's
// place inside. On the wrong side it goes back the same way. Beside a thumb in the palm some
// stitches of the palm lie on the back's side. A piece from the fingertips hangs the other way
// up, so its rows go the other way.
func (h Hands) across(inside string, s *stitch.Section) string {
	inset, hand, back := s.About.Inset, "right", "the back"
	if h.Left {
		hand = "left"
	}
	if inset > 0 {
		back = fmt.Sprintf("the back and %s of the palm", Plural(inset, "stitch"))
	}
	way := []string{back, inside, "the palm"}
	if (h.Left != h.FromLeft) != s.Down {
		way[0], way[2] = way[2], way[0]
	}
	return fmt.Sprintf("A row begins at the seam, on the little finger’s side. The %s hand’s right side crosses %s. %s", hand, strings.Join(way, ", then "), h.pair())
}

// rowMarkers returns where the markers at both edges of a gusset are placed.
func rowMarkers(before, base int, down bool) string {
	next := "the next one"
	if base != 1 {
		next = fmt.Sprintf("the next %d", base)
	}
	return fmt.Sprintf("Place a marker after the first %s, and another after %s: the gusset %s between them.", few(before), next, grows(down))
}

// rowDivides is divides in rows.
func rowDivides(bridge int) string {
	text := "Take both markers off."
	if bridge == 0 {
		text += " Nothing is cast on over the gap: knit across it and pull snug."
	}
	return text
}

// rowAlong returns where the stitches of a thumb with a seam are picked up, as the mitt
// is held for it: see along.
func (h Hands) rowAlong(bridge int) string {
	to, from := "left", "right"
	if h.FromLeft {
		to, from = from, to
	}
	edge := "the bridge"
	if bridge == 0 {
		edge = "the top of the gap"
	}
	return fmt.Sprintf("Hold it fingers down, outside towards you: pick up from the middle of %s to its %s corner. Turn it fingers up for the held stitches, then down again: pick up from the %s corner to the middle.", edge, to, from)
}

// rowFreed is freed in rows, where a thumb with a seam begins in the middle of the loops
// above: those before it are its row's last.
func (h Hands) rowFreed(s *stitch.Section) []string {
	ops := s.Rounds[0].Ops
	first := slices.Index(ops, stitch.CornerM1)
	below := slices.Index(ops[first+1:], stitch.CornerM1)
	above := len(ops) - 2*s.Seam - below - count(s.Rounds[0], stitch.CornerM1)
	to, from := "left", "right"
	if h.FromLeft {
		to, from = from, to
	}
	begins, rest := fmt.Sprintf("beside the %s corner, whose strand comes last.", from), ""
	switch {
	case s.Shift == 1:
		begins = "in the middle of the loops above: leave the first for the row’s end."
	case s.Shift > 1:
		begins = fmt.Sprintf("in the middle of the loops above: leave the first %d for the row’s end.", s.Shift)
	}
	if s.Shift > 0 {
		rest = fmt.Sprintf(" Turn it down again: knit from the %s corner to the middle.", from)
	}
	return []string{
		takenOut(below, above),
		"Hold it fingers down, outside towards you. The thumb’s rows begin " + begins,
		fmt.Sprintf("Join the yarn there%s. Knit to the %s corner, then turn it fingers up for the loops below.", h.leaving(h.Tails.End), to) + rest,
		atCorners,
		"The stitch cast on at each end goes into the thumb’s seam.",
	}
}

// seamCloses is said above an opening that is left in the seam.
const seamCloses = "Here the opening ends: from here on the edges go into the seam again."

// sewing returns how the seams of a mitt are sewn, once all is knitted.
func (h Hands) sewing(m stitch.Mitt) []Step {
	hand, thumb := false, false
	var left *stitch.Section // where the seam stays open
	for i := range m.Sections {
		s := &m.Sections[i]
		digit := s.Part.Over() == stitch.OverDigit
		if digit && s.Down {
			continue // it is sewn already
		}
		hand, thumb = hand || s.Seam > 0 && !digit, thumb || s.Seam > 0 && digit
		if s.SeamOpen() {
			left = s
		}
	}
	if !hand {
		return nil
	}
	what, takes := "the seam", Tail(h.Tails.Seam, h.Unit)+" of yarn"
	switch {
	case left != nil:
		takes = fmt.Sprintf("%s below the opening and %s above it", takes, Tail(h.Tails.SeamAbove, h.Unit))
	case thumb:
		what, takes = "the thumb’s seam and the long one", fmt.Sprintf("%s and %s", Tail(h.Tails.ThumbSeam, h.Unit), takes)
	}
	text := "Sew " + what + " in mattress stitch, right side out: one stitch of each edge goes inside."
	if h.Tails.Seam > 0 {
		text += " Take " + takes + "."
	}
	steps := []Step{{Text: text}}
	if left != nil {
		steps = append(steps, Step{Text: fmt.Sprintf("Leave the %s of the opening open for the thumb. Fasten off well at both its ends.", Plural(len(left.Rounds), "row"))})
	}
	return steps
}

// tipInRows returns how a tip that begins in rows is closed: its cast-on is an edge, which
// is drawn up, or folded if it is long.
func tipInRows(s *stitch.Section) []string {
	if !s.About.Tip {
		return nil
	}
	list := []string{"Keep the tail for the tip: fold the cast-on in half, and sew its halves together before the seam."}
	if s.Around(s.CastOn) <= stitch.MostInRing {
		list[0] = "Keep the tail for the tip: before its seam is sewn, it draws the loops of the cast-on together."
	}
	if liftsAtOnce(s) {
		list = append(list, "A cast-on has no strands to lift: in the first row make new stitches by backward loops.")
	}
	return list
}

// thumbSewn returns how a thumb ends that is worked first and flat: the yarn closes its
// lower edge, and its seam is sewn at once, so that the hand is joined to a tube.
func (h Hands) thumbSewn(s *stitch.Section) []Step {
	n := len(s.Finish.Ops)
	closed := ""
	if s.About.Tip {
		closed = " Close the tip first."
	}
	return []Step{
		{Text: fmt.Sprintf("Cut the yarn%s. Draw it through the first stitch and the last: both go into the seam.", h.leaving(h.Tails.ThumbSeam))},
		{Text: capital(phrase(cut(s.Finish, 1, n-1))) + "."},
		{Text: "Sew the thumb’s seam with that tail in mattress stitch, right side out: one stitch of each edge goes inside." + closed},
	}
}

// besides follows a count of stitches that leaves out those of the seam.
func besides(s *stitch.Section) string {
	if s.Seam == 0 {
		return ""
	}
	return fmt.Sprintf(", and the seam’s %d", 2*s.Seam)
}

// lastShaped returns the last round of a section that may be shaped: of rows that is the
// last on the right side.
func lastShaped(s *stitch.Section) int {
	if n := len(s.Rounds); n > 0 && s.Rounds[n-1].Side == stitch.WrongSide {
		return n - 1
	}
	return len(s.Rounds)
}

// inRows returns a text about rounds as one about rows, where they are.
func inRows(text string, s *stitch.Section) string {
	if s.Noun() == "row" {
		return stitch.InRows(text)
	}
	return text
}

// flat says a reason of a flat piece: about rows, and with the stitches of the seam.
func (r *Reason) flat(p *mitt.Plan) {
	switch r.Of {
	case mitt.CastOn:
		n, seam := p.Count(mitt.CastOn), p.SeamStitches()
		r.Value = fmt.Sprintf("%d + %s", n, Plural(seam, "stitch"))
		r.Why += fmt.Sprintf(" The seam takes %d more: cast on %d.", seam, n+seam)
	case mitt.GussetRounds:
		r.Why += " Rows come in pairs: each part begins on the right side."
	}
	r.Name, r.Value, r.Why = stitch.InRows(r.Name), stitch.InRows(r.Value), stitch.InRows(r.Why)
}
