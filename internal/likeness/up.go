package likeness

import (
	"slices"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/written"
)

// shaft is the main piece of a mitt, from its cast-on on.
type shaft struct {
	*piece
	divides  int // the row in which the thumb's stitches are put aside, or knitted with waste yarn; none: -1
	begins   int // the first row beside the thumb's base
	grows    []int
	step     int
	opens    int // of an opening to and fro: its first row and how many; 0: none
	openRows int
}

// divided finds where the thumb parts from the hand.
func (p *piece) divided() int {
	return slices.IndexFunc(p.rows, func(r row) bool { return r.sum(written.Hold) > 0 || r.sum(written.Waste) > 0 })
}

// shaftOf finds the parts of a main piece.
func shaftOf(p *piece) (s shaft) {
	s = shaft{piece: p, divides: p.divided()}
	if s.divides < 0 {
		s.opening()
		return s
	}
	s.begins = s.divides
	within := 0
	for i := s.divides - 1; i >= 0; i-- {
		r := &p.rows[i]
		between, made := r.grows()
		switch {
		case r.after == r.before && made == 0:
			continue
		case r.after-r.before != made || made > 2 || made < 1, s.step > 0 && made != s.step, s.step == 2 && within-between != 2 && within != between:
			i = 0
			continue
		}
		s.step, within, s.begins = made, between, i
		s.grows = append(s.grows, i)
	}
	slices.Reverse(s.grows)
	s.begins = s.headed(s.begins)
	if s.rows[s.divides].sum(written.Waste) > 0 {
		s.grows = nil
	}
	if len(s.grows) == 0 {
		s.begins = s.below()
	}
	return s
}

// headed returns where the section of a row begins, if its heading tells of the thumb; else
// that row.
func (s *shaft) headed(at int) int {
	title := strings.ToLower(s.rows[at].section)
	if !strings.Contains(title, "gusset") && !strings.Contains(title, "thumb") {
		return at
	}
	for at > 0 && s.rows[at-1].section == s.rows[at].section && s.rows[at-1].after == s.rows[at].before && s.rows[at-1].before == s.rows[at-1].after {
		at--
	}
	return at
}

// below returns the first row beside the thumb's base where nothing grows: that of the
// section before the division, if the cuff lies below.
func (s *shaft) below() int {
	at := s.divides
	for at > 0 && s.rows[at-1].section == s.rows[max(0, s.divides-1)].section && s.rows[at-1].before == s.rows[at-1].after {
		if some, _ := s.rows[at-1].purls(); some && !s.rows[at-1].flat {
			break
		}
		at--
	}
	return at
}

// opening finds rows to and fro within a piece that is worked in the round.
func (s *shaft) opening() {
	open := func(r row) bool { return r.flat }
	if flat(s.rows) {
		open = func(r row) bool { return strings.Contains(strings.ToLower(r.section), "opening") }
	}
	from := slices.IndexFunc(s.rows, open)
	if from <= 0 {
		return
	}
	to := from
	for to < len(s.rows) && open(s.rows[to]) {
		to++
	}
	if to < len(s.rows) {
		s.opens, s.openRows = from, to-from
	}
}

// closes reports whether the piece ends in a top, not in an edge.
func (p *piece) closes() bool {
	return len(p.rows) > 0 && !p.bound && p.ended > 0
}

