package woff2

import (
	"math"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"
)

// The examples are those of W3C, "WOFF File Format 2.0", Recommendation,
// section "Data types", from memory: 506 has three ways, of which a writer takes
// a shorter one. The readers below follow the steps that the section gives.
func Test255UInt16(t *testing.T) {
	assert.Contains(t, [][]byte{{255, 253}, {254, 0}}, append255(nil, 506), "not 253 1 250, which is longer")
	for _, way := range [][]byte{{255, 253}, {254, 0}, {253, 1, 250}} {
		n, rest := read255(way)
		assert.Equal(t, uint16(506), n)
		assert.Empty(t, rest)
	}
	for n := range uint16(math.MaxUint16) {
		b := append255(nil, n)
		got, rest := read255(b)
		require.Equal(t, n, got, "% x", b)
		require.Empty(t, rest, "%d", n)
		require.LessOrEqual(t, len(b), map[bool]int{true: 1, false: 3}[n < 253])
		if n >= 253 && n < 762 {
			require.Len(t, b, 2, "%d", n)
		}
	}
	assert.Equal(t, []byte{253, 255, 255}, append255(nil, math.MaxUint16))
}

// The examples are from memory, as above: the largest number takes five bytes,
// and no number begins with 80, a leading zero.
func TestUIntBase128(t *testing.T) {
	assert.Equal(t, []byte{0x3f}, appendBase128(nil, 63))
	assert.Equal(t, []byte{0x8f, 0xff, 0xff, 0xff, 0x7f}, appendBase128(nil, math.MaxUint32))
	for _, edge := range []uint64{0, 1 << 7, 1 << 14, 1 << 21, 1 << 28, 1 << 32} {
		for by := range uint64(4) {
			n := edge - 2 + by
			if n > math.MaxUint32 {
				continue
			}
			b := appendBase128(nil, uint32(n))
			got, rest := readBase128(b)
			assert.Equal(t, uint32(n), got, "% x", b)
			assert.Empty(t, rest, "%d", n)
			assert.NotEqual(t, byte(0x80), b[0], "%d", n)
		}
	}
}

func read255(b []byte) (uint16, []byte) {
	switch b[0] {
	case 253:
		return uint16(b[1])<<8 | uint16(b[2]), b[3:]
	case 255:
		return uint16(b[1]) + 253, b[2:]
	case 254:
		return uint16(b[1]) + 2*253, b[2:]
	}
	return uint16(b[0]), b[1:]
}

func readBase128(b []byte) (n uint32, rest []byte) {
	for i, digit := range b {
		n = n<<7 | uint32(digit&0x7f)
		if digit&0x80 == 0 {
			return n, b[i+1:]
		}
	}
	return 0, nil
}
