package words

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// What is said of a cuff that is no ribbing, before its rounds.
const (
	foldsIn   = "The cuff is a hem: its purl round is the edge. Fold what lies below it inside, once you get to the round that joins it."
	orSew     = "If you would rather sew it, knit that round plain and sew the cast-on down inside, loosely."
	foldsDown = "The cuff is a hem: its purl round is the edge. When it is bound off, fold what lies below inside and sew it down, loosely."
	rollsUp   = "The edge rolls outward by itself; leave it to."
	flat      = "The %s %s are an edge in garter stitch: it lies flat and doesn’t draw in."
)

// edges returns the sentences on the edge of a section.
func edges(s *stitch.Section) []string {
	switch {
	case s.About.Folded > 0 && s.Down:
		return []string{foldsDown}
	case s.About.Folded > 0:
		return []string{foldsIn, orSew}
	case s.About.Rolls:
		return []string{rollsUp}
	case s.About.Edge > 0 && s.Down:
		return []string{fmt.Sprintf(flat, "last", Plural(s.About.Edge, "round"))}
	case s.About.Edge > 0:
		return []string{fmt.Sprintf(flat, "first", Plural(s.About.Edge, "round"))}
	case s.About.Ends > 0:
		ends := "The first and the last stitch"
		if s.About.Ends > 1 {
			ends = fmt.Sprintf("The first and the last %d stitches", s.About.Ends)
		}
		comesOut := "The thumb comes out between the two ends of the rows."
		if s.SeamOpen() {
			comesOut = "The seam stays open here: the thumb comes out between the two ends of the rows."
		}
		list := []string{comesOut}
		if endsKnitted(s) {
			list = append(list, ends+" of every row are knitted, so that the edges lie flat.")
		}
		return list
	}
	return nil
}

// endsKnitted reports whether every row of a section begins and ends as planned, with
// knit stitches and no more of them on the wrong side than told, whatever is painted.
func endsKnitted(s *stitch.Section) bool {
	edge := s.About.Ends
	for _, r := range s.Rounds {
		ops := r.Worked()
		for i := range edge {
			if ops[i] != stitch.Knit || ops[len(ops)-1-i] != stitch.Knit {
				return false
			}
		}
		if r.Side == stitch.WrongSide && len(ops) > 2*edge && (ops[edge] == stitch.Knit || ops[len(ops)-1-edge] == stitch.Knit) {
			return false
		}
	}
	return true
}

// joined returns n stitches that are joined with the cast-on.
func joined(n int) string {
	return fmt.Sprintf("knit %d each together with the cast-on loop behind it", n)
}

// cuffLies says how the cuff's rounds come to their length, where they don't lie flat.
func cuffLies(p *mitt.Plan) string {
	switch {
	case p.Cuff.Facing > 0:
		return fmt.Sprintf(", and %s of it folded inside", Plural(p.Cuff.Facing, "round"))
	case p.Make.Cuff == mitt.RolledCuff:
		return " once its edge has rolled up"
	}
	return ""
}
