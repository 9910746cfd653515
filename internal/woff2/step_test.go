package woff2

import (
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// way is a row of the table "Triplet encoding" of W3C, "WOFF File Format 2.0",
// section 5.2: how many bits x and y take, what is added to each, their signs.
type way struct{ xBits, yBits, x, y, xSign, ySign int }

// ways is that table, whose 128 rows follow each other by rules (from memory).
func ways() []way {
	var list []way
	for base := 0; base < 1280; base += 256 {
		list = append(list, way{0, 8, 0, base, 0, -1}, way{0, 8, 0, base, 0, 1})
	}
	for base := 0; base < 1280; base += 256 {
		list = append(list, way{8, 0, base, 0, -1, 0}, way{8, 0, base, 0, 1, 0})
	}
	both := func(bits int, bases ...int) {
		for _, x := range bases {
			for _, y := range bases {
				list = append(list, way{bits, bits, x, y, -1, -1}, way{bits, bits, x, y, 1, -1}, way{bits, bits, x, y, -1, 1}, way{bits, bits, x, y, 1, 1})
			}
		}
	}
	both(4, 1, 17, 33, 49)
	both(8, 1, 257, 513)
	both(12, 0)
	both(16, 0)
	return list
}

// Steps at and about every border of the table come back from it.
func TestStepsOfPoints(t *testing.T) {
	table := ways()
	require.Len(t, table, 128)
	var some []int
	for _, border := range []int{0, 16, 17, 32, 48, 64, 65, 256, 257, 512, 513, 768, 1024, 1279, 1280, 4095, 4096, 32767} {
		some = append(some, border-1, border, -border)
	}
	used := map[byte]bool{}
	for _, dx := range some {
		for _, dy := range some {
			for _, on := range []bool{true, false} {
				var s streams
				s.addPoint(point{dx, dy, on})
				require.Len(t, s.flags, 1)
				w := table[s.flags[0]&0x7f]
				require.Len(t, s.steps, (w.xBits+w.yBits)/8, "%d %d", dx, dy)
				n := 0
				for _, b := range s.steps {
					n = n<<8 | int(b)
				}
				assert.Equal(t, dx, w.xSign*(n>>w.yBits+w.x), "x of %d %d", dx, dy)
				assert.Equal(t, dy, w.ySign*(n&(1<<w.yBits-1)+w.y), "y of %d %d", dx, dy)
				assert.Equal(t, on, s.flags[0]&0x80 == 0)
				used[s.flags[0]] = true
			}
		}
	}
	assert.Len(t, used, 256, "every way, on the curve and off")
}
