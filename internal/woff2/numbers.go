package woff2

// appendBase128 appends a UIntBase128 (section 4.1): seven bits to a byte, the
// highest first, and the top bit set in every byte but the last. It has no
// leading zeros, which a reader must refuse.
func appendBase128(b []byte, n uint32) []byte {
	for shift := 28; shift > 0; shift -= 7 {
		if n>>shift != 0 {
			b = append(b, byte(n>>shift)|0x80)
		}
	}
	return append(b, byte(n)&0x7f)
}

// The first bytes of a 255UInt16 that say how to read on (section 4.1), and the
// lowest number that needs one of them.
const (
	wordCode         = 253
	oneMoreByteCode2 = 254
	oneMoreByteCode1 = 255
	lowestUCode      = 253
)

// append255 appends a 255UInt16 (section 4.1) in the shortest of its ways.
func append255(b []byte, n uint16) []byte {
	switch {
	case n < lowestUCode:
		return append(b, byte(n))
	case n < lowestUCode+256:
		return append(b, oneMoreByteCode1, byte(n-lowestUCode))
	case n < 2*lowestUCode+256:
		return append(b, oneMoreByteCode2, byte(n-2*lowestUCode))
	default:
		return append(b, wordCode, byte(n>>8), byte(n))
	}
}
