package likeness

import (
	"slices"

	"thenar/internal/mitt"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// fromTips reports whether the pieces are those of a mitt from the fingertips: its thumb
// waits at its end and is taken in by the next piece, or it widens at once from a few
// stitches.
func fromTips(pieces []piece) bool {
	first := &pieces[0]
	if len(pieces) > 1 && pieces[1].castOn > 0 {
		return slices.ContainsFunc(pieces[1].rows, func(r row) bool { return r.sum(written.TakeIn) > 0 })
	}
	most := 0
	for i := range first.rows {
		most = max(most, first.rows[i].after)
	}
	return len(pieces) == 1 && first.bound && 2*first.castOn < most && first.rows[min(2, len(first.rows)-1)].after > first.castOn && ribbed(first.rows[:1]) == 0
}

// fromTip reads a mitt that is worked from its fingertips: its pieces, each from its last row
// to its first, are those of one from the cuff.
func (d *draft) fromTip(pieces []piece) (why string) {
	d.down = true
	main := turned(&pieces[len(pieces)-1])
	groups := make([][]row, 0, len(pieces))
	for i := range pieces {
		groups = append(groups, pieces[i].rows)
	}
	up := []piece{main}
	if len(pieces) > 1 {
		up = append(up, turned(&pieces[0]))
		if len(pieces) > 2 {
			return "it has more pieces than a mitt from the fingertips"
		}
	}
	d.choose("Worked", "from the fingertips", mitt.PathDirection, string(mitt.Down), pieces[0].line)
	why = d.fromCuff(up)
	d.groups = groups
	return why
}

// turned returns a piece as it would be worked from its other end.
func turned(p *piece) (up piece) {
	up = piece{castOn: p.ended, ended: p.castOn, line: p.endsAt, endsAt: p.line}
	for _, r := range p.held {
		up.taken += r.Times
	}
	pairs := len(p.rows)%2 == 0 && len(p.rows) > 0
	for i := range p.rows {
		pairs = pairs && p.rows[i].flat
	}
	if len(p.rows) > 0 { // an edging begins in rib
		up.bound, _ = p.rows[0].purls()
	}
	inside := func(i int) int {
		if i == 0 {
			return -1
		}
		return p.rows[i-1].inside
	}
	for i := len(p.rows) - 1; i >= 0; i-- {
		if !pairs {
			up.rows = append(up.rows, turnedRow(&p.rows[i], inside(i)))
			continue
		}
		i--
		shaped := turnedRow(&p.rows[i], inside(i))
		plain := p.rows[i+1]
		plain.before, plain.after, plain.inside = shaped.after, shaped.after, shaped.inside
		up.rows = append(up.rows, shaped, plain)
	}
	return up
}

// turnedRow returns a row that undoes another.
func turnedRow(r *row, inside int) row {
	out := *r
	out.before, out.after, out.inside = r.after, r.before, inside
	out.runs = make([]tally.Run, len(r.runs))
	for i, run := range r.runs {
		switch run.Does {
		case written.Hold:
			run.Does = written.CastOn
		case written.TakeIn:
			run.Does, run.In, run.Out = written.Hold, 0, 0
		case written.Stitch:
			run.In, run.Out = run.Out, run.In
		}
		out.runs[i] = run
	}
	return out
}
