package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/mitt"
	"thenar/internal/stitch"
	"thenar/internal/tryon"
	"thenar/internal/units"
)

// zones returns the zones that the mitt has.
func (t Tries) zones() []tryon.Zone {
	return slices.DeleteFunc(tryon.Zones(), func(zone tryon.Zone) bool {
		if zone.Fingered() {
			return t.last(stitch.Part(zone)) == 0
		}
		if t.Plan == nil {
			return zone != tryon.Cuff && zone != tryon.Hand
		}
		return !zone.In(t.Plan)
	})
}

// measured returns the zones whose lengths are looked at: those of a glove.
func (t Tries) measured() []tryon.Zone {
	if t.Plan == nil || !t.Plan.Fingered() {
		return nil
	}
	return slices.DeleteFunc(tryon.Measured(), func(zone tryon.Zone) bool { return t.last(stitch.Part(zone)) == 0 })
}

// ended reports whether the length of a zone is asked about: it is begun, as far as the
// form knows, or something was said of it.
func (t Tries) ended(zone tryon.Zone) bool {
	return t.felt(zone) || t.Form.Try.Ends[zone] != "" || t.Form.Fault(endField(zone)) != ""
}

func endField(zone tryon.Zone) string {
	length, _ := zone.EndField()
	return length
}

// looked reports whether any length is asked about.
func (t Tries) looked() bool {
	return slices.ContainsFunc(t.measured(), t.ended)
}

// ends says of a zone where it should end on the hand.
func (t Tries) ends(zone tryon.Zone) string {
	part := stitch.Part(zone)
	f, finger := mitt.FingerOf(part)
	closed := finger && t.Plan.Fingers.Each[f].Closed || zone == tryon.Thumb && t.Plan.Thumb.Closed
	where := "where it should end"
	switch {
	case closed:
		where = "its tip"
	case zone == tryon.Hand && t.last(mitt.LittleLowerRounds.Part()) == 0:
		where = "where the fingers part"
	case zone == tryon.Hand:
		where = "where the little finger parts"
	case zone == tryon.UpperHand:
		where = "where the other fingers part"
	case zone == tryon.Cap:
		where = "the tip of the middle finger"
	}
	if left := t.left(part); left > 0 {
		ahead := units.FromMM(float64(left) / t.Plan.Gauge.Rounds)
		return fmt.Sprintf("against %s: %s are still to be knitted", where, ahead.With(t.offsetUnit()))
	}
	return "against " + where
}

// left returns how many rounds of a part are still to be knitted while the work is in it, as
// far as the form knows; a cap is knitted when its top is.
func (t Tries) left(part stitch.Part) int {
	round, err := strconv.Atoi(t.Form.Try.Round)
	at := stitch.Part(t.Form.Try.Section)
	switch {
	case err != nil:
		return 0
	case at == part && part.Over() == stitch.OverCap:
		return t.last(part) - round + t.last(stitch.CapTop)
	case at == part || part.Over() == stitch.OverCap && at.Over() == part.Over():
		return t.last(at) - round
	}
	return 0
}

// felt reports whether a zone is asked about: it is knitted, as far as the form
// knows, or something was said of it.
func (t Tries) felt(zone tryon.Zone) bool {
	part := stitch.Part(t.Form.Try.Section)
	if parts := t.Parts(); part == "" && len(parts) > 0 {
		part = stitch.Part(parts[0].Value)
	}
	round, err := strconv.Atoi(t.Form.Try.Round)
	whole := err == nil && round > 0 && t.last(part) == round
	return t.Form.Try.Feel[zone] != "" || slices.Contains(tryon.KnittedZones(part, whole, t.down()), zone)
}

// feltIn returns the parts, for the script, in which a zone can be felt from
// the first round on.
func (t Tries) feltIn(zone tryon.Zone) string {
	var parts []string
	for _, p := range stitch.Parts() {
		if slices.Contains(tryon.KnittedZones(p, false, t.down()), zone) {
			parts = append(parts, string(p))
		}
	}
	return strings.Join(parts, " ")
}

// wholeIn returns the part, for the script, in which a zone can be felt only at
// its last round, with that round.
func (t Tries) wholeIn(zone tryon.Zone) string {
	for _, p := range stitch.Parts() {
		if t.last(p) == 0 {
			continue
		}
		if whole := tryon.KnittedZones(p, true, t.down()); slices.Contains(whole, zone) && !slices.Contains(tryon.KnittedZones(p, false, t.down()), zone) {
			return fmt.Sprintf("%s %d", p, t.last(p))
		}
	}
	return ""
}

// unfelt names the zones that are not knitted yet, or returns "" if all are.
func (t Tries) unfelt() string {
	var list []string
	for _, zone := range t.zones() {
		if !t.felt(zone) {
			list = append(list, zone.Words())
		}
	}
	if len(list) == 0 {
		return ""
	}
	return strings.Join(list, ", ") + ": not knitted yet"
}

// length returns how much too long or too short a zone is.
func (f TryForm) length(zone tryon.Zone) (length string, way tryon.Way) {
	return tryon.UnsidedEnd(f.Try.Ends[zone], f.Try.EndsWays[zone])
}

func (e TryEntry) length(text string) string {
	if text == "" {
		return ""
	}
	length, way := tryon.UnsidedEnd(text, "")
	if way == "" {
		return "right"
	}
	return length + " " + string(tryon.OffsetUnit(e.Unit)) + " " + way.Words()
}
