package repeat

import "thenar/internal/stitch"

// Strip is one height of a motif as it lies all along what it is laid across, and where on
// it the hand has its middles and sides.
type Strip struct {
	Stitches int
	Rows     [][]Cell // from the lowest up, from the stitch worked first; Which is −1 where it stays plain
	Back     float64  // the middle of the back, in stitches from the beginning; −1: it is not on it
	Palm     float64  // the middle of the palm
	Side     float64  // where palm and back meet on the side away from the thumb
	Thumb    int      // how many stitches at the beginning lie under the gusset

	Best int // the offset with which most is the same on both sides of the middle of the back
	Same int // pairs of stitches that then are
	Of   int // of so many
}

// StripOf returns the strip of a repeat that goes round the hand or over a part of it; ok is
// false if it lies nowhere, or in the gusset alone.
func StripOf(r Repeat, f Fabric) (s Strip, ok bool) {
	ring := f.hand()
	if r.apart(&f) {
		ring = f.tube(r.Section)
	}
	if r.Over == Gusset || ring == nil {
		return Strip{}, false
	}
	l := laid{of: r, ring: ring}
	var c Came
	if l.rounds(&f, &c) != "" || l.set(&f, &c) != "" {
		return Strip{}, false
	}
	line, _ := l.line(&f)
	s = Strip{Stitches: len(line), Rows: make([][]Cell, r.Motif.High), Back: -1, Palm: -1, Side: -1}
	for up := range s.Rows {
		row := make([]Cell, len(line))
		for k := range row {
			row[k] = l.cell(k, up)
		}
		s.Rows[up] = row
	}
	back, backOn := l.middle(line, backArea, &f)
	if backOn {
		s.Back = float64(back+1) / 2
	}
	if palm, on := l.middle(line, palmArea, &f); on {
		s.Palm = float64(palm+1) / 2
	}
	for k := 1; k < len(line); k++ {
		if a, b := ring.areas[line[k-1]], ring.areas[line[k]]; a != b && (a == palmArea || a == backArea) && (b == palmArea || b == backArea) {
			s.Side = float64(k)
		}
	}
	for k := 0; k < len(line) && ring.ofBase(line[k]); k++ {
		s.Thumb++
	}
	if backOn {
		s.best(l, line, back)
	}
	return s, true
}

// cell returns what a place of the line has in a round of the motif.
func (l *laid) cell(k, up int) Cell {
	u := l.across(k)
	if u < 0 {
		return Cell{Which: -1}
	}
	yarn, op := l.of.Motif.At(u, up)
	return Cell{Right: u, Up: up, Yarn: yarn, Op: op}
}

// looks returns what is seen of a cell: where it sets nothing, knit in the main colour.
func (c Cell) looks() (look struct {
	yarn string
	op   stitch.Op
},
) {
	look.yarn, look.op = c.Yarn, c.Op
	if look.yarn == "" {
		look.yarn = mainYarn
	}
	if look.op == stitch.NoStitch {
		look.op = stitch.Knit
	}
	return look
}

// mainYarn is the letter of the main colour.
const mainYarn = "a"

// best finds the offset with which most stitches of the back look the same on both sides of
// its middle, which lies at half of twice; of several the one that moves the motif least.
func (s *Strip) best(l laid, line []int, twice int) {
	s.Same = -1
	for by := range l.of.Motif.Wide {
		for _, offset := range []int{by, -by} {
			l.of.Offset = offset
			same, of := 0, 0
			for k := range line {
				other := twice - k
				if other < 0 || other >= len(line) || k >= other || l.ring.areas[line[k]] != backArea || l.ring.areas[line[other]] != backArea {
					continue
				}
				for up := range l.of.Motif.High {
					if of++; l.cell(k, up).looks() == l.cell(other, up).looks() {
						same++
					}
				}
			}
			if same > s.Same {
				s.Best, s.Same, s.Of = offset, same, of
			}
		}
	}
}
