package tally

import (
	"cmp"
	"strings"
	"testing"
	"unicode/utf8"

	"github.com/stretchr/testify/require"

	"thenar/internal/written"
)

// Any text is read and worked without a fault of the program and within bounds. What is found
// stands in the text, and is the same again, with other line ends, and with an empty line
// behind it.
func FuzzWork(f *testing.F) {
	for _, dir := range []string{"corpus", "cases"} {
		for _, name := range files(f, dir) {
			_, text := caseOf(f, name)
			f.Add(text)
		}
	}
	f.Add("CO 9 sts.\nRnd 1: *K1; rep from * 99999 times.\nRep Rnd 1 99999 times.\nRnds 1–99999: ((k1, m1) 5000 times) 5000 times.")
	f.Fuzz(func(t *testing.T, text string) {
		read := written.Read(text)
		inText(t, text, read)
		found := newFindings()
		report := work(read, found)
		require.LessOrEqual(t, len(report.Findings), mostFindings+20) // one statement may find several

		require.Less(t, found.steps, 2*mostSteps)
		for i := range report.Findings {
			one := &report.Findings[i]
			require.NotEmpty(t, one.Message)
			require.Contains(t, one.Line(), one.Message)
			within(t, text, one.At, one.To)
			if one.Look != (written.Spot{}) {
				within(t, text, one.Look, one.Look)
			}
		}
		for _, s := range report.Sizes {
			_, ok := TraceOf(read, s.Name, s.Hand)
			require.True(t, ok)
		}
		require.Equal(t, report, worked(text), "once more")
		if lines := strings.Count(text, "\n"); lines+1 < written.MostLines && len(text)+lines < written.MostBytes {
			require.Equal(t, report, worked(text+"\n"), "with a line after it")
			require.Equal(t, report, worked(strings.ReplaceAll(text, "\n", "\r\n")), "with other line ends")
		}
	})
}

// inText fails unless the sentences of a text stand in it in their order, each with what it is
// made of.
func inText(t *testing.T, text string, read *written.Text) {
	last := written.Spot{Line: 1, Column: 1}
	for i := range read.Statements {
		s := &read.Statements[i]
		within(t, text, s.At, s.To)
		require.LessOrEqual(t, before(last, s.At), 0, "%v after %v", s.At, last)
		last = s.At
		for _, item := range s.Items {
			if item.At != (written.Spot{}) { // it is written
				within(t, text, item.At, item.To)
			}
		}
	}
}

// within fails unless something stands between two places of a text.
func within(t *testing.T, text string, from, to written.Spot) {
	lines := strings.Split(text, "\n")
	for _, spot := range []written.Spot{from, to} {
		if spot.Line < 1 || spot.Line > len(lines) || spot.Column < 1 || spot.Column > utf8.RuneCountInString(lines[spot.Line-1])+1 {
			t.Fatalf("%v is not in %d lines", spot, len(lines))
		}
	}
	require.LessOrEqual(t, before(from, to), 0, "%v to %v", from, to)
}

func before(a, b written.Spot) int {
	return cmp.Or(cmp.Compare(a.Line, b.Line), cmp.Compare(a.Column, b.Column))
}
