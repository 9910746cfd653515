package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// goesOver reads where the work goes over to rows or to rounds.
func (n *needles) goesOver(line string) error {
	switch text := strings.ToLower(line); {
	case strings.Contains(text, "work to and fro"):
		n.rows = true
	case strings.Contains(text, "join in the round"):
		if n.wrong {
			return fmt.Errorf("the wrong side faces")
		}
		n.rows = false
	}
	return nil
}

// edges reads that the ends of every row are knitted; ok is false for another line.
func (n *needles) edges(p *Part, line string) (ok bool, err error) {
	found := knittedEnds.FindStringSubmatch(line)
	if found == nil {
		return false, nil
	}
	if p.ends = 1; found[1] != "" {
		p.ends = atoi(found[1])
	}
	if p.ends < 1 || 2*p.ends > len(n.live) {
		return true, fmt.Errorf("%d stitches are on the needles", len(n.live))
	}
	return true, nil
}

var knittedEnds = regexp.MustCompile(`^The first and the last (?:stitch|(\d+) stitches) of every row are knitted\b`)

// edged reports whether a row has the ends that were told, as they look on the right
// side: what is knitted on the wrong one is purled there. The stitch beside them is
// not, so that no other number would do.
func (p *Part) edged(row int, ops []string) bool {
	if p.ends == 0 {
		return true
	}
	want := map[bool]string{true: "k", false: "p"}[row%2 == 1]
	for i := range p.ends {
		if ops[i] != want || ops[len(ops)-1-i] != want {
			return false
		}
	}
	return row%2 == 1 || 2*p.ends >= len(ops) || ops[p.ends] != "p" && ops[len(ops)-1-p.ends] != "p"
}

// faces checks that a label is that of a row or round, whichever is worked, and names
// the side that faces. more is the number of rows under the label after its first.
func (n *needles) faces(noun, side string, more int) error {
	switch {
	case n.rows != (noun == "Row"):
		return fmt.Errorf("to and fro: %t, and a %s follows", n.rows, strings.ToLower(noun))
	case side != "" && (!n.rows || more > 0):
		return fmt.Errorf("no single row faces with one side")
	case side == "" && n.rows && more == 0:
		return fmt.Errorf("which side faces is not told")
	case side != "" && n.wrong != (side == "wrong"):
		return fmt.Errorf("the %s side is told, and the other one faces", side)
	}
	return nil
}

// otherSide is how a stitch looks from behind, if it has a name there.
var otherSide = map[string]string{
	"k": "p", "p": "k", "k tbl": "p tbl", "p tbl": "k tbl", "k2tog": "p2tog", "p2tog": "k2tog", "ssk": "ssp", "ssp": "ssk", "yo": "yo", "M1": "M1",
}

// turn turns the work after a row, and returns the row as it looks on the right side.
func (n *needles) turn(ops []string) ([]string, error) {
	slices.Reverse(n.live)
	if n.before > 0 && n.gusset >= 0 {
		n.before = len(n.live) - n.before - n.gusset
	}
	was := n.wrong
	n.wrong = !was
	if !was {
		return ops, nil
	}
	ops = slices.Clone(ops)
	slices.Reverse(ops)
	for i, op := range ops {
		looks, seen := strings.CutPrefix(op, fromRight)
		if other := otherSide[op]; other != "" {
			looks, seen = other, true
		}
		if !seen {
			return nil, fmt.Errorf("%s: nobody can tell how it looks on the right side", op)
		}
		ops[i] = looks
	}
	return ops, nil
}

// fromRight marks an operation of a wrong-side row that was named as it looks from the
// right side.
const fromRight = "looks like "

// asSeen works an item that is named as it looks from the right side, or a slipped
// stitch, whose yarn lies on the wrong side; ok is false if it is neither.
func (w *worker) asSeen(item string) (ok bool, err error) {
	name, seen := strings.CutSuffix(item, " as seen from the right side")
	if !seen {
		name, seen = strings.CutSuffix(item, " with the yarn in front")
		seen = seen && strings.HasPrefix(item, "sl")
	}
	if !seen {
		return false, nil
	}
	if !w.wrong {
		return true, fmt.Errorf("the right side faces already")
	}
	from := len(w.ops)
	if err := w.item(name); err != nil {
		return true, err
	}
	for i := from; i < len(w.ops); i++ {
		w.ops[i] = fromRight + w.ops[i]
	}
	return true, nil
}

// twoMarkers places the markers at both edges of a gusset in a row.
func (n *needles) twoMarkers(p *Part, before, inside string) error {
	n.before, n.gusset = oneOr(before), oneOr(inside)
	if !n.rows || n.wrong || n.before+n.gusset >= len(n.live) || len(p.Rounds) > 0 {
		return fmt.Errorf("%d stitches are on the needles", len(n.live))
	}
	return nil
}

// oneOr returns the number that digits stand for; without any a single stitch is meant.
func oneOr(digits string) int {
	if digits == "" {
		return 1
	}
	return atoi(digits)
}

// leaveOpen reads how many rows of a seam stay open: those of an opening.
func (n *needles) leaveOpen(k int) error {
	if n.sewn == 0 || k != n.open {
		return fmt.Errorf("%d rows are those of an opening, in %d seams", n.open, n.sewn)
	}
	n.leftOpen = true
	return nil
}

// seams checks that a piece that was worked flat from its cast-on is sewn: one seam, and
// one more of a thumb.
func (n *needles) seams(m *Mitt) error {
	if n.open > 0 && !n.leftOpen {
		return fmt.Errorf("the seam was to stay open along %d rows", n.open)
	}
	if n.unsewn {
		return fmt.Errorf("the thumb is not sewn")
	}
	if n.sewn == 0 {
		return nil
	}
	want := 1
	for _, p := range m.Parts {
		if len(p.From) > 0 && len(p.Rounds) > 0 {
			want++
		}
	}
	if !n.rows || n.sewn != want {
		return fmt.Errorf("%d seams are sewn, and there are %d", n.sewn, want)
	}
	return nil
}
