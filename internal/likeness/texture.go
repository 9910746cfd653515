package likeness

import "thenar/internal/mitt"

// edge is how the first rows of a cuff are worked, or the last ones of an opening.
type edge struct {
	kind         mitt.CuffKind
	rows         int // of its own fabric
	knits, purls int // of a rib
}

// cuffOf returns the edge with which rows begin.
func cuffOf(rows []row) (e edge) {
	lastPurl, purled := 0, 0
	for i := range rows {
		some, all := rows[i].purls()
		if some {
			lastPurl = i + 1
		}
		if all {
			purled++
		}
		if k, p := rows[i].rib(); e.knits == 0 && k > 0 && k <= mitt.MaxRibStitches && p <= mitt.MaxRibStitches {
			e.knits, e.purls = k, p
		}
	}
	e.rows = lastPurl
	switch {
	case e.knits > 0:
		e.kind = mitt.RibCuff
	case purled == 1 && lastPurl > 1:
		e.kind, e.rows = mitt.HemCuff, min(2*(lastPurl-1)+1, len(rows))
	case purled > 0:
		e.kind = mitt.GarterCuff
	default:
		e.kind = mitt.RolledCuff
	}
	return e
}

// ribbed returns how many of the last rows are ribbed.
func ribbed(rows []row) (n int) {
	for i := len(rows) - 1; i >= 0; i-- {
		if some, _ := rows[i].purls(); !some {
			break
		}
		n++
	}
	return n
}
