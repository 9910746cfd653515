package tryon

import (
	"math"
	"strconv"

	"thenar/internal/mitt"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Answer is what the person made of a try.
type Answer struct {
	Accepted []string         `json:"accepted"` // keys of corrections
	Declined []string         `json:"declined"`
	Ripped   int              `json:"ripped"` // rounds that are ripped back
	Section  stitch.Part      `json:"section"`
	Round    int              `json:"round"`           // where the mitt goes on from
	Line     string           `json:"line"`            // how the rest differs
	Aside    bool             `json:"aside,omitempty"` // it was noted by mistake
	Ease     map[Zone]float64 `json:"ease"`            // of accepted zones: ease less the usual, as a share of the girth
}

// Judged is an answer with where it was given.
type Judged struct {
	Verdict, Mitt int64
	Answer        Answer
}

// Habit is what the tries tell of how the person wears a zone.
type Habit struct {
	Zone  Zone
	By    float64 // ease less the usual, as a share of the girth
	Tries int     // accepted tries that tell so
}

// fewestTries is how many accepted tries make a habit (common practice, no
// source): one may be a mistake.
const fewestTries = 2

// Learn finds the habits in answers, the oldest first. Of each mitt the last
// accepted try of a zone counts, and the mean of the mitts is the habit. What
// was unlearned up to a verdict tells nothing.
func Learn(list []Judged, unlearned map[string]int64) []Habit {
	var habits []Habit
	for _, zone := range Zones() {
		byMitt, tries := map[int64]float64{}, 0
		for _, j := range list {
			by, accepted := j.Answer.Ease[zone]
			if !accepted || j.Verdict <= unlearned[string(zone)] {
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
		if tries >= fewestTries && math.Abs(mean) >= 0.005 {
			habits = append(habits, Habit{zone, mean, tries})
		}
	}
	return habits
}

// Words tells a habit: "You wear thumbs 4 % tighter than the usual".
func (h Habit) Words() string {
	what := map[Zone]string{Cuff: "cuffs", Gusset: "gussets", Parting: "mitts where the thumb parts", Hand: "hands", Thumb: "thumbs"}[h.Zone]
	how := "looser"
	if h.By < 0 {
		how = "tighter"
	}
	return "You wear " + what + " " + percent(math.Abs(h.By)) + " " + how + " than the usual: learned from " + strconv.Itoa(h.Tries) + " accepted tries"
}

// Edits bring a habit into a sheet whose plan has the usual ease there; none
// where the person decided on an ease already.
func (h Habit) Edits(s sheet.Sheet, p *mitt.Plan) []Edit {
	if h.Zone == Thumb {
		const path = "ease.thumb_girth_added"
		if s.Given(path) != "" || !p.Thumbed() {
			return nil
		}
		added := units.FromMM(p.Ease.ThumbAdded + h.By*p.Hand.Thumb.MM())
		return []Edit{{path, tidy(max(added, units.Millimetre/10), s.Unit())}}
	}
	c := corrector{sheet: s, plan: p}
	path, _, _ := c.easeOf(h.Zone)
	if s.Given(path) != "" || !c.has(h.Zone) {
		return nil
	}
	usual := map[Zone]float64{Cuff: p.Ease.Cuff, Gusset: p.Ease.Gusset, Parting: p.Ease.Palm, Hand: p.Ease.Hand}[h.Zone]
	return []Edit{{path, typedEase(usual + h.By)}}
}
