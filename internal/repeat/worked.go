package repeat

import (
	"fmt"
	"maps"
	"regexp"
	"slices"
	"strconv"
	"strings"

	"thenar/internal/stitch"
)

// Worked has rounds that are knitted as they were worked, by part and by round from 1: each of
// their operations as the hand worked it. What is laid anew leaves them as they are.
type Worked map[stitch.Part]map[int][]Look

// Look is the yarn of an operation, and the stitch that took the place of the planned one;
// NoStitch: none did.
type Look struct {
	Yarn string
	Op   stitch.Op
}

var (
	workedLine = regexp.MustCompile(`^([a-z_]+) ([1-9][0-9]{0,3})(?:-([1-9][0-9]{0,3}))? ((?:[1-9][0-9]{0,3})?[a-h][kpts]?(?: (?:[1-9][0-9]{0,3})?[a-h][kpts]?)*)$`)
	workedRun  = regexp.MustCompile(`([1-9][0-9]*)?([a-h])([kpts])?`)
)

// mostWorked is the greatest number of operations of a round that is kept.
const mostWorked = 2_000

// ReadWorked reads rounds that are knitted, as Lines writes them. why says what is wrong, and
// is empty if nothing is.
func ReadWorked(lines []string) (w Worked, why string) {
	w = Worked{}
	for _, line := range lines {
		of := workedLine.FindStringSubmatch(line)
		if of == nil || !slices.Contains(stitch.Parts(), stitch.Part(of[1])) {
			return nil, "can't be read; write rounds such as gusset 3-4 5b a 2bp"
		}
		first, _ := strconv.Atoi(of[2]) // digits, as found
		last := first
		if of[3] != "" {
			last, _ = strconv.Atoi(of[3])
		}
		looks := readLooks(of[4])
		if looks == nil {
			return nil, fmt.Sprintf("has a round of more than %d stitches", mostWorked)
		}
		part := stitch.Part(of[1])
		for round := first; round <= last; round++ {
			w.Keep(part, round, looks)
		}
	}
	return w, ""
}

// readLooks reads the operations of a round; nil if they are too many.
func readLooks(text string) (looks []Look) {
	for _, run := range workedRun.FindAllStringSubmatch(text, -1) {
		n, look := 1, Look{Yarn: run[2]}
		if run[1] != "" {
			n, _ = strconv.Atoi(run[1])
		}
		if run[3] != "" {
			look.Op = textures[run[3][0]]
		}
		if len(looks)+n > mostWorked {
			return nil
		}
		looks = append(looks, slices.Repeat([]Look{look}, n)...)
	}
	return looks
}

// Keep keeps a round as it was worked.
func (w Worked) Keep(part stitch.Part, round int, looks []Look) {
	if w[part] == nil {
		w[part] = map[int][]Look{}
	}
	w[part][round] = looks
}

// Lines returns the rounds as they are kept: "gusset 3-4 5b a 2bp" are two rounds of eight
// stitches.
func (w Worked) Lines() []string {
	var lines []string
	for _, part := range stitch.Parts() {
		rounds := w[part]
		last := 0
		for _, first := range slices.Sorted(maps.Keys(rounds)) {
			if first <= last {
				continue
			}
			looks := rounds[first]
			for last = first; slices.Equal(rounds[last+1], looks); {
				last++
			}
			name := strconv.Itoa(first)
			if last > first {
				name += "-" + strconv.Itoa(last)
			}
			lines = append(lines, string(part)+" "+name+" "+runsOf(looks))
		}
	}
	return lines
}

// runsOf writes the operations of a round.
func runsOf(looks []Look) string {
	var runs []string
	for i := 0; i < len(looks); {
		n := 1
		for i+n < len(looks) && looks[i+n] == looks[i] {
			n++
		}
		run := looks[i].Yarn
		if letter, ok := Texture(looks[i].Op); ok && looks[i].Op != stitch.NoStitch {
			run += string(letter)
		}
		if n > 1 {
			run = strconv.Itoa(n) + run
		}
		runs = append(runs, run)
		i += n
	}
	return strings.Join(runs, " ")
}

// Yarns returns the yarns of the rounds, each once.
func (w Worked) Yarns() []string {
	seen := map[string]bool{}
	for _, rounds := range w {
		for _, looks := range rounds {
			for _, look := range looks {
				seen[look.Yarn] = true
			}
		}
	}
	return slices.Sorted(maps.Keys(seen))
}
