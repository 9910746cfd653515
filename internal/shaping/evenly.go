package shaping

import "fmt"

// Spread asks for events (increases or decreases) spread evenly over stitches.
type Spread struct {
	Stitches, Events int  // each 1 … 1 000 000
	Flat             bool // back and forth: plain stitches at both ends
	Uses             int  // stitches that one event takes: 0 for M1, 1 for kfb, 2 for k2tog and ssk
}

// Evenly returns the runs of plain stitches in the order worked. In the round
// there is one run before each event: event i of k stands at place ⌈i·n/k⌉ of n
// stitches, and takes what it uses from the run before it. Flat, the
// n − k·uses plain stitches are divided into k + 1 runs, with boundary i at
// ⌈i·(n − k·uses)/(k + 1)⌉. A run may be 0.
//
// Numbers out of range, and more events than fit, are refused. The text of the
// error continues a message that begins with the name of the number of events.
func Evenly(s Spread) ([]int, error) {
	if err := s.check(); err != nil {
		return nil, err
	}
	plain := s.Stitches - s.Events*s.Uses
	if plain < 0 {
		return nil, fmt.Errorf("is %d; %d stitches have room for %d at most", s.Events, s.Stitches, s.Stitches/s.Uses)
	}
	if s.Flat {
		return divide(plain, s.Events+1, 0), nil
	}
	return divide(s.Stitches, s.Events, s.Uses), nil
}

// divide cuts n into parts at ⌈i·n/parts⌉ and subtracts uses from each.
func divide(n, parts, uses int) []int {
	runs := make([]int, parts)
	at := 0
	for i := range runs {
		next := ((i+1)*n + parts - 1) / parts
		runs[i] = next - at - uses
		at = next
	}
	return runs
}

func (s Spread) check() error {
	switch {
	case s.Stitches < 1 || s.Stitches > maxStitches:
		return fmt.Errorf("needs stitches from 1 to %d, not %d", maxStitches, s.Stitches)
	case s.Events < 1 || s.Events > maxStitches:
		return fmt.Errorf("is %d; write a whole number from 1 to %d", s.Events, maxStitches)
	case s.Uses < 0 || s.Uses > 2:
		return fmt.Errorf("uses 0, 1 or 2 stitches, not %d", s.Uses)
	}
	return nil
}

// CheckRuns returns an error unless runs are an even spread: the right number
// of runs, no stitch left over, and no two runs more than one stitch apart.
func CheckRuns(s Spread, runs []int) error {
	if err := s.check(); err != nil {
		return err
	}
	want := s.Events
	if s.Flat {
		want++
	}
	if len(runs) != want {
		return fmt.Errorf("%d runs where %d are needed", len(runs), want)
	}
	sum, low, high := s.Events*s.Uses, runs[0], runs[0]
	for _, run := range runs {
		if run > s.Stitches {
			return fmt.Errorf("a run of %d out of %d stitches", run, s.Stitches)
		}
		sum += run
		low, high = min(low, run), max(high, run)
	}
	switch {
	case low < 0:
		return fmt.Errorf("a run of %d stitches", low)
	case sum != s.Stitches:
		return fmt.Errorf("the runs use %d of %d stitches", sum, s.Stitches)
	case high-low > 1:
		return fmt.Errorf("runs from %d to %d stitches are not even", low, high)
	}
	return nil
}
