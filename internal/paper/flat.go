package paper

import (
	"fmt"

	"thenar/internal/mitt"
	"thenar/internal/words"
)

// said returns a text about rounds as it is printed for this mitt, which may be in rows.
func (h *handout) said(text string) string { return h.Out.Plan.Make.InRows(text) }

// onNeedles returns a count of the plan with the stitches that a seam takes besides: "36",
// "36 + 2".
func onNeedles(p *mitt.Plan, n int) string {
	if seam := p.SeamStitches(); seam > 0 {
		return fmt.Sprintf("%d + %d", n, seam)
	}
	return fmt.Sprint(n)
}

// seamed is that count where it stands first, with what the seam's stitches are for.
func seamed(p *mitt.Plan, n int) string {
	if p.SeamStitches() > 0 {
		return onNeedles(p, n) + " for the seam"
	}
	return onNeedles(p, n)
}

// stitchesOn is that with its noun: "36 stitches", "36 + 2 stitches".
func stitchesOn(p *mitt.Plan, n int) string {
	if p.SeamStitches() > 0 {
		return onNeedles(p, n) + " stitches"
	}
	return words.Plural(n, "stitch")
}
