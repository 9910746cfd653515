package readback

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
)

// What grows by rhythm is worked from three things that must agree: what is done in a round
// that changes the count, in which rounds that comes, and the table of their counts.

var (
	changeRound = regexp.MustCompile(`^(?:In|De)crease (round|row): (.*)\.$`)
	workItIn    = regexp.MustCompile(`^Work it in (?:round|row) (\d+)(.*)\. Knit .*, to the end of (?:round|row) (\d+)\.$`)
	thenEvery   = regexp.MustCompile(`^, then in every (?:(\d+)(?:st|nd|rd|th) )?(?:round|row), (once|twice|(\d+) times)`)
	toNext      = regexp.MustCompile(`^knit to (?:(\d+) before )?the next marker$`)
	cells       = regexp.MustCompile(` {2,}`)
)

// rhythm is what was read of one.
type rhythm struct {
	noun, how string
	rounds    []int
	last      int
	base      int      // stitches of the gusset before
	table     []string // its lines
}

// take takes a line that is said of a rhythm, as it is for one size; ok is false for another.
func (r *rhythm) take(line string) (ok bool, err error) {
	if found := inSoMany.FindStringSubmatch(line); found != nil {
		r.base = atoi(found[1])
		return false, nil
	}
	if found := changeRound.FindStringSubmatch(line); found != nil {
		r.noun, r.how = found[1], found[2]
		return true, nil
	}
	found := workItIn.FindStringSubmatch(line)
	if found == nil {
		return false, nil
	}
	r.rounds, r.last = []int{atoi(found[1])}, atoi(found[3])
	rest := found[2]
	for rest != "" {
		one := thenEvery.FindStringSubmatch(rest)
		if one == nil {
			return true, fmt.Errorf("%q is no rhythm", rest)
		}
		every := oneOr(one[1])
		for range times(one[2], one[3]) {
			r.rounds = append(r.rounds, r.rounds[len(r.rounds)-1]+every)
		}
		rest = rest[len(one[0]):]
	}
	return true, nil
}

// column returns the cells of the table under a title, for a size.
func (r *rhythm) column(title, name string) (list []int, err error) {
	rows := make([][]string, len(r.table))
	for i, line := range r.table {
		rows[i] = cells.Split(strings.TrimSpace(line), -1)
		if len(rows[i]) != len(rows[0]) {
			return nil, fmt.Errorf("%q has %d cells, of %d", line, len(rows[i]), len(rows[0]))
		}
	}
	for c := range rows[0] {
		if rows[0][c] != title || !slices.Contains(strings.Split(rows[1][c], ", "), name) {
			continue
		}
		if list != nil {
			return nil, fmt.Errorf("size %s has two columns of %s", name, title)
		}
		list = []int{}
		for _, row := range rows[2:] {
			if row[c] != "–" {
				list = append(list, atoi(row[c]))
			}
		}
	}
	return list, nil
}

// rounds writes the rounds of a rhythm one by one, for the size of a name.
func (r *rhythm) tell(b *strings.Builder, name string) error {
	var columns [3][]int
	for i, title := range []string{r.noun, "gusset", "stitches"} {
		var err error
		if columns[i], err = r.column(title, name); err != nil {
			return err
		}
	}
	n, inside, all := len(r.rounds), columns[1], columns[2]
	if len(r.table) < 3 || len(inside) < n || len(all) != n || len(columns[0]) < n || !slices.Equal(columns[0][:n], r.rounds) || r.base == 0 {
		return fmt.Errorf("rounds %v were told, and the table has %v", r.rounds, columns)
	}
	before := r.base
	stitches := all[0] - (inside[0] - before)
	label := strings.ToUpper(r.noun[:1]) + r.noun[1:]
	for round, at := 1, 0; round <= r.last; round++ {
		text, side := "Knit", ""
		if r.noun == "row" {
			if side = " (right side)"; round%2 == 0 {
				text, side = "Purl", " (wrong side)"
			}
		}
		if at < n && r.rounds[at] == round {
			var err error
			if text, err = r.change(before); err != nil {
				return err
			}
			before, stitches, at = inside[at], all[at], at+1
		}
		fmt.Fprintf(b, "%s %d%s: %s (%d, of which %d in the gusset).\n", label, round, side, text, stitches, before)
	}
	if r.rounds[n-1] > r.last {
		return fmt.Errorf("round %d is the last", r.last)
	}
	return nil
}

// change returns what is worked in a round that changes a gusset of so many stitches.
func (r *rhythm) change(inside int) (string, error) {
	parts := strings.Split(r.how, " | ")
	if len(parts) < 2 {
		return "", fmt.Errorf("%q tells no marker", r.how)
	}
	list := split(parts[len(parts)-2])
	var out []string
	took, after, to := 0, 0, -1
	for _, item := range list {
		if found := toNext.FindStringSubmatch(item); found != nil {
			if to >= 0 {
				return "", fmt.Errorf("the next marker is reached twice")
			}
			to = atoi("0" + found[1])
			out = append(out, "")
			continue
		}
		eats, err := eaten(item)
		if err != nil {
			return "", err
		}
		if to >= 0 {
			after += eats
		}
		took += eats
		out = append(out, item)
	}
	if to < 0 || after != to || took > inside {
		return "", fmt.Errorf("%d are worked after the knit stitches, and %d were told", after, to)
	}
	at := slices.Index(out, "")
	if out[at] = fmt.Sprintf("k%d", inside-took); took == inside {
		out = slices.Delete(out, at, at+1)
	}
	parts[len(parts)-2] = strings.Join(out, ", ")
	return strings.Join(parts, " | "), nil
}

// eaten returns how many stitches an item takes.
func eaten(item string) (int, error) {
	if found := repeated.FindStringSubmatch(item); found != nil {
		all := 0
		for _, one := range split(found[1]) {
			n, err := eaten(one)
			if err != nil {
				return 0, err
			}
			all += n
		}
		return all * times(found[2], found[3]), nil
	}
	if found := run.FindStringSubmatch(item); found != nil {
		return atoi(found[2]), nil
	}
	effect, known := ledger[item]
	if !known {
		return 0, fmt.Errorf("%q is no stitch", item)
	}
	return effect[0], nil
}
