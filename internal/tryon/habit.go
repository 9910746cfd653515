package tryon

import (
	"math"
	"strconv"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Answer is the person's answer to a try.
type Answer struct {
	Accepted []string         `json:"accepted"` // keys of corrections
	Declined []string         `json:"declined"` // keys of corrections
	Ripped   int              `json:"ripped"`   // rounds to rip back
	Section  stitch.Part      `json:"section"`  // with Round: where knitting goes on
	Round    int              `json:"round"`
	Line     string           `json:"line"`            // how the rest differs
	Aside    bool             `json:"aside,omitempty"` // the try was noted by mistake
	Ease     map[Zone]float64 `json:"ease"`            // by accepted zone: ease less the usual, as a share of the girth
}

// GivenAnswer is an answer as it was kept.
type GivenAnswer struct {
	ID     int64 // of the answer
	Mitt   int64 // of the mitt that was tried on
	Answer Answer
}

// Habit is how the person likes a zone to fit, learned from tries.
type Habit struct {
	Zone  Zone
	By    float64 // ease less the usual, as a share of the girth
	Tries int     // the number of accepted tries it is learned from
}

// A habit needs at least two accepted tries, since one may be a mistake, and a
// mean at least half a per cent off the usual ease (common practice, no source).
const (
	minTries = 2
	minHabit = 0.005
)

// Learn finds the habits in answers, which are given oldest first. The last
// accepted try of a zone counts for its mitt; the habit is the mean of the
// mitts. Answers up to the ID in unlearned, by zone, are left out.
func Learn(list []GivenAnswer, unlearned map[string]int64) []Habit {
	var habits []Habit
	for _, zone := range Zones() {
		byMitt, tries := map[int64]float64{}, 0
		for _, j := range list {
			by, accepted := j.Answer.Ease[zone]
			if !accepted || j.ID <= unlearned[string(zone)] {
				continue
			}
			byMitt[j.Mitt] = by
			tries++
		}
		sum := 0.0
		for _, by := range byMitt {
			sum += by
		}
		mean := sum / float64(max(len(byMitt), 1))
		if tries >= minTries && math.Abs(mean) >= minHabit {
			habits = append(habits, Habit{zone, mean, tries})
		}
	}
	return habits
}

// Words returns the habit as a sentence: "You wear thumbs 4 % tighter than the
// usual: learned from 3 accepted tries".
func (h Habit) Words() string {
	what := map[Zone]string{Cuff: "cuffs", Gusset: "gussets", Parting: "mitts where the thumb parts", Hand: "hands", Thumb: "thumbs"}[h.Zone]
	how := "looser"
	if h.By < 0 {
		how = "tighter"
	}
	return "You wear " + what + " " + percent(math.Abs(h.By)) + " " + how + " than the usual: learned from " + strconv.Itoa(h.Tries) + " accepted tries"
}

// Edits returns the edits that bring the habit into a sheet with its plan; none
// where the person has already decided on an ease or the mitt lacks the zone.
func (h Habit) Edits(s sheet.Sheet, p *mitt.Plan) []Edit {
	if h.Zone == Thumb {
		const path = "ease.thumb_girth_added"
		if s.Given(path) != "" || !p.Thumbed() {
			return nil
		}
		added := units.FromMM(p.Ease.ThumbAdded + h.By*p.Hand.Thumb.MM())
		return []Edit{{path, typedLength(max(added, units.Millimetre/10), s.Unit())}}
	}
	c := corrector{sheet: s, plan: p}
	path, _, _ := c.easeOf(h.Zone)
	if s.Given(path) != "" || !c.hasZone(h.Zone) {
		return nil
	}
	usual := map[Zone]float64{Cuff: p.Ease.Cuff, Gusset: p.Ease.Gusset, Parting: p.Ease.Palm, Hand: p.Ease.Hand}[h.Zone]
	return []Edit{{path, typedEase(usual + h.By)}}
}
