package project

import (
	"testing"
	"time"

	"thenar/internal/chart"
)

// BenchmarkMotifs is a chart of the whole hand, prepared and laid out, with three motifs
// laid on it, and how many times as long that takes as without them.
func BenchmarkMotifs(b *testing.B) {
	d, pl := squares(map[string]string{"gusset": "grow"}), NewPlanner()
	for key, text := range map[string]string{
		"[1].motif": "b.b/.b./b.b", "[1].over": "back", "[1].set": "centred_back", "[1].from": "5",
		"[2].motif": "..c..c/c..c..", "[2].over": "palm", "[2].set": "centred", "[2].cut": "true",
	} {
		d.Sheet["repeats"+key] = text
	}
	p, err := pl.Plan(d.Sheet)
	if err != nil {
		b.Fatal(err)
	}
	with := p.Charts(d, nil)
	without := with
	without.Repeats = nil
	took := func(s chart.Source) time.Duration {
		from := time.Now()
		s.Prepare().Grid(chart.Options{View: chart.TubeView, Layout: chart.Columns}).Page()
		return time.Since(from)
	}
	var laid, bare time.Duration
	b.ReportAllocs()
	for b.Loop() {
		laid += took(with)
		bare += took(without)
	}
	b.ReportMetric(float64(laid)/float64(bare), "×")
}
