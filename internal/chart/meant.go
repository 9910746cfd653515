package chart

import (
	"regexp"
	"strconv"
)

// A strand that is meant to be long is told no more. The mark has its yarn and its length,
// so that a strand that comes to be longer, or of another yarn, is told again.

// strand matches the value of such a mark, as in "b7".
var strand = regexp.MustCompile(`^[a-h][1-9][0-9]{0,2}$`)

// meant reports whether a mark means a float.
func (m Mark) meant(f Float) bool {
	if !strand.MatchString(m.Strand) || m.Strand[:1] != f.Yarn {
		return false
	}
	longest, err := strconv.Atoi(m.Strand[1:])
	return err == nil && f.Length <= longest
}

// painted reports whether a mark shows on its cell. That a strand is meant, or which stitch of
// a motif lies under it, does not.
func (m Mark) painted() bool {
	m.Strand, m.Motif = "", ""
	return m != Mark{}
}

// meantAt names the cell on which a float is marked as meant: the one before it as the
// right hand works it, which for the left hand is the one after it.
func (g Grid) meantAt(f Float) Anchor {
	i, j := f.Row, f.At
	if g.Mirrored {
		i, j = f.To, f.Next
	}
	row := &g.Rows[i]
	return Anchor{row.Section, row.Round, row.Cells[j].Column}
}

// isMeant reports whether marks say that a float is meant.
func (g Grid) isMeant(f Float, marks Marks) bool {
	at := g.meantAt(f)
	return at.Column != "" && marks[at].meant(f)
}
