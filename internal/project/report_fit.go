package project

import (
	"math"
	"strconv"

	"thenar/internal/fit"
	"thenar/internal/gauge"
)

// appendFit appends the fit rows, and ends the object. The rows are most of a
// plan's bytes; written by hand they take a tenth of the time of encoding/json.
// Every height is a whole number of rounds and every fabric a whole number of stitches,
// and most rows have the girths of the row below, so none of these is formatted twice.
// The wish and the ends of the 95 % interval are rounded to 0.1 mm.
func (t *fitTexts) appendFit(b []byte, rows []fit.Row, g *gauge.Gauge) []byte {
	half := g.StitchDoubt.Half()
	b = append(b, `,"fit":[`...)
	girths := [2]int{} // where in b the last row's girths stand
	for i := range rows {
		r := &rows[i]
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"section":"`...)
		b = append(b, r.Section...)
		b = append(b, `","round":`...)
		b = strconv.AppendInt(b, int64(r.Round), 10)
		b = t.whole.append(append(b, `,"height_mm":`...), r.Height, appendFloat)
		b = t.whole.append(append(b, `,"above_cast_on_mm":`...), r.AboveCastOn, appendFloat)
		from := len(b)
		if i > 0 && sameGirths(r, &rows[i-1]) {
			b = append(b, b[girths[0]:girths[1]]...)
		} else {
			b = t.appendGirths(b, r, half)
		}
		girths = [2]int{from, len(b)}
	}
	return append(b, `]}`...)
}

func sameGirths(a, b *fit.Row) bool {
	return a.Fabric == b.Fabric && a.Body == b.Body && a.Wanted == b.Wanted && a.Stretch == b.Stretch && a.Band == b.Band
}

// appendGirths appends the girths of a row, and ends it. half is half the 95 %
// interval as a share of the girth.
func (t *fitTexts) appendGirths(b []byte, r *fit.Row, half float64) []byte {
	b = t.whole.append(append(b, `,"fabric_mm":`...), r.Fabric, appendFloat)
	b = t.tenths.append(append(b, `,"fabric_low_mm":`...), r.Fabric*(1-half), appendTenths)
	b = t.tenths.append(append(b, `,"fabric_high_mm":`...), r.Fabric*(1+half), appendTenths)
	b = appendFloat(append(b, `,"body_mm":`...), r.Body)
	b = appendTenths(append(b, `,"wanted_mm":`...), r.Wanted)
	b = appendFloat(append(b, `,"stretch":`...), r.Stretch)
	b = append(b, `,"band":"`...)
	b = append(b, r.Band.Words()...)
	return append(b, `"}`...)
}

// fitTexts keeps what was written of fits: at one gauge the heights of rounds and the
// girths of fabric are few, and a class of students has few gauges.
type fitTexts struct{ whole, tenths floatTexts }

// floatTexts keeps the digits of numbers that were written lately, each in the one
// place that its bits choose.
type floatTexts [1 << floatBits]struct {
	of     uint64
	length int8 // 0: nothing is kept here
	digits [23]byte
}

const floatBits = 10

// append appends a number as write does.
func (t *floatTexts) append(b []byte, v float64, write func([]byte, float64) []byte) []byte {
	of := math.Float64bits(v)
	kept := &t[of*0x9e3779b97f4a7c15>>(64-floatBits)] // by the golden ratio (Knuth, The Art of Computer Programming 3, 6.4)
	if kept.of == of && kept.length > 0 {
		return append(b, kept.digits[:kept.length]...)
	}
	from := len(b)
	b = write(b, v)
	if text := b[from:]; len(text) <= len(kept.digits) {
		kept.of, kept.length = of, int8(copy(kept.digits[:], text))
	}
	return b
}

// appendFloat appends a number, or null if it is not finite. Very small and very large
// numbers get an exponent, as encoding/json gives them.
func appendFloat(b []byte, v float64) []byte {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return append(b, "null"...)
	}
	format := byte('f')
	if a := math.Abs(v); a != 0 && (a < 1e-6 || a >= 1e21) {
		format = 'e'
	}
	return strconv.AppendFloat(b, v, format, -1, 64)
}

func appendTenths(b []byte, v float64) []byte { return strconv.AppendFloat(b, v, 'f', 1, 64) }

// reportSummary is the fit of the whole mitt.
type reportSummary struct {
	Tolerance float64      `json:"tolerance_mm"`
	Bands     reportBands  `json:"stretch_bands"`
	Worst     float64      `json:"worst_mm"`
	WorstAt   reportAt     `json:"worst_at"`
	Mean      float64      `json:"mean_mm"`
	Half      float64      `json:"half_interval"`
	Chance    float64      `json:"chance"`
	Sites     []reportSite `json:"sites"`
	TooTight  int          `json:"rounds_too_tight"`
}

type reportBands struct {
	Loose float64 `json:"loose_below"`
	Snug  float64 `json:"snug_from"`
	Tight float64 `json:"tight_above"`
}

type reportAt struct {
	Section string `json:"section"`
	Round   int    `json:"round"`
}

type reportSite struct {
	Name   string  `json:"name"`
	Fabric float64 `json:"fabric_mm"`
	Low    float64 `json:"low_mm"`
	High   float64 `json:"high_mm"`
	Body   float64 `json:"body_mm"`
	Wanted float64 `json:"wanted_mm"`
	Chance float64 `json:"chance"`
}

func reportSummaryOf(s fit.Summary, e *extra) reportSummary {
	out := reportSummary{
		Tolerance: e.tolerance, Bands: reportBands(e.bands), Worst: s.Worst,
		WorstAt: reportAt{string(s.WorstAt.Section), s.WorstAt.Round}, Mean: s.Mean, Half: s.Half, Chance: s.Chance,
		TooTight: len(s.Tight), Sites: make([]reportSite, len(s.Sites)),
	}
	for i, at := range s.Sites {
		out.Sites[i] = reportSite{at.Name, at.Fabric, at.Low, at.High, at.Body, at.Wanted, at.Chance}
	}
	return out
}
