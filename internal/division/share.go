package division

// sharing shares stitches out among the fingers so that each is as near as can be
// to what is wanted.
type sharing struct {
	wanted [Fingers]int64
	sum    int64 // of wanted
}

// out returns the n_i of least Σ (n_i − t_i)² that add up to total and lie in their
// spans, a whole number of steps above the lows; among equal ones the
// lexicographically largest. It returns false if there are none.
//
// A step from one finger to another saves something if and only if the one that gives
// is more than a step wider against its wish than the one that takes. The squares
// are convex, so a share in which no such step is left costs the least.
func (s *sharing) out(spans *[Fingers]span, total, step int) (n [Fingers]int, cost Cost, ok bool) {
	left := total
	most := 0
	for i := range spans {
		within := &spans[i]
		if within.high < within.low {
			return n, 0, false
		}
		if step > 1 {
			within.high -= (within.high - within.low) % step
		}
		left -= within.low
		most += within.high
	}
	if left < 0 || most < total || left%step != 0 {
		return n, 0, false
	}
	n = s.level(spans, total, step)
	var off [Fingers]int64
	for i := range n {
		off[i] = int64(n[i])*PerStitch - s.wanted[i]
	}
	moved := int64(step) * PerStitch
	for {
		take, give := ends(spans, &n, &off)
		if take < 0 || give < 0 || take == give {
			break
		}
		if saved := off[give] - off[take]; saved < moved || (saved == moved && give < take) {
			break
		}
		n[take] += step
		n[give] -= step
		off[take] += moved
		off[give] -= moved
	}
	for _, o := range off {
		cost += Cost(o * o)
	}
	return n, cost, true
}

// ends returns the narrowest finger against its wish that has room for more, the
// first of equals, and the widest that has some to give, the last of equals.
// Either is −1 if there is none.
func ends(spans *[Fingers]span, n *[Fingers]int, off *[Fingers]int64) (take, give int) {
	take, give = -1, -1
	for i := range spans {
		if n[i] < spans[i].high && (take < 0 || off[i] < off[take]) {
			take = i
		}
		if n[i] > spans[i].low && (give < 0 || off[i] >= off[give]) {
			give = i
		}
	}
	return take, give
}

// level returns counts that add up to total, near the best: each finger's wish with an
// equal part of what is left over. What a bound then refuses is divided again
// among those that have room.
func (s *sharing) level(spans *[Fingers]span, total, step int) (n [Fingers]int) {
	each := (int64(total)*PerStitch - s.sum) / Fingers
	left := total
	for i := range spans {
		within := &spans[i]
		above := int((s.wanted[i]+each)/PerStitch) - within.low
		n[i] = min(within.low+max(above-above%step, 0), within.high)
		left -= n[i]
	}
	for left != 0 {
		open := 0
		for i := range spans {
			if room(spans[i], n[i], left) > 0 {
				open++
			}
		}
		part := left / open
		part -= part % step
		for i := range spans {
			if left == 0 {
				break
			}
			more := part
			if part == 0 { // fewer steps than fingers: one for each, while they last
				more = step
				if left < 0 {
					more = -step
				}
			}
			if free := room(spans[i], n[i], left); more > 0 {
				more = min(more, free)
			} else {
				more = max(more, -free)
			}
			n[i] += more
			left -= more
		}
	}
	return n
}

// room returns how far n can go within its span, upwards if left is above 0, else
// downwards.
func room(within span, n, left int) int {
	if left > 0 {
		return within.high - n
	}
	return n - within.low
}