// cuff fixes the numbers of the cuff, which has the first rows of a piece.
func (d *draft) cuff(p *piece, to int) {
	rows := p.rows[:to]
	d.fix(mitt.CastOn, p.line, p.castOn)
	if len(rows) == 0 {
		d.fix(mitt.CuffRounds, p.line, 0)
		d.fix(mitt.CuffPlainRounds, p.line, 0)
		return
	}
	e := cuffOf(rows)
	var changes []int
	for i := range rows {
		if rows[i].before != rows[i].after {
			changes = append(changes, i)
		}
	}
	n := e.rows
	if e.kind == mitt.RolledCuff || e.kind == mitt.HemCuff { // where it ends isn't seen
		for n = 1; n < len(rows) && rows[n].section == rows[0].section && (len(changes) == 0 || n < changes[0]); n++ {
		}
	}
	if len(changes) > 1 && rows[changes[0]].before > rows[changes[0]].after {
		e.kind = mitt.Gauntlet
		if last := changes[len(changes)-1]; rows[last].after > rows[last].before || rows[last].section != rows[0].section {
			n, changes = last, changes[:len(changes)-1]
		} else {
			for n = last + 1; n < len(rows) && rows[n].section == rows[0].section; n++ {
			}
		}
		d.sheet[mitt.PathUpperGirth] = d.girth(p.castOn)
		d.sheet["hand.wrist_circumference"] = d.girth(rows[changes[len(changes)-1]].after)
	} else if len(changes) > 0 && changes[len(changes)-1] >= e.rows {
		n = changes[len(changes)-1]
	}
	switch e.kind {
	case mitt.RibCuff:
		d.knits, d.purls = e.knits, e.purls
		d.sheet[mitt.PathKnits], d.sheet[mitt.PathPurls] = itoa(e.knits), itoa(e.purls)
		d.numbers = append(d.numbers, Number{Name: "Rib", Value: itoa(e.knits) + " × " + itoa(e.purls), Line: rows[0].line, path: mitt.PathKnits})
	default:
		d.choose("Cuff", e.kind.Words(), mitt.PathCuff, string(e.kind), rows[0].line)
	}
	d.fix(mitt.CuffRounds, rows[0].line, n)
	d.fix(mitt.CuffPlainRounds, rows[min(n, len(rows)-1)].line, len(rows)-n)
	if n+1 == len(rows) { // its last round may be what brings it to the hand's count
		d.ways = append(d.ways, func(s sheet.Sheet) {
			s[mitt.CuffRounds.Path()], s[mitt.CuffPlainRounds.Path()] = itoa(n+1), "0"
		})
	}
}

// fromCuff reads a mitt that is worked from its cuff; the other pieces are its thumb or its
// fingers.
func (d *draft) fromCuff(pieces []piece) (why string) {
	main := &pieces[0]
	if d.topped = main.closes(); d.topped {
		d.kind = mitt.Mitten
	}
	s := shaftOf(main)
	switch {
	case s.divides < 0 && s.openRows > 0:
		return d.open(&s)
	case s.divides < 0:
		return d.alone(&s)
	case len(pieces) < 2:
		return "no thumb is worked on what was put aside"
	}
	d.groups = append(d.groups, main.rows)
	if why := d.parted(&s); why != "" {
		return why
	}
	if len(pieces) > 2 {
		return d.glove(&s, pieces)
	}
	d.above(main, s.divides)
	return d.thumb(&pieces[1], &s)
}

// parted fixes the numbers from the cuff to where the thumb parts.
func (d *draft) parted(s *shaft) (why string) {
	r := &s.rows[s.divides]
	held, cast, waste := r.sum(written.Hold), r.sum(written.CastOn), r.sum(written.Waste)
	d.cuff(s.piece, s.begins)
	before := s.rows[s.begins].before
	d.fix(mitt.HandStitches, s.rows[s.begins].line, before)
	d.fix(mitt.GussetRounds, s.rows[s.begins].line, s.divides-s.begins)
	if waste > 0 {
		d.choose("Thumb", "on waste yarn", mitt.PathConstruction, string(mitt.Straight), r.line)
		d.fix(mitt.Held, r.line, waste)
		return ""
	}
	k := len(s.grows)
	if k == 0 {
		return "no gusset grows before the thumb’s stitches are put aside"
	}
	after := before + k*s.step - held + cast
	less := before + cast - after // base less what stays on the hand
	base := 0
	if in := s.rows[s.grows[0]].inside; in > 0 {
		base = in - s.step
	} else if within, _ := s.rows[s.grows[0]].grows(); less < 1 && within > 0 {
		base = within
	}
	base = max(base, less, 1)
	if base > 8 {
		base = max(less, 1)
	}
	d.fix(mitt.GussetBase, s.rows[s.grows[0]].line, base)
	if s.step == 1 {
		d.choose("Increases", "at one edge", "stitch.both_edges", "false", s.rows[s.grows[0]].line)
	}
	rounds := make([]int, k)
	for i, at := range s.grows {
		rounds[i] = at - s.begins + 1
	}
	d.fix(mitt.IncreaseRounds, s.rows[s.grows[0]].line, rounds...)
	d.grown(s)
	d.fix(mitt.Held, r.line, held)
	d.fix(mitt.KeptOnHand, r.line, base-less)
	d.fix(mitt.BridgeStitches, r.line, cast)
	return ""
}

// grownBy says how a gusset grows.
var grownBy = map[mitt.Increase]string{
	mitt.Lifted: "lifted", mitt.YoClosed: "yarn overs, closed", mitt.FrontAnd: "front and back", mitt.InCentre: "in the centre",
}

