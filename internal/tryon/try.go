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

// Zone is a part of the mitt that feels tight or loose by itself.
type Zone string

// The zones, from the cast-on up.
const (
	Cuff    Zone = "cuff"
	Gusset  Zone = "gusset"
	Parting Zone = "parting" // where the thumb parts
	Hand    Zone = "hand"
	Thumb   Zone = "thumb"
)

// Zones lists them.
func Zones() []Zone { return []Zone{Cuff, Gusset, Parting, Hand, Thumb} }

// Felt are the zones that are knitted while the work is in a part; a gusset that
// is whole reaches to where the thumb parts.
func Felt(p stitch.Part, whole bool) []Zone {
	switch {
	case p == stitch.Cuff, p == stitch.CuffPlain:
		return []Zone{Cuff}
	case p == stitch.Gusset && whole:
		return []Zone{Cuff, Gusset, Parting}
	case p == stitch.Gusset:
		return []Zone{Cuff, Gusset}
	case p == stitch.Thumb:
		return Zones()
	}
	return []Zone{Cuff, Gusset, Parting, Hand}
}

// Words is what the zone is called.
func (z Zone) Words() string {
	if z == Parting {
		return "where the thumb parts"
	}
	return string(z)
}

// Try is what was noted, as typed. Widths and heights are in the unit of the
// sheet; where base and top of the gusset sit is in OffsetUnit, above the place
// (+) or below it (−). Feel is a step from −2, much too loose, to 2, much too tight.
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
	Note     string          `json:"note,omitempty"`
}

// Seen is a try that was read: where the work stands, and what was seen.
type Seen struct {
	Try
	Place Place
	Base  *units.Length // nil: not looked at
	Top   *units.Length
	Steps map[Zone]int
}

// The most characters of a note, and how far off its place an end of the
// gusset may sit.
const (
	LongestNote = 2000
	longestText = 60
	maxOff      = 40 * units.Millimetre
)

// Read checks a try of a mitt. Where only a count is given, the round is the
// one with this count that is nearest to the near-th. Faults name the fields.
func (t Try) Read(list []Place, near int, u units.Unit) (Seen, error) {
	var faults fault.Fields
	seen := Seen{Try: t, Steps: map[Zone]int{}}
	if _, err := time.Parse(time.DateOnly, t.Date); err != nil {
		faults.Add("date", "is %.20q; write a day as year-month-day, such as 2025-03-09", t.Date)
	}
	if t.Side != "right" && t.Side != "left" {
		faults.Add("side", "is neither right nor left; choose the hand that is on the needles")
	}
	seen.Place = t.place(list, near, &faults)
	t.fabric(u, &faults)
	seen.Base, seen.Top = offset("base", t.Base, u, &faults), offset("top", t.Top, u, &faults)
	for zone, text := range t.Feel {
		if text == "" {
			continue
		}
		n, err := strconv.Atoi(text)
		if err != nil || n < -2 || n > 2 {
			faults.Add("feel."+string(zone), "is %.20q; choose one of the five words", text)
			continue
		}
		seen.Steps[zone] = n
	}
	t.texts(&faults)
	return seen, faults.Err()
}

// texts refuses what can't be kept; what a number can't be is told elsewhere.
func (t Try) texts(faults *fault.Fields) {
	if why := plain.Lines(t.Note, LongestNote); why != "" {
		faults.Add("note", "%s", why)
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
		if why := plain.Line(f.text, longestText); why != "" {
			faults.Add(f.name, "%s", why)
		}
	}
}

// WithoutFabric is the try as if no fabric had been measured.
func (s Seen) WithoutFabric() Seen {
	s.Stitches, s.Width, s.Rounds, s.Height = "", "", "", ""
	return s
}

// place finds where the work stands.
func (t Try) place(list []Place, near int, faults *fault.Fields) Place {
	if strings.TrimSpace(t.Round) == "" && strings.TrimSpace(t.Count) != "" {
		n, err := strconv.Atoi(strings.TrimSpace(t.Count))
		part := stitch.Part(t.Section)
		p, ok := Nearest(Counting(list, part, n), near)
		if err != nil || !ok {
			faults.Add("count", "is %.20q; no round of the %s leaves that many stitches on the needles: it has %s", t.Count, part.Words(), counts(list, part))
		}
		return p
	}
	n, err := strconv.Atoi(strings.TrimSpace(t.Round))
	p, ok := At(list, stitch.Part(t.Section), n)
	if err != nil || !ok {
		faults.Add("round", "is %.20q; %s", t.Round, roundsOf(list, stitch.Part(t.Section)))
		return p
	}
	if count := strings.TrimSpace(t.Count); count != "" && count != strconv.Itoa(p.After) {
		faults.Add("count", "is %.20q, but after round %d of the %s %d stitches are on the needles; leave the round or the count empty", count, p.Round, p.Part.Words(), p.After)
	}
	return p
}

// NotKnitted refuses what is said of a zone that is not knitted yet. It is asked
// of a new try only: what was noted once stays said.
func (s Seen) NotKnitted(list []Place) error {
	var faults fault.Fields
	_, more := At(list, s.Place.Part, s.Place.Round+1)
	for _, zone := range Zones() {
		if _, said := s.Steps[zone]; said && s.Place.Nth > 0 && !slices.Contains(Felt(s.Place.Part, !more), zone) {
			faults.Add("feel."+string(zone), "is not knitted yet, with the work in the %s; leave it out", s.Place.Part.Words())
		}
	}
	return faults.Err()
}

// Silent tells whether nothing was seen, felt or written.
func (s Seen) Silent() bool {
	return len(s.Steps) == 0 && s.Base == nil && s.Top == nil && s.Stitches == "" && s.Note == ""
}

func counts(list []Place, part stitch.Part) string {
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

func roundsOf(list []Place, part stitch.Part) string {
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

// fabric checks what was measured on the fabric, so that its faults stand at
// the try's own fields.
func (t Try) fabric(u units.Unit, faults *fault.Fields) {
	before := len(*faults)
	width := t.pair(u, "stitches", t.Stitches, "width", t.Width, faults)
	if t.pair(u, "rounds", t.Rounds, "height", t.Height, faults) && !width {
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

// pair checks a count with its length; it tells whether either was given.
func (t Try) pair(u units.Unit, name, n, overName, over string, faults *fault.Fields) bool {
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

// OffsetUnit is the unit in which an end of the gusset is given: mm, or inches
// where the sheet is in inches.
func OffsetUnit(u units.Unit) units.Unit {
	if u == units.IN {
		return u
	}
	return units.MM
}

// offset reads how far an end of the gusset sits off its place; what is less
// than a tape tells is none.
func offset(name, text string, u units.Unit, faults *fault.Fields) *units.Length {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	u = OffsetUnit(u)
	l, err := sheet.ParseSigned(text, u)
	if err != nil || l > maxOff || l < -maxOff {
		most := maxOff.Format(u)
		faults.Add(name, "is %.20q; write %s from -%s to %s: above its place on the hand, or with a minus below", text, u, most, most)
	}
	if l < units.Millimetre/2 && l > -units.Millimetre/2 {
		l = 0
	}
	return &l
}
