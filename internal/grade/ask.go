package grade

import (
	"math"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/units"
)

// The bounds of what may be asked: gauges in stitches over 10 cm or 4 in, and
// rounds over stitches.
const (
	leastGauge, maxGauge = 4, 100
	leastRatio, maxRatio = 0.7, 2.5
	leastSize, maxSize   = 4, 13
	leastHand, maxHand   = 50.0, 400.0 // mm
)

// Read reads an ask from texts by their names: by (size or girth), from, to,
// step, gauge_from, gauge_to, gauge_step, rounds, keep (1, else empty). What is
// empty is as usual. Faults name the field, and what was right stands.
func Read(get func(name string) string, u units.Unit) (Ask, error) {
	a := Usual(u)
	a.Keep = get("keep") == "1"
	var faults fault.Fields
	if by := get("by"); by != "" && by != "size" && by != "girth" {
		faults.Add("by", "is %.20q; choose size or girth", by)
	}
	if get("by") == "girth" {
		mm := map[units.Unit][3]float64{units.CM: {16, 24, 1}, units.MM: {160, 240, 10}, units.IN: {6.5, 9.5, 0.5}}[u]
		a.BySize, a.From, a.To, a.Step = false, mm[0], mm[1], mm[2]
	}
	low, high := float64(leastSize), float64(maxSize)
	if !a.BySize {
		low, high = leastHand/u.Size().MM(), maxHand/u.Size().MM()
	}
	read := func(name string, to *float64, low, high float64) {
		text := strings.TrimSpace(get(name))
		if text == "" {
			return
		}
		v, err := strconv.ParseFloat(strings.Replace(text, ",", ".", 1), 64)
		if err != nil || !(v >= low && v <= high) {
			faults.Add(name, "is %.20q; write a number from %.4g to %.4g", text, low, high)
			return
		}
		*to = v
	}
	read("from", &a.From, low, high)
	read("to", &a.To, low, high)
	read("step", &a.Step, (high-low)/1000, high)
	read("gauge_from", &a.Gauge[0], leastGauge, maxGauge)
	read("gauge_to", &a.Gauge[1], leastGauge, maxGauge)
	read("gauge_step", &a.Gauge[2], 0.1, maxGauge)
	read("rounds", &a.Rounds, leastRatio, maxRatio)
	if len(faults) == 0 {
		a.checkRanges(&faults)
	}
	return a, faults.Err()
}

// checkRanges refuses ranges that run backwards or have too many steps.
func (a *Ask) checkRanges(faults *fault.Fields) {
	for _, r := range []struct {
		to, step      string
		from, end, by float64
		most          int
		what          string
	}{
		{"to", "step", a.From, a.To, a.Step, MaxHands, "hands"},
		{"gauge_to", "gauge_step", a.Gauge[0], a.Gauge[1], a.Gauge[2], MaxGauges, "gauges"},
	} {
		if r.end < r.from {
			faults.Add(r.to, "is %g, below %g where the table begins; write %g or more", r.end, r.from, r.from)
		} else if n := (r.end-r.from)/r.by + 1; n > float64(r.most)+1e-9 {
			faults.Add(r.step, "makes %.0f %s; %d are the most: write a wider step", n, r.what, r.most)
		}
	}
	half := func(size float64) bool { return 2*size == math.Trunc(2*size) }
	if a.BySize && !half(a.From) {
		faults.Add("from", "is %g, neither a whole nor a half size; write one such as 6 or 6.5", a.From)
	}
	if a.BySize && !half(a.Step) {
		faults.Add("step", "leads to sizes that are neither whole nor half; write 0.5 or 1")
	}
}