// grown notes how the gusset grows, if it is another way than the usual.
func (d *draft) grown(s *shaft) {
	r := &s.rows[s.grows[len(s.grows)-1]]
	within, _ := r.grows()
	how := mitt.MakeOne
	for _, run := range r.runs {
		switch run.Name {
		case "LLI", "RLI":
			how = mitt.Lifted
		case "yo":
			how = mitt.YoClosed
		case "kfb":
			how = mitt.FrontAnd
		case "M1", "M1L", "M1R":
			if within == 1 && len(s.grows) > 1 {
				how = mitt.InCentre
			}
		}
	}
	if how != mitt.MakeOne {
		d.choose("Increases", grownBy[how], mitt.PathIncrease, string(how), r.line)
	}
}

// above fixes the numbers above a row, up to the end of the piece.
func (d *draft) above(p *piece, from int) {
	rows := p.rows[from:]
	if d.topped {
		d.tops, d.topRows = topsOf(rows), rows
		return
	}
	d.fix(mitt.RoundsAboveGusset, rows[0].line, len(rows))
	d.long("length.edging", ribbed(rows))
	d.plain = d.plain || ribbed(rows) == 0
}

// thumb fixes the numbers of a thumb on stitches that waited.
func (d *draft) thumb(p *piece, s *shaft) (why string) {
	if len(p.rows) == 0 {
		return "the thumb has no rounds"
	}
	d.groups = append(d.groups, p.rows)
	t := tubeOf(p)
	if r := &p.rows[0]; r.sum(written.PickUp) == 0 && r.before > p.taken && p.taken > 0 && r.before > r.after {
		t.first = r.before // what was picked up before the first round is decreased in it
	}
	if s.rows[s.divides].sum(written.Waste) == 0 {
		d.fix(mitt.PickedUp, p.rows[0].line, t.first-p.taken)
	}
	d.fix(mitt.ThumbDecreases, p.rows[0].line, t.first-t.stitches)
	d.or(mitt.ThumbDecreases, t.first-t.other)
	if d.down {
		d.fix(mitt.ThumbStitches, p.rows[0].line, t.stitches)
		d.or(mitt.ThumbStitches, t.other)
	}
	d.fix(mitt.ThumbRounds, p.rows[0].line, len(p.rows))
	d.long("length.thumb_edging", t.edging)
	d.plain = d.plain || !t.closed && t.edging == 0
	d.sheet["hand.thumb_circumference"] = d.girth(t.stitches)
	return ""
}

// open reads a mitt whose thumb comes out of an opening.
func (d *draft) open(s *shaft) (why string) {
	d.groups = append(d.groups, s.rows)
	d.choose("Thumb", "out of an opening", mitt.PathConstruction, string(mitt.Slit), s.rows[s.opens].line)
	d.cuff(s.piece, s.opens)
	d.fix(mitt.HandStitches, s.rows[s.opens].line, s.rows[s.opens].before)
	d.fix(mitt.GussetRounds, s.rows[s.opens].line, s.openRows)
	d.above(s.piece, s.opens+s.openRows)
	return ""
}

// alone reads a mitten without a thumb, or a wristlet.
func (d *draft) alone(s *shaft) (why string) {
	d.groups = append(d.groups, s.rows)
	d.choose("Thumb", "none", mitt.PathConstruction, string(mitt.NoThumb), s.line)
	if d.topped {
		d.kind = mitt.Thumbless
		delete(d.sheet, mitt.PathConstruction)
	}
	first, _ := s.rows[0].purls()
	d.edged = s.bound && (first || ribbed(s.rows) > 0)
	at := s.cuffAlone()
	d.cuff(s.piece, at)
	d.fix(mitt.HandStitches, s.rows[at].line, s.rows[at].after)
	d.above(s.piece, at)
	return ""
}

// cuffAlone returns where the hand begins of a mitt without a thumb.
func (s *shaft) cuffAlone() int {
	for i := 1; i < len(s.rows); i++ {
		if strings.EqualFold(s.rows[i].section, "hand") && s.rows[i-1].section != s.rows[i].section {
			return i
		}
	}
	e := cuffOf(s.rows[:max(1, len(s.rows)-ribbed(s.rows))])
	at := min(max(1, e.rows), len(s.rows)-1)
	for at+1 < len(s.rows) && s.rows[at].before != s.rows[at].after && !s.closes() {
		at++
	}
	return at
}
