package repeat

import (
	"fmt"
	"slices"
	"strings"
	"unicode/utf8"

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

// Wrong says what is wrong with the drawing of a motif: with that of its stitches, or else
// with that of its yarns, or with both.
type Wrong struct {
	Why      string // empty: nothing
	Stitches bool
}

// Drawn reads the drawings of a motif's yarns and of its stitches: a row for each round,
// the uppermost first. A point leaves what lies under; the letters a to h are yarns; k, p,
// t and s are knit, purl, knit through the back loop and slip. Either drawing may be nil.
func Drawn(yarns, stitches []string) (m Motif, wrong Wrong) {
	rows := yarns
	if len(rows) == 0 {
		rows = stitches
	}
	if len(rows) == 0 || rows[0] == "" {
		return Motif{}, Wrong{Why: `is empty; draw each round as a row such as "..a."`}
	}
	m.High, m.Wide = len(rows), len(rows[0])
	if m.High > MaxSide || m.Wide > MaxSide {
		return Motif{}, Wrong{"is too large; a motif has at most 120 stitches and 120 rounds", len(yarns) == 0}
	}
	m.yarns, m.stitches = make([]byte, m.High*m.Wide), make([]stitch.Op, m.High*m.Wide)
	why := m.read(yarns, "letters from a to h for the yarns", func(at int, letter byte) bool {
		m.yarns[at] = letter
		return letter >= 'a' && letter <= 'h'
	})
	if why != "" {
		return Motif{}, Wrong{Why: why}
	}
	why = m.read(stitches, "k, p, t or s for the stitches", func(at int, letter byte) (ok bool) {
		m.stitches[at], ok = textures[letter]
		return ok
	})
	if why != "" {
		return Motif{}, Wrong{why, true}
	}
	if m.bare() {
		return Motif{}, Wrong{Why: "sets nothing; write a letter where a stitch has another yarn"}
	}
	return m, Wrong{}
}

// read reads one drawing, of which set takes the letters; nil is none.
func (m Motif) read(rows []string, what string, set func(at int, letter byte) bool) (why string) {
	if rows == nil {
		return ""
	}
	for _, row := range rows { // a strange character may count as several
		for _, c := range row {
			if c != leave && (c >= utf8.RuneSelf || !set(0, byte(c))) {
				return fmt.Sprintf("has %c in a row; write %s, and a dot for what lies beneath", c, what)
			}
		}
	}
	if len(rows) != m.High {
		return "has other rows for its yarns than for its stitches; draw as many"
	}
	set(0, 0)
	for i, row := range rows {
		if len(row) != m.Wide {
			return "has rows of different lengths; draw all of them equally wide"
		}
		for j := range len(row) {
			if row[j] != leave {
				set((m.High-1-i)*m.Wide+m.Wide-1-j, row[j])
			}
		}
	}
	return ""
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
		i := m.yarns[at] - yarnLetters[0]
		yarn = yarnLetters[i : i+1]
	}
	return yarn, m.stitches[at]
}

// yarnLetters are the letters of the yarns, in their order.
const yarnLetters = "abcdefgh"

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

// Even reports whether the motif is its own mirror image.
func (m Motif) Even() bool {
	for up := range m.High {
		for right := range m.Wide {
			at, other := up*m.Wide+right, up*m.Wide+m.Wide-1-right
			if m.yarns[at] != m.yarns[other] || m.stitches[at] != m.stitches[other] {
				return false
			}
		}
	}
	return true
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
