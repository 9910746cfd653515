package written

// Odd is numbers that stand together where there is not one for each size.
type Odd struct {
	At, To   Spot
	N, Sizes int
}

// oddAfter are words after a number in brackets which show that it is that of another size.
var oddAfter = map[string]bool{
	"st": true, "sts": true, "stitches": true, "times": true, "more": true, "rnd": true, "rnds": true, "rounds": true, "row": true, "rows": true,
}

// odd finds numbers that stand together, "40 (44)" in a text for three sizes, other than one for
// each size, or for each that the sentence is for; nil if there are none.
func (r *reader) odd(t []token, of []int) *Odd {
	sizes := len(r.text.Sizes)
	if sizes < 2 {
		return nil
	}
	for i := 0; i+2 < len(t); i++ {
		stitch := isStitch(t[i].low)
		if t[i].kind != whole && !stitch || closing[t[i+1].low] == "" {
			continue
		}
		n, end := values(t, i+1)
		n++
		sure := n > 2 || n == 2 && end < len(t) && (oddAfter[t[end].low] || stitch && t[end].low == ",")
		if !sure || n == sizes || of != nil && n == len(of) {
			continue
		}
		if of != nil {
			sizes = len(of)
		}
		return &Odd{t[i].at, t[end-1].end(), n, sizes}
	}
	return nil
}

// values returns how many values of sizes stand in brackets from a place on, and where they end:
// "(44, 48)" or "(5–8, 5–9)".
func values(t []token, at int) (n, end int) {
	end = at
	for end < len(t) {
		shut, ok := closing[t[end].low]
		if !ok {
			return n, end
		}
		some, was := 0, false
		for at = end + 1; at < len(t) && t[at].low != shut; at++ {
			switch low := t[at].low; {
			case low == "," || low == ":" || low == ";" || low == "/":
				was = false
			case low == "-" && was:
			case t[at].kind == whole || low == "-":
				if !was {
					some++
				}
				was = true
			default:
				return n, end
			}
		}
		if at == len(t) || some == 0 {
			return n, end
		}
		n, end = n+some, at+1
	}
	return n, end
}
