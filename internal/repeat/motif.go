package repeat

import (
	"slices"
	"strings"

	"thenar/internal/stitch"
)

// MaxSide is the greatest number of stitches and of rounds of a motif.
const MaxSide = 120

// Motif is what is laid: a block of cells, drawn as it looks on the chart of a right
// hand. A cell may set a yarn, a stitch, both or neither.
type Motif struct {
	Wide, High int
	yarns      []byte // from the lowest row up, each from the right; 0 leaves what lies under
	stitches   []stitch.Op
}

// leave is what a motif's drawing has where it leaves what lies under.
const leave = '.'

// textures are the stitches that a motif may set, by the letter in its drawing. Each is
// worked from one stitch and leaves one.
var textures = map[byte]stitch.Op{'k': stitch.Knit, 'p': stitch.Purl, 't': stitch.KnitTBL, 's': stitch.Slip}

// Texture returns the letter of a stitch in the drawing of a motif; ok is false if a motif
// can't set it.
func Texture(op stitch.Op) (letter byte, ok bool) {
	for letter, of := range textures {
		if of == op {
			return letter, true
		}
	}
	return 0, false
}

// Stitch returns the stitch of a letter in the drawing of a motif; ok is false if it stands
// for none.
func Stitch(letter byte) (op stitch.Op, ok bool) {
	op, ok = textures[letter]
	return op, ok
}

// Drawn reads the drawings of a motif's yarns and of its stitches: a row for each round,
// the uppermost first. A point leaves what lies under; the letters a to h are yarns; k, p,
// t and s are knit, purl, knit through the back loop and slip. Either drawing may be nil.
// why says what is wrong with them, and is empty if nothing is.
func Drawn(yarns, stitches []string) (m Motif, why string) {
	rows := yarns
	if len(rows) == 0 {
		rows = stitches
	}
	if len(rows) == 0 || rows[0] == "" {
		return Motif{}, `is empty; draw each round as a row such as "..a."`
	}
	m.High, m.Wide = len(rows), len(rows[0])
	if m.High > MaxSide || m.Wide > MaxSide {
		return Motif{}, "is too large; a motif has at most 120 stitches and 120 rounds"
	}
	m.yarns, m.stitches = make([]byte, m.High*m.Wide), make([]stitch.Op, m.High*m.Wide)
	for _, of := range []struct {
		rows []string
		set  func(at int, letter byte) bool
		what string
	}{
		{yarns, func(at int, letter byte) bool { m.yarns[at] = letter; return letter >= 'a' && letter <= 'h' }, "letters from a to h for the yarns"},
		{stitches, func(at int, letter byte) bool {
			op, ok := textures[letter]
			m.stitches[at] = op
			return ok
		}, "k, p, t or s for the stitches"},
	} {
		if of.rows == nil {
			continue
		}
		if len(of.rows) != m.High {
			return Motif{}, "has other rows for its yarns than for its stitches; draw as many"
		}
		for i, row := range of.rows {
			if len(row) != m.Wide {
				return Motif{}, "has rows of different lengths; draw all of them equally wide"
			}
			for j := range len(row) {
				if at := (m.High-1-i)*m.Wide + m.Wide - 1 - j; row[j] != leave && !of.set(at, row[j]) {
					return Motif{}, "has " + strings.ToValidUTF8(row[j:j+1], "?") + " in a row; write " + of.what + ", and a point for what lies under"
				}
			}
		}
	}
	if m.bare() {
		return Motif{}, "sets nothing; write a letter where a stitch has another yarn"
	}
	return m, ""
}

func (m Motif) bare() bool {
	for at := range m.yarns {
		if m.yarns[at] != 0 || m.stitches[at] != stitch.NoStitch {
			return false
		}
	}
	return true
}

// At returns the yarn and the stitch of a cell, counted from 0 from the right and from
// below; an empty yarn and no stitch leave what lies under.
func (m Motif) At(right, up int) (yarn string, op stitch.Op) {
	at := up*m.Wide + right
	if m.yarns[at] != 0 {
		yarn = string(rune(m.yarns[at]))
	}
	return yarn, m.stitches[at]
}

// Yarns returns the yarns that the motif sets, in the order of their letters.
func (m Motif) Yarns() []string {
	letters := slices.Clone(m.yarns)
	slices.Sort(letters)
	var list []string
	for _, letter := range slices.Compact(letters) {
		if letter != 0 {
			list = append(list, string(rune(letter)))
		}
	}
	return list
}

// Rows returns the drawings of the motif, of the yarns and of the stitches; nil for one
// that sets none.
func (m Motif) Rows() (yarns, stitches []string) {
	var y, s bool
	for up := m.High - 1; up >= 0; up-- {
		var ys, ss strings.Builder
		for right := m.Wide - 1; right >= 0; right-- {
			yarn, op := m.At(right, up)
			letter, ok := Texture(op)
			if !ok {
				letter = leave
			}
			if yarn == "" {
				yarn = string(rune(leave))
			}
			y, s = y || yarn[0] != leave, s || letter != leave
			ys.WriteString(yarn)
			ss.WriteByte(letter)
		}
		yarns, stitches = append(yarns, ys.String()), append(stitches, ss.String())
	}
	if !y {
		yarns = nil
	}
	if !s {
		stitches = nil
	}
	return yarns, stitches
}
