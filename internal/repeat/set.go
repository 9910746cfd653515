package repeat

import (
	"slices"

	"thenar/internal/stitch"
)

// set sets the places that a repeat covers, and where on the line.
func (l *laid) set(f *Fabric, c *Came) (why string) {
	line, why := l.line(f)
	if why != "" {
		return why
	}
	n, wide := len(line), l.of.Motif.Wide
	c.Stitches = n
	fits := n / wide
	if fits == 0 {
		return "it is wider than what it is laid across"
	}
	l.whole = n%wide == 0 && l.round(line)
	start, ok := l.begins(line, f)
	if !ok {
		return "it has no room with its middle there"
	}
	l.start = start
	if c.Across = fits; !l.whole {
		c.Across = (n - start) / wide
	}
	l.covers, c.Fewer = c.Across*wide, fits-c.Across
	if !l.whole {
		c.Before, c.After = l.start, n-l.start-l.covers
	}
	l.along = slices.Repeat([]int{-1}, len(l.ring.order))
	for k, at := range line {
		l.along[at] = k
	}
	return ""
}

// round reports whether a line goes all round, so that its end is beside its beginning.
func (l *laid) round(line []int) bool { return len(line) == len(l.ring.order) }

// across returns which stitch of the motif a place of the line has; −1: none.
func (l *laid) across(k int) int {
	if k -= l.start; !l.whole && (k < 0 || k >= l.covers) {
		return -1
	}
	return mod(k-l.of.Offset, l.of.Motif.Wide)
}

// begins returns where on the line the first motif begins. What has to be centred on a line
// that is all of one area stands between its ends. ok is false if no motif has room as it is
// to be set.
func (l *laid) begins(line []int, f *Fabric) (start int, ok bool) {
	n, wide := len(line), l.of.Motif.Wide
	area := l.of.Set.area()
	if l.of.Set != Centred && area == "" {
		return 0, true
	}
	from, length := l.piece(line, area, f)
	if length == 0 || length == n && !l.round(line) {
		return ceilHalf(n % wide), true
	}
	// The middle of a motif stands on the area's, or a line between two if more find room so.
	// What can't stand on it stands half a stitch after it, or before it if more find room so
	// or the plain stitches are shared better.
	middle := (2*from + length - 1) % (2 * n) // twice
	var rank []int
	for i, of := range []struct{ twice, below, above int }{{middle - (wide - 1), 0, wide}, {middle + 1, wide, wide}} {
		for j, at := range []int{ceilHalf(of.twice), floorHalf(of.twice)} {
			if l.whole {
				return mod(at, wide), true
			}
			if at < of.below || at+of.above > n {
				continue
			}
			s := at % wide
			room := (n - s) / wide
			after := n - s - room*wide
			if r := []int{-room, i, max(s, after) - min(s, after), j}; !ok || slices.Compare(r, rank) < 0 {
				start, rank, ok = s, r, true
			}
		}
	}
	return start, ok
}

// area is the area on whose middle a set stands; empty: on none.
func (s Set) area() string {
	switch s {
	case CentredBack:
		return backArea
	case CentredPalm:
		return palmArea
	}
	return ""
}

// piece returns the longest piece of an area on the line. Round the hand its piece at the
// end of a round goes on at the beginning of the next.
func (l *laid) piece(line []int, area string, f *Fabric) (from, n int) {
	on := make([]bool, len(line))
	for k, at := range line {
		on[k] = area != "" && l.ring.on(at, area, f)
	}
	return longest(on, l.round(line))
}

// middle returns twice the place on the line of the middle of an area, or of the longest
// piece of it that lies there.
func (l *laid) middle(line []int, area string, f *Fabric) (twice int, ok bool) {
	from, n := l.piece(line, area, f)
	return (2*from + n - 1) % (2 * len(line)), n > 0
}

// gussetIn returns the first and the last round of the gusset as they are counted over
// parts; none if it is in none of them.
func (f *Fabric) gussetIn(parts []stitch.Part) (first, last int) {
	gusset := f.gusset()
	if gusset == nil || !slices.Contains(parts, gusset.Part) {
		return 1, 0
	}
	for _, p := range parts {
		if p == gusset.Part {
			break
		}
		first += len(f.Mitt.Section(p).Rounds)
	}
	return first + 1, first + len(gusset.Rounds)
}

// RoundAt returns the part in which a round stands that is counted over the whole hand, and
// its number there; below 0 it is counted from the last. The number is 0 if there is none.
func RoundAt(m stitch.Mitt, n int) (part stitch.Part, round int) {
	parts, all := Around(m), 0
	for _, p := range parts {
		all += len(m.Section(p).Rounds)
	}
	if n < 0 {
		n += all + 1
	}
	if n < 1 || n > all {
		return "", 0
	}
	for _, p := range parts {
		own := len(m.Section(p).Rounds)
		if n <= own {
			return p, n
		}
		n -= own
	}
	return "", 0
}

// besideMiddle reports whether a motif that is alike on both sides of its middle can't stand
// on that of a gusset of so many stitches, which it grows with: one is even and one is odd.
func (l *laid) besideMiddle(n int) bool {
	return l.of.Gusset != Mirrored && l.of.Gusset != Follows && l.of.Offset == 0 && (n-l.of.Motif.Wide)%2 != 0 && l.of.Motif.Even()
}

// ceilHalf returns half of n, rounded up.
func ceilHalf(n int) int { return -(-n >> 1) }
