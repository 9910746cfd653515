package project

import (
	"cmp"
	"fmt"
	"regexp"
	"slices"
	"strings"

	"thenar/internal/chart"
	"thenar/internal/repeat"
	"thenar/internal/stitch"
	"thenar/internal/words"
)

// unspoken matches what the name of a yarn can't have where it stands in a round.
var unspoken = regexp.MustCompile(`[^\pL\pN' -]|^\d|\b(times|twice|once|catching|every|and|in|to|of|with|for|tbl)\b`)

// spoken returns what a yarn is called in the rounds: its name in small letters, or its letter if that
// would be misread there, or if another yarn has the same.
func spoken(y chart.Yarn, all chart.Palette) string {
	name := strings.ToLower(strings.TrimSpace(y.Name))
	again := slices.ContainsFunc(all, func(other chart.Yarn) bool {
		return other.ID != y.ID && strings.EqualFold(strings.TrimSpace(other.Name), name)
	})
	main := y.ID != chart.ID(0) && strings.EqualFold(name, chart.Yarns[0].Name)
	if name == "" || again || main || unspoken.MatchString(name) || slices.ContainsFunc(strings.Fields(name), isStitch) {
		return "yarn " + strings.ToUpper(y.ID)
	}
	return name
}

// stitches matches the letters that a round tells its stitches with: "k", "p3", "sl1".
var stitches = regexp.MustCompile(`^(k|p|sl|knit|purl)\d*$`)

// isStitch reports whether a word in small letters stands for a stitch.
func isStitch(word string) bool {
	if stitches.MatchString(word) {
		return true
	}
	for op := stitch.NoStitch; op.Valid(); op++ {
		if abbr := op.Abbr(); abbr != "" && strings.EqualFold(abbr, word) {
			return true
		}
	}
	return false
}

// misnamed tells of the yarns whose own name can't stand in a round.
func misnamed(s chart.Source) (list []reportWarning) {
	for i := range s.Palette {
		y := &s.Palette[i]
		if called := spoken(*y, s.Palette); y.Name != "" && !strings.EqualFold(called, strings.TrimSpace(y.Name)) {
			list = append(list, reportWarning{"yarn_renamed", fmt.Sprintf("“%s” is called %s in the words: in a round its name could be misread.", y.Name, called)})
		}
	}
	return list
}

// dyed returns in what the rounds of a mitt are worked, of which used has the shares; nil if
// all is in the main colour.
func dyed(s chart.Source, used map[string]chart.Share) *words.Dyed {
	if _, main := used[chart.ID(0)]; len(used) == 0 || len(used) == 1 && main {
		return nil
	}
	d := &words.Dyed{Every: s.Rules.Float}
	names := map[string]string{}
	for i := range chart.MaxYarns {
		id := chart.ID(i)
		names[id] = spoken(s.Palette.Or(id), s.Palette)
		if _, is := used[id]; is || i == 0 {
			d.Yarns = append(d.Yarns, names[id])
		}
	}
	for _, one := range s.Repeats {
		d.Motifs = append(d.Motifs, rowsOf(one, s, names))
	}
	catches := s.Catches()
	d.Round = func(part stitch.Part, round int) *words.RoundDyed {
		cells := s.Dyed(part, round)
		if cells == nil {
			return nil
		}
		n := len(cells)
		of := &words.RoundDyed{Yarns: make([]string, n), Motif: make([]int, n), Row: make([]int, n)}
		for i, c := range cells {
			of.Yarns[i] = names[c.Yarn]
			if c.Laid > 0 {
				of.Motif[i], of.Row[i] = int(c.Laid), int(c.Up)+1
			}
		}
		for _, c := range catches[part][round] {
			of.Catch = append(of.Catch, names[c.Yarn])
		}
		return of
	}
	return d
}

// rowsOf returns a motif as this hand works it: the right hand from its right, the left
// hand, if it is mirrored, from its left. What it leaves open is knitted in the main colour.
func rowsOf(one repeat.Repeat, s chart.Source, names map[string]string) words.MotifRows {
	m := words.MotifRows{Name: inBrackets(one.Name)}
	for up := range one.Motif.High {
		row := make([]words.Worked, one.Motif.Wide)
		for right := range row {
			yarn, op := one.Motif.At(right, up)
			if op == stitch.NoStitch {
				op = stitch.Knit
			}
			row[right] = words.Worked{Op: op, Yarn: names[cmp.Or(yarn, chart.ID(0))]}
		}
		if s.Mirrored && one.OnLeft == repeat.LeftMirrored {
			slices.Reverse(row)
		}
		m.Rows = append(m.Rows, row)
	}
	return m
}

// longestInBrackets is how many characters the name of a motif may have beside its number.
const longestInBrackets = 40

// inBrackets returns the name of a motif as it stands in brackets, shortened if need be.
func inBrackets(name string) string {
	name = strings.Join(strings.Fields(strings.NewReplacer("(", " ", ")", " ").Replace(name)), " ")
	if all := []rune(name); len(all) > longestInBrackets {
		return strings.TrimSpace(string(all[:longestInBrackets-1])) + "…"
	}
	return name
}
