package project

import "slices"

// run returns the places of the longest run of a row that is true, the first of equally long
// ones; closed says that the last is beside the first.
func run(on []bool, closed bool) (longest []int) {
	n := len(on)
	for from := range n {
		if closed && from > 0 && !slices.Contains(on, false) {
			break
		}
		var one []int
		for k := from; len(one) < n && on[k%n] && (closed || k < n); k++ {
			one = append(one, k%n)
		}
		if len(one) > len(longest) {
			longest = one
		}
	}
	return longest
}

// exact reports whether motifs fit exactly all round.
func (c *counted) exact(a ordered, line []int) bool {
	return len(line) == len(c.order) && len(line)%a.wide == 0
}

// begins returns where the first motif begins. What the sentences of the rules say is quoted
// at its branch; of every place where it could begin the one that they leave is taken.
func (c *counted) begins(a ordered, line []int) (first int, ok bool) {
	n, set := len(line), a.of("set", "begin")
	shared := (n%a.wide + 1) / 2 // "left-over stitches plain on both sides, the odd one first"
	switch set {
	case "centred":
		return shared, true
	case "centred_back", "centred_palm":
	default: // "from the beginning of the round"
		return 0, true
	}
	on := make([]bool, n)
	for k, at := range line {
		on[k] = c.areas[at] == set[len("centred_"):] || set == "centred_palm" && c.thumbInPalm(at)
	}
	round := n == len(c.order)
	area := run(on, round)
	if len(area) == 0 || len(area) == n && !round { // centred on what it is laid across
		return shared, true
	}
	middle := (2*area[0] + len(area)) % (2 * n) // twice the length before it
	score := func(at int) (s [4]int, ok bool) {
		// "centred on the back": of all motifs from here on, one lies with its middle there, or two
		// on either side; half a stitch beside it where its count is of the other kind.
		within := func(k int) bool { return c.exact(a, line) || k >= at && k+a.wide <= n }
		s[1] = 2
		for k := at - n - n%a.wide; k < 2*n; k++ {
			if (k-at)%a.wide != 0 {
				continue
			}
			off := func(twice int) int { return twice - middle }
			if d := off(2*k + a.wide); (d == 0 || d == 1 || d == -1) && within(k) {
				s[1], s[3] = 0, d
				break
			}
			if d := off(2 * k); (d == 0 || d == 1 || d == -1) && within(k) && within(k-a.wide) {
				s[1], s[3] = 1, d
			}
		}
		room := (n - at) / a.wide
		after := n - at - room*a.wide
		s[0] = -room                   // "or between two if that leaves fewer plain stitches"
		s[2] = max(at-after, after-at) // "left-over stitches plain on both sides"
		if c.exact(a, line) {
			s[0], s[2] = 0, 0
		}
		s[3] = -s[3] // "the odd one first"
		return s, s[1] < 2
	}
	var best [4]int
	for at := range a.wide {
		if s, stands := score(at); stands && (!ok || slices.Compare(s[:], best[:]) < 0) {
			first, best, ok = at, s, true
		}
	}
	return first, ok
}
