package paper

import (
	"testing"

	"thenar/internal/makeup"
	"thenar/internal/project"
)

// printedWays are ways in which the sample mitt is printed.
func printedWays() map[string]Options {
	ways := map[string]Options{}
	for name, set := range map[string]func(*Options){
		"ordinary": func(*Options) {}, "double": func(o *Options) { o.Double = true },
		"large": func(o *Options) { o.Large = true }, "sideways": func(o *Options) { o.Sideways = true },
	} {
		o := Usual()
		set(&o)
		ways[name] = o
	}
	return ways
}

// sampleSheet is the sample mitt, planned.
func sampleSheet(tb testing.TB) Sheet {
	tb.Helper()
	doc := project.Samples()[0]
	out, err := project.NewPlanner().Derive(doc, nil)
	if err != nil {
		tb.Fatal(err)
	}
	return Sheet{Doc: doc, Out: out}
}

// BenchmarkHandout lays out the handout of one mitt that is planned already, and says
// what a page of it takes.
func BenchmarkHandout(b *testing.B) {
	s := sampleSheet(b)
	for name, o := range printedWays() {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			pages := 0
			for b.Loop() {
				pages = len(Handout(s, o))
			}
			perPage(b, pages)
		})
	}
}

// BenchmarkPieces makes up the pages of a handout from its pieces as they are measured,
// and says what a page takes.
func BenchmarkPieces(b *testing.B) {
	s := sampleSheet(b)
	for name, o := range printedWays() {
		b.Run(name, func(b *testing.B) {
			h := newHandout(&s, o)
			blocks := h.blocks()
			pieces := make([]makeup.Piece, len(blocks))
			for i := range blocks {
				pieces[i] = h.pieceOf(&blocks[i])
			}
			pages := 0
			for b.Loop() {
				layout, err := makeup.Lay(pieces, h.area())
				if err != nil {
					b.Fatal(err)
				}
				pages = len(layout.Pages)
			}
			perPage(b, pages)
		})
	}
}

// perPage reports what one of so many pages took.
func perPage(b *testing.B, pages int) {
	b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(pages)/1e6, "ms/page")
	b.ReportMetric(float64(pages), "pages")
}
