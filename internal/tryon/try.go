// Package tryon turns what is seen and felt when a half-knitted mitt is tried
// on into corrections of its sheet.
package tryon

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"time"
	"unicode/utf8"

	"thenar/internal/fault"
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

// Words is what the zone is called.
func (z Zone) Words() string {
	if z == Parting {
		return "where the thumb parts"
	}
	return string(z)
}

// Try is what was noted, as typed. Widths and heights are in the unit of the
// sheet; where base and top of the gusset sit is in mm, above the place (+) or
// below it (−). Feel is a step from −2, much too loose, to 2, much too tight.
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

// The most that a note, and the furthest that a gusset's end, may be.
const (
	LongestNote = 2000
	mostOff     = 100 * units.Millimetre
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
	seen.Base, seen.Top = offset("base", t.Base, &faults), offset("top", t.Top, &faults)
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
	if n := utf8.RuneCountInString(t.Note); n > LongestNote {
		faults.Add("note", "has %d characters; %d are the most", n, LongestNote)
	}
	return seen, faults.Err()
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
		p, ok := Nearest(Counting(list, n), near)
		if err != nil || !ok {
			faults.Add("count", "is %.20q; no round of this mitt has that many stitches: it has %s", t.Count, counts(list))
		}
		return p
	}
	n, err := strconv.Atoi(strings.TrimSpace(t.Round))
	p, ok := At(list, stitch.Part(t.Section), n)
	if err != nil || !ok {
		faults.Add("round", "is %.20q; %s", t.Round, roundsOf(list, stitch.Part(t.Section)))
	}
	return p
}

func counts(list []Place) string {
	low, high := math.MaxInt, 0
	for _, p := range list {
		low, high = min(low, p.After), max(high, p.After)
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
	pair := func(what, name, n, overName, over string) bool {
		if n == "" && over == "" {
			return false
		}
		if _, ok := sheet.Count(n); !ok {
			faults.Add(name, "is %.20q; write the %s that you counted, such as 24 or 24.5", n, what)
		}
		if _, err := units.Parse(over, u); err != nil {
			faults.Add(overName, "is %.20q; write the length over which the %s were counted", over, what)
		}
		return true
	}
	width := pair("stitches", "stitches", t.Stitches, "width", t.Width)
	if pair("rounds", "rounds", t.Rounds, "height", t.Height) && !width {
		faults.Add("stitches", "is missing; count stitches too: rounds alone make no swatch")
	}
}

func offset(name, text string, faults *fault.Fields) *units.Length {
	if strings.TrimSpace(text) == "" {
		return nil
	}
	l, err := sheet.ParseSigned(text, units.MM)
	if err != nil || l > mostOff || l < -mostOff {
		faults.Add(name, "is %.20q; write mm from -100 to 100: 4 is above its place on the hand, -4 below", text)
	}
	return &l
}
