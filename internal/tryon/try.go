// Package tryon turns what is seen and felt when a half-knitted mitt is tried
// on into corrections of its sheet.
package tryon

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"time"

	"thenar/internal/fault"
	"thenar/internal/gauge"
	"thenar/internal/plain"
	"thenar/internal/sheet"
	"thenar/internal/stitch"
	"thenar/internal/units"
)

// Try is a note of one trying-on, as typed. Width and Height are in the sheet's
// unit. Base and Top are how far the ends of the gusset sit above (+) or below
// (−) their places on the hand, in OffsetUnit. A step in Feel runs from −2, much
// too loose, to 2, much too tight.
type Try struct {
	Key      string          `json:"key"`
	Date     string          `json:"date"`
	Side     string          `json:"side"`
	Section  string          `json:"section"`
	Round    string          `json:"round"`
	Count    string          `json:"count,omitempty"` // stitches on the needles, where the round is not known
	Stitches string          `json:"stitches,omitempty"`
	Width    string          `json:"width,omitempty"`
	Rounds   string          `json:"rounds,omitempty"`
	Height   string          `json:"height,omitempty"`
	Base     string          `json:"base,omitempty"`
	Top      string          `json:"top,omitempty"`
	Feel     map[Zone]string `json:"feel,omitempty"`
	Ends     map[Zone]string `json:"ends,omitempty"` // of a glove, how much too long (+) or too short (−) a zone is
	Note     string          `json:"note,omitempty"`

	// The side on which Base, Top and Ends are, as a form sends it; Sided takes it
	// into their signs.
	BaseWay  Way          `json:"-"`
	TopWay   Way          `json:"-"`
	EndsWays map[Zone]Way `json:"-"`
}

// Reading is a try whose typed texts have been read and found valid.
type Reading struct {
	Try
	Place Place                 // where the work stands
	Base  *units.Length         // nil: not looked at
	Top   *units.Length         // nil: not looked at
	Steps map[Zone]int          // the felt steps, −2 to 2; a zone that nothing is said of is absent
	Ends  map[Zone]units.Length // how much too long a zone is; one that nothing is said of is absent
}

// Bounds of what can be typed: characters of the note and of any other text,
// and how far an end of the gusset may sit off its place.
const (
	maxNote   = 2000
	maxText   = 60
	maxOffset = 40 * units.Millimetre
)

// Read reads and checks a try of the mitt with these places. Where a count is
// given and no round, it takes the round with that count nearest to the near-th.
// The error is fault.Fields by the names of the form.
func (t Try) Read(list []Place, near int, u units.Unit) (Reading, error) {
	var faults fault.Fields
	r := Reading{Try: t, Steps: map[Zone]int{}, Ends: map[Zone]units.Length{}}
	if _, err := time.Parse(time.DateOnly, t.Date); err != nil {
		faults.Add("date", "is %.20q; write a day as year-month-day, such as 2025-03-09", t.Date)
	}
	if t.Side != "right" && t.Side != "left" {
		faults.Add("side", "is neither right nor left; choose the hand that is on the needles")
	}
	r.Place = t.place(list, near, &faults)
	t.checkFabric(u, &faults)
	r.Base, r.Top = parseOffset("base", t.Base, u, &faults), parseOffset("top", t.Top, u, &faults)
	for zone, text := range t.Feel {
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < -2 || n > 2 {
			faults.Add("feel."+string(zone), "is %.20q; choose one of the five words", text)
			continue
		}
		r.Steps[zone] = n
	}
	for _, zone := range Measured() {
		if l := parseOffset(zone.endField(), t.Ends[zone], u, &faults); l != nil {
			r.Ends[zone] = *l
		}
	}
	t.checkTexts(&faults)
	return r, faults.Err()
}

// checkTexts refuses texts that are too long or hold control characters.
// Whether a number is valid is checked where it is read.
func (t Try) checkTexts(faults *fault.Fields) {
	if why := plain.Lines(t.Note, maxNote); why != "" {
		faults.Add("note", "%s", why)
	}
	for zone, text := range t.Ends {
		if why := plain.Line(text, maxText); why != "" {
			faults.Add(zone.endField(), "%s", why)
		}
	}
	for _, f := range []struct{ name, text string }{
		{"date", t.Date},
		{"section", t.Section},
		{"round", t.Round},
		{"count", t.Count},
		{"stitches", t.Stitches},
		{"width", t.Width},
		{"rounds", t.Rounds},
		{"height", t.Height},
		{"base", t.Base},
		{"top", t.Top},
	} {
		if why := plain.Line(f.text, maxText); why != "" {
			faults.Add(f.name, "%s", why)
		}
	}
}

// WithoutFabric returns the try as if no fabric had been measured.
func (r Reading) WithoutFabric() Reading {
	r.Stitches, r.Width, r.Rounds, r.Height = "", "", "", ""
	return r
}

