package project

import (
	"fmt"
	"testing"

	"thenar/internal/chart"
	"thenar/internal/sheet"
)

// BenchmarkReport is one line of plan -lines: parse, plan, fit, print.
func BenchmarkReport(b *testing.B) {
	for _, kind := range []string{"fingerless", "mitten", "glove"} {
		b.Run(kind, func(b *testing.B) { reportLines(b, kind) })
	}
}

func reportLines(b *testing.B, kind string) {
	var lines [][]byte
	for _, g := range []int{18, 22, 28, 32, 36} {
		for h := 170; h < 230; h += 7 {
			lines = append(lines, fmt.Appendf(nil, `{"kind":%q,"unit":"mm","gauge":{"swatches":[{"stitches":%d,"width":100,"worked":"round","washed":true}]},"hand":{"hand_circumference":%d,"hand_length":%d}}`, kind, g, h, h-5))
		}
	}
	pl := NewPlanner()
	var out []byte
	i := 0
	b.ReportAllocs()
	for b.Loop() {
		s, err := sheet.Parse(lines[i%len(lines)])
		if err != nil {
			b.Fatal(err)
		}
		p, err := pl.Plan(s)
		if err != nil {
			b.Fatal(err)
		}
		if out, err = pl.AppendReport(out[:0], p, false); err != nil {
			b.Fatal(err)
		}
		i++
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "plans/s")
}

// BenchmarkCharts is all that follows from a sheet, with every view of its chart in both
// layouts.
func BenchmarkCharts(b *testing.B) {
	pl, samples := NewPlanner(), Samples()
	b.ReportAllocs()
	for i := 0; b.Loop(); i++ {
		d := samples[i%len(samples)]
		d.Side = []Side{Right, Left}[i%2]
		out, err := pl.Derive(d, nil)
		if err != nil {
			b.Fatal(err)
		}
		for _, view := range out.Charts.Views() {
			out.Charts.Grid(chart.Options{View: view, Layout: chart.Wedge})
			out.Charts.Grid(chart.Options{View: view, Layout: chart.Columns})
		}
	}
}
