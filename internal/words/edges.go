package words

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
)

// What is said of a cuff that is no ribbing, before its rounds.
const (
	foldsIn = "The cuff is a hem: its purl round is the edge. Fold what lies below it inside, once you get to the round that joins it."
	orSew   = "If you would rather sew it, knit that round plain and sew the cast-on down inside, loosely."
	rollsUp = "The edge rolls outward by itself; leave it to."
	flat    = "The first %s are an edge in garter stitch: it lies flat and doesn’t draw in."
)

// edges returns the sentences on the edge of a section.
func edges(s *stitch.Section) []string {
	switch {
	case s.About.Folded > 0:
		return []string{foldsIn, orSew}
	case s.About.Rolls:
		return []string{rollsUp}
	case s.About.Edge > 0:
		return []string{fmt.Sprintf(flat, Plural(s.About.Edge, "round"))}
	}
	return nil
}

// joined returns n stitches that are joined with the cast-on.
func joined(n int) string { return fmt.Sprintf("knit %d each with its cast-on loop", n) }

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
