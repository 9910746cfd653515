package grade

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"thenar/internal/fault"
	"thenar/internal/hand"
	"thenar/internal/units"
)

// The most hands and gauges that a table may have.
const (
	MaxHands  = 40
	MaxGauges = 24
)

// Request says which hands and gauges a table has.
type Request struct {
	Unit           units.Unit // of circumferences; gauges are over 4 in for inches, else over 10 cm
	BySize         bool       // hands are glove sizes; else circumferences in Unit
	From, To, Step float64    // of hands
	Gauge          [3]float64 // from, to, step, in stitches
	Rounds         float64    // rounds over stitches; 0: as in the design
	Keep           bool       // use the design's counts of one hand for every hand
}

// DefaultRequest returns the request for glove sizes 6 to 11 and gauges from 20
// to 32 stitches.
func DefaultRequest(u units.Unit) Request {
	return Request{Unit: u, BySize: true, From: hand.SmallestListed, To: float64(hand.LargestListed), Step: 1, Gauge: [3]float64{20, 32, 2}}
}

func (r *Request) hands() []Hand {
	var list []Hand
	for _, v := range steps(r.From, r.To, r.Step) {
		text := strconv.FormatFloat(v, 'f', -1, 64)
		if r.BySize {
			list = append(list, Hand{"size " + text, hand.FieldSize, text})
		} else {
			list = append(list, Hand{text + " " + string(r.Unit), hand.FieldCircumference, text})
		}
	}
	return list
}

// gauges returns the gauges in stitches over 10 cm.
func (r *Request) gauges() []float64 {
	list := steps(r.Gauge[0], r.Gauge[1], r.Gauge[2])
	if r.Unit == units.IN {
		for i := range list {
			list[i] /= 1.016
		}
	}
	return list
}

// steps returns from, from + step and so on, as far as end.
func steps(from, end, step float64) []float64 {
	n := int(math.Floor((end-from)/step + 1e-9))
	list := make([]float64, 0, n+1)
	for i := range n + 1 {
		list = append(list, math.Round((from+float64(i)*step)*1e6)/1e6)
	}
	return list
}

// Words returns the request in one line.
func (r *Request) Words() string {
	over := "10 cm"
	if r.Unit == units.IN {
		over = "4 in"
	}
	what := fmt.Sprintf("hands of %g to %g %s", r.From, r.To, r.Unit)
	if r.BySize {
		what = fmt.Sprintf("glove sizes %g to %g", r.From, r.To)
	}
	return fmt.Sprintf("%s, %g to %g stitches over %s", what, r.Gauge[0], r.Gauge[1], over)
}

// Rate returns the gauge of a block in words, first over the length that the
// request counts on: 10 cm, or 4 in, which are 101.6 mm. A tenth of a stitch is
// the finest that a swatch tells (common practice, no source).
func (r *Request) Rate(b Block) string {
	const inches = 1.016
	cm := [3]string{tenths(b.Stitches), tenths(b.Rounds), "10 cm"}
	in := [3]string{tenths(b.Stitches * inches), tenths(b.Rounds * inches), "4 in"}
	if r.Unit == units.IN {
		cm, in = in, cm
	}
	return fmt.Sprintf("%s stitches and %s rounds over %s (%s and %s over %s)", cm[0], cm[1], cm[2], in[0], in[1], in[2])
}

// tenths returns a number to one decimal, a whole number without.
func tenths(v float64) string { return strconv.FormatFloat(math.Round(v*10)/10, 'f', -1, 64) }

// The bounds of a request.
const (
	minGauge, maxGauge = 4, 100      // stitches over 10 cm or 4 in
	minRatio, maxRatio = 0.7, 2.5    // rounds over stitches
	minSize, maxSize   = 4, 13       // glove sizes
	minHand, maxHand   = 50.0, 400.0 // mm
)

// Read reads a request from named texts: by (size or girth), from, to, step,
// gauge_from, gauge_to, gauge_step, rounds, keep (1 or empty). An empty text
// means the default. Faults name the field; the request then has the valid
// values.
func Read(get func(name string) string, u units.Unit) (Request, error) {
	r := DefaultRequest(u)
	r.Keep = get("keep") == "1"
	var faults fault.Fields
	if by := get("by"); by != "" && by != "size" && by != "girth" {
		faults.Add("by", "is %.20q; choose size or girth", by)
	}
	if get("by") == "girth" {
		girths := map[units.Unit][3]float64{units.CM: {16, 24, 1}, units.MM: {160, 240, 10}, units.IN: {6.5, 9.5, 0.5}}[u]
		r.BySize, r.From, r.To, r.Step = false, girths[0], girths[1], girths[2]
	}
	low, high := float64(minSize), float64(maxSize)
	if !r.BySize {
		low, high = minHand/u.Size().MM(), maxHand/u.Size().MM()
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
	read("from", &r.From, low, high)
	read("to", &r.To, low, high)
	read("step", &r.Step, (high-low)/1000, high)
	read("gauge_from", &r.Gauge[0], minGauge, maxGauge)
	read("gauge_to", &r.Gauge[1], minGauge, maxGauge)
	read("gauge_step", &r.Gauge[2], 0.1, maxGauge)
	read("rounds", &r.Rounds, minRatio, maxRatio)
	if len(faults) == 0 {
		r.checkRanges(&faults)
	}
	return r, faults.Err()
}

// checkRanges refuses ranges that run backwards or have too many steps, and sizes
// that don't exist.
func (r *Request) checkRanges(faults *fault.Fields) {
	for _, c := range []struct {
		to, step      string
		from, end, by float64
		limit         int
		what          string
	}{
		{"to", "step", r.From, r.To, r.Step, MaxHands, "hands"},
		{"gauge_to", "gauge_step", r.Gauge[0], r.Gauge[1], r.Gauge[2], MaxGauges, "gauges"},
	} {
		if c.end < c.from {
			faults.Add(c.to, "is %g, below %g where the table begins; write %g or more", c.end, c.from, c.from)
		} else if n := (c.end-c.from)/c.by + 1; n > float64(c.limit)+1e-9 {
			faults.Add(c.step, "makes %.0f %s; %d are the most: write a wider step", n, c.what, c.limit)
		}
	}
	isHalf := func(size float64) bool { return 2*size == math.Trunc(2*size) }
	if r.BySize && !isHalf(r.From) {
		faults.Add("from", "is %g, neither a whole nor a half size; write one such as 6 or 6.5", r.From)
	}
	if r.BySize && !isHalf(r.Step) {
		faults.Add("step", "leads to sizes that are neither whole nor half; write 0.5 or 1")
	}
}
