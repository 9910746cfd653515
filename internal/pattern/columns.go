package pattern

// How much two things of two sizes are alike. Things that are same or kin may stand in one
// place of the text; things that are unlike may not.
const (
	unlike = 0
	kin    = 1
	same   = 6
)

// column is a place of the text, and what each of some sizes has there.
type column[T any] struct {
	sizes []int
	cells []T
}

// inColumns brings the lists of all sizes together: each keeps its order, and what is alike
// stands in one column. It takes one size after the other, each laid beside those before
// it so that the likeness of all pairs is greatest.
func inColumns[T any](lists [][]T, likeness func(a, b T) int) []column[T] {
	var columns []column[T]
	for size, list := range lists {
		columns = joined(columns, list, size, likeness)
	}
	return columns
}

// joined lays the list of one more size beside columns. Of equal ways the one is taken that
// pairs the earliest.
func joined[T any](columns []column[T], list []T, size int, likeness func(a, b T) int) []column[T] {
	n, m := len(columns), len(list)
	like := func(i, j int) (most int) {
		for _, cell := range columns[i].cells {
			most = max(most, likeness(cell, list[j]))
		}
		return most
	}
	alike := make([]int, n*m)
	best := make([]int, (n+1)*(m+1)) // from column i and thing j on
	at := func(i, j int) *int { return &best[i*(m+1)+j] }
	for i := n - 1; i >= 0; i-- {
		for j := m - 1; j >= 0; j-- {
			l := like(i, j)
			alike[i*m+j] = l
			*at(i, j) = max(*at(i+1, j), *at(i, j+1))
			if l > unlike {
				*at(i, j) = max(*at(i, j), *at(i+1, j+1)+l)
			}
		}
	}
	var out []column[T]
	for i, j := 0, 0; i < n || j < m; {
		switch {
		case i < n && j < m && alike[i*m+j] > unlike && *at(i, j) == *at(i+1, j+1)+alike[i*m+j]:
			c := columns[i]
			c.sizes, c.cells = append(c.sizes, size), append(c.cells, list[j])
			out = append(out, c)
			i, j = i+1, j+1
		case i < n && *at(i, j) == *at(i+1, j):
			out = append(out, columns[i])
			i++
		default:
			out = append(out, column[T]{[]int{size}, []T{list[j]}})
			j++
		}
	}
	return out
}
