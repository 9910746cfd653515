package repeat

import (
	"thenar/internal/stitch"
	"thenar/internal/wale"
)

// Stands says how often a motif of a repeat stands whole across a round, and what is not whole
// of it.
type Stands struct {
	Stitches int
	Whole    int
	Cut      int // motifs of which a part is there
	Plain    int // stitches on which none lies
}

// instance returns which motif covers a place of the line, counted from the first that is
// covered. Where the motifs go all round, the last goes on at the beginning.
func (l *laid) instance(k int) int {
	k -= l.of.Offset
	if l.covers == len(l.ring.order) {
		k = mod(k, l.covers)
	}
	return (k - mod(k, l.of.Motif.Wide)) / l.of.Motif.Wide
}

// stands counts the motifs over those places of the line that are there.
func (l *laid) stands(there map[int]bool, stitches int) Stands {
	s, of := Stands{Stitches: stitches, Plain: stitches}, map[int]int{}
	for k := range l.covers {
		if at := l.start + k; there[at] || l.whole && there[at-l.covers] {
			of[l.instance(k)]++
			s.Plain--
		}
	}
	for _, n := range of {
		if n == l.of.Motif.Wide {
			s.Whole++
		} else {
			s.Cut++
		}
	}
	return s
}

// Stands returns how a repeat that is laid along a line stands across it; ok is false if it
// lies nowhere, or in the gusset alone.
func (l *Laid) Stands(which int) (s Stands, ok bool) {
	one := &l.list[which]
	if one.along == nil || one.rows == nil {
		return s, false
	}
	there := map[int]bool{}
	for _, k := range one.along {
		if k >= 0 {
			there[k] = true
		}
	}
	return one.stands(there, len(there)), true
}

// Above returns how a repeat that goes round the hand stands across the hand above the thumb,
// where the bridge gives that another count; ok is false if it does not lie there, or if the
// count is the same.
func (l *Laid) Above(which int, f *Fabric) (s Stands, ok bool) {
	one := &l.list[which]
	if one.of.Over != Round || one.along == nil || one.rows[stitch.Hand] == (span{}) {
		return s, false
	}
	section, there, n := f.Mitt.Section(stitch.Hand), map[int]bool{}, 0
	widest := CountedAt(section)
	for i, name := range f.Names[stitch.Hand][widest] {
		if name == "" || name[0] == wale.Seam || section.Rounds[widest].Ops[i].Out() == 0 {
			continue
		}
		n++
		if at, known := one.ring.at[stitch.Hand][name]; known && at != nowhere {
			there[one.along[at]] = true
		}
	}
	if n == len(one.along) {
		return s, false
	}
	return one.stands(there, n), true
}
