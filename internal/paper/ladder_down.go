package paper

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// decreases says in which rounds a gusset that is worked down loses stitches, as they are
// worked: the last round from the cuff comes first.
func (c *climb) decreases(g *mitt.Gusset) []string {
	rounds := c.Out.Plan.FromBase(g.Rounds.N, g.IncreaseRounds)
	c.placed[mitt.FirstIncrease], c.placed[mitt.Rhythm] = true, true
	noun := "rounds "
	if len(rounds) == 1 {
		noun = "round "
	}
	text := c.say(mitt.Increases, words.Plural(g.Increases, "decrease round"))
	return []string{text + ": " + c.say(mitt.IncreaseRounds, noun+words.List(rounds)), fmt.Sprintf("%d → %s", g.Stitches, words.Plural(g.Base, "stitch"))}
}

// thumbFirst returns a thumb that is worked first: its count, those with which it ends, and
// how it begins.
func (c *climb) thumbFirst(s *stitch.Section) stage {
	t := &c.Out.Plan.Thumb
	count := c.say(mitt.ThumbStitches, words.Plural(t.Stitches.N, "stitch"))
	switch {
	case t.Decreased > 0:
		count += fmt.Sprintf(", %d made at the corners", t.Decreased)
	case t.Decreased < 0:
		count += fmt.Sprintf(", %d decreased at the corners", -t.Decreased)
	}
	list := []string{count + fmt.Sprintf(": %d join the hand, %d wait for the gap", t.Held, t.PickedUp)}
	begin := "cast on " + stitchesOn(c.Out.Plan, s.Around(s.CastOn))
	switch {
	case s.About.Ribbed > 0:
		list = append(list, begin, lastRibbed(s))
	case s.Closed() && s.Seam == 0:
		list = append(list, begin+", closed")
	case s.Closed():
		list = append(list, begin)
	}
	return c.stage(s, list)
}

// lastRibbed says which of a part's last rounds are ribbed; from the tip they are its first.
func lastRibbed(s *stitch.Section) string {
	of, which := &s.About, "last"
	if s.Down {
		which = "first"
	}
	if of.Ribbed == 1 {
		return "the " + which + " round in " + ribbing(of)
	}
	return fmt.Sprintf("the %s %s in %s", which, words.Plural(of.Ribbed, "round"), ribbing(of))
}
