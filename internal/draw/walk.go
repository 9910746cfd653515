package draw

import "strconv"

// Walk reads path data as a Pen writes them and gives every step in turn: M, L,
// C or Z with its numbers, which are overwritten by the next step. It stops at
// what no Pen writes.
func Walk(d string, step func(op byte, p []float64)) {
	var numbers [6]float64
	for i := 0; i < len(d); {
		op := d[i]
		if op == ' ' {
			i++
			continue
		}
		n := 0
		switch op {
		case 'M', 'L':
			n = 2
		case 'C':
			n = 6
		case 'Z':
		default:
			return
		}
		i++
		for k := range n {
			for i < len(d) && d[i] == ' ' {
				i++
			}
			from := i
			for i < len(d) && d[i] != ' ' {
				i++
			}
			v, err := strconv.ParseFloat(d[from:i], 64)
			if err != nil {
				return
			}
			numbers[k] = v
		}
		step(op, numbers[:n])
	}
}
