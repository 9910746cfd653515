package makeup

import "sort"

// Columns divides parts among n columns side by side, of the least height, in
// tenths of a millimetre. It returns the first part of every column: earlier
// columns are filled first, and a column ends where a page may. Where n columns
// can't be filled, the last ones begin behind the last part.
func Columns(parts []Part, n int) (first []int, height int) {
	whole := (&Way{Parts: parts}).height()
	height = sort.Search(whole, func(h int) bool { return fillColumns(parts, max(n, 1), h) != nil })
	return fillColumns(parts, max(n, 1), height), height
}

// fillColumns fills columns of a height as far as they go; nil if they don't hold
// all parts.
func fillColumns(parts []Part, n, height int) []int {
	first := make([]int, 0, n)
	at := 0
	for range n {
		first = append(first, at)
		at = fillColumn(parts, at, height)
	}
	if at < len(parts) {
		return nil
	}
	return first
}

// fillColumn returns the part before which a column ends that begins with a part.
func fillColumn(parts []Part, from, height int) int {
	end, used := from, 0
	for k := from; k < len(parts); k++ {
		used += parts[k].Height
		if k > from {
			used += parts[k].Above
		}
		if used > height {
			break
		}
		if !parts[k].Keep || k == len(parts)-1 {
			end = k + 1
		}
	}
	return end
}
