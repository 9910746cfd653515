package view

import (
	"fmt"
	"strings"

	"github.com/a-h/templ"

	"thenar/internal/mitt"
	"thenar/internal/words"
)

// planNumber is a number within a line that sums up the plan, with the words
// before it.
type planNumber struct {
	Before, Value string
	Of            mitt.Number
}

// address returns where the number stands on the ladder of a mitt's Fit desk.
func (n planNumber) address(fit templ.SafeURL) templ.SafeURL {
	return fit + templ.SafeURL("#"+slipID(n.Of))
}

// said returns the number as a link is read out that stands for itself.
func (n planNumber) said() string {
	return strings.TrimSpace(strings.ReplaceAll(strings.Trim(n.Before, " ·,"), "→", "to") + " " + n.Value)
}

// counted returns a number of the plan with what it counts: "20 rows".
func counted(p *mitt.Plan, n mitt.Number) string {
	return words.Plural(p.Count(n), p.Names().Noun(n))
}

// castOn returns the stitches of the cast-on, with those of a seam beside them.
func castOn(p *mitt.Plan) string {
	if n := p.SeamStitches(); n > 0 {
		return fmt.Sprintf("%d + %d", p.Cuff.CastOn.N, n)
	}
	return fmt.Sprint(p.Cuff.CastOn.N)
}

// planNumbers returns the plan as the bar says it.
func planNumbers(p *mitt.Plan) []planNumber {
	list := []planNumber{
		{p.Said(mitt.CastOn) + " ", castOn(p), mitt.CastOn},
		{" · hand ", fmt.Sprint(p.Body.Stitches.N), mitt.HandStitches},
	}
	if p.Gusseted() {
		list = append(list,
			planNumber{" · gusset ", fmt.Sprint(p.Gusset.Base), mitt.GussetBase},
			planNumber{"→", fmt.Sprint(p.Gusset.Stitches), mitt.Increases},
			planNumber{" in ", fmt.Sprint(p.Gusset.Rounds.N), mitt.GussetRounds})
	}
	if w := p.Thumb.OnWaste; w > 0 {
		list = append(list, planNumber{" · with waste yarn ", fmt.Sprint(w), mitt.Held})
	}
	switch {
	case p.OpeningRows() > 0:
		return append(list, planNumber{" · opening in ", counted(p, mitt.GussetRounds), mitt.GussetRounds})
	case p.Thumbed():
		list = append(list, planNumber{" · thumb ", fmt.Sprint(p.Thumb.Stitches.N), mitt.ThumbStitches})
		return append(list, fingerCounts(p)...)
	case p.Top == nil:
		return append(list, planNumber{" · ", counted(p, mitt.RoundsAboveGusset), mitt.RoundsAboveGusset})
	}
	return append(list, planNumber{" · top in ", counted(p, mitt.TopRounds), mitt.TopRounds})
}

// planLine returns the plan in one line.
func planLine(p *mitt.Plan) string { return inOneLine(planNumbers(p)) }

func inOneLine(list []planNumber) string {
	var b strings.Builder
	for _, n := range list {
		b.WriteString(n.Before + n.Value)
	}
	return b.String()
}

// summaryNumbers returns the plan as its own page sums it up.
func (a Answer) summaryNumbers() []planNumber {
	p := a.Out.Plan
	list := []planNumber{
		{capital(p.Said(mitt.CastOn)) + " ", castOn(p), mitt.CastOn},
		{" · hand ", fmt.Sprint(p.Body.Stitches.N), mitt.HandStitches},
	}
	switch {
	case p.Thumb.OnWaste > 0:
		return append(list,
			planNumber{" · to the thumb ", counted(p, mitt.GussetRounds), mitt.GussetRounds},
			planNumber{" · with waste yarn ", fmt.Sprint(p.Thumb.OnWaste), mitt.Held},
			planNumber{" · thumb ", fmt.Sprint(p.Thumb.Stitches.N), mitt.ThumbStitches})
	case p.OpeningRows() > 0:
		return append(list,
			planNumber{" · opening in ", counted(p, mitt.GussetRounds), mitt.GussetRounds},
			planNumber{" · above it ", counted(p, mitt.RoundsAboveGusset), mitt.RoundsAboveGusset})
	case p.Top == nil && !p.Gusseted():
		return append(list, planNumber{" · ", counted(p, mitt.RoundsAboveGusset), mitt.RoundsAboveGusset})
	case !p.Gusseted():
		return append(list,
			planNumber{" · ", counted(p, mitt.RoundsAboveGusset), mitt.RoundsAboveGusset},
			planNumber{" to the top · top in ", counted(p, mitt.TopRounds), mitt.TopRounds})
	}
	list = append(list,
		planNumber{" · gusset ", fmt.Sprint(p.Gusset.Base), mitt.GussetBase},
		planNumber{" → ", fmt.Sprint(p.Gusset.Stitches), mitt.Increases},
		planNumber{" in ", counted(p, mitt.GussetRounds), mitt.GussetRounds})
	held := " · hold "
	if p.Down() {
		held = " · " + p.Said(mitt.Held) + " "
	}
	list = append(list,
		planNumber{held, fmt.Sprint(p.Thumb.Held), mitt.Held},
		planNumber{" · " + p.Said(mitt.BridgeStitches) + " ", fmt.Sprint(p.Bridge.CastOn), mitt.BridgeStitches},
		planNumber{" · thumb ", fmt.Sprint(p.Thumb.Stitches.N), mitt.ThumbStitches},
	)
	return append(list, fingerCounts(p)...)
}

// fingerCounts returns the stitches of the fingers, from the index on.
func fingerCounts(p *mitt.Plan) []planNumber {
	if !p.Fingered() {
		return nil
	}
	var list []planNumber
	for _, f := range eachFinger {
		before := ", "
		if f == eachFinger[0] {
			before = " · fingers "
		}
		list = append(list, planNumber{before, fmt.Sprint(p.Fingers.Each[f].Stitches.N), mitt.OfFinger(mitt.FingerStitches, f)})
	}
	return list
}

// summary returns the plan as its own page sums it up, in one line.
func (a Answer) summary() string { return inOneLine(a.summaryNumbers()) }

// planned returns what the plan makes of each number that can be fixed, by its
// path.
func (a Answer) planned() map[string]string {
	list := map[string]string{}
	if a.Out == nil {
		return list
	}
	for _, r := range a.Out.Reasons {
		list[r.Of.Path()] = r.Number
	}
	return list
}
