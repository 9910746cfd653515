package written

import (
	"slices"

	"github.com/agnivade/levenshtein"
)

// vocabulary is the words that a slip of spelling is compared with.
var vocabulary = func() (list []string) {
	for name := range signs {
		list = append(list, name)
	}
	for word := range roundWords {
		list = append(list, word)
	}
	list = append(list, "repeat", "rep", "marker", "knit", "purl", "slip", "cast", "bind", "pm", "sm", "holder", "stitches", "sts", "around", "together", "tog", "k1", "p1", "k2", "p2")
	slices.Sort(list)
	return slices.Compact(list)
}()

// Guess returns what a word, in small letters, was probably meant to be, or nothing: the
// nearest word of the vocabulary, if few letters are other.
func Guess(low string) (meant string) {
	if len(low) < 3 || len(low) > 20 {
		return ""
	}
	best := 3
	if len(low) < 4 {
		best = 2
	}
	for _, word := range vocabulary {
		if abs(len(word)-len(low)) >= best || len(word) < 2 {
			continue
		}
		d := levenshtein.ComputeDistance(low, word)
		if d == 2 && len(low) < 5 && (low[0] != word[0] || len(word) != len(low)) {
			continue
		}
		if d == 2 && exchanged(low, word) {
			d = 1
		}
		if d < best {
			best, meant = d, word
		}
	}
	return meant
}

// exchanged reports whether two words differ in two neighbouring letters that changed places.
func exchanged(a, b string) bool {
	if len(a) != len(b) {
		return false
	}
	for i := 0; i+1 < len(a); i++ {
		if a[i] != b[i] {
			return a[i] == b[i+1] && a[i+1] == b[i] && a[i+2:] == b[i+2:]
		}
	}
	return false
}

func abs(n int) int { return max(n, -n) }
