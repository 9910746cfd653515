package likeness

import (
	"strconv"

	"thenar/internal/hand"
	"thenar/internal/mitt"
	"thenar/internal/sheet"
)

// tube is a thumb or a finger as it was found.
type tube struct {
	first, stitches int // of its first round, and once its corners are decreased
	other           int // its stitches, if its edging takes the last of what is decreased, or doesn't
	edging          int // rounds of ribbing that end it
	closed          bool
}

// tubeOf finds the numbers of a thumb or a finger.
func tubeOf(p *piece) (t tube) { return tubeIn(p.rows, !p.bound && p.ended > 0) }

func tubeIn(rows []row, closed bool) (t tube) {
	t = tube{first: rows[0].after, closed: closed}
	end := len(rows)
	if closed {
		for i := 1; i < len(rows); i++ {
			if 3*rows[i].after <= 2*rows[i].before && rows[i].before-rows[i].after > 2 {
				end = i
				break
			}
		}
	} else {
		t.edging = ribbed(rows)
		end -= t.edging
		at := end - 1 // the row that may bring it to the edging's count; of a pair the first
		if at > 0 && rows[at].flat && rows[at].before == rows[at].after {
			at--
		}
		if t.edging > 0 && at > 0 && rows[at].after < rows[at].before && rows[at].after == rows[len(rows)-1].after {
			t.other = rows[at].before
			if at > 2 && rows[at-1].after == rows[at-1].before || rows[at].before-rows[at].after > 2 {
				end, t.other = at, rows[at].after
			}
		}
	}
	if t.stitches = t.first; end > 0 {
		t.stitches = rows[end-1].after
	}
	if t.other == 0 {
		t.other = t.stitches
	}
	return t
}

// top is a way in which a top may be closed.
type top struct {
	kind         mitt.TopKind
	band, wedges int
	rounds       int
	more         int // its rounds follow from the hand's length, which would have so many more
}

// topsOf returns the ways in which rows may end in a top.
func topsOf(rows []row) (list []top) {
	var shaped []int
	for i := range rows {
		if i > 0 && rows[i].after < rows[i].before {
			shaped = append(shaped, i)
		}
	}
	if len(shaped) == 0 {
		return []top{{kind: mitt.RoundedTop, rounds: 1}}
	}
	kinds := kindsOf(rows, shaped)
	var lengths []int
	add := func(n int) {
		for _, have := range lengths {
			if have == n {
				return
			}
		}
		if n >= 1 && n < len(rows) {
			lengths = append(lengths, n)
		}
	}
	last := rows[shaped[len(shaped)-1]].section
	for i := len(rows) - 1; i > 0; i-- {
		if rows[i].section == last && rows[i-1].section != last {
			add(len(rows) - i)
		}
	}
	for more := range 9 {
		add(len(rows) - shaped[0] + more)
		if len(shaped) > 1 {
			add(len(rows) - shaped[1] + more)
		}
	}
	for _, k := range kinds {
		for _, n := range lengths {
			k.rounds = n
			list = append(list, k)
		}
	}
	for _, k := range kinds {
		for more := 1; more <= 3 && len(lengths) > 0; more++ {
			k.rounds, k.more = lengths[0], more
			list = append(list, k)
		}
	}
	return list
}

// kindsOf returns the kinds of top that take off what the shaped rows do.
func kindsOf(rows []row, shaped []int) (kinds []top) {
	off := func(i int) int { return rows[i].before - rows[i].after }
	last := shaped[len(shaped)-1]
	if n := off(last); 2*n+1 >= rows[last].before {
		kinds = append(kinds, top{kind: mitt.GatheredTop})
	}
	switch n := off(last); {
	case n == 4:
		kinds = append(kinds, top{kind: mitt.RoundedTop}, top{kind: mitt.PointedTop})
		for band := 1; band <= mitt.MaxBand; band++ {
			kinds = append(kinds, top{kind: mitt.BandedTop, band: band})
		}
		kinds = append(kinds, top{kind: mitt.WedgesTop, wedges: 4})
	case n >= mitt.FewestWedges && n <= mitt.MaxWedge:
		kinds = append(kinds, top{kind: mitt.WedgesTop, wedges: n})
	}
	if len(kinds) == 0 {
		kinds = append(kinds, top{kind: mitt.RoundedTop}, top{kind: mitt.GatheredTop})
	}
	return kinds
}

// over puts a top into a sheet, above a division with so many rows.
func (t top) over(s sheet.Sheet, rows int, roundsPerMM float64) {
	s[mitt.RoundsAboveGusset.Path()], s[mitt.TopRounds.Path()] = itoa(max(0, rows-t.rounds)), itoa(t.rounds)
	s[mitt.PathTop] = string(t.kind)
	delete(s, hand.FieldLength)
	if t.more > 0 {
		delete(s, mitt.TopRounds.Path())
		s[hand.FieldLength] = cm((float64(t.rounds+t.more)/roundsPerMM - mitt.TopLength(0)) / (mitt.TopLength(1) - mitt.TopLength(0)))
	}
	delete(s, mitt.PathBand)
	delete(s, mitt.PathWedges)
	if t.band > 0 {
		s[mitt.PathBand] = itoa(t.band)
	}
	if t.wedges > 0 {
		s[mitt.PathWedges] = itoa(t.wedges)
	}
}

// put notes the top that was chosen.
func (t top) put(d *draft) {
	rows := d.topRows
	at := max(0, len(rows)-t.rounds)
	d.fix(mitt.RoundsAboveGusset, rows[0].line, at)
	if t.more == 0 {
		d.fix(mitt.TopRounds, rows[min(at, len(rows)-1)].line, t.rounds)
	}
	line := rows[min(at, len(rows)-1)].line
	d.choose("Top", string(t.kind), mitt.PathTop, string(t.kind), line)
	if t.band > 0 {
		d.choose("Band", itoa(t.band), mitt.PathBand, itoa(t.band), line)
	}
	if t.wedges > 0 {
		d.choose("Wedges", itoa(t.wedges), mitt.PathWedges, itoa(t.wedges), line)
	}
}

func itoa(n int) string { return strconv.Itoa(n) }
