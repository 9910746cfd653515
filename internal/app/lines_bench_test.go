package app

import (
	"bytes"
	"context"
	"fmt"
	"io"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// BenchmarkLines plans a thousand lines, in turn whole and without their fit, so that the
// cost of a fit is told as a share that no other load of the machine changes much.
func BenchmarkLines(b *testing.B) {
	for _, kind := range []string{"fingerless", "glove"} {
		b.Run(kind, func(b *testing.B) {
			const lines = 1_000
			var in bytes.Buffer
			for i := range lines {
				fmt.Fprintf(&in, `{"kind":%q,"unit":"mm","gauge":{"swatches":[{"stitches":%d,"width":100,"rounds":%d,"height":100}]},"hand":{"hand_circumference":%d}}`+"\n",
					kind, 22+i%3*5, 30+i%5*3, 165+i%60)
			}
			var took [2]time.Duration
			for b.Loop() {
				for i, brief := range []bool{false, true} {
					begun := time.Now()
					require.NoError(b, PlanLines(context.Background(), bytes.NewReader(in.Bytes()), io.Discard, brief))
					took[i] += time.Since(begun)
				}
			}
			b.ReportMetric(lines*float64(b.N)/took[0].Seconds(), "plans/s")
			b.ReportMetric(took[0].Seconds()/took[1].Seconds(), "whole/brief")
			b.ReportMetric(0, "ns/op") // it is of two runs that differ
		})
	}
}
