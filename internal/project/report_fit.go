package project

import (
	"math"
	"strconv"

	"thenar/internal/fit"
)

// fitBytes is a little more than a row of the fit takes.
const fitBytes = 280

// appendFit ends an object with the fit rows. They are most of a plan's
// bytes; written by hand they take a sixth of the time of encoding/json. The
// wish and the ends of the 95 % interval are rounded to 0.1 mm.
func appendFit(b []byte, rows []fit.Row, half float64) []byte {
	b = append(b, `,"fit":[`...)
	for i, r := range rows {
		if i > 0 {
			b = append(b, ',')
		}
		b = append(b, `{"section":"`...)
		b = append(b, r.Section...)
		b = append(b, `","round":`...)
		b = strconv.AppendInt(b, int64(r.Round), 10)
		b = appendFloat(b, `,"height_mm":`, r.Height)
		b = appendFloat(b, `,"above_cast_on_mm":`, r.AboveCastOn)
		b = appendFloat(b, `,"fabric_mm":`, r.Fabric)
		b = strconv.AppendFloat(append(b, `,"fabric_low_mm":`...), r.Fabric*(1-half), 'f', 1, 64)
		b = strconv.AppendFloat(append(b, `,"fabric_high_mm":`...), r.Fabric*(1+half), 'f', 1, 64)
		b = appendFloat(b, `,"body_mm":`, r.Body)
		b = strconv.AppendFloat(append(b, `,"wanted_mm":`...), r.Wanted, 'f', 1, 64)
		b = appendFloat(b, `,"stretch":`, r.Stretch)
		b = append(b, `,"band":"`...)
		b = append(b, r.Band.Words()...)
		b = append(b, `"}`...)
	}
	return append(b, `]}`...)
}

// appendFloat writes a key and a finite number; JSON takes the exponent form
// that very small numbers get.
func appendFloat(b []byte, key string, v float64) []byte {
	b = append(b, key...)
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return append(b, "null"...)
	}
	format := byte('f')
	if a := math.Abs(v); a != 0 && (a < 1e-6 || a >= 1e21) {
		format = 'e'
	}
	return strconv.AppendFloat(b, v, format, -1, 64)
}

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
