package paper

import (
	"testing"

	"thenar/internal/project"
)

// BenchmarkHandout lays out the handout of one mitt that is planned already.
func BenchmarkHandout(b *testing.B) {
	doc := project.Samples()[0]
	out, err := project.NewPlanner().Derive(doc, nil)
	if err != nil {
		b.Fatal(err)
	}
	b.ReportAllocs()
	for b.Loop() {
		Handout(Sheet{Doc: doc, Out: out}, Usual())
	}
}
