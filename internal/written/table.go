package written

import (
	"slices"
	"strings"
)

// Bounds of a table.
const (
	mostRows  = 60
	mostCells = 200 // words and signs of a row
)

// cell is what stands in a place of a table.
type cell []token

// has reports whether a word stands in a cell.
func (c cell) has(words ...string) bool {
	return slices.ContainsFunc(c, func(t token) bool { return slices.Contains(words, t.low) })
}

// table reads the lines of a table, the first of which was taken, and reports whether it is one.
// What isn't about shaping changes no count.
func (r *reader) table(t []token, indented bool) bool {
	piped := slices.ContainsFunc(t, func(t token) bool { return t.low == "|" })
	if len(t) > mostCells || r.works(t) || !piped && (!indented || len(r.cells(t, false)) < 2) {
		return false
	}
	rows := [][]cell{}
	lines := [][]token{t}
	for ; r.at < len(r.lines) && len(lines) < mostRows; r.at++ {
		next := r.lines[r.at]
		if len(next) == 0 || len(next) > mostCells || piped != slices.ContainsFunc(next, func(t token) bool { return t.low == "|" }) || !piped && !strings.HasPrefix(r.raw[r.at], "  ") {
			break
		}
		lines = append(lines, next)
	}
	for _, line := range lines {
		if row := r.cells(line, piped); len(row) > 0 {
			rows = append(rows, row)
		}
	}
	s := &Statement{Kind: Note}
	if s.Table = r.columns(rows); len(s.Table) > 0 {
		s.Kind = Tabled
	}
	last := lines[len(lines)-1]
	r.add(s, []token{t[0], last[len(last)-1]})
	return true
}

// works reports whether a line works stitches, so that its strokes are markers.
func (r *reader) works(t []token) bool {
	p := parser{t: t, sizes: 1}
	if _, _, ok := p.label(); ok {
		return true
	}
	return t[len(t)-1].low == "." || slices.ContainsFunc(t, func(t token) bool { return isStitch(t.low) || t.low == "knit" || t.low == "purl" })
}

// cells parts a line of a table: at its strokes, or where two spaces stand together.
func (r *reader) cells(t []token, piped bool) (row []cell) {
	var one cell
	for i, tok := range t {
		if piped && tok.low == "|" {
			if i > 0 {
				row = append(row, one)
			}
			one = nil
			continue
		}
		if !piped && i > 0 && tok.at.Column-t[i-1].end().Column > 1 {
			row, one = append(row, one), nil
		}
		one = append(one, tok)
	}
	if len(one) > 0 {
		row = append(row, one)
	}
	for _, c := range row { // the rule below a head
		if slices.ContainsFunc(c, func(t token) bool { return t.kind != mark }) {
			return row
		}
	}
	return nil
}

// sizeOf returns the place of the size that a cell names, or -1.
func (r *reader) sizeOf(c cell) int {
	return slices.IndexFunc(r.names, func(of []token) bool {
		return len(of) == len(c) && len(c) > 0 && !slices.ContainsFunc(of, func(t token) bool { return !c.has(t.low) })
	})
}

// columns reads what a table tells of shaping; nothing if it tells nothing.
func (r *reader) columns(rows [][]cell) []Column {
	if len(rows) < 2 || len(rows[0]) < 2 {
		return nil
	}
	head := rows[0][0]
	switch {
	case len(rows) > 2 && shapes(head) && rows[1][0].has("size"):
		return r.titledColumns(rows)
	case head.has("size", "sizes"):
		return r.bySize(rows)
	case shapes(head) || head.has("round", "rounds", "rnd", "rnds", "row", "rows"):
		return r.byRound(rows)
	}
	return nil
}

// shapes reports whether a cell speaks of shaping.
func shapes(c cell) bool {
	return slices.ContainsFunc(c, func(t token) bool { return kindsOf[t.low] == "increase" || kindsOf[t.low] == "decrease" })
}

