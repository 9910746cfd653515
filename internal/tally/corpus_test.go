package tally

import (
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/assert"
	"github.com/stretchr/testify/require"

	"thenar/internal/written"
)

var kinds = map[string]Kind{
	"miscounted": Miscounted, "leftover": LeftOver, "short": Short, "unread": Unread,
	"forgotten": Forgotten, "misplaced": Misplaced, "misnumbered": Misnumbered, "listed": Listed,
}

// matches reports whether a finding is what a line of a case says.
func matches(f Finding, want []string) bool {
	line, _ := strconv.Atoi(want[0])
	if f.At.Line != line || f.Kind != kinds[want[1]] {
		return false
	}
	if len(want) > 3 && want[2] != "size" && (strconv.Itoa(f.Found) != want[2] || strconv.Itoa(f.Expected) != want[3]) {
		return false
	}
	return want[len(want)-2] != "size" || strings.Join(f.Sizes, " ") == want[len(want)-1]
}

// files lists the cases of a directory.
func files(t testing.TB, dir string) []string {
	list, err := filepath.Glob(filepath.Join("testdata", dir, "*.txt"))
	require.NoError(t, err)
	return list
}

// caseOf returns what must be found in a text, and the text.
func caseOf(t testing.TB, name string) (want []string, text string) {
	raw, err := os.ReadFile(name)
	require.NoError(t, err)
	head, text, ok := strings.Cut(string(raw), "\n---\n")
	require.True(t, ok, name)
	for _, line := range strings.Split(head, "\n") {
		if rest, ok := strings.CutPrefix(line, "> "); ok {
			want = append(want, rest)
		}
	}
	return want, text
}

// checked works a case, and returns what differs from what it says must be found.
func checked(want []string, report *Report) (differs []string) {
	left := append([]Finding{}, report.Findings...)
	for _, w := range want {
		words := strings.Fields(w)
		switch words[0] {
		case "sound":
			continue
		case "end":
			for i, n := range words[1:] {
				if got := report.Sizes[i].Last; strconv.Itoa(got) != strings.TrimSuffix(n, ",") {
					differs = append(differs, fmt.Sprintf("%s, and size %d ends with %d", w, i+1, got))
				}
			}
			continue
		}
		at := -1
		for i, f := range left {
			if matches(f, words) {
				at = i
			}
		}
		if at < 0 {
			differs = append(differs, w+" was not found")
			continue
		}
		left = append(left[:at], left[at+1:]...)
	}
	for _, f := range left {
		differs = append(differs, fmt.Sprintf("found besides: %+v", f))
	}
	return differs
}

// Short texts in the many manners in which patterns are written, each with what must be
// found in it and nothing else, and the count at its end.
func TestManyManners(t *testing.T) {
	testManners(t, "corpus", 109)
}

// The published cases, in the words of an ordinary pattern: what their sources state comes
// out, and the one that doesn't is found at its round. Sources: the line of each file names
// the case; the figures are those of the gathered facts on knitting (sections 5.2 and 5.3).
func TestPublishedCases(t *testing.T) {
	testManners(t, "cases", 9)
}

func testManners(t *testing.T, dir string, n int) {
	all := files(t, dir)
	require.Len(t, all, n)
	for _, name := range all {
		want, text := caseOf(t, name)
		assert.Empty(t, checked(want, Work(written.Read(text))), name)
	}
}