// place finds where the work stands, by the round or else by the count.
func (t Try) place(list []Place, near int, faults *fault.Fields) Place {
	if strings.TrimSpace(t.Round) == "" && strings.TrimSpace(t.Count) != "" {
		n, err := strconv.Atoi(strings.TrimSpace(t.Count))
		part := stitch.Part(t.Section)
		p, ok := Nearest(WithCount(list, part, n), near)
		if err != nil || !ok {
			faults.Add("count", "is %.20q; no round of the %s leaves that many: it has %s", t.Count, part.Words(), countRange(list, part))
		}
		return p
	}
	n, err := strconv.Atoi(strings.TrimSpace(t.Round))
	p, ok := At(list, stitch.Part(t.Section), n)
	if err != nil || !ok {
		faults.Add("round", "is %.20q; %s", t.Round, roundRange(list, stitch.Part(t.Section)))
		return p
	}
	if count := strings.TrimSpace(t.Count); count != "" && count != strconv.Itoa(p.After) {
		faults.Add("count", "is %.20q, but round %d of the %s leaves %d; leave the round or the count empty", count, p.Round, p.Part.Words(), p.After)
	}
	return p
}

// CheckZones refuses a step for a zone that is not knitted yet. Only a new try
// is checked: the mitt's plan may change after a try was kept.
func (r Reading) CheckZones(list []Place) error {
	var faults fault.Fields
	_, more := At(list, r.Place.Part, r.Place.Round+1)
	knitted := KnittedZones(r.Place.Part, !more, r.Place.Down)
	check := func(field string, zone Zone) {
		if _, has := At(list, stitch.Part(zone), 1); zone.Fingered() && !has {
			faults.Add(field, "is no part of this mitt; leave it out")
		} else if r.Place.Nth > 0 && !slices.Contains(knitted, zone) {
			faults.Add(field, "is not knitted yet, with the work in the %s; leave it out", r.Place.Part.Words())
		}
	}
	for _, zone := range Zones() {
		if _, said := r.Steps[zone]; said {
			check("feel."+string(zone), zone)
		}
		if _, said := r.Ends[zone]; said {
			check(zone.endField(), zone)
		}
	}
	return faults.Err()
}

// IsEmpty reports whether nothing was seen, felt, measured or written.
func (r Reading) IsEmpty() bool {
	return len(r.Steps) == 0 && len(r.Ends) == 0 && r.Base == nil && r.Top == nil && r.Stitches == "" && r.Note == ""
}

// countRange says which counts the rounds of a part leave on the needles.
func countRange(list []Place, part stitch.Part) string {
	low, high := math.MaxInt, 0
	for _, p := range list {
		if p.Part == part {
			low, high = min(low, p.After), max(high, p.After)
		}
	}
	if high == 0 {
		return "none of this mitt's parts; choose another"
	}
	return fmt.Sprintf("%d to %d", low, high)
}

// roundRange says which rounds of a part can be written.
func roundRange(list []Place, part stitch.Part) string {
	n := 0
	for _, p := range list {
		if p.Part == part {
			n = p.Round
		}
	}
	if n == 0 {
		return "choose a part that this mitt has"
	}
	return fmt.Sprintf("write the last round that is knitted, 1 to %d, or count the stitches on the needles", n)
}

// checkFabric checks the measured fabric as the swatch it will become, and names
// its faults by the fields of the try.
func (t Try) checkFabric(u units.Unit, faults *fault.Fields) {
	before := len(*faults)
	width := t.checkPair(u, "stitches", t.Stitches, "width", t.Width, faults)
	if t.checkPair(u, "rounds", t.Rounds, "height", t.Height, faults) && !width {
		faults.Add("stitches", "is missing; count stitches too: rounds alone make no swatch")
	}
	if !width || len(*faults) > before {
		return
	}
	s := gauge.Swatch{OnNeedles: true, CountedTo: 0.5}
	s.Stitches, _ = sheet.Count(t.Stitches)
	s.Width, _ = units.Parse(t.Width, u)
	s.Rounds, _ = sheet.Count(t.Rounds)
	s.Height, _ = units.Parse(t.Height, u)
	_, err := gauge.Of([]gauge.Swatch{s}, gauge.HandVariation, "")
	var found fault.Fields
	if errors.As(err, &found) {
		for _, f := range found {
			faults.Add(strings.TrimPrefix(f.Path, "[0]."), "%s", f.Message)
		}
	}
}

// checkPair checks a count and the length it was counted over. It reports
// whether either was given.
func (t Try) checkPair(u units.Unit, name, n, overName, over string, faults *fault.Fields) bool {
	if n == "" && over == "" {
		return false
	}
	if _, ok := sheet.Count(n); !ok {
		faults.Add(name, "is %.20q; write the %s that you counted, such as 24 or 24.5", n, name)
	}
	if _, err := units.Parse(over, u); err != nil {
		faults.Add(overName, "is %.20q; write the length over which the %s were counted", over, name)
	}
	return true
}

// OffsetUnit returns the unit in which Base and Top are typed: inches for a
// sheet in inches, else mm.
func OffsetUnit(u units.Unit) units.Unit {
	if u == units.IN {
		return u
	}
	return units.MM
}

// parseOffset reads how far an end of the gusset sits off its place; nil for an
// empty text. Less than half a millimetre, which a tape can't show, is 0.
func parseOffset(name, text string, u units.Unit, faults *fault.Fields) *units.Length {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	u = OffsetUnit(u)
	l, err := sheet.ParseSigned(text, u)
	if err != nil || l > maxOffset || l < -maxOffset {
		most := maxOffset.Format(u)
		faults.Add(name, "is %.20q; write how far it is off, at most %s %s, and choose too high or too low", strings.TrimLeft(text, signs), most, u)
	}
	if l < units.Millimetre/2 && l > -units.Millimetre/2 {
		l = 0
	}
	return &l
}