// numbered returns the cells of a place as numbers; a dash is none.
func numbered(list []cell) (cells []Cell) {
	for _, c := range list {
		if len(c) == 0 {
			return nil
		}
		one := Cell{N: None, At: c[0].at, To: c[len(c)-1].end()}
		switch {
		case c[0].kind == whole && (len(c) == 1 || len(c) == 2 && stitchWords[c[1].low]):
			one.N = c[0].n
		case c[0].low == "-" || c[0].low == "—":
		default:
			return nil
		}
		cells = append(cells, one)
	}
	return cells
}

// titledColumns reads a table whose columns have titles, and in the second row the sizes they are
// for: "increase | round | gusset | stitches", "size | 6, 7, 8 | 6, 7 | 6".
func (r *reader) titledColumns(rows [][]cell) (list []Column) {
	for at := 1; at < len(rows[0]); at++ {
		var one Column
		switch title := rows[0][at]; {
		case title.has("round", "row"):
			one.Tells = InRounds
		case title.has("gusset"):
			one.Tells = InGusset
		case title.has("stitches", "sts"):
			one.Tells = Stitches
		default:
			return nil
		}
		var cells []cell
		for _, row := range rows[2:] {
			if at >= len(row) {
				return nil
			}
			cells = append(cells, row[at])
		}
		if at >= len(rows[1]) {
			return nil
		}
		for _, part := range parts(rows[1][at]) {
			size := r.sizeOf(part)
			if size < 0 {
				return nil
			}
			one.For = append(one.For, size)
		}
		if one.Cells = numbered(cells); one.Cells == nil {
			return nil
		}
		list = append(list, one)
	}
	return list
}

// parts parts a cell at its commas.
func parts(c cell) (list []cell) {
	var one cell
	for _, t := range c {
		if t.low == "," || t.low == "and" || t.low == "&" {
			list, one = append(list, one), nil
			continue
		}
		one = append(one, t)
	}
	return append(list, one)
}

// bySize reads a table that has a row for each size: "Size | Inc rnds", "S | 2, 5, 8".
func (r *reader) bySize(rows [][]cell) (list []Column) {
	at := slices.IndexFunc(rows[0], func(c cell) bool {
		return shapes(c) && c.has("round", "rounds", "rnd", "rnds", "row", "rows")
	})
	if at < 1 {
		return nil
	}
	single := true
	for _, row := range rows[1:] {
		size := r.sizeOf(row[0])
		if size < 0 || at >= len(row) {
			return nil
		}
		one := Column{For: []int{size}, Cells: numbered(parts(row[at]))}
		if one.Cells == nil {
			return nil
		}
		single = single && len(one.Cells) == 1
		list = append(list, one)
	}
	if single {
		for i := range list {
			list[i].Tells = HowOften
		}
	}
	return list
}

// byRound reads a table that has a column for each size: "Round | 44 | 48" with what there is after
// each round, or "Increase | 44 | 48" with its round.
func (r *reader) byRound(rows [][]cell) (list []Column) {
	inRounds := shapes(rows[0][0])
	var named []cell
	for _, row := range rows[1:] {
		named = append(named, row[0])
	}
	for at := 1; at < len(rows[0]); at++ {
		size := r.sizeOf(rows[0][at])
		if size < 0 {
			return nil
		}
		var cells []cell
		for _, row := range rows[1:] {
			if at >= len(row) {
				return nil
			}
			cells = append(cells, row[at])
		}
		one := Column{For: []int{size}, Cells: numbered(cells)}
		if one.Cells == nil {
			return nil
		}
		if !inRounds {
			one.Tells = Stitches
		}
		list = append(list, one)
	}
	if rounds := numbered(named); !inRounds && rounds != nil {
		return withRounds(list, rounds)
	}
	return list
}

// withRounds adds to columns of counts the rounds after which they are there, for each size those
// that it has.
func withRounds(list []Column, rounds []Cell) []Column {
	out := slices.Clone(list)
	for _, one := range list {
		mine := Column{Tells: InRounds, For: one.For}
		for i, c := range one.Cells {
			round := rounds[i]
			if c.N == None {
				round.N = None
			}
			mine.Cells = append(mine.Cells, round)
		}
		out = append(out, mine)
	}
	return out
}
