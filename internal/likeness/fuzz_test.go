package likeness

import (
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"thenar/internal/mitt"
	"thenar/internal/tally"
	"thenar/internal/written"
)

// FuzzLike finds what any text is like: it never fails, and what it calls the same as a plan
// is planned to as many rounds as were counted.
func FuzzLike(f *testing.F) {
	for _, dir := range []string{"cases", "corpus"} {
		names, err := filepath.Glob(filepath.Join("..", "tally", "testdata", dir, "*.txt"))
		require.NoError(f, err)
		for _, name := range names {
			raw, err := os.ReadFile(name)
			require.NoError(f, err)
			_, text, _ := strings.Cut(string(raw), "\n---\n")
			f.Add(text)
		}
	}
	f.Fuzz(func(t *testing.T, text string) {
		read := written.Read(text)
		report := tally.Work(read)
		if len(report.Sizes) == 0 {
			return
		}
		size := &report.Sizes[len(report.Sizes)-1]
		trace, ok := tally.TraceOf(read, size.Name, size.Hand)
		if !ok {
			return
		}
		l := Of(text, &trace, size, sample)
		if !l.Same() {
			return
		}
		req, err := l.Sheet.Request()
		require.NoError(t, err)
		p, err := mitt.New().Plan(req)
		require.NoError(t, err)
		rounds := 0
		for _, s := range p.Mitt().Sections {
			rounds += len(s.Rounds)
		}
		require.Equal(t, l.Rounds, rounds, text)
	})
}
