package words

import "thenar/internal/stitch"

// begin prepares for the rounds of a section, and says in what yarns it is cast on, knitted on
// and bound off. below is the section before it; nil: there is none.
func (d *dyer) begin(below, s *stitch.Section) (yarns sectionYarns) {
	if d == nil {
		return yarns
	}
	d.met, d.caught, d.bumps, d.below = false, false, false, nil
	if !s.GoesOn(below) {
		d.going = ""
	}
	switch {
	case s.CastOn > 0:
		d.going = d.Yarns[0]
		if len(s.Rounds) > 0 {
			if of := d.Round(s.Part, 1); of != nil {
				if used := inYarns(s.Rounds[0].Ops, of.Yarns); len(used) == 1 {
					d.going = used[0]
				}
			}
		}
		yarns.castOn = " in " + d.going
	case s.Shift > 0 && d.going == "" && s.GoesOn(below):
		if d.going = d.under(below, s.Shift); d.going != "" {
			yarns.more = " in " + d.going
		} else {
			yarns.more = ", each in the yarn of the stitch below it"
		}
	}
	return yarns
}

// sectionYarns are the yarns of what a section does beside its rounds, as they follow it.
type sectionYarns struct{ castOn, more, boundOff string }

// under returns the one yarn of the first n stitches of a section's last round; "" if they
// have several.
func (d *dyer) under(below *stitch.Section, n int) string {
	last := len(below.Rounds)
	of := d.Round(below.Part, last)
	if of == nil {
		return d.Yarns[0]
	}
	yarn := ""
	for i, op := range below.Rounds[last-1].Ops {
		if n <= 0 {
			break
		}
		if op.Out() > 0 && yarn != "" && yarn != of.Yarns[i] {
			return ""
		}
		if op.Out() > 0 {
			yarn = of.Yarns[i]
		}
		n -= op.Out()
	}
	return yarn
}

// boundOff names the yarn to bind off with, after a round of several.
func (d *dyer) boundOff() string {
	if d == nil || d.going != "" {
		return ""
	}
	return " in " + d.Yarns[0]
}
