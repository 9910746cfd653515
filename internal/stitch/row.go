package stitch

import (
	"slices"
	"strings"
)

// Side says which side of the fabric faces the knitter.
type Side uint8

// The sides. In the round it is always the right side, and no round ends.
const (
	AllRound  Side = iota
	RightSide      // a row with the right side facing
	WrongSide      // a row with the wrong side facing
)

// Facing returns the side that faces the knitter in row r of a part, from 1: the right
// side in the first.
func Facing(r int) Side {
	if r%2 == 0 {
		return WrongSide
	}
	return RightSide
}

// Words returns what a side is called; a round has none.
func (s Side) Words() string {
	return [...]string{"", "right side", "wrong side"}[s]
}

// Row reports whether the round is a row, at whose end the piece is turned.
func (r Round) Row() bool { return r.Side != AllRound }

// Noun returns what is called a row, if it has a side, or a round.
func (s Side) Noun() string {
	if s == AllRound {
		return "round"
	}
	return "row"
}

// Noun returns what the round is called.
func (r Round) Noun() string { return r.Side.Noun() }

// Noun returns what the section's rounds are called: all are rows, or none is.
func (s *Section) Noun() string {
	if len(s.Rounds) == 0 {
		return "round"
	}
	return s.Rounds[0].Noun()
}

// Noun returns what the rounds of a part are called.
func (m Mitt) Noun(p Part) string {
	if s := m.Section(p); s != nil {
		return s.Noun()
	}
	return AllRound.Noun()
}

// AsWorked returns the round with its operations as the hands make them.
func (r Round) AsWorked() Round {
	if r.Side != WrongSide {
		return r
	}
	r.Ops, r.Aside = r.Worked(), slices.Clone(r.Aside)
	slices.Reverse(r.Aside)
	r.Before = len(r.Ops) - r.Before - r.Lead
	return r
}

// Worked returns the operations as the hands make them, in the order in which they
// do. The operations of a row are listed as they look on the right side, from right
// to left; on the wrong side they are met from the other end and turned.
func (r Round) Worked() []Op {
	ops := slices.Clone(r.Ops)
	if r.Side == WrongSide {
		slices.Reverse(ops)
		for i, o := range ops {
			ops[i] = o.Turned()
		}
	}
	return ops
}

// turned lists the operations that look like each other from the two sides of the
// fabric.
var turned = [][2]Op{{Knit, Purl}, {KnitTBL, PurlTBL}, {K2tog, P2tog}, {SSK, SSP}}

// Turned returns the operation that makes on the wrong side what o looks like on the
// right side. Where both are the same it is o.
func (o Op) Turned() Op {
	for _, pair := range turned {
		switch o {
		case pair[0]:
			return pair[1]
		case pair[1]:
			return pair[0]
		}
	}
	return o
}

// mirrorRow returns the order of a row's operations on the other hand: from its other
// end. The leading block stands in the mirrored place.
func (r Round) mirrorRow(order []int) {
	end := r.Before + r.Lead
	slices.Reverse(order)
	for _, block := range [3][]int{order[:len(order)-end], order[len(order)-end : len(order)-r.Before], order[len(order)-r.Before:]} {
		frontAndBack(r.Ops, block)
	}
	asideFirst(r.Ops, order)
}

// mirroredBefore returns how many operations stand before the leading block on the
// other hand.
func (r Round) mirroredBefore() int {
	if !r.Row() || r.Lead == 0 || r.Even {
		return r.Before
	}
	return len(r.Ops) - r.Before - r.Lead
}

// InRows returns a text about rounds as one about rows. "In the round" stays. It is
// asked of every sentence of a piece that is worked flat, so it looks for the one word
// and builds nothing where there is none.
func InRows(text string) string {
	var said strings.Builder
	done := 0
	for at := 0; ; {
		found := strings.Index(text[at:], "ound")
		if found < 0 {
			break
		}
		from := at + found - 1
		at += found + len("ound")
		end := at
		plural := end < len(text) && text[end] == 's'
		if plural {
			end++
		}
		switch {
		case from < 0 || text[from] != 'r' && text[from] != 'R', from > 0 && inWord(text[from-1]), end < len(text) && inWord(text[end]):
		case !plural && strings.HasSuffix(text[:from], "in the "):
		default:
			said.WriteString(text[done:from])
			said.WriteByte(text[from])
			said.WriteString("ow")
			done = at
		}
	}
	if done == 0 {
		return text
	}
	said.WriteString(text[done:])
	return said.String()
}

// inWord reports whether a letter goes on with a word, as in "around".
func inWord(c byte) bool {
	return c == '_' || '0' <= c && c <= '9' || 'a' <= c && c <= 'z' || 'A' <= c && c <= 'Z'
}
